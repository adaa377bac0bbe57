package sledwright.generator.shape;

import java.util.Arrays;

/** Reach under rank sparing: for each histogram of channel sizes the least capacity held back. */
final class SparedReach implements Reach {

    private final Lattice lattice;
    private final Layouts layouts;
    private final int histograms;
    private final double[] sparedGb;
    private final double[] told;
    private final boolean[] changed;

    /** @param lattice listed */
    SparedReach(Lattice lattice, Layouts layouts) {
        this.lattice = lattice;
        this.layouts = layouts;
        histograms = layouts.histograms();
        int size = (int) lattice.size();
        sparedGb = new double[size * histograms];
        told = new double[size];
        changed = new boolean[size];
        Arrays.fill(sparedGb, Double.POSITIVE_INFINITY);
        Arrays.fill(told, Double.POSITIVE_INFINITY);
        sparedGb[0] = 0;
        told[0] = 0;
    }

    @Override
    public void add(Stack stack) {
        int shift = layouts.step(stack.size());
        for (int number = 0; number < told.length; number++) {
            int sum = lattice.sum(number);
            if (sum + stack.size() <= layouts.maxModules()) {
                spread(number, sum, stack, shift);
            }
        }
    }

    private void spread(int number, int sum, Stack stack, int shift) {
        long[] withRoom = layouts.withRoom(sum);
        int from = number * histograms;
        int target = -1;
        int to = 0;
        for (int word = 0; word < withRoom.length; word++) {
            for (long bits = withRoom[word]; bits != 0; bits &= bits - 1) {
                int histogram = (word << 6) + Long.numberOfTrailingZeros(bits);
                double spared = sparedGb[from + histogram] + stack.sparedGb();
                if (spared < Double.POSITIVE_INFINITY) {
                    if (target < 0) {
                        target = lattice.plus(number, stack.counts());
                        to = target * histograms + shift;
                    }
                    if (spared < sparedGb[to + histogram]) {
                        sparedGb[to + histogram] = spared;
                        changed[target] = true;
                    }
                }
            }
        }
    }

    @Override
    public void forEachNew(Found found) {
        for (int number = 0; number < told.length; number++) {
            if (changed[number]) {
                changed[number] = false;
                double least = least(number);
                if (least < told[number]) {
                    told[number] = least;
                    found.accept(number, least);
                }
            }
        }
    }

    private double least(int number) {
        long[] allowed = layouts.allowed(lattice.sum(number));
        double least = Double.POSITIVE_INFINITY;
        for (int word = 0; word < allowed.length; word++) {
            for (long bits = allowed[word]; bits != 0; bits &= bits - 1) {
                int histogram = (word << 6) + Long.numberOfTrailingZeros(bits);
                least = Math.min(least, sparedGb[number * histograms + histogram]);
            }
        }
        return least;
    }
}
