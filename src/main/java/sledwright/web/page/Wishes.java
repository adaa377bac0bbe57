package sledwright.web.page;

import java.util.List;
import sledwright.domain.Catalog;
import sledwright.web.page.Wish.Choice;
import sledwright.web.page.Wish.Group;
import sledwright.web.page.Wish.Shape;

/** Everything that the form has a field for, in the order in which it is offered. */
public final class Wishes {

    private static final Choice YES = new Choice("true", "yes");
    private static final Choice NO = new Choice("false", "no");

    private Wishes() {
    }

    /** What the machine does, where the shop knows workloads. */
    private static List<Wish> workloads(Catalog shop) {
        return shop.workloads().isEmpty() ? List.of() : List.of(Wish.of(Shape.CHOICE, "workload", "Workload",
                "What the machine does: how far its work runs side by side, and how much memory it reads.",
                shop.workloads().keySet().stream().map(name -> new Choice(name, name.replace('-', ' '))).toList()));
    }

    /** The wish of a key; one that the form has no field for is called by its key. */
    public static Wish named(Catalog shop, String key) {
        return of(shop).stream().flatMap(group -> group.wishes().stream()).filter(wish -> wish.key().equals(key)).findFirst()
                .orElseGet(() -> Wish.text(key, key, ""));
    }

    static List<Group> of(Catalog shop) {
        return List.of(
                new Group("What it must do", workloads(shop), List.of(
                        Wish.figure("require.cores", "Cores", "", "The least number, all processors together."),
                        Wish.figure("require.memory_gb", "Memory", "GB", "At least so much that can be used."),
                        Wish.figure("require.bandwidth_gbs", "Memory bandwidth", "GB/s", "Peak, all processors together."),
                        Wish.figure("require.throughput", "Throughput", "", "By the figures that the shop has for each processor."),
                        Wish.figure("require.work", "Work", "", "Throughput that the workload can use."),
                        Wish.figure("require.base_ghz", "Base clock", "GHz", "Of every processor."),
                        Wish.figure("require.all_core_ghz", "All-core clock", "GHz", "With every core busy."),
                        Wish.figure("require.gb_per_core", "Memory per core", "GB", "Usable memory shared out over all cores."),
                        Wish.figure("require.gbs_per_core", "Bandwidth per core", "GB/s", "Memory bandwidth shared out over all cores."))),
                new Group("How it is built", List.of(
                        Wish.figure("machines", "Machines", "", "Identical ones; the price is of all of them."),
                        Wish.of(Shape.SEVERAL, "platforms", "Platforms", "Only these. None: all that the shop sells.",
                                shop.platforms().stream().map(one -> new Choice(one.sku(), one.sku() + ", " + one.name())).toList()),
                        Wish.figure("require.processors", "Processors", "", "Exactly this number in each machine."),
                        Wish.figure("require.spare_slots", "Memory slots left", "", "Free and usable, for later."),
                        Wish.choice("require.memory_mode", "Memory mode", "What becomes of memory that fails.",
                                new Choice("independent", "independent"), new Choice("mirrored", "mirrored"),
                                new Choice("rank-sparing", "rank sparing")),
                        Wish.choice("require.balanced", "Balanced channels", "Every channel holds the same memory.", YES, NO),
                        Wish.choice("require.one_module_part", "Modules of one part number", "No mix of makes.", YES, NO),
                        Wish.of(Shape.VOLUME, "require.storage", "Drives", "A volume of drives.", List.of()),
                        Wish.of(Shape.CARD, "require.cards", "Card", "A network card or a controller.", List.of()),
                        Wish.of(Shape.UNITS, "extras", "Extra", "Units in each machine.",
                                shop.parts().stream().filter(part -> shop.extra(part.sku()).isPresent())
                                        .map(part -> new Choice(part.sku(), part.sku() + ", " + part.description())).toList()),
                        Wish.choice("enclosure", "Enclosure of a sled", "Whether one is bought with it.",
                                new Choice("new", "bought with it"), new Choice("own", "the customer has one")))),
                new Group("Limits", List.of(
                        Wish.figure("limit.price", "Price", shop.currency().getCurrencyCode(), "Of all machines together, before tax."),
                        Wish.figure("limit.price_with_tax", "Price with tax", shop.currency().getCurrencyCode(),
                                "Of all machines together, with the tax of the shop."),
                        Wish.figure("limit.lead_days", "Here within", "days", "Until the last part arrives."),
                        Wish.text("limit.by", "Here by", "The last day of delivery, such as 2026-12-03 or Thursday."),
                        Wish.figure("limit.power_w", "Load", "W", "Of one machine."),
                        Wish.of(Shape.SEVERAL, "limit.conditions", "Condition", "Only these. None: any.",
                                List.of(new Choice("new", "new"), new Choice("refurbished", "refurbished"), new Choice("used", "used"))),
                        Wish.figure("limit.inlet_c", "Inlet air", "\u00b0C", "The warmest that it gets where the machine stands."),
                        Wish.figure("limit.altitude_m", "Altitude", "m", "Thin air cools less."),
                        Wish.figure("limit.mains_v", "Mains", "V", "Some supplies give less at low voltage."))),
                new Group("What counts", List.of(
                        Wish.choice("objective", "Looked for", "What the best build is best in.",
                                new Choice("cheapest", "the cheapest"), new Choice("most-throughput", "most throughput"),
                                new Choice("most-bandwidth", "most bandwidth"), new Choice("most-memory", "most memory"),
                                new Choice("most-work", "most work"), new Choice("most-cores", "most cores"),
                                new Choice("best-value", "best value"), new Choice("least-total", "least price and energy")),
                        Wish.figure("energy.years", "Runs for", "years",
                                "What energy costs in that time counts; needs the price of a kWh."),
                        Wish.figure("energy.price_per_kwh", "A kWh costs", shop.currency().getCurrencyCode(),
                                "Needs the years that it runs."),
                        Wish.figure("energy.duty", "Mean load", "", "Share of the full load, day and night, from 0 to 1."),
                        Wish.figure("price_points", "Price points", "", "Up to 3: the cheapest, the best price of a unit, the knee."),
                        Wish.figure("discount_percent", "Discount", "%", "What the customer pays; nothing of what is searched."),
                        Wish.figure("agreed_price", "Agreed price", shop.currency().getCurrencyCode(),
                                "What the customer pays for all machines before tax."),
                        Wish.figure("alternatives", "Builds shown", "", "The best and those worth a look."),
                        Wish.figure("worth.core", "One core more is worth", shop.currency().getCurrencyCode(),
                                "Counts for the best value."),
                        Wish.figure("worth.gb", "One GB more is worth", shop.currency().getCurrencyCode(), "Counts for the best value."),
                        Wish.figure("worth.gbs", "One GB/s more is worth", shop.currency().getCurrencyCode(), "Counts for the best value."),
                        Wish.figure("worth.throughput", "One unit of throughput more is worth", shop.currency().getCurrencyCode(),
                                "Counts for the best value."),
                        Wish.figure("worth.work", "One unit of work more is worth", shop.currency().getCurrencyCode(),
                                "Counts for the best value."),
                        Wish.figure("licence.per_core", "Licence for each core", shop.currency().getCurrencyCode(),
                                "Paid by the customer, a line of the price."),
                        Wish.figure("licence.per_processor", "Licence for each processor", shop.currency().getCurrencyCode(),
                                "Paid by the customer, a line of the price."))),
                new Group("Parts", List.of(
                        Wish.of(Shape.PARTS, "use", "Must be in it", "Part numbers.", List.of()),
                        Wish.of(Shape.PARTS, "forbid", "Must not be in it", "Part numbers.", List.of()),
                        Wish.of(Shape.UNITS, "on_hand", "The customer has", "Free of charge.", List.of()),
                        Wish.text("name", "Name", "What the request is called."),
                        Wish.of(Shape.LINES, "customer", "Customer", "For whom it is, such as name and mail address in a line each.",
                                List.of()))));
    }
}
