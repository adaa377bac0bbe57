package sledwright.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ScaleTest {

    private static String ticks(double least, double most, int about) {
        Scale scale = Scale.of(least, most, about);
        return String.join(" ", scale.values().stream().map(tick -> scale.label(tick, Locale.ROOT)).toList());
    }

    @Test
    void ticksAreRound() {
        assertThat(ticks(132, 961, 5)).isEqualTo("0 200 400 600 800 1,000");
        assertThat(ticks(108, 214, 5)).isEqualTo("100 150 200 250");
        assertThat(ticks(0.12, 0.61, 5)).isEqualTo("0.0 0.2 0.4 0.6 0.8");
        assertThat(ticks(-30, 45, 4)).isEqualTo("-40 -20 0 20 40 60");
        assertThat(ticks(9_000_000, 9_500_000, 5)).isEqualTo("9,000,000 9,100,000 9,200,000 9,300,000 9,400,000 9,500,000");
    }

    @Test
    void oneFigureHasAScaleToo() {
        assertThat(ticks(50, 50, 5)).isEqualTo("0 10 20 30 40 50");
        assertThat(ticks(0, 0, 5)).isEqualTo("0.0 0.2 0.4 0.6 0.8 1.0");
    }

    @Test
    void labelsAreAsTheLocaleWritesThem() {
        Scale scale = Scale.of(0, 2500, 5);
        assertThat(scale.label(scale.values().get(4), Locale.GERMANY)).isEqualTo("2.000");
    }

    @Test
    void everyFigureIsWithin() {
        for (long seed = 0; seed < 2000; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            double least = Math.pow(10, random.nextDouble(-5, 8)) * (random.nextInt(4) == 0 ? -1 : 1);
            double most = least + Math.abs(least) * Math.pow(10, random.nextDouble(-4, 3));
            Scale scale = Scale.of(least, most, random.nextInt(2, 9));
            assertThat(scale.share(least)).as("seed " + seed).isBetween(-1e-6, 1.0);
            assertThat(scale.share(most)).as("seed " + seed).isBetween(0.0, 1 + 1e-6);
            assertThat(scale.ticks()).as("seed " + seed).isBetween(2, 25);
        }
    }
}
