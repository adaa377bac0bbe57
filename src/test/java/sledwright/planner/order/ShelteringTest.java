package sledwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.domain.Assortment;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Enclosure;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome.LightestSled;
import sledwright.planner.order.OrderOutcome.Unfed;
import sledwright.planner.order.OrderOutcome.Unhoused;
import sledwright.planner.order.OrderOutcome.Unsold;
import sledwright.samples.PlatformSketch;
import sledwright.samples.Samples;
import sledwright.samples.Variations;

/** Sleds that nothing on offer feeds or houses, while the catalogue knows parts with which it would do. */
class ShelteringTest {

    private static final MemoryModule M8 = Samples.module("M8", 8).ranks(1).width(8).make();
    private static final Processor COOL = Samples.processor("COOL").tdpW(30).make();

    /** 140 W for all sleds; one with the usual processor is 85 W and its processor's 85. */
    private static final Enclosure FRAME = new Enclosure("FRAME", "frame", Set.of("BOX", "LIGHT"), 4, 60, 0,
            List.of(Samples.supply("FEED", 2, 1, 200, 0, Map.of())));
    private static final Enclosure STRONG = new Enclosure("STRONG", "strong frame", Set.of("BOX"), 4, 60, 0,
            List.of(Samples.supply("MIGHT", 2, 1, 900, 0, Map.of())));

    private static PlatformSketch box() {
        return Samples.platform().counts(1).channels(2, 1).supplies();
    }

    /** What would do: a lighter sled with its heat sink, a cooler processor, or a stronger enclosure with its supply. */
    private static Catalog shop(String remedy, Set<String> unsold) {
        List<Platform> platforms = new ArrayList<>(List.of(box().make()));
        List<Processor> processors = new ArrayList<>(List.of(Samples.P10));
        List<Enclosure> enclosures = new ArrayList<>(List.of(FRAME));
        if (Set.of("LIGHT", "THIN").contains(remedy)) {
            platforms.add(box().sku("LIGHT").baseW(20).cooling(new CoolingKit("THIN", "thin heat sink", 150, List.of())).make());
        } else if (remedy.equals("COOL")) {
            processors.add(COOL);
        } else if (Set.of("STRONG", "MIGHT").contains(remedy)) {
            enclosures.add(STRONG);
        }
        Catalog known = Samples.catalog(platforms, processors, List.of(M8));
        Catalog all = Variations.of(known, new Assortment(platforms, enclosures, processors, List.of(M8), List.of(), List.of(), List.of()));
        return all.withLots(all.parts().stream().map(Part::sku).filter(sku -> !unsold.contains(sku)).distinct()
                .collect(Collectors.toMap(sku -> sku, sku -> List.of(lot(sku)))));
    }

    private static Lot lot(String sku) {
        return Samples.lot(sku, "A", 9, 1_000);
    }

    private static OrderOutcome plan(Catalog shop, Map<String, Integer> onHand) {
        OrderLine line = new OrderLine("web", Request.named("web").withMachines(2).withRequire(Samples.require().memoryGb(8).make()), 1, false);
        return new OrderPlanner(shop, 1).plan(new OrderRequest("order", List.of(line), OptionalInt.empty(), 0, 0, onHand), Deadline.never(), progress -> { });
    }

    @ParameterizedTest
    @ValueSource(strings = {"LIGHT", "THIN", "COOL", "STRONG", "MIGHT"})
    void whatWouldDoButIsNotOnOfferHidesNoCause(String unsold) {
        assertThat(plan(shop(unsold, Set.of()), Map.of()).status()).as("with it").isEqualTo(OrderStatus.PROVED);
        OrderOutcome outcome = plan(shop(unsold, Set.of(unsold)), Map.of());
        assertThat(outcome.status()).isEqualTo(OrderStatus.IMPOSSIBLE);
        assertThat(outcome.shortages().most()).isTrue();
        assertThat(outcome.shortages().parts()).isEmpty();
        double sledW = 85 + Samples.P10.tdpW() + M8.powerW();
        assertThat(outcome.shortages().enclosures().unfed()).containsExactly(new Unfed(new LightestSled("web", sledW, true), "FRAME", "FEED", 2, 60, 200, OptionalDouble.empty()));
    }

    /** Sold out is no way out of it, and not said to be what is lacking. */
    @Test
    void ofSledsThatAreSoldOutItIsSaid() {
        Catalog shop = shop("COOL", Set.of("COOL"));
        Map<String, List<Lot>> lots = new HashMap<>(shop.lots());
        lots.put("BOX", List.of(Samples.lot("BOX", "A", 0, 1_000)));
        OrderOutcome outcome = plan(shop.withLots(lots), Map.of());
        assertThat(outcome.shortages().parts()).isEmpty();
        assertThat(outcome.shortages().enclosures().unfed()).extracting(unfed -> unfed.sled().inStock()).containsExactly(false);
    }

    @Test
    void sledsThatNoEnclosureOnOfferTakesAreNamedWithThoseThatWould() {
        assertThat(plan(shop("STRONG", Set.of("FRAME", "MIGHT")), Map.of()).shortages().enclosures().unhoused())
                .containsExactly(new Unhoused("web", List.of(new Unsold("FRAME", List.of()), new Unsold("STRONG", List.of("MIGHT")))));
        assertThat(plan(shop("STRONG", Set.of("FRAME", "MIGHT")), Map.of("MIGHT", 2)).missing()).as("the customer has supplies").isZero();
    }

    /** Of the other line units are lacking, which are named all the same. */
    @Test
    void oneLineThatIsStuckHidesNotWhatOthersLack() {
        Catalog shop = shop("COOL", Set.of());
        Request asked = Request.named("any").withMachines(12).withRequire(Samples.require().memoryGb(8).make());
        OrderLine hot = new OrderLine("hot", asked.withMachines(1).withForbid(Set.of("COOL")), 1, false);
        OrderOutcome outcome = new OrderPlanner(shop, 1).plan(new OrderRequest("order", List.of(hot, new OrderLine("many", asked, 1, false)), OptionalInt.empty(), 0, 0,
                Map.of()), Deadline.never(), progress -> { });
        assertThat(outcome.status()).isEqualTo(OrderStatus.SHORT);
        assertThat(outcome.shortages().enclosures().unfed()).extracting(unfed -> unfed.sled().line()).containsExactly("hot");
        assertThat(outcome.shortages().parts()).anySatisfy(lack -> {
            assertThat(lack.sku()).isEqualTo("COOL");
            assertThat(lack.units()).isEqualTo(3);
            assertThat(lack.byLine()).containsOnlyKeys("many");
        });
    }
}
