package sledwright.explain.whynot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Assortment;
import sledwright.domain.Card;
import sledwright.domain.CardHeight;
import sledwright.domain.CardKind;
import sledwright.domain.CardShape;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.DriveKind;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Expansion;
import sledwright.domain.Extra;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.Stationery;
import sledwright.domain.VolumeWish;
import sledwright.explain.Explainer;
import sledwright.explain.whynot.WhyNot.Verdict;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.samples.Equipped;
import sledwright.samples.Samples;
import sledwright.samples.Shops;

/** Why a drive, card or extra is not in the best build: by which rule, in its words, or at which price it would be. */
class EquipmentWhyNotTest {

    private static final Platform BOX = Samples.platform().cooling(Samples.TALL).expansion(Equipped.EXPANSION).make();
    private static final Platform BARE = Samples.platform().sku("BARE").cooling(Samples.TALL).make();
    private static final Card SHORT_NET = new Card("NET-2X1", "NET-2X1", CardKind.NETWORK, new CardShape(3, 4, CardHeight.LOW, 100, 5), 2, 1, Optional.empty());

    /** A shop that sells everything but some part numbers, each unit at a price of its own that rises with its place. */
    private static Catalog shop(List<Platform> platforms, String... unsold) {
        List<Drive> drives = List.of(Equipped.SSD, Equipped.BIG_SSD, Equipped.SAS, Equipped.HDD, Equipped.NVME);
        List<Card> cards = List.of(Equipped.NET, Equipped.FAST_NET, SHORT_NET, Equipped.CONTROLLER);
        List<Extra> extras = List.of(Equipped.FANS, Equipped.BLANK, Equipped.RISER, Equipped.RAILS);
        List<Part> parts = new ArrayList<>(List.of(Samples.TALL, Samples.P10, Samples.R16, Samples.PAIR));
        Stream.of(platforms, drives, cards, extras).forEach(parts::addAll);
        Map<String, List<Lot>> lots = new HashMap<>();
        for (int i = 0; i < parts.size(); i++) {
            lots.put(parts.get(i).sku(), List.of(Samples.lot(parts.get(i).sku(), "L" + i, 20, 1000 + 100L * i)));
        }
        lots.keySet().removeAll(Set.of(unsold));
        return Shops.of("shop", Currency.getInstance("EUR"), LocalDate.of(2025, 1, 1), new Labour(0, 0), Samples.FACTORS,
                new Assortment(platforms, List.of(), List.of(Samples.P10), List.of(Samples.R16), drives, cards, extras), lots, Stationery.PLAIN);
    }

    private static VolumeWish volume(String name, double gb, RaidLevel level, DriveKind kind) {
        return new VolumeWish(name, gb, level, Optional.ofNullable(kind), Optional.empty(), 0);
    }

    private static CardWish network(int count) {
        return new CardWish(Optional.empty(), Optional.of(CardKind.NETWORK), 2, 1, count);
    }

    private static WhyNot whyNot(Catalog shop, String sku, List<VolumeWish> volumes, CardWish... cards) {
        Request request = Request.named("asked").withEquipment(new Equipment(volumes, List.of(cards), Map.of(), EnclosureFrom.NEW));
        Search search = new Search(shop);
        return new Explainer(shop, search, Deadline.never()).explain(search.run(request, Deadline.never()), List.of(sku)).whyNot().get(0);
    }

    private static void barred(WhyNot answer, String rule, String sentence) {
        assertThat(answer.verdict()).isEqualTo(Verdict.BARRED);
        assertThat(answer.rules()).contains(rule);
        assertThat(answer.message()).contains(rule + ": " + sentence);
    }

    @Test
    void whatNothingAsksFor() {
        Catalog shop = shop(List.of(BOX));
        barred(whyNot(shop, "SSD-480", List.of()), "required-part", "Nothing that is asked for brings SSD-480 into a build.");
        barred(whyNot(shop, "NET-2X10", List.of()), "required-part", "Nothing that is asked for brings NET-2X10 into a build.");
        barred(whyNot(shop, "RAILS", List.of()), "required-part", "Nothing that is asked for brings RAILS into a build.");
    }

    @Test
    void drivesThatDoNotServe() {
        List<VolumeWish> mirror = List.of(volume("data", 400, RaidLevel.LEVEL_1, DriveKind.SSD));
        barred(whyNot(shop(List.of(BOX)), "SAS-1200", mirror), "storage-capacity", "Volume data has SAS-1200, a SAS hdd; the request asks for ssd.");
        barred(whyNot(shop(List.of(BOX)), "HDD-4000", List.of(volume("data", 400, RaidLevel.LEVEL_1, null))), "drive-bay",
                "HDD-4000 is a 3.5 drive; the bays front take 2.5.");
        barred(whyNot(shop(List.of(BOX, BARE)), "SAS-1200", mirror), "drive-bay", "BARE has no drive bays.");
    }

    /** Six of them for the one volume would leave two bays for the other, which takes two of the larger ones; on its own neither is in the way. */
    @Test
    void drivesThatAreTooSmall() {
        List<VolumeWish> two = List.of(volume("system", 2000, RaidLevel.LEVEL_6, DriveKind.SSD), volume("data", 1800, RaidLevel.LEVEL_0, DriveKind.SSD));
        WhyNot answer = whyNot(shop(List.of(BOX), "NV-1600"), "SSD-480", two);
        assertThat(answer.verdict()).isEqualTo(Verdict.BARRED);
        assertThat(answer.rules()).contains("storage-capacity");
        assertThat(answer.message()).contains("with volume data of 1800 GB at level 0 on SSD drives, volume system reaches 1920 GB at most");
    }

    @Test
    void aRiserWithoutACard() {
        barred(whyNot(shop(List.of(BOX)), "RISER-2", List.of()), "required-part",
                "No set of drives, cards and extras with RISER-2 serves all that is asked for.");
    }

    @Test
    void cardsThatDoNotFit() {
        Catalog shop = shop(List.of(BOX, BARE));
        WhyNot two = whyNot(shop, "NET-2X25", List.of(), network(2));
        barred(two, "cards", "The machine has NET-2X25; the request asks for 2 network cards with 2 ports of 1 Gbit/s.");
        barred(two, "card-slot", "BARE has no slots for cards.");
        Expansion slots = new Expansion(List.of(), Optional.empty(), List.of(
                new CardSlot("X1", new CardShape(3, 4, CardHeight.FULL, 312, 75), OptionalInt.empty(), Optional.empty()),
                new CardSlot("X2", new CardShape(3, 8, CardHeight.LOW, 168, 25), OptionalInt.empty(), Optional.of("RISER-2"))), List.of());
        Platform narrow = Samples.platform().cooling(Samples.TALL).expansion(slots).make();
        barred(whyNot(shop(List.of(narrow), "RISER-2"), "NET-2X10", List.of(), network(1)), "in-stock", "No lot offers RISER-2, which it needs.");
        barred(whyNot(shop(List.of(narrow)), "NET-2X25", List.of(), network(1)), "card-slot", "NET-2X25 does not work in slot X1: it needs 8 lanes and the slot has 4.");
    }

    @Test
    void whatCostsMore() {
        WhyNot answer = whyNot(shop(List.of(BOX)), "SSD-960", List.of(volume("data", 400, RaidLevel.LEVEL_1, null)));
        assertThat(answer.verdict()).isEqualTo(Verdict.BEATEN);
        assertThat(answer.message()).contains("2 x SSD-960", "drives +2.00").contains("At 15.00 EUR each (2 units; now 16.00 EUR) a build with it is as good as the best.");
    }
}
