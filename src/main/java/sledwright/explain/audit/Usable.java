package sledwright.explain.audit;

import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import sledwright.domain.BayGroup;
import sledwright.domain.Card;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveSupport;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.RaidLevel;
import sledwright.rules.card.CardFits;
import sledwright.rules.cooling.HeatSinkRating;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.ModulesPerChannel;
import sledwright.rules.memory.RankLimit;
import sledwright.rules.processor.SocketCount;
import sledwright.rules.processor.SocketMatch;
import sledwright.rules.processor.TdpLimit;
import sledwright.rules.storage.DriveBay;
import sledwright.rules.storage.VolumeDriver;

/** Whether a part fits any platform by itself; what else a machine holds is not asked. */
final class Usable {

    private Usable() {
    }

    /** The parts that no platform takes, of the kinds that go into a platform and are not of it alone. */
    static List<Part> nowhere(Catalog catalog) {
        return Stream.<Collection<? extends Part>>of(catalog.processors(), catalog.modules(), catalog.drives(), catalog.cards())
                .flatMap(Collection::stream)
                .filter(part -> catalog.platforms().stream().noneMatch(platform -> fits(part, platform, catalog)))
                .<Part>map(part -> part).toList();
    }

    private static boolean fits(Part part, Platform platform, Catalog catalog) {
        if (part instanceof Processor processor) {
            return fits(processor, platform);
        }
        if (part instanceof MemoryModule module) {
            return fits(module, platform.memory());
        }
        if (part instanceof Drive drive) {
            return hasBay(drive, platform) && isDriven(drive.link(), platform, catalog);
        }
        return part instanceof Card card && fits(card, platform);
    }

    private static boolean fits(Processor processor, Platform platform) {
        return SocketMatch.allows(platform, processor) && TdpLimit.allows(platform, processor)
                && platform.processors().counts().stream().anyMatch(count -> SocketCount.allows(processor, count))
                && platform.cooling().stream().anyMatch(kit -> HeatSinkRating.allows(kit, processor));
    }

    private static boolean fits(MemoryModule module, MemorySupport memory) {
        return MemoryGeneration.allows(memory, module) && ModulesPerChannel.allows(memory, module.type(), module.ranks(), 1)
                && RankLimit.allows(memory, module.type(), module.logicalRanks());
    }

    private static boolean fits(Card card, Platform platform) {
        return platform.expansion().slots().stream().anyMatch(slot -> CardFits.allows(slot, card, most(platform)));
    }

    /** Whether a bay takes the drive, whatever it would hang on. */
    static boolean hasBay(Drive drive, Platform platform) {
        return platform.expansion().bays().stream().anyMatch(group -> DriveBay.allows(group, drive.likeness(), most(platform)));
    }

    /** Whether a group of bays holds no drive that anything of the catalogue could drive. */
    static boolean isDead(BayGroup group, Platform platform, Catalog catalog) {
        return group.links().stream().noneMatch(link -> isDriven(link, platform, catalog));
    }

    private static boolean isDriven(DriveInterface link, Platform platform, Catalog catalog) {
        return !link.needsDriver() || platform.expansion().onboard().filter(onboard -> drives(onboard, link)).isPresent()
                || catalog.cards().stream()
                .anyMatch(card -> card.support().filter(support -> drives(support, link)).isPresent() && fits(card, platform));
    }

    private static boolean drives(DriveSupport support, DriveInterface link) {
        return VolumeDriver.allows(support, link, RaidLevel.LEVEL_0, 1) && VolumeDriver.allows(support, 1);
    }

    /** The most processors that the platform runs with. */
    static int most(Platform platform) {
        return Collections.max(platform.processors().counts());
    }
}
