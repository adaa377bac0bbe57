package sledwright.oracle;

import java.util.stream.LongStream;

/** The seeds of random tests: as many as the test wants, or as {@code -Dsledwright.seeds} says, from {@code -Dsledwright.seed} on. */
final class Seeds {

    private Seeds() {
    }

    /** Always the same seeds: for tests of the random cases themselves. */
    static LongStream fixed(int count) {
        return LongStream.rangeClosed(1, count);
    }

    static LongStream chosen(int count) {
        long first = Long.getLong("sledwright.seed", 1);
        return LongStream.range(first, first + Integer.getInteger("sledwright.seeds", count));
    }
}
