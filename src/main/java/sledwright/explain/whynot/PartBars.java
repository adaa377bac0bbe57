package sledwright.explain.whynot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Slot;
import sledwright.domain.Stock;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.rules.choice.AskedPlatform;
import sledwright.rules.cooling.HeatSinkRating;
import sledwright.rules.memory.DeviceWidth;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.ModuleTypeTaken;
import sledwright.rules.memory.ModulesPerChannel;
import sledwright.rules.memory.ProcessorMemoryLimit;
import sledwright.rules.memory.RankLimit;
import sledwright.rules.processor.SocketCount;
import sledwright.rules.processor.SocketMatch;
import sledwright.rules.processor.TdpLimit;
import sledwright.rules.stock.InStock;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** The rules that a part breaks by itself on each platform that a request asks for. */
final class PartBars {

    private static final Set<String> PROCESSOR_RULES = Set.of(SocketMatch.ID, SocketCount.ID, TdpLimit.ID, HeatSinkRating.ID);
    private static final Set<String> MODULE_RULES = Set.of(MemoryGeneration.ID, ModuleTypeTaken.ID, ModulesPerChannel.ID, RankLimit.ID,
            DeviceWidth.ID, ProcessorMemoryLimit.ID);

    private final Request request;
    private final Catalog catalog;

    private PartBars(Request request, Catalog catalog) {
        this.request = request;
        this.catalog = catalog;
    }

    /** One breach for each rule, in the words of the first platform that meets it, with the number of platforms it holds on. */
    static List<Violation> of(Part part, Request request, Catalog catalog) {
        if (Stock.of(catalog, request).lots(part.sku()).isEmpty()) {
            return List.of(new Violation(InStock.ID, part.sku(), Sentence.of("No lot offers %s.", part.sku())));
        }
        return new PartBars(request, catalog).of(part);
    }

    private List<Violation> of(Part part) {
        Map<String, List<Violation>> byRule = new LinkedHashMap<>();
        List<Platform> asked = catalog.platforms().stream().filter(platform -> AskedPlatform.allows(request, platform)).toList();
        for (Platform platform : asked) {
            broken(part, platform).findFirst().ifPresent(bar -> byRule.computeIfAbsent(bar.rule(), rule -> new ArrayList<>()).add(bar));
        }
        if (byRule.values().stream().mapToInt(List::size).sum() < asked.size()) {
            return List.of();
        }
        return byRule.values().stream().map(bars -> bars.size() == 1 ? bars.get(0) : new Violation(bars.get(0).rule(), bars.get(0).where(),
                Sentence.of("%s The same rule bars it on %s.", bars.get(0).sentence(),
                Numbers.counted(bars.size() - 1, "other platform")))).toList();
    }

    private Stream<Violation> broken(Part part, Platform platform) {
        if (part instanceof Processor processor) {
            return judged(build(platform, processor, Map.of())).filter(bar -> PROCESSOR_RULES.contains(bar.rule()));
        }
        if (part instanceof MemoryModule module) {
            Slot first = platform.board().slot(0, 0, 0);
            return fitting(platform).stream().flatMap(processor -> judged(build(platform, processor, Map.of(first, module))))
                    .filter(bar -> MODULE_RULES.contains(bar.rule()));
        }
        return Stream.empty();
    }

    private Optional<Processor> fitting(Platform platform) {
        return catalog.processors().stream().filter(processor -> SocketMatch.allows(platform, processor))
                .max(Comparator.comparingInt(processor -> processor.maxMemoryGb().orElse(Integer.MAX_VALUE)));
    }

    private Stream<Violation> judged(Build build) {
        return Rulebook.judge(Machine.of(build, request, catalog.throughputFactors())).stream();
    }

    private static Build build(Platform platform, Processor processor, Map<Slot, MemoryModule> modules) {
        CoolingKit strongest = platform.cooling().stream().max(Comparator.comparingDouble(CoolingKit::maxTdpW)).orElseThrow();
        int fewest = platform.processors().counts().stream().mapToInt(Integer::intValue).min().orElse(1);
        return Build.of(platform, processor, fewest, strongest, platform.power().supplies().stream().findFirst(), modules);
    }
}
