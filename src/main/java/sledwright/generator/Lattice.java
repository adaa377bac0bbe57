package sledwright.generator;

/**
 * All vectors of {@code dimensions} counts whose sum is at most {@code most}, numbered in lexicographic order. Adding to a
 * vector always raises its number, so one ascending pass over the numbers serves an unbounded dynamic program.
 */
final class Lattice {

    private final int dimensions;
    private final int most;
    private final long[][] binomials;

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

    /** The number of the vector {@code a + b}, whose sum must be at most {@code most}. */
    int number(int[] a, int[] b) {
        long number = 0;
        int room = most;
        for (int i = 0; i < dimensions; i++) {
            int after = room - a[i] - b[i];
            int left = dimensions - i;
            // Vectors that agree so far and have a smaller count here.
            number += binomials[room + left][left] - binomials[after + left][left];
            room = after;
        }
        return (int) number;
    }

    /** Turns a vector into the next one; false at the end. */
    boolean next(int[] vector, int sum) {
        if (sum < most) {
            vector[dimensions - 1]++;
            return true;
        }
        int i = dimensions - 1;
        while (i >= 0 && vector[i] == 0) {
            i--;
        }
        if (i <= 0) {
            return false;
        }
        vector[i] = 0;
        vector[i - 1]++;
        return true;
    }
}
