package sledwright.explain.conflict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.Assortment;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Enclosure;
import sledwright.domain.Equipment;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Thermal;
import sledwright.explain.Explainer;
import sledwright.explain.Explanation;
import sledwright.explain.ask.WhatIf;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.samples.Equipped;
import sledwright.samples.PlatformSketch;
import sledwright.samples.Samples;
import sledwright.samples.Variations;

/** What a platform lacks on which nothing can be had, whatever is asked. */
class LacksTest {

    private static final Processor P = Samples.processor("P120").tdpW(120).make();
    private static final MemoryModule R16 = Samples.R16;

    private static PlatformSketch box() {
        return Samples.platform().sku("BOX").cooling(Samples.TALL);
    }

    /** A shop that sells everything of these but some part numbers. */
    private static Catalog shop(Platform platform, Processor processor, MemoryModule module, String... unsold) {
        Catalog all = Samples.catalog(new Labour(3000, 50), List.of(platform), List.of(processor), List.of(module), Samples.lot(platform.sku(), "B1", 3, 20000),
                Samples.lot(processor.sku(), "C1", 8, 9000), Samples.lot("TALL", "H1", 9, 1000), Samples.lot("LOW", "H2", 9, 1000),
                Samples.lot("PAIR", "W1", 9, 4000), Samples.lot("ONE", "W2", 9, 4000), Samples.lot(module.sku(), "M1", 12, 2000));
        Map<String, List<Lot>> lots = new HashMap<>(all.lots());
        lots.keySet().removeAll(Set.of(unsold));
        return all.withLots(lots);
    }

    private static Explanation explain(Catalog shop) {
        Search search = new Search(shop);
        Request request = Request.named("any").withLimit(Samples.limit().price(1).site(25, 0).make());
        return new Explainer(shop, search, Deadline.never()).explain(search.run(request, Deadline.never()), List.of());
    }

    private static void lacks(Catalog shop, String rule, String message) {
        Explanation said = explain(shop);
        assertThat(said.conflicts()).singleElement().satisfies(conflict -> {
            assertThat(conflict.members()).isEmpty();
            assertThat(conflict.message()).isEqualTo("No build can be made of this catalogue, whatever is asked.");
        });
        assertThat(said.lacks()).singleElement().satisfies(lack -> {
            assertThat(lack.platform()).isEqualTo("BOX");
            assertThat(lack.what().message()).isEqualTo(message);
            assertThat(lack.what().rule()).isEqualTo(rule);
        });
    }

    @Test
    void partsThatNobodySells() {
        lacks(shop(box().make(), P, R16, "BOX"), "in-stock", "No lot offers BOX.");
        lacks(shop(box().make(), P, R16, "P120"), "in-stock", "No lot offers a processor for it: P120.");
        lacks(shop(box().cooling(Samples.LOW, Samples.TALL).make(), P, R16, "TALL"), "in-stock", "No lot offers a heat sink for it: TALL.");
        lacks(shop(box().supplies(Samples.PAIR, Samples.supply("ONE", 1, 0, 750, 650, Map.of())).make(), P, R16, "PAIR", "ONE"), "in-stock",
                "No lot offers a power supply for it: PAIR or ONE.");
        lacks(shop(box().make(), P, R16, "R16"), "in-stock", "No lot offers a memory module for it: R16.");
    }

    /** The fans that two processors call for and the blank of an empty socket; of an enclosure itself and what feeds it. */
    @Test
    void partsThatComeWithOthers() {
        Catalog plain = shop(box().expansion(Equipped.EXPANSION).make(), P, R16);
        Catalog equipped = Variations.of(plain, new Assortment(plain.platforms(), List.of(), plain.processors(), plain.modules(), List.of(), List.of(),
                List.of(Equipped.FANS, Equipped.BLANK)));
        lacks(equipped, "in-stock", "No lot offers BLANK, which it needs.");
        Catalog sled = shop(box().supplies().budgetW(400).make(), P, R16);
        Enclosure frame = new Enclosure("FRAME", "frame", Set.of("BOX"), 4, 60, 0, List.of(Samples.supply("FEED", 2, 1, 900, 0, Map.of())));
        Catalog framed = Variations.of(sled, new Assortment(sled.platforms(), List.of(frame), sled.processors(), sled.modules(), List.of(), List.of(), List.of()));
        assertThat(lacksWith("BOX", framed)).isEqualTo("No lot offers an enclosure for it: FRAME.");
        Map<String, List<Lot>> lots = new HashMap<>(framed.lots());
        lots.put("FRAME", List.of(Samples.lot("FRAME", "F1", 2, 9000)));
        assertThat(lacksWith("FRAME", framed.withLots(lots))).isEqualTo("No lot offers a power supply of an enclosure for it: FEED.");
    }

    /** Of a build that holds a part. */
    private static String lacksWith(String sku, Catalog shop) {
        return new Lacks(WhatIf.of(Request.named("any"), Optional.of(sku)), Equipment.NONE, shop).on(shop.platforms()).get(0).what().message();
    }

    @Test
    void partsThatDoNotGoTogether() {
        lacks(shop(box().make(), Samples.processor("P120").socket("LX9").make(), R16), "socket-match",
                "No processor goes with it: P120 is of generation G1 in socket LX9; BOX takes G1 in socket LK3.");
        lacks(shop(box().cooling(Samples.LOW).make(), P, R16), "heat-sink-rating",
                "No heat sink goes with it: LOW is rated for 105 W; P120 has a TDP of 120 W.");
        lacks(shop(box().make(), P, Samples.module("R16", 16).generation("DDR3").make()), "memory-generation",
                "No memory module goes with it: R16 is DDR3; BOX takes DDR4.");
        lacks(shop(box().thermal(new Thermal(950, 300, List.of(new Thermal.InletRow(105, 35, Set.of())))).make(), P, R16), "inlet-limit",
                "BOX cools processors of up to 105 W; P120 has a TDP of 120 W.");
    }

    @Test
    void populationsThatNoRuleAllows() {
        lacks(shop(box().countsPerSocket(100).make(), P, R16), "module-count", "Socket 1 holds 1 module; BOX supports 100.");
    }

    @Test
    void lotsThatSellOnlyInPacks() {
        Catalog shop = shop(box().make(), P, R16);
        Map<String, List<Lot>> lots = new HashMap<>(shop.lots());
        lots.putAll(Map.of("BOX", List.of(Samples.lot("BOX", "B1", 30, 0, Condition.USED, Map.of(2000, 20000L)))));
        lacks(shop.withLots(lots), "in-stock", "A build needs 1 unit of BOX; no lot sells fewer than 2000.");
    }
}
