package sledwright.generator.shape;

/**
 * All vectors of {@code dimensions} counts whose sum is at most {@code most}, numbered in lexicographic order. Adding to a
 * vector always raises its number, so one ascending pass over the numbers serves an unbounded dynamic program.
 */
final class Lattice {

    private final int dimensions;
    private final int most;
    private final long[][] binomials;
    private byte[] counts;
    private byte[] sums;

    /** @param most at most 127 */
    Lattice(int dimensions, int most) {
        this.dimensions = dimensions;
        this.most = most;
        binomials = new long[most + dimensions + 2][dimensions + 2];
        for (int n = 0; n < binomials.length; n++) {
            binomials[n][0] = 1;
            for (int k = 1; k <= Math.min(n, dimensions + 1); k++) {
                binomials[n][k] = binomials[n - 1][k - 1] + (k <= n - 1 ? binomials[n - 1][k] : 0);
            }
        }
    }

    /** How many vectors there are. */
    long size() {
        return binomials[most + dimensions][dimensions];
    }

    /** Writes all vectors down; {@link #size()} must be within memory. */
    void list() {
        int size = (int) size();
        counts = new byte[size * dimensions];
        sums = new byte[size];
        for (int number = 1; number < size; number++) {
            int from = (number - 1) * dimensions;
            int to = number * dimensions;
            System.arraycopy(counts, from, counts, to, dimensions);
            if (sums[number - 1] < most) {
                counts[to + dimensions - 1]++;
                sums[number] = (byte) (sums[number - 1] + 1);
            } else {
                int last = dimensions - 1;
                while (counts[to + last] == 0) {
                    last--;
                }
                sums[number] = (byte) (sums[number - 1] - counts[to + last] + 1);
                counts[to + last] = 0;
                counts[to + last - 1]++;
            }
        }
    }

    /** The sum of a listed vector. */
    int sum(int number) {
        return sums[number];
    }

    int[] vector(int number) {
        int[] vector = new int[dimensions];
        for (int i = 0; i < dimensions; i++) {
            vector[i] = counts[number * dimensions + i];
        }
        return vector;
    }

    /** The number of a listed vector plus another, whose sum must be at most {@code most}. */
    int plus(int number, int[] other) {
        long sum = 0;
        int room = most;
        int at = number * dimensions;
        for (int i = 0; i < dimensions; i++) {
            int after = room - counts[at + i] - other[i];
            int left = dimensions - i;
            // Vectors that agree so far and have a smaller count here.
            sum += binomials[room + left][left] - binomials[after + left][left];
            room = after;
        }
        return (int) sum;
    }
}
