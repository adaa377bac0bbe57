package sledwright.explain.ask;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class ExtremeTest {

    @Test
    void theGreatestOfRandomFiguresIsFound() {
        for (int seed = 0; seed < 500; seed++) {
            Random random = new Random(seed);
            boolean whole = random.nextBoolean();
            TreeSet<Double> figures = new TreeSet<>();
            for (int i = random.nextInt(30); i >= 0; i--) {
                figures.add(whole ? random.nextInt(100) : Math.rint(random.nextDouble() * 1e8) / 1e6);
            }
            double greatest = figures.last();
            double asked = greatest + (whole ? 1 + random.nextInt(50) : 1e-5 + random.nextDouble() * 50);
            double step = whole ? 1 : 1e-6;
            AtomicInteger questions = new AtomicInteger();
            double found = Extreme.greatest(figures.first(), asked, step, least -> {
                questions.incrementAndGet();
                if (whole) {
                    assertThat(least).isEqualTo(Math.rint(least));
                }
                Double figure = figures.ceiling(least - step / 2);
                return figure == null ? OptionalDouble.empty() : OptionalDouble.of(figure);
            });
            assertThat(found).as("seed " + seed).isCloseTo(greatest, org.assertj.core.data.Offset.offset(whole ? 0 : 2e-6));
            assertThat(questions.get()).as("questions, seed " + seed).isLessThan(80);
        }
    }

    @Test
    void theFirstThatCanBeHadIsFound() {
        List<Integer> values = List.of(1, 2, 3, 5, 8);
        for (int from = 0; from <= 9; from++) {
            int least = from;
            assertThat(Extreme.first(values, value -> value >= least ? Optional.of(value) : Optional.empty()))
                    .isEqualTo(values.stream().filter(value -> value >= least).findFirst());
        }
        assertThat(Extreme.first(List.<Integer>of(), Optional::of)).isEmpty();
    }
}
