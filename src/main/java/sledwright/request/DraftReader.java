package sledwright.request;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import sledwright.catalog.WorkloadReader;
import sledwright.domain.Condition;
import sledwright.domain.DeliverBy;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Shortlist;
import sledwright.domain.Workload;
import sledwright.domain.Worth;
import sledwright.input.Bounds;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Section;
import sledwright.input.Section.Entry;
import sledwright.input.Source;
import sledwright.input.Vocabulary;
import sledwright.request.Draft.ChoiceFields;
import sledwright.request.Draft.GoalFields;
import sledwright.request.Draft.LicenceFields;
import sledwright.request.Draft.MemoryFields;
import sledwright.request.Draft.PriceFields;
import sledwright.request.Draft.RequireFields;
import sledwright.request.Draft.WorkFields;
import sledwright.request.Draft.WorthFields;

/** Reads the keys that the kinds of request share. */
final class DraftReader {

    private static final Vocabulary<Condition> CONDITIONS = Vocabulary.ofAnyCase(List.of(Condition.values()), Condition::label);
    private static final Vocabulary<MemoryMode> MODES = Vocabulary.ofAnyCase(List.of(MemoryMode.values()), MemoryMode::label);
    private static final Vocabulary<Objective> OBJECTIVES = Vocabulary.ofAnyCase(List.of(Objective.values()), Objective::label);

    private static final List<String> OBJECTIVES_OF_LINES = List.of(Objective.CHEAPEST.label(), Objective.BEST_VALUE.label());
    /** What the keys of one line of an order cannot say, and why. */
    private static final Map<String, String> NOT_OF_A_LINE = Map.of(
            "discount_percent", "stands once, at the top of the file: it is taken off the price of the whole order",
            "agreed_price", "stands once, at the top of the file: it is the price of the whole order",
            "catalog", "stands once, at the top of the file: all lines are filled from one stock",
            "on_hand", "stands once, at the top of the file: all lines share what the customer has",
            "alternatives", "is no key of a line: an order has one answer; ask for alternatives with a quote",
            "step", "is no key of a line: an order has one answer; ask for alternatives with a quote");

    /** What a line's machines cost is known only with the whole order: its lines share lots, price breaks and enclosures. */
    private static final String NO_PRICE_OF_A_LINE =
            "limit.price bounds a quote; an order is filled at the least price, and its lines share lots and"
            + " price breaks, so that none has a price of its own";
    private static final String NO_PRICE_OF_A_CLASS = "limit.price is given by margin or price_accepted here; take it out";

    private static final String NO_DAY_OF_A_CLASS = "limit.by is one day, and these orders come on any day; take lead_days";

    private final Source source;
    private final String plainName;
    private final Section top;
    /** Of one of several requests of a file, which share its catalogue and its stock: why none has a price of its own. */
    private final Optional<String> noPrice;
    private final Faults faults;

    /** Whether machines are to be sold or stand already, and what holds of them where the request says nothing. */
    private enum Offered {

        FOR_SALE(EnclosureFrom.NEW, true), STANDING(EnclosureFrom.OWN, false);

        private final EnclosureFrom enclosure;
        /** Whether the shop's own defaults hold. */
        private final boolean ofHouse;

        Offered(EnclosureFrom enclosure, boolean ofHouse) {
            this.enclosure = enclosure;
            this.ofHouse = ofHouse;
        }
    }

    DraftReader(Source source, Section top) {
        this(source, source.plainName(), top, Optional.empty());
    }

    private DraftReader(Source source, String plainName, Section top, Optional<String> noPrice) {
        this.source = source;
        this.plainName = plainName;
        this.top = top;
        this.noPrice = noPrice;
        this.faults = top.faults();
    }

    /**
     * A line of an order.
     *
     * @param plainName what it is called where it has no name
     */
    static Draft line(Source source, String plainName, Section section) {
        return new DraftReader(source, plainName, section, Optional.of(NO_PRICE_OF_A_LINE)).line();
    }

    private Draft line() {
        new TreeMap<>(NOT_OF_A_LINE).forEach((key, why) -> refuse(top, key, key + " " + why));
        Optional<Field> objective = top.field("objective");
        Optional<Objective> aim = objective.flatMap(field -> field.word(OBJECTIVES::find, OBJECTIVES_OF_LINES, faults));
        aim.filter(other -> other != Objective.CHEAPEST && other != Objective.BEST_VALUE).ifPresent(other -> objective.get().fault(
                "must be cheapest or best-value in an order, which is filled at the least price or the least price less worth", faults));
        return draft(aim.orElse(Objective.CHEAPEST), worthFields(), Shortlist.PLAIN.alternatives(), Shortlist.PLAIN.step(),
                top.list("platforms"), top.list("forbid"), top.list("use"), Offered.FOR_SALE, top.entries("extras"));
    }

    /** A request that lets the search choose. */
    Draft quote() {
        WorthFields worth = worthFields();
        Objective objective = top.wordIfAny("objective", OBJECTIVES).orElse(Objective.CHEAPEST);
        int alternatives = top.wholeIfAny("alternatives", RequestBounds.ALTERNATIVES).orElse(Shortlist.PLAIN.alternatives());
        double step = top.numberIfAny("step", RequestBounds.STEP).orElse(Shortlist.PLAIN.step());
        return draft(objective, worth, alternatives, step, top.list("platforms"), top.list("forbid"), top.list("use"), Offered.FOR_SALE,
                top.entries("extras"));
    }

    /** A request whose build is given. */
    Draft judge() {
        return draft(Objective.CHEAPEST, WorthFields.NONE, Shortlist.PLAIN.alternatives(), Shortlist.PLAIN.step(), List.of(),
                List.of(), List.of(), Offered.STANDING, List.of());
    }

    /** A request that chooses what to do to a build: what is spent is all that such a choice can make least. */
    Draft upgrade() {
        return choice(Offered.STANDING);
    }

    private Draft choice(Offered offered) {
        Optional<Field> objective = top.field("objective");
        objective.flatMap(field -> field.word(OBJECTIVES, faults)).filter(other -> other != Objective.CHEAPEST)
                .ifPresent(other -> objective.get().fault("must be cheapest here", faults));
        return draft(Objective.CHEAPEST, WorthFields.NONE, Shortlist.PLAIN.alternatives(), Shortlist.PLAIN.step(), top.list("platforms"),
                top.list("forbid"), top.list("use"), offered, top.entries("extras"));
    }

    /** A request that many customers come with: it chooses the cheapest, at no price of its own and without anyone's parts. */
    static Draft demandClass(Source source, Section section) {
        return new DraftReader(source, source.plainName(), section, Optional.of(NO_PRICE_OF_A_CLASS)).demandClass();
    }

    private Draft demandClass() {
        refuse(top, "catalog", "catalog is the same for all classes; write it at the top");
        refuse(top, "on_hand", "on_hand is of one customer and cannot be expected of all; take it out");
        return choice(Offered.FOR_SALE);
    }

    /** Whether it is what many customers are expected to ask, on whichever day. */
    private boolean ofPlan() {
        return noPrice.filter(NO_PRICE_OF_A_CLASS::equals).isPresent();
    }

    private void refuse(Section section, String key, String why) {
        if (section.has(key)) {
            faults.add(section.place(key), why);
        }
    }

    private Draft draft(Objective objective, WorthFields worth, int alternatives, double step,
                        List<Field> platforms, List<Field> forbid, List<Field> use,
                        Offered offered, List<Entry> extras) {
        EnclosureFrom enclosure = EquipmentDraft.enclosure(top, offered.enclosure);
        Optional<Section> require = top.section("require");
        WorkFields work = work(require);
        EquipmentDraft equipment = require.map(section -> EquipmentDraft.required(section, extras, enclosure))
                .orElse(new EquipmentDraft(List.of(), List.of(), extras, enclosure));
        Optional<Section> limit = top.section("limit");
        noPrice.ifPresent(why -> limit.ifPresent(section -> List.of("price", "price_with_tax").forEach(key -> refuse(section, key, why))));
        limit.filter(section -> ofPlan()).ifPresent(section -> refuse(section, "by", NO_DAY_OF_A_CLASS));
        Optional<Section> ofPrice = limit.filter(section -> noPrice.isEmpty());
        PriceFields price = new PriceFields(ofPrice.flatMap(section -> section.field("price")),
                ofPrice.flatMap(section -> section.field("price_with_tax")));
        MemoryFields memory = require.map(section -> memory(section, offered))
                .orElse(new MemoryFields(Optional.empty(), Optional.empty(), offered.ofHouse));
        Request figures = new Request(top.text("name", plainName), top.wholeIfAny("machines", RequestBounds.MACHINES).orElse(1),
                require.map(this::require).orElse(Requirements.NONE), limit.map(this::limits).orElse(Limits.NONE),
                new Goal(objective, Worth.NOTHING, Licence.NONE), new Shortlist(alternatives, step), PartChoice.ANY);
        LicenceFields licence = top.section("licence").map(DraftReader::licence).orElse(LicenceFields.NONE);
        return new Draft(noPrice.isPresent() ? Optional.empty()
                : NamedCatalog.read(top, source), figures, top.place("machines"), price, new GoalFields(worth, licence),
                new ChoiceFields(platforms, forbid, use, noPrice.isPresent() ? List.of() : top.entries("on_hand"), equipment),
                new RequireFields(memory, work));
    }

    private WorkFields work(Optional<Section> require) {
        Optional<Workload> inPlace = top.sectionIfAny("workload").map(section -> WorkloadReader.read(section, ""));
        return new WorkFields(inPlace.isPresent() ? Optional.empty() : top.field("workload"), inPlace,
                require.flatMap(section -> section.numberIfAny("work", RequestBounds.THROUGHPUT)).orElse(0.0),
                require.filter(section -> section.has("gb_per_core")).isPresent());
    }

    private Requirements require(Section section) {
        int processors = section.wholeIfAny("processors", RequestBounds.PROCESSORS).orElse(0);
        int cores = section.wholeIfAny("cores", RequestBounds.CORES).orElse(0);
        double memory = section.numberIfAny("memory_gb", RequestBounds.MEMORY_GB).orElse(0.0);
        double bandwidth = section.numberIfAny("bandwidth_gbs", RequestBounds.BANDWIDTH_GBS).orElse(0.0);
        ProcessorNeeds processing = new ProcessorNeeds(processors, cores,
                section.numberIfAny("throughput", RequestBounds.THROUGHPUT).orElse(0.0),
                section.numberIfAny("base_ghz", RequestBounds.GHZ).orElse(0.0),
                section.numberIfAny("all_core_ghz", RequestBounds.GHZ).orElse(0.0));
        Requirements require = new Requirements(processing, new MemoryNeeds(memory, bandwidth,
                section.numberIfAny("gb_per_core", RequestBounds.GB_PER_CORE).orElse(0.0),
                section.numberIfAny("gbs_per_core", RequestBounds.GBS_PER_CORE).orElse(0.0),
                section.wholeIfAny("spare_slots", RequestBounds.SPARE_SLOTS).orElse(0),
                section.wordIfAny("memory_mode", MODES).orElse(MemoryMode.INDEPENDENT)));
        section.finish();
        return require;
    }

    private static MemoryFields memory(Section section, Offered offered) {
        return new MemoryFields(section.truthIfAny("balanced"), section.truthIfAny("one_module_part"), offered.ofHouse);
    }

    private Limits limits(Section section) {
        Set<Condition> conditions = EnumSet.noneOf(Condition.class);
        section.list("conditions").forEach(field -> field.word(CONDITIONS, faults).ifPresent(conditions::add));
        Limits limits = new Limits(OptionalLong.empty(), number(section, "power_w", RequestBounds.POWER_W),
                section.wholeIfAny("lead_days", RequestBounds.LEAD_DAYS).map(OptionalInt::of).orElse(OptionalInt.empty()),
                number(section, "inlet_c", RequestBounds.INLET_C),
                section.numberIfAny("altitude_m", RequestBounds.ALTITUDE_M).orElse(0.0),
                number(section, "mains_v", RequestBounds.MAINS_V), conditions);
        // How many days are left until then is known with the day of the answer.
        Optional<DeliverBy> by = (ofPlan() ? Optional.<Field>empty() : section.field("by")).flatMap(field -> field.date(faults))
                .map(day -> new DeliverBy(day, 0));
        section.finish();
        return limits.withBy(by);
    }

    private static OptionalDouble number(Section section, String key, Bounds bounds) {
        return section.numberIfAny(key, bounds).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private WorthFields worthFields() {
        return top.section("worth").map(DraftReader::worth).orElse(WorthFields.NONE);
    }

    private static WorthFields worth(Section section) {
        WorthFields worth = new WorthFields(section.field("core"), section.field("gb"), section.field("gbs"), section.field("throughput"),
                section.field("work"));
        section.finish();
        return worth;
    }

    private static LicenceFields licence(Section section) {
        LicenceFields licence = new LicenceFields(section.field("per_core"), section.field("per_processor"));
        section.finish();
        return licence;
    }
}
