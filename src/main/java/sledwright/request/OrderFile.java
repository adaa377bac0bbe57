package sledwright.request;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.DeliverBy;
import sledwright.domain.Limits;
import sledwright.domain.Discount;
import sledwright.domain.Lot;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.input.Section;
import sledwright.input.Source;
import sledwright.input.Section.Entry;
import sledwright.input.Section.Named;

/** A file of kind {@code order}: lines that draw on one stock. */
public final class OrderFile implements RequestFile {

    /** Keys of a quote that an order has in its lines. */
    private static final List<String> OF_LINES = List.of("platforms", "machines", "require", "limit", "objective", "worth",
            "licence", "forbid",
            "use", "priority", "uniform");

    private record LineDraft(Draft draft, int priority, boolean uniform) {
    }

    private final Faults faults;
    private final Source source;
    /** Whether the file by itself is free of faults. */
    private final boolean sound;
    private final String name;
    private final List<String> customer;
    private final Optional<NamedCatalog> catalog;
    private final List<LineDraft> lines = new ArrayList<>();
    private final OptionalInt suppliersMax;
    private final Optional<Field> deliveryCharge;
    private final Optional<Field> modulePartCharge;
    private final Optional<LocalDate> shipDay;
    private final List<Entry> onHand;
    private final DiscountFields discount;

    OrderFile(Source source, Section top) {
        this.source = source;
        faults = top.faults();
        int before = faults.size();
        name = top.text("name", source.plainName());
        catalog = NamedCatalog.read(top, source);
        customer = top.oneOrList("customer").stream().flatMap(line -> line.words(faults).stream()).toList();
        lines(top);
        suppliersMax = top.wholeIfAny("suppliers_max", RequestBounds.SUPPLIERS).map(OptionalInt::of).orElse(OptionalInt.empty());
        deliveryCharge = top.field("delivery_charge");
        modulePartCharge = top.field("module_part_charge");
        shipDay = top.field("ship_by").flatMap(field -> field.date(faults));
        onHand = top.entries("on_hand");
        discount = DiscountFields.read(top);
        OF_LINES.stream().filter(top::has).forEach(key -> faults.add(top.place(key), key + " belongs to each line that it is meant for"));
        sound = !faults.since(before);
    }

    private void lines(Section top) {
        int before = faults.size();
        List<Named> found = top.listedOrNamed("lines", RequestBounds.LINES);
        if (found.isEmpty() && !faults.since(before)) {
            faults.add(top.place("lines"), "lines must hold at least one line: a name, and under it the keys of a quote");
        }
        Map<String, Place> names = new HashMap<>();
        for (Named line : found) {
            Section section = line.section();
            String plainName = line.name().flatMap(name -> name.words(faults)).orElse("line " + (lines.size() + 1));
            Draft draft = DraftReader.line(source, plainName, section);
            int priority = section.wholeIfAny("priority", RequestBounds.PRIORITY).orElse(OrderLine.LEAST_PRIORITY);
            boolean uniform = section.truthIfAny("uniform").orElse(false);
            section.finish();
            lines.add(new LineDraft(draft, priority, uniform));
            Place earlier = names.putIfAbsent(draft.figures().name(), section.place());
            if (earlier != null) {
                faults.add(section.place("name"), "line \"%s\" stands twice, first at line %s"
                        .formatted(Field.shown(draft.figures().name()), earlier.line()));
            }
        }
    }

    @Override
    public Optional<NamedCatalog> catalog() {
        return catalog;
    }

    @Override
    public Optional<Job.Order> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Resolver find = new Resolver(catalog, faults);
        Countable countable = new Countable(catalog, faults);
        List<OrderLine> resolved = new ArrayList<>();
        for (LineDraft line : lines) {
            Request request = line.draft().resolve(find, countable);
            resolved.add(new OrderLine(request.name(), request.withLimit(within(request.limit(), catalog)), line.priority(),
                    line.uniform()));
        }
        long perSupplier = charge(deliveryCharge, find);
        long perModulePart = charge(modulePartCharge, find);
        countable.require(deliveryCharge, perSupplier, catalog.lots().values().stream().flatMap(List::stream).map(Lot::supplier)
                .filter(supplier -> !catalog.suppliers().isOwn(supplier)).map(Lot::supplierKey).distinct().count());
        countable.require(modulePartCharge, perModulePart, (long) catalog.modules().size() * lines.size());
        Map<String, Integer> units = find.onHand(onHand);
        Discount granted = discount.resolve(catalog.currency(), faults);
        return faults.since(before) || !sound ? Optional.empty()
                : Optional.of(new Job.Order(catalog, new OrderRequest(name, resolved, suppliersMax, perSupplier, perModulePart, units),
                customer, granted));
    }

    /** The earlier of the line's own last day of delivery and the order's. */
    private Limits within(Limits limit, Catalog catalog) {
        Optional<DeliverBy> order = shipDay.map(day -> DeliverBy.of(day, catalog.today()));
        return limit.withBy(Stream.concat(limit.by().stream(), order.stream()).min(Comparator.comparingInt(DeliverBy::days)));
    }

    private static long charge(Optional<Field> field, Resolver find) {
        return field.map(amount -> find.amount(amount, RequestBounds.CHARGE).orElse(0)).orElse(0L);
    }
}
