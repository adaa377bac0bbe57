package sledwright.restock;

/** Takes the parts of orders from the pools, which happens a thousand million times in a plan: rows of numbers, no objects. */
final class Take {

    private Take() {
    }

    /**
     * Takes what an order needs, or nothing where something is missing.
     *
     * @param draw    as {@link Racks#draws} has it
     * @param shortOf by way, how far behind the first the part stands that was missing last: it is likely to be missing again
     */
    static boolean isTaken(int[] draw, int[] stock, int[] shortOf, int way) {
        int end = 1 + 2 * draw[0];
        int likely = 1 + shortOf[way];
        if (likely < end && stock[draw[likely]] < draw[likely + 1] || !isThere(draw, end, stock)) {
            return false;
        }
        for (int i = 1; i < end; i += 2) {
            int left = stock[draw[i]] - draw[i + 1];
            if (left < 0) {
                for (int taken = 1; taken < i; taken += 2) {
                    stock[draw[taken]] += draw[taken + 1];
                }
                shortOf[way] = i - 1;
                return false;
            }
            stock[draw[i]] = left;
        }
        takeMixed(draw, end, stock);
        return true;
    }

    /** Whether there is enough of the parts that come from several pools. */
    private static boolean isThere(int[] draw, int from, int[] stock) {
        int i = from;
        while (i < draw.length) {
            int missing = draw[i];
            int end = i + 2 + draw[i + 1];
            for (int j = i + 2; j < end && missing > 0; j++) {
                missing -= stock[draw[j]];
            }
            if (missing > 0) {
                return false;
            }
            i = end;
        }
        return true;
    }

    private static void takeMixed(int[] draw, int from, int[] stock) {
        for (int i = from; i < draw.length; i += 2 + draw[i + 1]) {
            int missing = draw[i];
            for (int j = i + 2; missing > 0; j++) {
                int left = stock[draw[j]] - missing;
                stock[draw[j]] = Math.max(0, left);
                missing = -left;
            }
        }
    }
}
