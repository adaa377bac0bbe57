package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.ToLongFunction;
import sledwright.domain.Availability;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.Part;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.draw.Watts;
import sledwright.generator.time.Deadline;
import sledwright.metrics.Figures;
import sledwright.metrics.OrderPrice;
import sledwright.metrics.SurplusWorth;
import sledwright.planner.order.market.AsAsked;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.LineGroup;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.planner.order.market.Variants;
import sledwright.rules.Rulebook;

/** Finds the best machines of a line at given prices of parts, by the exact search. */
public final class Pricer {

    /** No machine takes more units of a part. */
    private static final int MOST_UNITS = 128;

    private static final SortedSet<Integer> NO_STEPS = Collections.emptySortedSet();

    private final Market market;
    private final Variants variants;
    private final Answers answers;
    private final Search search;
    private final boolean free;
    private final long moduleCharge;
    private final AtomicLong searches = new AtomicLong();
    private final AtomicReference<Doubts> doubts = new AtomicReference<>(Doubts.NONE);

    public Pricer(Market market, Search search) {
        this(market, search, false);
    }

    /** @param free whether nothing costs or is worth anything but what the prices say */
    public Pricer(Market market, Search search, boolean free) {
        this.market = market;
        this.search = search;
        this.free = free;
        moduleCharge = free ? 0 : market.order().modulePartCharge() * ScaledMoney.ONE;
        variants = new Variants(market);
        answers = new Answers(market, variants);
    }

    /**
     * The best way to build machines of a line.
     *
     * @param column what was found; null: no machine can be built
     * @param least  no such machines take less at the prices, scaled; {@link Long#MAX_VALUE} where there are none at all
     */
    public record Best(Column column, long least) {
    }

    /**
     * Machines of a line at the worth of units; the stock limits what one of them takes, not what all take together.
     *
     * @param traits that they all have
     * @param most   units of parts that they take together at most, where that is fewer than there are
     */
    public Best best(int line, Set<Trait> traits, Map<Integer, Integer> most, int machines, Duals duals, Deadline deadline) {
        Answers.Question question = new Answers.Question(line, machines, traits);
        return answers.of(question, most, duals, () -> alike(question, most, duals, deadline));
    }

    /** A machine that does what all lines of a group ask for, which accept the same lots. */
    Best best(LineGroup group, Duals duals, Deadline deadline) {
        int line = group.lines().get(0);
        return best(new Asked(line, group.least(), 1, worthwhile(line, duals), Map.of(), Map.of()), moduleCharge, duals, deadline);
    }

    private List<Variants.Variant> worthwhile(int line, Duals duals) {
        return variants.worthwhile(line, bay -> duals.place(line, bay), bay -> duals.kilowatt()[bay.id()]);
    }

    private Best alike(Answers.Question question, Map<Integer, Integer> most, Duals duals, Deadline deadline) {
        int line = question.line();
        Map<String, Integer> least = new TreeMap<>();
        List<Variants.Variant> ways = worthwhile(line, duals);
        boolean housed = false;
        for (Trait trait : question.traits()) {
            if (trait instanceof Trait.Takes takes) {
                least.merge(market.sku(takes.part()), takes.least(), Math::max);
            } else if (trait instanceof Trait.Stands stands) {
                ways = housed ? List.of() : variants.of(line, stands.bay());
                housed = true;
            }
        }
        Asked asked = new Asked(line, market.line(line).request(), question.machines(), ways, least, most);
        Best charged = best(asked, moduleCharge, duals, deadline);
        if (moduleCharge == 0 || asked.machines == 1) {
            return charged;
        }
        // Of machines together a charge is bounded from below, so that a bound without it may be tighter.
        Best plain = best(asked, 0, duals, deadline);
        return new Best(cheaper(charged.column, plain.column, duals), Math.max(charged.least, plain.least));
    }

    private Column cheaper(Column one, Column other, Duals duals) {
        return one == null || other != null && duals.of(other, market.poolOf(other.line())) < duals.of(one, market.poolOf(one.line()))
                ? other : one;
    }

    /**
     * Machines that are asked for.
     *
     * @param request what each of them does
     * @param least units of parts that they take together at least
     */
    private record Asked(int line, Request request, int machines, List<Variants.Variant> ways, Map<String, Integer> least,
            Map<Integer, Integer> most) {
    }

    /** @param charge what each part number of module in a machine counts beyond the first */
    private Best best(Asked asked, long charge, Duals duals, Deadline deadline) {
        Best best = best(asked.line, asked.machines, asked.request, asked.ways, asked.least.keySet(), variant -> {
            Map<String, List<Lot>> offers = offers(asked, charge, variant, duals);
            asked.least.forEach((sku, units) -> offers.computeIfPresent(sku, (same, lots) -> lots.stream().map(lot -> from(lot, units))
                    .toList()));
            return offers;
        }, deadline);
        // Offers count every part number, and each machine has at least one.
        return best.least == Long.MAX_VALUE ? best : new Best(best.column, best.least - charge * asked.machines);
    }

    /** A lot that sells no fewer units. */
    private static Lot from(Lot lot, int least) {
        List<PriceBreak> more = new ArrayList<>(lot.breaks().stream().filter(step -> step.minQuantity() > least).toList());
        if (least <= lot.available()) {
            more.add(new PriceBreak(least, lot.breakFor(least).unitPrice(), OptionalLong.empty()));
        }
        return more.isEmpty() ? lot.with(0, lot.breaks()) : lot.with(lot.available(), more);
    }

    private Map<String, List<Lot>> offers(Asked asked, long charge, Variants.Variant variant, Duals duals) {
        Map<String, List<Lot>> lots = new HashMap<>();
        int slots = variant.platforms().stream().map(sku -> market.catalog().platform(sku).orElseThrow().board())
                .mapToInt(board -> board.sockets() * board.channels() * board.slotsPerChannel()).max().orElse(1);
        Map<Integer, SortedSet<Integer>> steps = duals.steps(asked.line);
        for (int part = 0; part < market.parts(); part++) {
            if (available(asked, part) > 0) {
                long charged = charge > 0 && market.isModule(part) ? charge : 0;
                lots.put(market.sku(part), List.of(lot(asked, part, extra(asked.line, part, variant.bay(), duals), charged, slots,
                        steps.getOrDefault(part, NO_STEPS), duals)));
            }
        }
        return lots;
    }

    private int available(Asked asked, int part) {
        return Math.min(market.available(part, market.poolOf(asked.line)), asked.most.getOrDefault(part, Integer.MAX_VALUE));
    }

    /** What a part takes of its enclosure, rounded down. */
    private long extra(int line, int part, Bay bay, Duals duals) {
        if (bay == null) {
            return 0;
        }
        double watt = duals.kilowatt()[bay.id()] / 1000.0;
        Part known = market.catalog().part(market.sku(part)).orElseThrow();
        return (known instanceof Platform ? duals.place(line, bay) : 0) + (long) Math.floor(watt * Bay.watts(known));
    }

    /**
     * What stands for a part's lots where only its worth counts; where that is uneven, a price for every number of units, rounded down.
     *
     * @param charge for each machine that holds some of it: for as few as have the slots
     * @param steps  units from which on it is worth more or less
     */
    private Lot lot(Asked asked, int part, long extra, long charge, int slots, SortedSet<Integer> steps, Duals duals) {
        int pool = market.poolOf(asked.line);
        int available = available(asked, part);
        Lot plain = lot(market.sku(part), available, duals.part()[pool][part] + extra);
        int uneven = charge > 0 ? 1 : steps.isEmpty() ? Integer.MAX_VALUE : steps.first();
        if (uneven > available) {
            return plain;
        }
        List<PriceBreak> each = new ArrayList<>();
        if (uneven > 1) {
            each.add(plain.breaks().get(0));
        }
        int most = (charge > 0 ? slots : MOST_UNITS) * (market.line(asked.line).isTogether() ? market.line(asked.line).machines() : 1);
        int last = Math.min(available, Math.max(most, steps.isEmpty() ? 0 : steps.last()));
        for (int units = uneven; units <= last; units++) {
            long holders = (units + slots - 1) / slots;
            each.add(new PriceBreak(units, Math.floorDiv(duals.of(asked.line, pool, part, units) + extra * units + charge * holders,
                    units), OptionalLong.empty()));
        }
        if (last < available) {
            each.add(new PriceBreak(last + 1, Math.min(plain.breaks().get(0).unitPrice(), each.get(each.size() - 1).unitPrice()),
                    OptionalLong.empty()));
        }
        return plain.with(available, each);
    }

    /** What stands for a part's lots where only its worth counts. */
    public static Lot lot(String sku, int available, long price) {
        return new Lot(sku, "any", "any", Condition.NEW, new Availability(available, 0),
                List.of(new PriceBreak(1, price, OptionalLong.empty())), false);
    }

    /** Machines of a line on scaled offers, where a place in each kind of enclosure takes so much. */
    public Best best(int line, int machines, ToLongFunction<Bay> place, Offers offers, Deadline deadline) {
        return best(line, machines, market.line(line).request(), variants.worthwhile(line, place, bay -> 0), Set.of(), offers, deadline);
    }

    /** One machine for another request than the line's own, on its own feet where there are such: one search will do. */
    public Best quick(int line, Request asked, ToLongFunction<Bay> place, Offers offers, Deadline deadline) {
        List<Variants.Variant> ways = variants.worthwhile(line, place, bay -> 0);
        List<Variants.Variant> standing = ways.stream().filter(way -> way.bay() == null).toList();
        Best best = standing.isEmpty() ? null : best(line, 1, asked, standing, Set.of(), offers, deadline);
        return best == null || best.column == null ? best(line, 1, asked, ways, Set.of(), offers, deadline) : best;
    }

    /** The lots to search on, by sku, for machines that stand in some way. */
    public interface Offers {
        Map<String, List<Lot>> lots(Variants.Variant variant);
    }

    /**
     * The best over some ways to stand.
     *
     * @param use part numbers that it takes in any case; machines together may take modules and drives of them in some alone
     */
    private Best best(int line, int machines, Request asked, List<Variants.Variant> ways, Set<String> use, Offers offers,
            Deadline deadline) {
        Catalog shop = market.catalog();
        Labour labour = free ? new Labour(0, 0) : scaled(shop.labour());
        Column found = null;
        double best = Double.POSITIVE_INFINITY;
        double least = Double.POSITIVE_INFINITY;
        // Machines together may be shared out to several kinds of enclosure.
        double mostW = ways.stream().mapToDouble(Pricer::mostW).max().orElse(0);
        for (Variants.Variant variant : ways) {
            Request request = scaled(asked, machines, variant.platforms(), machines == 1 ? mostW(variant) : mostW);
            Findings findings = search.on(shop.with(offers.lots(variant), labour)).runHolding(use, below(request, best), deadline);
            searches.incrementAndGet();
            note(findings.doubts());
            if (findings.status() != Status.IMPOSSIBLE) {
                least = Math.min(least, findings.bound());
            }
            // A controller that the question wants used may be idle, which the line itself does not ask for: such a machine is no answer.
            if (!findings.ranked().isEmpty() && findings.best() < best && findings.ranked().get(0).machines().stream()
                    .allMatch(build -> AsAsked.allows(build, asked))) {
                best = findings.best();
                found = column(line, findings.ranked().get(0).machines(), variant.bay());
            }
        }
        return new Best(found, least == Double.POSITIVE_INFINITY ? Long.MAX_VALUE : (long) Math.floor(least));
    }

    /** What takes as much as another way to stand already does need not be looked for; only a price is a limit of the search. */
    private static Request below(Request request, double best) {
        return request.objective() != Objective.CHEAPEST || best == Double.POSITIVE_INFINITY || best < 1 ? request
                : request.withLimit(request.limit().withPrice(OptionalLong.of((long) Math.ceil(best) - 1)));
    }

    /** How many there were. */
    public long searches() {
        return searches.get();
    }

    private void note(Doubts found) {
        if (!found.none()) {
            doubts.accumulateAndGet(found, (known, more) -> Doubts.ofAll(List.of(known, more)));
        }
    }

    /** What of its questions more time would not have answered. */
    public Doubts doubts() {
        return doubts.get().whateverTheTime();
    }

    /** The request with money scaled and whatever the offers have settled left open. */
    private Request scaled(Request request, int machines, Set<String> platforms, double mostW) {
        Worth worth = free ? Worth.NOTHING : request.worth();
        Licence licence = free ? Licence.NONE : request.licence();
        Objective objective = free ? Objective.CHEAPEST : request.objective();
        return new Request(request.name(), machines, request.require(), limits(request.limit(), mostW),
                new Goal(objective, new Worth(worth.core() * ScaledMoney.ONE, worth.gb() * ScaledMoney.ONE, worth.gbs() * ScaledMoney.ONE,
                        worth.throughput() * ScaledMoney.ONE, worth.work() * ScaledMoney.ONE),
                        new Licence(licence.perCore() * ScaledMoney.ONE, licence.perProcessor() * ScaledMoney.ONE)),
                new Shortlist(1, request.step()),
                new PartChoice(platforms, request.forbid(), request.use(), Map.of(), request.equipment().withEnclosure(EnclosureFrom.OWN)));
    }

    private static Labour scaled(Labour labour) {
        return new Labour(labour.perMachine() * ScaledMoney.ONE, labour.perModule() * ScaledMoney.ONE, labour.perDrive() * ScaledMoney.ONE,
                labour.perCard() * ScaledMoney.ONE);
    }

    /** What a machine may load where it stands: no sled more than an enclosure of its kind has for all. */
    private static double mostW(Variants.Variant variant) {
        return variant.bay() == null ? Double.POSITIVE_INFINITY : Watts.of(variant.bay().capacity());
    }

    private static Limits limits(Limits limit, double mostW) {
        Limits open = Rulebook.settled(limit);
        return mostW < limit.powerW().orElse(Double.POSITIVE_INFINITY) ? open.withPowerW(OptionalDouble.of(mostW)) : open;
    }

    public Column column(int line, List<Build> builds, Bay bay) {
        Request request = market.line(line).request().withMachines(1);
        OrderPrice beside = OrderPrice.of(builds, List.of(), market.catalog().labour(), request.licence());
        long own = beside.total() * ScaledMoney.ONE;
        for (Build build : builds) {
            own += market.order().modulePartCharge() * ScaledMoney.ONE * (moduleParts(build) - 1) - ScaledMoney.of(worth(build, request));
        }
        return new Column(line, builds, bay, own, market.index());
    }

    private static long moduleParts(Build build) {
        return build.modules().values().stream().map(MemoryModule::sku).distinct().count();
    }

    /** What a machine is worth beyond what is asked, minor units. */
    private double worth(Build build, Request request) {
        if (request.objective() != Objective.BEST_VALUE) {
            return 0;
        }
        Figures figures = Figures.of(build, request, market.catalog().throughputFactors());
        return SurplusWorth.of(request, figures);
    }

}
