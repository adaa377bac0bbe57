package sledwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryModule;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Supply;

/**
 * Parts that are chosen for one machine. A kind of part that is not chosen yet is null; a rule is asked only where it is known what
 * the rule {@linkplain PartRule#bars() concerns}.
 *
 * @param fitted how many processors
 * @param supply empty where the enclosure feeds the machine
 */
public record Parts(Platform platform, int fitted, Processor processor, CoolingKit cooling, Optional<Supply> supply, MemoryModule module) {

    /** A platform of which no more is known. */
    public static Parts of(Platform platform) {
        return new Parts(platform, 0, null, null, null, null);
    }

    public Parts with(Processor one, int number) {
        return new Parts(platform, number, one, cooling, supply, module);
    }

    public Parts with(CoolingKit kit) {
        return new Parts(platform, fitted, processor, kit, supply, module);
    }

    public Parts with(Optional<Supply> option) {
        return new Parts(platform, fitted, processor, cooling, option, module);
    }

    public Parts with(MemoryModule one) {
        return new Parts(platform, fitted, processor, cooling, supply, one);
    }

    /** Every choice of parts of some kinds that stands in a machine. */
    static List<Parts> of(Build build, Set<PartKind> kinds) {
        Parts chosen = new Parts(build.platform(), build.processors().size(), null, build.cooling(), build.supply(), null);
        if (kinds.contains(PartKind.MEMORY)) {
            return build.modules().values().stream().distinct().map(chosen::with).toList();
        }
        return kinds.contains(PartKind.PROCESSORS)
                ? build.processors().stream().distinct().map(processor -> chosen.with(processor, chosen.fitted)).toList() : List.of(chosen);
    }
}
