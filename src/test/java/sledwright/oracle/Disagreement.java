package sledwright.oracle;

import static org.assertj.core.api.Assertions.fail;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.LongFunction;

/**
 * Judges many random cases and fails with the disagreements, the first few made as small as they get; under
 * {@code -Dsledwright.shrink=false} with the first as it is, where only whether there is one matters.
 */
final class Disagreement {

    private static final int SHOWN = 3;
    private static final boolean SHRINK = !"false".equals(System.getProperty("sledwright.shrink"));

    private Disagreement() {
    }

    /**
     * @param judge words for a disagreement; empty for none
     */
    static void none(int seeds, RandomCase.Size size, Function<RandomCase, String> judge) {
        none(seeds, seed -> RandomCase.of(seed, size), judge);
    }

    /**
     * @param random the case of a seed
     * @param judge  words for a disagreement; empty for none
     */
    static void none(int seeds, LongFunction<RandomCase> random, Function<RandomCase, String> judge) {
        List<Long> failing = new ArrayList<>();
        List<String> shown = new ArrayList<>();
        Seeds.chosen(seeds).forEach(seed -> {
            RandomCase that = random.apply(seed);
            String words = judge.apply(that);
            if (!words.isEmpty()) {
                if (!SHRINK) {
                    fail("seed %d:%n%s%n%s", seed, words, that.text());
                }
                failing.add(seed);
                if (shown.size() < SHOWN) {
                    RandomCase small = Shrinker.shrink(that, next -> !judge.apply(next).isEmpty());
                    shown.add("seed %d, made smaller:%n%s%n%s".formatted(seed, judge.apply(small), small.text()));
                }
            }
        });
        if (!failing.isEmpty()) {
            fail("seeds %s%n%s", failing, String.join("\n\n", shown));
        }
    }
}
