package sledwright.generator;

import java.util.Arrays;

/** Reach under rank sparing: for each histogram of channel sizes the least capacity held back. */
final class SparedReach implements Reach {

    private final Lattice lattice;
    private final Layouts layouts;
    private final int histograms;
    private final double[] sparedGb;
    private final double[] told;
    private final int dimensions;

    SparedReach(Lattice lattice, Layouts layouts, int dimensions) {
        this.lattice = lattice;
        this.layouts = layouts;
        this.dimensions = dimensions;
        histograms = layouts.histograms();
        sparedGb = new double[(int) lattice.size() * histograms];
        told = new double[(int) lattice.size()];
        Arrays.fill(sparedGb, Double.POSITIVE_INFINITY);
        Arrays.fill(told, Double.POSITIVE_INFINITY);
        sparedGb[0] = 0;
        told[0] = 0;
    }

    @Override
    public void add(Stack stack, int[] vector) {
        Arrays.fill(vector, 0);
        int shift = layouts.step(stack.size());
        int sum;
        int number = 0;
        do {
            sum = Arrays.stream(vector).sum();
            if (sum + stack.size() <= layouts.maxModules()) {
                int to = lattice.number(vector, stack.counts()) * histograms;
                long[] mask = layouts.withRoom(sum);
                for (int histogram = 0; histogram < histograms - shift; histogram++) {
                    double spared = sparedGb[number * histograms + histogram] + stack.sparedGb();
                    if (spared < sparedGb[to + histogram + shift] && (mask[histogram >> 6] >>> histogram & 1) != 0) {
                        sparedGb[to + histogram + shift] = spared;
                    }
                }
            }
            number++;
        } while (lattice.next(vector, sum));
    }

    @Override
    public void forEachNew(Found found) {
        int[] vector = new int[dimensions];
        int number = 0;
        int sum;
        do {
            sum = Arrays.stream(vector).sum();
            double least = least(number, sum);
            if (least < told[number]) {
                told[number] = least;
                found.accept(vector, sum, least);
            }
            number++;
        } while (lattice.next(vector, sum));
    }

    private double least(int number, int modules) {
        long[] allowed = layouts.allowed(modules);
        double least = Double.POSITIVE_INFINITY;
        for (int histogram = 0; histogram < histograms; histogram++) {
            if ((allowed[histogram >> 6] >>> histogram & 1) != 0) {
                least = Math.min(least, sparedGb[number * histograms + histogram]);
            }
        }
        return least;
    }
}
