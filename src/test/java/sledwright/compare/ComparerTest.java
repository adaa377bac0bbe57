package sledwright.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.Energy;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.Axis;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.Judge;
import sledwright.samples.Answers;
import sledwright.samples.Samples;
import sledwright.samples.Shops;

class ComparerTest {

    private static final Energy ENERGY = new Energy(4, 30, 0.5);
    private static final Request ASKED = Request.named("any").withRequire(Answers.ASKED.require());

    private static Comparison compare(Request request, Optional<Energy> energy, boolean byPlatform, Deadline deadline) {
        return new Comparer(Answers.SHOP, new Search(Answers.SHOP)).compare(request, energy, energy.isPresent() ? Arrays.asList(Cost.values()) : List.of(Cost.PRICE),
                Axis.of(request.require()), byPlatform, deadline);
    }

    private static Curve of(Comparison comparison, Axis axis) {
        return comparison.curves().stream().filter(curve -> curve.axes().figure() == axis).findFirst().orElseThrow();
    }

    @Test
    void eachFigureHasACurveOverEachCost() {
        Comparison comparison = compare(ASKED, Optional.of(ENERGY), false, Deadline.never());
        assertThat(comparison.status()).isEqualTo(Status.PROVED);
        assertThat(comparison.curves()).extracting(curve -> curve.axes().cost() + " " + curve.axes().figure()).containsExactly("PRICE THROUGHPUT", "PRICE CORES",
                "PRICE BANDWIDTH", "PRICE MEMORY", "PRICE LOAD", "TOTAL THROUGHPUT", "TOTAL CORES", "TOTAL BANDWIDTH", "TOTAL MEMORY", "TOTAL LOAD");
        for (Curve curve : comparison.curves()) {
            for (int i = 1; i < curve.points().size(); i++) {
                assertThat(curve.extraCost(i - 1, i)).isPositive();
                assertThat(curve.extraFigure(i - 1, i)).isPositive();
            }
            assertThat(curve.points()).allSatisfy(point -> {
                assertThat(new Judge().judge(point.order()).valid()).isTrue();
                assertThat(point.energy()).isPositive();
                assertThat(point.total()).isEqualTo(point.price() + point.energy());
            });
        }
    }

    /** The figures of one platform's curve are those of a request for it alone. */
    @Test
    void platformsHaveCurvesOfTheirOwn() {
        Request loose = Request.named("loose");
        Comparison comparison = compare(loose, Optional.empty(), true, Deadline.never());
        assertThat(comparison.curves()).extracting(curve -> curve.axes().platform().orElseThrow()).containsOnly("BOX", "SLED").hasSize(10);
        Comparison sled = compare(loose.withPlatforms(Set.of("SLED")), Optional.empty(), false, Deadline.never());
        assertThat(comparison.curves().subList(5, 10)).allSatisfy(curve -> {
            Curve alone = of(sled, curve.axes().figure());
            assertThat(curve.points()).extracting(Point::price).isEqualTo(alone.points().stream().map(Point::price).toList());
            assertThat(curve.points()).extracting(Point::figure).isEqualTo(alone.points().stream().map(Point::figure).toList());
        });
        Comparison all = compare(loose, Optional.empty(), false, Deadline.never());
        for (Axis axis : Axis.of(loose.require())) {
            List<String> ahead = comparison.curves().stream().filter(curve -> curve.axes().figure() == axis).flatMap(curve -> curve.points().stream()
                    .filter(point -> comparison.isForemost(curve, point))).map(point -> point.price() + " " + point.figure()).distinct().sorted().toList();
            assertThat(ahead).as(axis.label()).isEqualTo(of(all, axis).points().stream()
                    .map(point -> point.price() + " " + point.figure()).sorted().toList());
        }
    }

    @Test
    void nothingThatIsValid() {
        Request cheap = ASKED.withLimit(Samples.limit().price(100).make());
        Comparison comparison = compare(cheap, Optional.empty(), false, Deadline.never());
        assertThat(comparison.status()).isEqualTo(Status.IMPOSSIBLE);
        assertThat(comparison.curves()).hasSize(5).allSatisfy(curve -> assertThat(curve.points()).isEmpty());
    }

    @Test
    void timeThatIsOverProvesNothing() {
        Comparison comparison = compare(ASKED, Optional.empty(), false, Deadline.in(Duration.ZERO));
        assertThat(comparison.status()).isEqualTo(Status.BEST_FOUND);
        assertThat(comparison.curves()).allSatisfy(curve -> {
            assertThat(curve.status()).isEqualTo(Status.BEST_FOUND);
            assertThat(curve.proved()).isZero();
        });
    }

    /** A supply that takes less from the wall for more load: what was dropped as heavier may have been cheaper to run. */
    @Test
    void efficiencyThatOutrunsTheLoadLeavesTotalCostsOpen() {
        Supply odd = new Supply("PAIR", "odd pair", 2, 1, 750, 0, new TreeMap<>(Map.of(10, 10.0, 20, 90.0)));
        Platform box = Samples.platform().cooling(Samples.LOW, Answers.DEEP).supplies(odd).make();
        Catalog shop = Shops.of(Answers.SHOP.name(), Answers.SHOP.currency(), Answers.SHOP.pricedOn(), Answers.SHOP.labour(),
                Answers.SHOP.throughputFactors(), List.of(box), List.copyOf(Answers.SHOP.processors()), List.copyOf(Answers.SHOP.modules()), Answers.SHOP.lots());
        Comparison comparison = new Comparer(shop, new Search(shop)).compare(ASKED, Optional.of(ENERGY), Arrays.asList(Cost.values()), List.of(Axis.CORES), false,
                Deadline.never());
        assertThat(comparison.curves()).extracting(Curve::status).containsExactly(Status.PROVED, Status.BEST_FOUND);
        assertThat(comparison.curves().get(1).points()).isNotEmpty();
        assertThat(comparison.curves().get(1).proved()).isZero();
    }

    @Test
    void togetherEachBeatsEveryCheaperOne() {
        Together all = new Comparer(Answers.SHOP, new Search(Answers.SHOP)).together(Request.named("loose"), 0.5, Deadline.never());
        assertThat(all.complete()).isTrue();
        assertThat(all.builds()).hasSizeGreaterThan(3);
        for (int i = 0; i < all.builds().size(); i++) {
            for (int j = 0; j < i; j++) {
                var dear = all.builds().get(i).figures();
                var cheap = all.builds().get(j).figures();
                assertThat(Arrays.stream(Axis.values()).anyMatch(axis -> axis.lessIsBetter() ? axis.of(dear) <= axis.of(cheap) * 0.5 + 1e-6
                        : axis.of(dear) >= axis.of(cheap) * 1.5 - 1e-6)).as("%d over %d", i, j).isTrue();
            }
        }
    }
}
