package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sledwright.domain.CardSlot;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.Need;
import sledwright.domain.Platform;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/** What must be bought with a platform and cannot be: parts that it needs, risers of its slots, enclosures of a sled. */
final class UnsoldCompanions implements PlatformCheck {

    @Override
    public List<String> messages(Platform platform, Catalog catalog) {
        List<String> messages = new ArrayList<>();
        for (Need need : platform.expansion().needs()) {
            need.parts().keySet().stream().sorted().filter(sku -> catalog.lots(sku).isEmpty())
                    .forEach(sku -> messages.add("%s calls for %s, which has no offer, so it cannot be sold %s."
                            .formatted(platform.sku(), sku, need.cause() == Need.Cause.EMPTY_SOCKETS ? "with a socket left empty"
                            : "with %s or more".formatted(Numbers.counted(need.from(), "processor")))));
        }
        unsoldRisers(platform, catalog).forEach((riser, slots) -> messages.add((slots.size() == 1
                ? "slot %s of %s needs the riser %s, which has no offer, so it cannot be used."
                : "slots %s of %s need the riser %s, which has no offer, so they cannot be used.")
                .formatted(Sentences.list(slots), platform.sku(), riser)));
        if (catalog.isSled(platform) && catalog.enclosures().stream().noneMatch(enclosure -> houses(enclosure, platform, catalog))) {
            messages.add(("no enclosure that takes %s has an offer together with one of its supplies, "
                    + "so it can only be sold to customers who have one.").formatted(platform.sku()));
        }
        return messages;
    }

    private static Map<String, List<String>> unsoldRisers(Platform platform, Catalog catalog) {
        Map<String, List<String>> slots = new TreeMap<>();
        for (CardSlot slot : platform.expansion().slots()) {
            slot.riser().filter(riser -> catalog.lots(riser).isEmpty())
                    .ifPresent(riser -> slots.computeIfAbsent(riser, key -> new ArrayList<>()).add(slot.name()));
        }
        return slots;
    }

    private static boolean houses(Enclosure enclosure, Platform platform, Catalog catalog) {
        return enclosure.takes(platform) && !catalog.lots(enclosure.sku()).isEmpty()
                && enclosure.supplies().stream().anyMatch(supply -> !catalog.lots(supply.sku()).isEmpty());
    }
}
