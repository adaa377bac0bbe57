package sledwright.request;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.Catalog;
import sledwright.domain.DemandClass;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.PartKind;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.input.Section;
import sledwright.input.Source;

/** A file of kind {@code restock}: the orders that a shop expects, and what it may spend on parts for them. */
public final class RestockFile implements RequestFile {

    /** A class before it is held against a catalogue. */
    private record ClassDraft(String name, Draft draft, Optional<OrdersByMonth> orders, Optional<Field> margin, Optional<Field> accepted,
                              Optional<Field> loss) {
    }

    private final Optional<NamedCatalog> catalog;
    private final String name;
    private final List<ClassDraft> classes;
    private final double horizonMonths;
    private final Optional<Field> budget;
    private final Map<PartKind, Double> depreciation = new EnumMap<>(PartKind.class);
    private final double serviceLevel;
    private final int samples;
    private final Optional<SupplyTable> supply;

    RestockFile(Source source, Section top) {
        catalog = NamedCatalog.read(top, source);
        name = top.text("name", source.plainName());
        horizonMonths = top.number("horizon_months", RequestBounds.HORIZON_MONTHS);
        budget = top.field("budget");
        readDepreciation(top);
        serviceLevel = top.numberIfAny("service_level", RequestBounds.SERVICE_LEVEL).orElse(RestockRequest.DEFAULT_SERVICE_LEVEL);
        samples = top.wholeIfAny("samples", RequestBounds.SAMPLES).orElse(RestockRequest.DEFAULT_SAMPLES);
        if (!top.has("supply")) {
            top.missing("supply");
        }
        supply = supply(source, top);
        if (!top.has("classes")) {
            top.missing("classes");
        }
        classes = top.sections("classes").stream().map(section -> classDraft(source, section)).toList();
        requireNamesOnce(top);
    }

    /** What suppliers offer: a table of its own, or listed in the request. */
    private static Optional<SupplyTable> supply(Source source, Section top) {
        Optional<List<Section>> listed = top.sectionsIfAny("supply");
        if (listed.isPresent()) {
            return listed.map(rows -> SupplyTable.of(rows, top.place("supply"), top.faults()));
        }
        return top.field("supply").flatMap(field -> source.beside(field, "file", "list the offers under supply instead", top.faults()))
                .map(path -> SupplyTable.read(Source.of(path), top.faults()));
    }

    private void readDepreciation(Section top) {
        top.section("depreciation").ifPresent(section -> {
            for (PartKind kind : PartKind.values()) {
                Optional<Double> share = section.numberIfAny(kind.label(), RequestBounds.DEPRECIATION);
                share.ifPresent(monthly -> depreciation.put(kind, monthly));
                if (share.isPresent() && share.get() * horizonMonths > 1) {
                    section.field(kind.label())
                            .ifPresent(field -> field.fault("over %s months is more than the whole; it must be at most %s".formatted(
                            BigDecimal.valueOf(horizonMonths).stripTrailingZeros().toPlainString(),
                            BigDecimal.valueOf(Math.floor(1e4 / horizonMonths) / 1e4).stripTrailingZeros().toPlainString()), top.faults()));
                }
            }
            section.finish();
        });
    }

    private static ClassDraft classDraft(Source source, Section section) {
        String name = section.text("name");
        Draft draft = DraftReader.demandClass(source, section);
        Optional<OrdersByMonth> orders = section.requiredSection("demand").flatMap(RestockFile::orders);
        Optional<Field> margin = section.field("margin");
        Optional<Field> accepted = section.field("price_accepted");
        if (margin.isPresent() && accepted.isPresent()) {
            accepted.get().fault("stands beside a margin; give one of the two", section.faults());
        } else if (!section.has("margin") && !section.has("price_accepted")) {
            section.missing("margin");
        }
        ClassDraft read = new ClassDraft(name, draft, orders, margin, accepted, section.field("loss"));
        section.finish();
        return read;
    }

    private static Optional<OrdersByMonth> orders(Section demand) {
        int before = demand.faults().size();
        List<OrdersByMonth> given = new ArrayList<>();
        demand.numberIfAny("poisson", RequestBounds.ORDERS).ifPresent(rate -> given.add(new OrdersByMonth.Poisson(rate)));
        demand.section("normal").ifPresent(normal -> {
            given.add(new OrdersByMonth.Normal(normal.number("mean", RequestBounds.ORDERS), normal.number("sd", RequestBounds.ORDERS)));
            normal.finish();
        });
        List<Field> listed = demand.list("months");
        if (demand.has("months") && listed.isEmpty() && !demand.faults().since(before)) {
            demand.faults().add(demand.place("months"), "demand.months must list the orders of at least one month");
        }
        List<Integer> months = new ArrayList<>();
        listed.forEach(field -> field.whole(RequestBounds.ORDERS, demand.faults()).ifPresent(months::add));
        if (!months.isEmpty()) {
            given.add(new OrdersByMonth.Months(months));
        }
        if (given.size() != 1 && !demand.faults().since(before)) {
            demand.faults().add(demand.place(), "demand must have one of poisson, normal, months, and has %s".formatted(
                    given.isEmpty() ? "none" : "more than one"));
        }
        demand.finish();
        return given.stream().findFirst();
    }

    private void requireNamesOnce(Section top) {
        Map<String, Integer> seen = new HashMap<>();
        Place place = top.place("classes");
        classes.forEach(drafted -> {
            if (!drafted.name().isEmpty() && seen.merge(drafted.name(), 1, Integer::sum) == 2) {
                top.faults().add(place, "two classes have the name \"%s\"".formatted(Field.shown(drafted.name())));
            }
        });
        if (top.has("classes") && classes.isEmpty()) {
            top.faults().add(place, "classes must list at least one class of orders");
        }
    }

    @Override
    public Optional<NamedCatalog> catalog() {
        return catalog;
    }

    @Override
    public Optional<Job.Restock> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Resolver find = new Resolver(catalog, faults);
        OptionalLong most = amount(budget, find);
        List<SupplyOffer> offers = supply.map(table -> table.resolve(catalog, find, faults)).orElse(List.of());
        Countable countable = new Countable(catalog, faults);
        List<DemandClass> expected = new ArrayList<>();
        for (ClassDraft drafted : classes) {
            OptionalLong margin = amount(drafted.margin(), find);
            OptionalLong accepted = amount(drafted.accepted(), find);
            OptionalLong loss = amount(drafted.loss(), find);
            var request = drafted.draft().resolve(find, new Countable(catalog, faults));
            drafted.orders().ifPresent(orders -> {
                countable.requireExpected(drafted.margin(), margin.orElse(0), request.machines(), orders, horizonMonths);
                countable.requireExpected(drafted.accepted(), accepted.orElse(0), request.machines(), orders, horizonMonths);
                countable.requireExpected(drafted.loss(), loss.orElse(0), request.machines(), orders, horizonMonths);
            });
            if (drafted.orders().isPresent() && margin.isPresent() != accepted.isPresent()) {
                expected.add(new DemandClass(drafted.name(), request, drafted.orders().get(), margin, accepted, loss.orElse(0)));
            }
        }
        return faults.since(before) ? Optional.empty() : Optional.of(new Job.Restock(catalog,
                new RestockRequest(name, expected, horizonMonths, new RestockRequest.Purchases(most, offers), depreciation, serviceLevel,
                        samples)));
    }

    private static OptionalLong amount(Optional<Field> field, Resolver find) {
        return field.map(given -> find.amount(given, RequestBounds.PRICE)).orElse(OptionalLong.empty());
    }
}
