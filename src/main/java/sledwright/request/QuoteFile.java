package sledwright.request;

import java.util.List;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.Energy;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Section;
import sledwright.input.Source;

/** A file of kind {@code quote}. */
public final class QuoteFile implements RequestFile {

    private final Optional<Field> objective;
    private final Draft draft;
    private final List<String> customer;
    private final Optional<EnergyFields> energy;
    private final int points;
    private final DiscountFields discount;

    /**
     * @param price of a kWh; empty where it is a fault
     */
    private record EnergyFields(double years, Optional<Field> price, double duty) {

        static EnergyFields read(Section section) {
            double years = section.number("years", RequestBounds.YEARS);
            Optional<Field> price = section.required("price_per_kwh");
            double duty = section.numberIfAny("duty", RequestBounds.DUTY).orElse(Energy.DEFAULT_DUTY);
            section.finish();
            return new EnergyFields(years, price, duty);
        }
    }

    QuoteFile(Source source, Section top) {
        draft = new DraftReader(source, top).quote();
        objective = top.field("objective");
        customer = top.oneOrList("customer").stream().flatMap(line -> line.words(top.faults()).stream()).toList();
        energy = top.section("energy").map(EnergyFields::read);
        points = top.wholeIfAny("price_points", RequestBounds.PRICE_POINTS).orElse(0);
        discount = DiscountFields.read(top);
        if (points > 1) {
            discount.agreed().ifPresent(field -> field.fault("is the price of one build, and price_points asks for %s; take"
                    .formatted(points) + " discount_percent, or leave one of the two out", top.faults()));
        }
    }

    @Override
    public Optional<NamedCatalog> catalog() {
        return draft.catalog();
    }

    @Override
    public Optional<Job.Quote> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Request request = draft.resolve(catalog, faults);
        Optional<Energy> asked = energy.flatMap(fields -> fields.price.map(price -> {
            Energy given = new Energy(fields.years, new Resolver(catalog, faults).worth(price), fields.duty);
            new Countable(catalog, faults).require(given, price, request);
            return given;
        }));
        Discount granted = discount.resolve(catalog.currency(), faults);
        if (energy.isEmpty() && request.objective() == Objective.LEAST_TOTAL) {
            objective.ifPresent(field -> field.fault("counts what the electricity costs, of which the request says nothing; add a section"
                    + " energy with years and price_per_kwh", faults));
        }
        return faults.since(before) ? Optional.empty() : Optional.of(new Job.Quote(catalog, request.withEnergy(asked), customer, asked,
                points, granted));
    }
}
