package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Samples.LOW;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.PAIR;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.catalog;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.require;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.PartChoice;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.rules.memory.OneModulePart;
import sledwright.rules.stock.AcceptedCondition;
import sledwright.rules.stock.Budget;
import sledwright.rules.stock.InStock;
import sledwright.rules.stock.LeadTime;

/** Every order here is of machines with two processors and eight modules of 16 GB. */
class StockRulesTest extends RuleGroup {

    private static final Platform BOX = platform().make();
    private static final Build MACHINE = machine(BOX).channels(4, R16).build();
    private static final Lot BOXES = lot(BOX.sku(), "B1", 9, 10_000);
    private static final Lot PROCESSORS = lot(P10.sku(), "P1", 9, 5_000);
    private static final Lot KITS = lot(LOW.sku(), "K1", 9, 1_000);
    private static final Lot SUPPLIES = lot(PAIR.sku(), "S1", 9, 2_000);

    @ForRule(InStock.ID)
    Examples inStock() {
        Lot seven = lot("R16", "A7", 7, 2_000);
        Lot eight = lot("R16", "A8", 8, 2_000);
        Lot sixteen = lot("R16", "A16", 16, 2_000);
        Lot fromFour = lot("R16", "A4", 20, 0, Condition.NEW, Map.of(4, 1_800L));
        return offender("8 units of a lot of 7", order(1, Limits.NONE, new Pick(seven, 8)))
                .says("R16", "Lot A7 of R16 gives 8 units; it sells 1 to 7.")
                .andOffender("8 and 8 units of a lot of 8, over two machines", order(2, Limits.NONE, new Pick(eight, 8), new Pick(eight, 8)))
                .says("R16", "Lot A8 of R16 gives 16 units; it sells 1 to 8.")
                .andOffender("3 units of a lot that sells 4 or more", order(1, Limits.NONE, new Pick(fromFour, 3), new Pick(eight, 5)))
                .says("R16", "Lot A4 of R16 gives 3 units; it sells 4 to 20.")
                .andOffender("8 units drawn where two machines take 16", order(2, Limits.NONE, new Pick(sixteen, 8)))
                .says("R16", "The order needs 16 units of R16; the lots give 8.")
                .innocent("8 units of a lot of 8", order(1, Limits.NONE, new Pick(eight, 8)))
                .innocent("8 and 8 units of a lot of 16, over two machines", order(2, Limits.NONE, new Pick(sixteen, 8), new Pick(sixteen, 8)))
                .innocent("4 units of a lot that sells 4 or more, and 4 of another", order(1, Limits.NONE, new Pick(fromFour, 4), new Pick(eight, 4)))
                .innocent("the customer's own eight", order(1, Limits.NONE, new Pick(Lot.onHand("R16", 8), 8)));
    }

    @ForRule(LeadTime.ID)
    Examples leadTime() {
        Limits three = limit().leadDays(3).make();
        return offender("four days where three are allowed", order(1, three, new Pick(arriving(4), 8)))
                .says("R16", "Lot LATER of R16 arrives in 4 days; the request allows 3.")
                .andOffender("one day where none is allowed", order(1, limit().leadDays(0).make(), new Pick(arriving(1), 8)))
                .says("R16", "Lot LATER of R16 arrives in 1 day; the request allows 0.")
                .innocent("three days where three are allowed", order(1, three, new Pick(arriving(3), 8)))
                .innocent("sixty days where no limit is set", order(1, Limits.NONE, new Pick(arriving(60), 8)));
    }

    @ForRule(OneModulePart.ID)
    Examples oneModulePart() {
        MemoryModule slower = module("R16-2133", 16).mts(2133).make();
        Build mixed = machine(BOX).channels(3, R16).channel(0, 3, slower).channel(1, 3, slower).build();
        Build other = machine(BOX).channels(4, slower).build();
        Requirements asked = require().oneModulePart().make();
        return offender("two of eight modules of another part number", sold(asked, mixed))
                .says("", "The memory modules are of 2 part numbers (R16, R16-2133); all are to be of 1.")
                .andOffender("two machines, each of one part number", sold(asked, MACHINE, other))
                .says("", "The memory modules are of 2 part numbers (R16, R16-2133); all are to be of 1.")
                .innocent("two machines of one part number", sold(asked, MACHINE, MACHINE))
                .innocent("two part numbers where nothing is asked", sold(Requirements.NONE, mixed, other));
    }

    private static Order sold(Requirements require, Build... machines) {
        List<Pick> picks = new ArrayList<>();
        Arrays.stream(machines).flatMap(build -> build.partCounts().entrySet().stream())
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, Integer::sum))
                .forEach((sku, units) -> picks.add(new Pick(lot(sku, "L", 99, 1_000), units)));
        return Order.of(List.of(machines), picks, Request.named("sample").withMachines(machines.length).withRequire(require),
                catalog(List.of(BOX), List.of(P10), List.of(R16)));
    }

    @ForRule(AcceptedCondition.ID)
    Examples condition() {
        Limits noUsed = limit().conditions(Condition.NEW, Condition.REFURBISHED).make();
        return offender("used parts where new and refurbished ones are accepted", order(1, noUsed, new Pick(in(Condition.USED), 8)))
                .says("R16", "Lot STATE of R16 is used; the request accepts new, refurbished.")
                .innocent("refurbished parts", order(1, noUsed, new Pick(in(Condition.REFURBISHED), 8)))
                .innocent("used parts where every condition is accepted", order(1, Limits.NONE, new Pick(in(Condition.USED), 8)))
                .innocent("the customer's own parts, whatever they are", order(1, noUsed, new Pick(Lot.onHand("R16", 8), 8)));
    }

    /** Parts: 100 + 2 x 50 + 2 x 10 + 2 x 20 + 8 x 20 = 420.00 a machine. */
    @ForRule(Budget.ID)
    Examples budget() {
        Pick eight = new Pick(lot("R16", "A16", 16, 2_000), 8);
        Pick sixteen = new Pick(lot("R16", "A16", 16, 2_000), 16);
        Labour labour = new Labour(1_000, 100);
        Licence licence = new Licence(200, 300);
        return offender("420.00 where 419.99 is allowed", order(1, limit().price(41_999).make(), eight))
                .says("", "The price is 420.00 EUR; the request allows 419.99 EUR.")
                .andOffender("two machines of 420.00 where 839.99 is allowed for both", order(2, limit().price(83_999).make(), sixteen))
                .says("", "The price is 840.00 EUR; the request allows 839.99 EUR.")
                .andOffender("420.00, labour of 10.00 + 8 x 1.00 and licences of 20 x 2.00 + 2 x 3.00",
                        order(1, limit().price(48_399).make(), labour, licence, eight))
                .says("", "The price is 484.00 EUR; the request allows 483.99 EUR.")
                .andOffender("a price where nothing may be spent", order(1, limit().price(0).make(), eight))
                .says("", "The price is 420.00 EUR; the request allows 0.00 EUR.")
                .innocent("420.00 where 420.00 is allowed", order(1, limit().price(42_000).make(), eight))
                .innocent("840.00 for two machines where 840.00 is allowed", order(2, limit().price(84_000).make(), sixteen))
                .innocent("484.00 with labour and licences", order(1, limit().price(48_400).make(), labour, licence, eight))
                .innocent("no limit", order(1, Limits.NONE, eight));
    }

    private static Lot arriving(int days) {
        return lot("R16", "LATER", 8, days, Condition.NEW, Map.of(1, 2_000L));
    }

    private static Lot in(Condition condition) {
        return lot("R16", "STATE", 8, 0, condition, Map.of(1, 2_000L));
    }

    private static Order order(int machines, Limits limits, Pick... memory) {
        return order(machines, limits, new Labour(0, 0), Licence.NONE, memory);
    }

    private static Order order(int machines, Limits limits, Labour labour, Licence licence, Pick... memory) {
        Request plain = Request.named("sample");
        Request request = new Request(plain.name(), machines, plain.require(), limits, new Goal(plain.objective(), plain.worth(), licence), plain.list(),
                new PartChoice(plain.platforms(), plain.forbid(), plain.use(), plain.onHand(), Equipment.NONE));
        List<Pick> picks = new ArrayList<>(List.of(new Pick(BOXES, machines), new Pick(PROCESSORS, 2 * machines),
                new Pick(KITS, 2 * machines), new Pick(SUPPLIES, 2 * machines)));
        picks.addAll(Arrays.asList(memory));
        Catalog catalog = catalog(labour, List.of(BOX), List.of(P10), List.of(R16), BOXES, PROCESSORS, KITS, SUPPLIES);
        return Order.of(Collections.nCopies(machines, MACHINE), picks, request, catalog);
    }
}
