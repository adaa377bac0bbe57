package sledwright.generator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Supply;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.Watts;
import sledwright.generator.fitout.Completion;
import sledwright.generator.fitout.Fitted;
import sledwright.generator.fitout.Fittings;
import sledwright.generator.fitout.Housings;
import sledwright.generator.memory.MemoryMarket;
import sledwright.generator.memory.MemoryNeed;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.metrics.CheapestDraw;
import sledwright.metrics.OrderPrice;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.SurplusWorth;
import sledwright.metrics.Quantity;
import sledwright.metrics.Throughput;
import sledwright.metrics.WorkDone;
import sledwright.rules.Parts;
import sledwright.rules.Rulebook;
import sledwright.rules.choice.RequiredPart;
import sledwright.rules.cooling.InletLimit;
import sledwright.rules.memory.ModeSupported;
import sledwright.rules.processor.SocketMatch;
import sledwright.rules.stock.Budget;
import sledwright.rules.target.PowerLimit;
import sledwright.rules.target.Target;

/** Puts together every machine-without-memory that the rules, the stock and the request allow. */
final class Families {

    private final Catalog catalog;
    private final Request request;
    private final Shelf shelf;
    private final MemoryMarket market;
    private final MemoryNeed need;
    private final Ranking ranking;
    private final Set<String> platformSkus;
    private final Set<String> processorSkus;
    private final Set<String> kitSkus;
    private final Set<String> supplySkus;
    private final Set<String> ofEnclosures;
    private final Fittings fittings;
    private final Housings housings;
    private final Map<List<Object>, List<Fitted>> fittingsOf = new HashMap<>();
    private final Map<String, Long> mostModuleMicrowatts = new HashMap<>();
    private final Map<Heat, Set<ModuleType>> coolEnough = new HashMap<>();
    private final List<Alike> seats = new ArrayList<>();
    private final boolean everyWeight;
    private boolean rises = true;
    private double forcedFromW = Double.POSITIVE_INFINITY;

    private record Heat(String platform, double tdpW) {
    }

    /** A processor and its place in the catalogue. */
    private record Placed(Processor processor, int place) {
    }

    /**
     * Processors that the same platforms have sockets for.
     *
     * @param reaching number -> those of which so many reach what only they decide
     */
    private record Alike(List<Placed> processors, Map<Integer, List<Placed>> reaching) {
    }

    /**
     * Every machine-without-memory of a request, beside the memory that it may choose among.
     *
     * @param somewhere drives and modules of which one machine at least must hold one
     */
    static FamilyChoice of(Catalog catalog, Request request, Set<String> somewhere, MemoryMarket market, Ranking ranking,
            Deadline deadline) {
        Families families = new Families(catalog, request, somewhere, market, ranking, false, deadline);
        List<Family> light = families.all();
        boolean anywhere = !families.rises || ranking.countsEnergy() && families.forcedFromW < Double.POSITIVE_INFINITY;
        return new FamilyChoice(light, () -> new Families(catalog, request, somewhere, market, ranking, true, deadline).all(),
                anywhere ? -1 : families.forcedFromW);
    }

    /**
     * What is found in the first family in which anything is, one looked into before the next is put together.
     *
     * @param look what a family has; null where it has nothing
     * @return null where none has, unless what is heavier and no better would have to be looked at as well: then {@code unknown}
     */
    static <T> T first(Catalog catalog, Request request, MemoryMarket market, Ranking ranking, Deadline deadline,
            Function<Family, T> look, T unknown) {
        Families families = new Families(catalog, request, Set.of(), market, ranking, false, deadline);
        List<T> found = new ArrayList<>(1);
        families.each(family -> {
            T some = look.apply(family);
            if (some != null) {
                found.add(some);
            }
            return some == null;
        });
        return !found.isEmpty() ? found.get(0) : families.rises ? null : unknown;
    }

    private Families(Catalog catalog, Request request, Set<String> somewhere, MemoryMarket market, Ranking ranking, boolean everyWeight,
            Deadline deadline) {
        this.catalog = catalog;
        this.request = request;
        this.everyWeight = everyWeight;
        this.market = market;
        need = MemoryNeed.of(request, everyWeight);
        shelf = market.shelf();
        this.ranking = ranking;
        Map<String, Integer> fitted = new HashMap<>();
        Stream.concat(somewhere.stream(), request.use().stream()).filter(sku -> catalog.drive(sku).isPresent()
                || catalog.card(sku).isPresent() || catalog.extra(sku).isPresent())
                .forEach(sku -> fitted.put(sku, request.use().contains(sku) ? request.machines() : 1));
        ofEnclosures = request.use().stream().filter(sku -> catalog.enclosures().stream().anyMatch(enclosure -> enclosure.lists(sku)))
                .collect(Collectors.toSet());
        fittings = new Fittings(catalog, request, shelf, deadline, market.kept(), fitted);
        housings = new Housings(catalog, request, shelf, ofEnclosures);
        platformSkus = used(catalog.platforms().stream().map(Platform::sku));
        processorSkus = used(catalog.processors().stream().map(Processor::sku));
        kitSkus = used(catalog.platforms().stream().flatMap(platform -> platform.cooling().stream()).map(CoolingKit::sku));
        supplySkus = used(catalog.platforms().stream().flatMap(platform -> platform.power().supplies().stream()).map(Supply::sku));
    }

    /** Those of some parts that the request wants used. */
    private Set<String> used(Stream<String> skus) {
        return request.use().isEmpty() ? Set.of() : skus.filter(request.use()::contains).collect(Collectors.toSet());
    }

    private List<Family> all() {
        List<Family> families = new ArrayList<>();
        each(families::add);
        return families;
    }

    /** @param goOn receives each family; whether more are wanted */
    private void each(Predicate<Family> goOn) {
        // A part that every machine must hold and that there is too little of is found here rather than for every board.
        if (!request.use().stream().allMatch(sku -> shelf.holds(sku, catalog.isOfEnclosuresAlone(sku) ? 1 : request.machines()))) {
            return;
        }
        for (Platform platform : catalog.platforms()) {
            if (Rulebook.allows(PartKind.PLATFORMS, Parts.of(platform), request)
                    && RequiredPart.allows(request, platformSkus, platform.sku())
                    && (housings.needs(platform) || request.use().stream().noneMatch(catalog::isOfEnclosuresAlone))
                    && ModeSupported.allows(platform.memory(), request.require().mode()) && isSold(platform.sku(), 1)) {
                if (!each(platform, goOn)) {
                    return;
                }
            }
        }
    }

    private boolean each(Platform platform, Predicate<Family> goOn) {
        Set<String> barred = barredModules(platform);
        for (int count : platform.processors().counts()) {
            List<Parts> fitted = seats().stream().filter(alike -> SocketMatch.allows(platform, alike.processors.get(0).processor))
                    .flatMap(alike -> alike.reaching.computeIfAbsent(count, same -> alike.processors.stream()
                            .filter(placed -> keepsTargets(placed.processor, count)).toList()).stream())
                    .sorted(Comparator.comparingInt(Placed::place)).map(placed -> Parts.of(platform).with(placed.processor, count))
                    .filter(parts -> Rulebook.allows(PartKind.PROCESSORS, parts, request))
                    .filter(parts -> isSold(parts.processor().sku(), count)).toList();
            for (CoolingKit kit : platform.cooling()) {
                if (RequiredPart.allows(request, kitSkus, kit.sku()) && isSold(kit.sku(), count)) {
                    Family family = family(fitted, count, kit, barred);
                    if (family != null && !goOn.test(family)) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private List<Alike> seats() {
        if (seats.isEmpty()) {
            List<Processor> all = catalog.processors();
            IntStream.range(0, all.size()).filter(place -> RequiredPart.allows(request, processorSkus, all.get(place).sku()))
                    .mapToObj(place -> new Placed(all.get(place), place))
                    .collect(Collectors.groupingBy(one -> one.processor.fit(), LinkedHashMap::new, Collectors.toList()))
                    .values().forEach(processors -> seats.add(new Alike(processors, new HashMap<>())));
        }
        return seats;
    }

    /** Modules that a rule of parts keeps off the platform. What the memory market sorts out by itself is not among them. */
    private Set<String> barredModules(Platform platform) {
        return Rulebook.onceChosen(PartKind.MEMORY).isEmpty() ? Set.of() : catalog.modules().stream()
                .filter(module -> !Rulebook.allows(PartKind.MEMORY, Parts.of(platform).with(module), request))
                .map(MemoryModule::sku).collect(Collectors.toSet());
    }

    /** Null where it has no frames. */
    private Family family(List<Parts> fitted, int count, CoolingKit kit, Set<String> barred) {
        List<Optional<Supply>> supplies = fitted.isEmpty() ? List.of() : supplies(fitted.get(0).platform());
        List<Frame> frames = new ArrayList<>();
        for (Parts some : fitted) {
            Parts parts = some.with(kit);
            if (Rulebook.allows(PartKind.COOLING, parts, request)) {
                Set<ModuleType> types = coolEnough(parts.platform(), parts.processor().tdpW());
                for (Optional<Supply> supply : supplies) {
                    if (Rulebook.allows(PartKind.SUPPLIES, parts.with(supply), request)) {
                        frame(parts.with(supply), types).ifPresent(frames::add);
                    }
                }
            }
        }
        List<Frame> complete = complete(frames);
        if (complete.isEmpty()) {
            return null;
        }
        complete.sort(ranking.promisingFirst());
        Platform platform = frames.get(0).platform();
        return new Family(complete, market.options(platform, kit, count, barred), need);
    }

    /** Frames with all that completes them, one for each range of loads in which that is the same. */
    private List<Frame> complete(List<Frame> frames) {
        List<Frame> complete = new ArrayList<>();
        frames.stream().collect(Collectors.groupingBy(Frame::supply, LinkedHashMap::new, Collectors.toList())).forEach((supply, fed) -> {
            Frame any = fed.get(0);
            List<Completion> completions = completions(any.platform(), any.processors(), supply);
            if (completions.stream().anyMatch(completion -> completion.heavierThan() >= 0)) {
                long most = mostModuleMicrowatts(any.platform(), any.processors())
                        + fed.stream().mapToLong(Frame::microwatts).max().orElseThrow();
                completions = completions.stream().filter(completion -> completion.heavierThan() < most).toList();
            }
            boolean alike = note(completions);
            fed.sort(ranking.promisingFirst());
            for (Frame frame : alike || !everyWeight ? undominated(fed) : fed) {
                for (Completion completion : completions) {
                    long microwatts = frame.microwatts() + completion.fitted().microwatts();
                    Frame whole = frame.with(completion, ranking.energy(supply, microwatts));
                    if (frame.microwatts() <= completion.atMost() && Budget.allows(request.limit(), whole.price()) && carries(whole)) {
                        complete.add(whole);
                    }
                }
            }
        });
        return complete;
    }

    /** Notes from which load on machines take another set; whether none does and more load never costs less. */
    private boolean note(List<Completion> completions) {
        boolean alike = completions.stream().allMatch(one -> one.fitted().equals(completions.get(0).fitted()));
        if (!alike) {
            completions.stream().skip(1).mapToDouble(forced -> Watts.of(forced.heavierThan() + forced.fitted().microwatts()))
                    .forEach(least -> forcedFromW = Math.min(forcedFromW, least));
        }
        rises &= rises(completions);
        return alike && rises(completions);
    }

    /** What the modules of a machine load at most. */
    private long mostModuleMicrowatts(Platform platform, int processors) {
        long each = mostModuleMicrowatts.computeIfAbsent(platform.memory().generation(), generation -> catalog.modules().stream()
                .filter(module -> module.generation().equals(generation)).mapToLong(module -> Watts.micro(module.powerW())).max()
                .orElse(0));
        return each * processors * platform.board().channels() * platform.board().slotsPerChannel();
    }

    /** Whether more load never costs less, and is never possible where less is not. */
    private static boolean rises(List<Completion> completions) {
        boolean whole = IntStream.range(0, completions.size())
                .allMatch(i -> completions.get(i).heavierThan() == (i == 0 ? -1 : completions.get(i - 1).atMost()));
        return whole && IntStream.range(1, completions.size()).allMatch(i -> completions.get(i - 1).price() <= completions.get(i).price());
    }

    private List<Completion> completions(Platform platform, int processors, Optional<Supply> supply) {
        try {
            List<Fitted> sets = fittingsOf.computeIfAbsent(List.of(platform.sku(), processors), key ->
                    fittings.of(new Fittings.Chassis(platform, processors, housings.needs(platform) && !housings.rises(platform))));
            long most = mostMicrowatts(platform, supply);
            return ranking.weighsSets() ? Completion.ofEach(platform, sets, housings, most)
                    : Completion.of(platform, sets, housings, most);
        } catch (OutOfTimeException unfinished) {
            return List.of(Completion.UNKNOWN);
        }
    }

    /** What a machine may load at most by all that limits it. */
    private long mostMicrowatts(Platform platform, Optional<Supply> supply) {
        double most = Math.min(PowerLimit.mostW(request.limit()), platform.power().budgetW().orElse(Double.POSITIVE_INFINITY));
        double fed = supply.map(option -> PowerDraw.deliverableW(option, request.limit())).orElse(Double.POSITIVE_INFINITY);
        double least = Math.min(most, fed);
        return least == Double.POSITIVE_INFINITY ? Completion.ANY_LOAD : Watts.micro(least);
    }

    /** Modules only add to the load, so a frame that is too heavy without them is useless. */
    private boolean carries(Frame frame) {
        return frame.carries(Watts.of(frame.microwatts()), request.limit());
    }

    private List<Frame> undominated(List<Frame> frames) {
        List<Frame> kept = new ArrayList<>();
        for (Frame frame : frames) {
            if (kept.stream().noneMatch(better -> better.dominates(frame, request))) {
                kept.removeIf(worse -> frame.dominates(worse, request));
                kept.add(frame);
            }
        }
        return kept;
    }

    private List<Optional<Supply>> supplies(Platform platform) {
        Stream<Optional<Supply>> choices = platform.power().supplies().isEmpty() ? Stream.of(Optional.empty())
                : platform.power().supplies().stream().filter(supply -> isSold(supply.sku(), supply.count())).map(Optional::of);
        // What is wanted and only its enclosure brings is for the choice of that.
        return choices.filter(supply -> supply.isEmpty() && housings.needs(platform)
                && ofEnclosures.containsAll(request.use().stream().filter(supplySkus::contains).toList())
                || RequiredPart.allows(request, supplySkus, supply.map(Supply::sku).orElse(""))).toList();
    }

    private boolean isSold(String sku, int unitsPerMachine) {
        return shelf.price(sku, unitsPerMachine * request.machines()) < CheapestDraw.IMPOSSIBLE;
    }

    /** The module types beside which the site's inlet air is cool enough. */
    private Set<ModuleType> coolEnough(Platform platform, double tdpW) {
        return coolEnough.computeIfAbsent(new Heat(platform.sku(), tdpW), same -> {
            Set<ModuleType> types = EnumSet.noneOf(ModuleType.class);
            for (ModuleType type : ModuleType.values()) {
                if (InletLimit.allows(platform.thermal(), tdpW, type, request.limit())) {
                    types.add(type);
                }
            }
            return types;
        });
    }

    /** Whether processors reach the figures that only they decide. */
    private boolean keepsTargets(Processor processor, int count) {
        Requirements require = request.require();
        return Target.CORES.allows(require, count * processor.cores()) && Target.BASE_CLOCK.allows(require, processor.baseGhz())
                && Target.ALL_CORE_CLOCK.allows(require, processor.allCoreGhz())
                && Target.THROUGHPUT.allows(require, Throughput.of(processor, catalog.throughputFactors()).times(count));
    }

    private Optional<Frame> frame(Parts parts, Set<ModuleType> types) {
        Platform platform = parts.platform();
        Processor processor = parts.processor();
        int count = parts.fitted();
        CoolingKit kit = parts.cooling();
        Optional<Supply> supply = parts.supply();
        int cores = count * processor.cores();
        Throughput ofOne = Throughput.of(processor, catalog.throughputFactors());
        double throughput = ofOne.times(count);
        double capacity = WorkDone.ofCores(count * ofOne.value(), cores, request.require().work().workload());
        int machines = request.machines();
        long price = shelf.price(platform.sku(), machines) + shelf.price(processor.sku(), count * machines)
                + shelf.price(kit.sku(), count * machines)
                + supply.map(option -> shelf.price(option.sku(), option.count() * machines)).orElse(0L)
                + machines * (OrderPrice.ofLabour(catalog.labour(), 0) + request.licence().of(cores, count));
        var require = request.require();
        boolean keeps = !types.isEmpty() && Target.WORK.allows(require, Quantity.rounded(capacity))
                && Budget.allows(request.limit(), price);
        if (!keeps) {
            return Optional.empty();
        }
        Computing computing = new Computing(cores, throughput, capacity, SurplusWorth.of(request, cores, require.memoryGb(),
                require.bandwidthGbs(), throughput, Quantity.rounded(capacity)));
        long microwatts = Watts.micro(platform.power().baseW()) + count * Watts.micro(processor.tdpW());
        Frame frame = new Frame(parts, types, computing, price, ranking.energy(supply, microwatts), microwatts, Completion.NOTHING);
        return Optional.of(frame).filter(this::carries);
    }
}
