package sledwright.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Lot;
import sledwright.domain.Part;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Supply;
import sledwright.planner.upgrade.Installed;
import sledwright.planner.upgrade.Plan;
import sledwright.rules.Order;

/** Turns what an order draws and pays into lines whose totals add up to its price. */
public final class Lines {

    private static final int OTHERS = 5;

    private final Order order;
    private final Catalog catalog;
    private final List<Line> lines = new ArrayList<>();

    private Lines(Order order) {
        this.order = order;
        catalog = order.catalog();
    }

    /** Parts in the order in which a machine is put together, then labour, then the licence; nothing that is free of charge but parts. */
    public static List<Line> of(Order order) {
        Lines made = new Lines(order);
        order.picks().stream().sorted(Comparator.comparingInt(made::place)).forEach(made::addPart);
        made.addLabour();
        made.addLicence();
        return List.copyOf(made.lines);
    }

    /** Parts, labour and licence of an upgrade, then what its pulled parts fetch. */
    static List<Line> of(Plan plan, Installed installed, Catalog shop) {
        Lines made = new Lines(plan.order());
        plan.order().picks().stream().sorted(Comparator.comparingInt(made::place)).forEach(made::addPart);
        if (plan.changesAnything()) {
            made.add(Line.Kind.LABOUR, "per machine", installed.machines(), shop.labour().perMachine());
            made.add(Line.Kind.LABOUR, "per memory module", plan.modulesPutIn(), shop.labour().perModule());
        }
        made.addLicence();
        plan.pulled().entrySet().stream().sorted(Comparator.comparingInt(part -> made.place(part.getKey())))
                .forEach(part -> made.addPulled(part.getKey(), part.getValue(), installed.credit(part.getKey())));
        return List.copyOf(made.lines);
    }

    private void addPulled(String sku, int units, long each) {
        lines.add(new Line(Line.Kind.CREDIT, sku, catalog.part(sku).orElseThrow().description(), Optional.empty(), units, catalog.amount(-each),
                catalog.amount(-each * units)));
    }

    private int place(Pick pick) {
        return place(pick.sku());
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
        if (part instanceof Platform) {
            return 0;
        } else if (part instanceof Processor) {
            return 1;
        } else if (part instanceof CoolingKit) {
            return 2;
        } else if (part instanceof Supply) {
            return 3;
        }
        return 4;
    }

    private void addPart(Pick pick) {
        Lot lot = pick.lot();
        lines.add(new Line(Line.Kind.PART, pick.sku(), catalog.part(pick.sku()).orElseThrow().description(),
                Optional.of(new Line.Source(lot.lot(), lot.supplier(), lot.condition().label(), lot.leadDays())),
                pick.quantity(), catalog.amount(pick.unitPrice()), catalog.amount(pick.total())));
    }

    private void addLabour() {
        Labour labour = catalog.labour();
        add(Line.Kind.LABOUR, "per machine", order.machines().size(), labour.perMachine());
        int modules = order.machines().stream().mapToInt(build -> build.modules().size()).sum();
        add(Line.Kind.LABOUR, "per memory module", modules, labour.perModule());
    }

    private void addLicence() {
        Licence licence = order.request().licence();
        int cores = order.machines().stream().mapToInt(Build::cores).sum();
        add(Line.Kind.LICENCE, "per core", cores, licence.perCore());
        int processors = order.machines().stream().mapToInt(build -> build.processors().size()).sum();
        add(Line.Kind.LICENCE, "per processor", processors, licence.perProcessor());
    }

    private void add(Line.Kind kind, String description, int quantity, long unitPrice) {
        if (quantity > 0 && unitPrice != 0) {
            lines.add(new Line(kind, kind.label(), description, Optional.empty(), quantity, catalog.amount(unitPrice),
                    catalog.amount(unitPrice * quantity)));
        }
    }
}
