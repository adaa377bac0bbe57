package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedSet;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Enclosure;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.metrics.PowerDraw;
import sledwright.rules.Housing;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.rules.enclosure.EnclosureBays;
import sledwright.rules.enclosure.EnclosurePower;

/** The rules of enclosures and the second reading of their text break alike on random enclosures with random sleds. */
class EnclosuresAgainstReadingTest {

    private static final int SEEDS = 400;
    private static final int VARIANTS = 6;

    @Test
    void bothReadingsBreakTheSameRules() {
        Set<SortedSet<String>> seen = new HashSet<>();
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomCase that = RandomCase.of(seed, RandomCase.Size.LISTABLE);
            SplittableRandom random = new SplittableRandom(seed);
            for (int variant = 0; variant < VARIANTS; variant++) {
                FilledEnclosure filled = filled(that, random);
                Limits site = new Limits(Limits.NONE.price(), OptionalDouble.empty(), Limits.NONE.leadDays(), OptionalDouble.empty(), 0,
                        random.nextInt(3) == 0 ? OptionalDouble.empty() : OptionalDouble.of(random.nextBoolean() ? 115 : 230), Set.of());
                SortedSet<String> expected = Reading.enclosure(filled, site, that.catalog().throughputFactors());
                String where = "seed %d, variant %d: %s with %s".formatted(seed, variant, filled.enclosure(), filled.sleds().size());

                SortedSet<String> found = new TreeSet<>();
                Rulebook.judge(new Housing(filled, Request.named("site").withLimit(site))).stream().map(Violation::rule).forEach(found::add);
                assertThat(found).as(where).isEqualTo(expected);

                double sledsW = filled.sleds().stream().mapToDouble(PowerDraw::loadW).sum();
                assertThat(EnclosurePower.allows(filled.enclosure(), filled.supply(), site, sledsW)).as(where)
                        .isEqualTo(!expected.contains(EnclosurePower.ID));
                assertThat(EnclosureBays.allows(filled.enclosure(), filled.sleds().size())
                        && filled.sleds().stream().allMatch(sled -> EnclosureBays.allows(filled.enclosure(), sled.platform()))).as(where)
                        .isEqualTo(!expected.contains(EnclosureBays.ID));
                seen.add(expected);
            }
        });
        assertThat(seen).as("what the random enclosures broke").contains(new TreeSet<>(), new TreeSet<>(Set.of(EnclosureBays.ID)),
                new TreeSet<>(Set.of(EnclosurePower.ID)), new TreeSet<>(Set.of(EnclosureBays.ID, EnclosurePower.ID)));
    }

    /** Often exactly at the limit: the figures of the supplies and the budget are made from the load. */
    private static FilledEnclosure filled(RandomCase that, SplittableRandom random) {
        List<Build> sleds = new ArrayList<>();
        int count = random.nextInt(6);
        for (int i = 0; i < count; i++) {
            sleds.add(new RandomBuild(that, random.nextInt(50)).build());
        }
        Set<String> takes = new HashSet<>();
        that.catalog().platforms().stream().filter(platform -> random.nextInt(5) > 0).forEach(platform -> takes.add(platform.sku()));
        takes.add("ANOTHER");
        double baseW = random.nextInt(400) / 2.0;
        double loadW = baseW + sleds.stream().mapToDouble(PowerDraw::loadW).sum();
        int running = 1 + random.nextInt(3);
        int redundant = random.nextInt(3);
        double watts = Math.max(1, near(loadW, random) / running);
        double lowLineWatts = random.nextInt(3) == 0 ? 0 : random.nextInt(3) == 0 ? watts : watts / 2;
        Supply supply = new Supply("FEED", "feed", running + redundant, redundant, watts, lowLineWatts, new TreeMap<>(Map.of()));
        double budgetW = random.nextInt(2) == 0 ? 0 : Math.max(1, near(loadW, random));
        return new FilledEnclosure(new Enclosure("FRAME", "frame", takes, Math.max(1, count + random.nextInt(4) - 1), baseW, budgetW,
                List.of(supply)), supply, sleds);
    }

    private static double near(double loadW, SplittableRandom random) {
        return switch (random.nextInt(4)) {
            case 0 -> loadW - 0.5;
            case 1 -> loadW + 0.5;
            case 2 -> 2 * loadW;
            default -> loadW;
        };
    }
}
