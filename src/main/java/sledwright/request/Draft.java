package sledwright.request;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.Catalog;
import sledwright.domain.DeliverBy;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.House;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.MemoryWish;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.WorkWish;
import sledwright.domain.Workload;
import sledwright.domain.Worth;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.input.Section.Entry;

/**
 * A request before it is held against a catalogue.
 *
 * @param figures  what needs no catalogue; its skus and amounts are still missing
 * @param machines where their number stands
 * @param require  of what it is to reach, what the catalogue has a say in
 */
record Draft(Optional<NamedCatalog> catalog, Request figures, Place machines, PriceFields price, GoalFields goal, ChoiceFields choice,
             RequireFields require) {

    /** The most that it may cost. */
    record PriceFields(Optional<Field> net, Optional<Field> withTax) {
    }

    /** What it is ranked by. */
    record GoalFields(WorthFields worth, LicenceFields licence) {

        Goal resolve(Objective objective, Resolver find) {
            Worth ofOne = new Worth(worthOf(worth.core(), find), worthOf(worth.gb(), find), worthOf(worth.gbs(), find),
                    worthOf(worth.throughput(), find), worthOf(worth.work(), find));
            return new Goal(objective, ofOne, new Licence(fee(licence.perCore(), find), fee(licence.perProcessor(), find)));
        }
    }

    /**
     * Which parts it may be of.
     *
     * @param onHand units by sku
     */
    record ChoiceFields(List<Field> platforms, List<Field> forbid, List<Field> use, List<Entry> onHand, EquipmentDraft equipment) {

        /**
         * Looks the parts up.
         *
         * @param alone whether it is the only request of its file
         */
        Equipment equipment(Resolver find, boolean alone) {
            platforms.forEach(find::platform);
            forbid.forEach(find::part);
            Equipment asked = equipment.resolve(find);
            // Enclosures that several requests share are chosen for all of them together.
            use.forEach(alone && asked.enclosure() == EnclosureFrom.NEW ? find::part : find::partOfMachine);
            return asked;
        }

        PartChoice resolve(Resolver find, Equipment asked) {
            return new PartChoice(find.skus(platforms), find.skus(forbid), find.skus(use), find.onHand(onHand), asked);
        }
    }

    /** How memory is to be populated, and what a machine is to do. */
    record RequireFields(MemoryFields memory, WorkFields work) {

        Requirements resolve(Requirements figures, Resolver find) {
            return work.resolve(figures, find).withPopulated(memory.resolve(find.house()));
        }
    }

    /**
     * What a machine is to do.
     *
     * @param name    of a workload of the catalogue
     * @param inPlace described by the request itself
     * @param perCore whether the request says how much memory each core needs, so that the workload does not
     */
    record WorkFields(Optional<Field> name, Optional<Workload> inPlace, double least, boolean perCore) {

        Requirements resolve(Requirements require, Resolver find) {
            Workload workload = inPlace.or(() -> name.flatMap(find::workload)).orElse(Workload.NONE);
            Requirements asked = require.withWork(new WorkWish(least, workload));
            return perCore || workload.gbPerCore() == 0 ? asked : asked.withGbPerCore(workload.gbPerCore());
        }
    }

    /**
     * How memory is to be populated, as far as the request says.
     *
     * @param ofHouse whether the shop's own defaults hold where it says nothing
     */
    record MemoryFields(Optional<Boolean> balanced, Optional<Boolean> onePart, boolean ofHouse) {

        MemoryWish resolve(House house) {
            MemoryWish otherwise = ofHouse ? house.memory() : MemoryWish.NONE;
            return new MemoryWish(balanced.orElse(otherwise.balanced()), onePart.orElse(otherwise.onePart()));
        }
    }

    record WorthFields(Optional<Field> core, Optional<Field> gb, Optional<Field> gbs, Optional<Field> throughput,
                       Optional<Field> work) {

        static final WorthFields NONE = new WorthFields(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty());
    }

    record LicenceFields(Optional<Field> perCore, Optional<Field> perProcessor) {

        static final LicenceFields NONE = new LicenceFields(Optional.empty(), Optional.empty());
    }

    /** The request in the catalogue's currency; what is unknown there goes to {@code faults} and is left out. */
    Request resolve(Catalog catalog, Faults faults) {
        return resolve(new Resolver(catalog, faults), new Countable(catalog, faults), true);
    }

    /**
     * The same for one of several requests.
     *
     * @param find      looks up the parts of all of them
     * @param countable adds them up
     */
    Request resolve(Resolver find, Countable countable) {
        return resolve(find, countable, false);
    }

    private Request resolve(Resolver find, Countable countable, boolean alone) {
        Equipment asked = choice.equipment(find, alone);
        Goal ranked = goal.resolve(figures.objective(), find);
        Request request = new Request(figures.name(), figures.machines(), require.resolve(figures.require(), find), limit(find), ranked,
                figures.list(), choice.resolve(find, asked));
        countable.require(request, machines, goal);
        return request;
    }

    private Limits limit(Resolver find) {
        OptionalLong most = price.net.map(field -> find.amount(field, RequestBounds.PRICE)).orElse(OptionalLong.empty());
        Limits limit = figures.limit().withPrice(most).withBy(figures.limit().by().map(by -> DeliverBy.of(by.day(), find.today())));
        OptionalLong withTax = price.withTax.map(field -> find.amount(field, RequestBounds.PRICE)).orElse(OptionalLong.empty());
        return withTax.isPresent() ? limit.withTaxed(find.taxed(withTax.getAsLong(), most)) : limit;
    }

    private static double worthOf(Optional<Field> field, Resolver find) {
        return field.map(find::worth).orElse(0.0);
    }

    private static long fee(Optional<Field> field, Resolver find) {
        return field.map(amount -> find.amount(amount, RequestBounds.LICENCE).orElse(0)).orElse(0L);
    }
}
