package sledwright.generator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.Watts;
import sledwright.generator.memory.MemoryMarket;
import sledwright.metrics.CheapestDraw;
import sledwright.metrics.OrderPrice;
import sledwright.metrics.SurplusWorth;
import sledwright.metrics.Throughput;
import sledwright.rules.Parts;
import sledwright.rules.Rulebook;
import sledwright.rules.choice.RequiredPart;
import sledwright.rules.cooling.InletLimit;
import sledwright.rules.memory.ModeSupported;
import sledwright.rules.power.PowerBudget;
import sledwright.rules.power.PowerSupply;
import sledwright.rules.stock.Budget;
import sledwright.rules.target.PowerLimit;
import sledwright.rules.target.Target;

/** Puts together every machine-without-memory that the rules, the stock and the request allow. */
final class Families {

    private final Catalog catalog;
    private final Request request;
    private final Shelf shelf;
    private final MemoryMarket market;
    private final Ranking ranking;
    private final Set<String> platformSkus;
    private final Set<String> processorSkus;
    private final Set<String> kitSkus;
    private final Set<String> supplySkus;

    Families(Catalog catalog, Request request, Shelf shelf, MemoryMarket market, Ranking ranking) {
        this.catalog = catalog;
        this.request = request;
        this.shelf = shelf;
        this.market = market;
        this.ranking = ranking;
        platformSkus = catalog.platforms().stream().map(Platform::sku).collect(Collectors.toSet());
        processorSkus = catalog.processors().stream().map(Processor::sku).collect(Collectors.toSet());
        kitSkus = catalog.platforms().stream().flatMap(platform -> platform.cooling().stream()).map(CoolingKit::sku)
                .collect(Collectors.toSet());
        supplySkus = catalog.platforms().stream().flatMap(platform -> platform.power().supplies().stream()).map(Supply::sku)
                .collect(Collectors.toSet());
    }

    List<Family> all() {
        List<Family> families = new ArrayList<>();
        // A part that every machine must hold and that there is too little of is told here rather than by every board.
        if (!request.use().stream().allMatch(sku -> shelf.holds(sku, request.machines()))) {
            return families;
        }
        for (Platform platform : catalog.platforms()) {
            if (Rulebook.allows(PartKind.PLATFORMS, Parts.of(platform), request)
                    && RequiredPart.allows(request, platformSkus, platform.sku())
                    && ModeSupported.allows(platform.memory(), request.require().mode()) && isSold(platform.sku(), 1)) {
                addFamilies(families, platform);
            }
        }
        return families;
    }

    private void addFamilies(List<Family> families, Platform platform) {
        List<Processor> processors = catalog.processors().stream()
                .filter(processor -> RequiredPart.allows(request, processorSkus, processor.sku())).toList();
        Set<String> barred = barredModules(platform);
        for (int count : platform.processors().counts()) {
            List<Parts> fitted = processors.stream().map(processor -> Parts.of(platform).with(processor, count))
                    .filter(parts -> Rulebook.allows(PartKind.PROCESSORS, parts, request)).toList();
            for (CoolingKit kit : platform.cooling()) {
                if (RequiredPart.allows(request, kitSkus, kit.sku()) && isSold(kit.sku(), count)) {
                    addFamily(families, fitted, count, kit, barred);
                }
            }
        }
    }

    /** Modules that a rule of parts keeps off the platform. What the memory market sorts out by itself is not among them. */
    private Set<String> barredModules(Platform platform) {
        return Rulebook.onceChosen(PartKind.MEMORY).isEmpty() ? Set.of() : catalog.modules().stream()
                .filter(module -> !Rulebook.allows(PartKind.MEMORY, Parts.of(platform).with(module), request))
                .map(MemoryModule::sku).collect(Collectors.toSet());
    }

    private void addFamily(List<Family> families, List<Parts> fitted, int count, CoolingKit kit, Set<String> barred) {
        List<Optional<Supply>> supplies = fitted.isEmpty() ? List.of() : supplies(fitted.get(0).platform());
        List<Frame> frames = new ArrayList<>();
        for (Parts some : fitted) {
            Parts parts = some.with(kit);
            if (Rulebook.allows(PartKind.COOLING, parts, request) && isSold(parts.processor().sku(), count)) {
                Set<ModuleType> types = coolEnough(parts.platform(), parts.processor());
                for (Optional<Supply> supply : supplies) {
                    if (Rulebook.allows(PartKind.SUPPLIES, parts.with(supply), request)) {
                        frame(parts.with(supply), types).ifPresent(frames::add);
                    }
                }
            }
        }
        frames.sort(ranking.promisingFirst());
        if (!frames.isEmpty()) {
            Platform platform = frames.get(0).platform();
            families.add(new Family(platform, count, kit, undominated(frames), market.options(platform, kit, count, barred)));
        }
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
        return choices.filter(supply -> RequiredPart.allows(request, supplySkus, supply.map(Supply::sku).orElse(""))).toList();
    }

    private boolean isSold(String sku, int unitsPerMachine) {
        return shelf.price(sku, unitsPerMachine * request.machines()) < CheapestDraw.IMPOSSIBLE;
    }

    /** The module types beside which the site's inlet air is cool enough. */
    private Set<ModuleType> coolEnough(Platform platform, Processor processor) {
        Set<ModuleType> types = EnumSet.noneOf(ModuleType.class);
        for (ModuleType type : ModuleType.values()) {
            if (InletLimit.allows(platform.thermal(), processor.tdpW(), type, request.limit())) {
                types.add(type);
            }
        }
        return types;
    }

    private Optional<Frame> frame(Parts parts, Set<ModuleType> types) {
        Platform platform = parts.platform();
        Processor processor = parts.processor();
        int count = parts.fitted();
        CoolingKit kit = parts.cooling();
        Optional<Supply> supply = parts.supply();
        int cores = count * processor.cores();
        double throughput = Throughput.of(processor, catalog.throughputFactors()).times(count);
        int machines = request.machines();
        long price = shelf.price(platform.sku(), machines) + shelf.price(processor.sku(), count * machines)
                + shelf.price(kit.sku(), count * machines)
                + supply.map(option -> shelf.price(option.sku(), option.count() * machines)).orElse(0L)
                + machines * (OrderPrice.ofLabour(catalog.labour(), 0) + request.licence().of(cores, count));
        var require = request.require();
        boolean keeps = !types.isEmpty() && Target.CORES.allows(require, cores) && Target.THROUGHPUT.allows(require, throughput)
                && Target.BASE_CLOCK.allows(require, processor.baseGhz())
                && Target.ALL_CORE_CLOCK.allows(require, processor.allCoreGhz()) && Budget.allows(request.limit(), price);
        if (!keeps) {
            return Optional.empty();
        }
        double worth = SurplusWorth.of(request, cores, require.memoryGb(), require.bandwidthGbs(), throughput);
        long microwatts = Watts.micro(platform.power().baseW()) + count * Watts.micro(processor.tdpW());
        // Modules only add to the load, so a frame that is too heavy without them is no use.
        double leastW = Watts.of(microwatts);
        boolean carried = PowerLimit.allows(request.limit(), leastW) && PowerBudget.allows(platform, leastW)
                && (supply.isEmpty() || PowerSupply.allows(supply.get(), request.limit(), leastW));
        return !carried ? Optional.empty() : Optional.of(new Frame(platform, processor, count, kit, supply, types, price, worth,
                ranking.energy(supply, microwatts), cores, throughput, microwatts));
    }
}
