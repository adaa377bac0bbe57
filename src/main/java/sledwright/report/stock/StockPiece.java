package sledwright.report.stock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import sledwright.desk.view.CatalogView;
import sledwright.domain.Card;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Drive;
import sledwright.domain.Enclosure;
import sledwright.domain.Extra;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Supply;
import sledwright.explain.audit.Warning;
import sledwright.report.chart.BarStrip;
import sledwright.report.page.Markup;
import sledwright.report.page.Wording;

/** The stock of a shop for whoever buys: what is here, what it cost and brings, what lies dead, what suppliers have. */
public final class StockPiece {

    /** Checks of the catalogue that find units which nobody can sell in a machine, or not at their price. */
    private static final Set<String> DEAD = Set.of("no-platform", "unusable-offer", "idle-companion", "lot-over");

    /** Parts of one kind; the strip sets what they bring beside other kinds, filled as far as they cost. */
    public record Group(String title, String units, String brings, Markup strip, List<Row> rows) {
    }

    /** A part: units on the shop's own shelf with what they cost and bring, and units that suppliers have. */
    public record Row(String sku, String description, Shelf own, String elsewhere, String least, boolean dead) {
    }

    /** Units of a part that are here; what is not known is empty. */
    public record Shelf(String here, String cost, String brings) {
    }

    private final Catalog shop;
    private final Wording words;
    private final List<Warning> dead;

    private StockPiece(Catalog shop, CatalogView view) {
        this.shop = shop;
        this.words = Wording.of(shop);
        this.dead = view.warnings().stream().filter(warning -> DEAD.contains(warning.check())).toList();
    }

    /**
     * What the page shows.
     *
     * @param shop what may be sold: the catalogue less what is kept for somebody
     * @param view what is odd about the catalogue
     */
    public static Map<String, Object> of(Catalog shop, CatalogView view) {
        return new StockPiece(shop, view).model();
    }

    private Map<String, Object> model() {
        Map<String, List<Part>> kinds = new LinkedHashMap<>();
        shop.parts().stream().filter(part -> !shop.lots(part.sku()).isEmpty()).forEach(part ->
                kinds.computeIfAbsent(kind(part), kind -> new ArrayList<>()).add(part));
        long most = kinds.values().stream().mapToLong(parts -> parts.stream().flatMap(part -> own(part).stream())
                .mapToLong(StockPiece::brings).sum()).max().orElse(1);
        List<Group> groups = kinds.entrySet().stream()
                .sorted(Comparator.comparing(entry -> -entry.getValue().stream().flatMap(part -> own(part).stream())
                        .mapToLong(StockPiece::brings).sum())).map(entry -> group(entry.getKey(), entry.getValue(), most)).toList();
        List<Lot> here = shop.parts().stream().flatMap(part -> own(part).stream()).toList();
        return Map.of("groups", groups, "currency", shop.currency().getCurrencyCode(),
                "dead", dead.stream().map(Warning::message).toList(), "units", figure(units(here)),
                "cost", money(here.stream().mapToLong(StockPiece::cost).sum()),
                "brings", money(here.stream().mapToLong(StockPiece::brings).sum()),
                "unknown", figure(units(here.stream().filter(StockPiece::isUnknown).toList())),
                "day", words.day(shop.pricedOn()));
    }

    private Group group(String title, List<Part> parts, long most) {
        List<Lot> here = parts.stream().flatMap(part -> own(part).stream()).toList();
        long brings = here.stream().mapToLong(StockPiece::brings).sum();
        double largest = Math.max(1, most);
        return new Group(title, figure(units(here)), money(brings),
                new Markup(BarStrip.of(brings / largest, here.stream().mapToLong(StockPiece::cost).sum() / largest)),
                parts.stream().sorted(Comparator.comparing((Part part) -> -own(part).stream().mapToLong(StockPiece::brings).sum())
                        .thenComparing(Part::sku)).map(this::row).toList());
    }

    private Row row(Part part) {
        List<Lot> here = own(part);
        List<Lot> elsewhere = shop.lots(part.sku()).stream().filter(lot -> !here.contains(lot) && lot.available() > 0).toList();
        OptionalLong least = shop.lots(part.sku()).stream().filter(lot -> lot.available() > 0)
                .mapToLong(lot -> lot.breaks().get(0).unitPrice()).min();
        boolean nobodyTakes = dead.stream().anyMatch(warning -> warning.message().contains(" " + part.sku() + ",")
                || warning.message().contains(" " + part.sku() + ":"));
        Shelf own = new Shelf(none(units(here)),
                here.stream().allMatch(StockPiece::isUnknown) ? "" : money(here.stream().mapToLong(StockPiece::cost).sum()),
                here.isEmpty() ? "" : money(here.stream().mapToLong(StockPiece::brings).sum()));
        return new Row(part.sku(), part.description(), own, none(units(elsewhere)),
                least.isPresent() ? money(least.getAsLong()) : "", nobodyTakes);
    }

    private List<Lot> own(Part part) {
        return shop.lots(part.sku()).stream().filter(lot -> shop.suppliers().isOwn(lot.supplier())).toList();
    }

    private static long units(List<Lot> lots) {
        return lots.stream().mapToLong(Lot::available).sum();
    }

    /** Of units whose cost is known. */
    private static long cost(Lot lot) {
        return lot.breaks().get(0).unitCost().orElse(0) * lot.available();
    }

    private static boolean isUnknown(Lot lot) {
        return lot.breaks().get(0).unitCost().isEmpty();
    }

    /** At the price of single units. */
    private static long brings(Lot lot) {
        return lot.breaks().get(0).unitPrice() * lot.available();
    }

    private String money(long minor) {
        return words.money(shop.amount(minor));
    }

    private String figure(long units) {
        return words.figure(units);
    }

    private String none(long units) {
        return units == 0 ? "" : figure(units);
    }

    private static String kind(Part part) {
        if (part instanceof Platform) {
            return "Platforms";
        } else if (part instanceof Processor) {
            return "Processors";
        } else if (part instanceof MemoryModule) {
            return "Memory modules";
        } else if (part instanceof Drive drive) {
            return "Drives, " + drive.kind().toString().toLowerCase(Locale.ROOT);
        } else if (part instanceof Card) {
            return "Cards";
        } else if (part instanceof CoolingKit) {
            return "Heat sinks";
        } else if (part instanceof Supply) {
            return "Power supplies";
        } else if (part instanceof Enclosure) {
            return "Enclosures";
        }
        return part instanceof Extra ? "Extras" : "Other parts";
    }
}
