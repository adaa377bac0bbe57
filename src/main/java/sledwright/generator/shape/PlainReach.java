package sledwright.generator.shape;

/** Reach without rank sparing: a bit for each histogram of channel sizes. */
final class PlainReach implements Reach {

    private final Lattice lattice;
    private final Layouts layouts;
    private final int words;
    private final long[] reached;
    private final boolean[] told;

    /** @param lattice listed */
    PlainReach(Lattice lattice, Layouts layouts) {
        this.lattice = lattice;
        this.layouts = layouts;
        words = layouts.words();
        reached = new long[(int) lattice.size() * words];
        told = new boolean[(int) lattice.size()];
        reached[0] = 1;
        told[0] = true;
    }

    @Override
    public void add(Stack stack) {
        int shift = layouts.step(stack.size());
        for (int number = 0; number < told.length; number++) {
            int sum = lattice.sum(number);
            if (sum + stack.size() <= layouts.maxModules() && any(number)) {
                spread(number, lattice.plus(number, stack.counts()), shift, layouts.withRoom(sum));
            }
        }
    }

    private boolean any(int number) {
        for (int i = number * words; i < (number + 1) * words; i++) {
            if (reached[i] != 0) {
                return true;
            }
        }
        return false;
    }

    private void spread(int from, int to, int shift, long[] mask) {
        int whole = shift >> 6;
        int part = shift & 63;
        for (int word = words - 1; word >= whole; word--) {
            int source = word - whole;
            long bits = (reached[from * words + source] & mask[source]) << part;
            if (part > 0 && source > 0) {
                bits |= (reached[from * words + source - 1] & mask[source - 1]) >>> 64 - part;
            }
            reached[to * words + word] |= bits;
        }
    }

    @Override
    public void forEachNew(Found found) {
        for (int number = 0; number < told.length; number++) {
            if (!told[number] && isAllowed(number)) {
                told[number] = true;
                found.accept(number, 0);
            }
        }
    }

    private boolean isAllowed(int number) {
        long[] allowed = layouts.allowed(lattice.sum(number));
        for (int word = 0; word < words; word++) {
            if ((reached[number * words + word] & allowed[word]) != 0) {
                return true;
            }
        }
        return false;
    }
}
