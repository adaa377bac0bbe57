package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Drive;
import sledwright.domain.Enclosure;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.MemoryModule;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Part;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Supply;
import sledwright.planner.upgrade.Installed;
import sledwright.planner.upgrade.Plan;
import sledwright.rules.Order;

/** Turns what is drawn and paid into lines whose totals add up to its price. */
public final class Lines {

    private static final int OTHERS = 9;

    private final Catalog catalog;
    private final Function<Pick, PriceBreak> priceBreak;
    private final List<Line> lines = new ArrayList<>();

    private Lines(Catalog catalog, Function<Pick, PriceBreak> priceBreak) {
        this.catalog = catalog;
        this.priceBreak = priceBreak;
    }

    /** Parts in the order in which a machine is put together, then labour, then the licence; nothing that is free of charge but parts. */
    public static List<Line> of(Order order) {
        Lines made = new Lines(order.catalog(), Pick::priceBreak);
        made.addParts(order.picks());
        made.addLabour(order.machines().size(), order.machines().stream().mapToInt(build -> build.modules().size()).sum());
        made.addLabour(order.machines());
        made.addLicence(order);
        return List.copyOf(made.lines);
    }

    /** Parts, labour and licence of an upgrade, then what its pulled parts fetch. */
    static List<Line> of(Plan plan, Installed installed, Catalog shop) {
        Lines made = new Lines(plan.order().catalog(), Pick::priceBreak);
        made.addParts(plan.order().picks());
        if (plan.changesAnything()) {
            made.addLabour(installed.machines(), plan.putIn().modules());
            made.addLabour(plan.putIn().drives(), plan.putIn().cards(), shop.labour());
        }
        made.addLicence(plan.order());
        plan.pulled().entrySet().stream().sorted(Comparator.comparingInt(part -> made.place(part.getKey())))
                .forEach(part -> made.addPulled(part.getKey(), part.getValue(), installed.credit(part.getKey())));
        return List.copyOf(made.lines);
    }

    /** Parts alone, at prices that do not follow from these picks by themselves. */
    static List<Line> parts(List<Pick> picks, Function<Pick, PriceBreak> priceBreak, Catalog catalog) {
        Lines made = new Lines(catalog, priceBreak);
        made.addParts(picks);
        return List.copyOf(made.lines);
    }

    /** Parts of alike machines at such prices, their labour and their licence. */
    static List<Line> of(Build build, int machines, List<Pick> picks, Function<Pick, PriceBreak> priceBreak, Licence licence,
                         Catalog catalog) {
        Lines made = new Lines(catalog, priceBreak);
        made.addParts(picks);
        made.addLabour(machines, machines * build.modules().size());
        made.addLabour(Collections.nCopies(machines, build));
        made.addLicence(licence, machines * build.cores(), machines * build.processors().size());
        return List.copyOf(made.lines);
    }

    private void addPulled(String sku, int units, long each) {
        lines.add(new Line(Line.Kind.CREDIT, sku, catalog.part(sku).orElseThrow().description(), Optional.empty(), units,
                catalog.amount(-each), catalog.amount(-each * units)));
    }

    private int place(String sku) {
        return place(sku, catalog);
    }

    /** Where a line stands in a list: parts in the order in which a machine is put together, then labour, licences and credits. */
    public static int place(Line line, Catalog catalog) {
        return line.kind() == Line.Kind.PART ? place(line.sku(), catalog) : OTHERS + line.kind().ordinal();
    }

    private static int place(String sku, Catalog catalog) {
        Part part = catalog.part(sku).orElseThrow();
        if (part instanceof Enclosure) {
            return 0;
        } else if (part instanceof Platform) {
            return 1;
        } else if (part instanceof Processor) {
            return 2;
        } else if (part instanceof CoolingKit) {
            return 3;
        } else if (part instanceof Supply) {
            return catalog.isOfEnclosuresAlone(sku) ? 0 : 4;
        } else if (part instanceof MemoryModule) {
            return 5;
        } else if (part instanceof Drive) {
            return 6;
        }
        return part instanceof Card ? 7 : 8;
    }

    private void addParts(List<Pick> picks) {
        picks.stream().sorted(Comparator.comparingInt(pick -> place(pick.sku()))).forEach(this::addPart);
    }

    private void addPart(Pick pick) {
        Lot lot = pick.lot();
        PriceBreak at = priceBreak.apply(pick);
        long each = at.unitPrice();
        lines.add(new Line(Line.Kind.PART, pick.sku(), catalog.part(pick.sku()).orElseThrow().description(),
                Optional.of(new Line.Source(lot.lot(), lot.supplier(), lot.condition().label(), lot.leadDays(), unitCost(at))),
                pick.quantity(), catalog.amount(each), catalog.amount(Math.multiplyExact(each, pick.quantity()))));
    }

    private Optional<BigDecimal> unitCost(PriceBreak at) {
        OptionalLong cost = at.unitCost();
        return cost.isPresent() ? Optional.of(catalog.amount(cost.getAsLong())) : Optional.empty();
    }

    private void addLabour(int machines, int modules) {
        Labour labour = catalog.labour();
        add(Line.Kind.LABOUR, "per machine", machines, labour.perMachine());
        add(Line.Kind.LABOUR, "per memory module", modules, labour.perModule());
    }

    private void addLabour(List<Build> machines) {
        addLabour(machines.stream().mapToInt(build -> build.fitout().drives().size()).sum(),
                machines.stream().mapToInt(build -> build.fitout().cards().size()).sum(), catalog.labour());
    }

    private void addLabour(int drives, int cards, Labour labour) {
        add(Line.Kind.LABOUR, "per drive", drives, labour.perDrive());
        add(Line.Kind.LABOUR, "per card", cards, labour.perCard());
    }

    private void addLicence(Order order) {
        addLicence(order.request().licence(), order.machines().stream().mapToInt(Build::cores).sum(),
                order.machines().stream().mapToInt(build -> build.processors().size()).sum());
    }

    private void addLicence(Licence licence, int cores, int processors) {
        add(Line.Kind.LICENCE, "per core", cores, licence.perCore());
        add(Line.Kind.LICENCE, "per processor", processors, licence.perProcessor());
    }

    private void add(Line.Kind kind, String description, int quantity, long unitPrice) {
        if (quantity > 0 && unitPrice != 0) {
            lines.add(new Line(kind, kind.label(), description, Optional.empty(), quantity, catalog.amount(unitPrice),
                    catalog.amount(unitPrice * quantity)));
        }
    }
}
