package sledwright.oracle;

import java.util.stream.LongStream;

/** The seeds of random tests: so many as the test wants, or as {@code -Dsledwright.seeds} says, from {@code -Dsledwright.seed} on. */
final class Seeds {

    private Seeds() {
    }

    static LongStream atLeast(int count) {
        long first = Long.getLong("sledwright.seed", 1);
        return LongStream.range(first, first + Integer.getInteger("sledwright.seeds", count));
    }
}
