package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.DriveInterface;
import sledwright.domain.Expansion;
import sledwright.domain.Platform;
import sledwright.words.Numbers;

/** Bays and slots of a platform that nothing can ever use. */
final class DeadPlaces implements PlatformCheck {

    @Override
    public List<String> messages(Platform platform, Catalog catalog) {
        List<String> messages = new ArrayList<>();
        Expansion expansion = platform.expansion();
        expansion.bays().forEach(group -> unfitted("bays", group.name(), group.socket(), platform, messages));
        expansion.slots().forEach(slot -> unfitted("slot", slot.name(), slot.socket(), platform, messages));
        expansion.bays().stream().filter(group -> Usable.isDead(group, platform, catalog))
                .forEach(group -> messages.add("bays %s of %s: neither the board nor a controller that fits drives %s."
                        .formatted(group.name(), platform.sku(),
                        group.links().stream().sorted().map(DriveInterface::label).collect(Collectors.joining(" or ")))));
        return messages;
    }

    private static void unfitted(String what, String name, OptionalInt socket, Platform platform, List<String> messages) {
        if (!Expansion.isLive(socket, Usable.most(platform))) {
            messages.add("%s %s of %s: socket %s is never fitted, since the platform runs with at most %s."
                    .formatted(what, name, platform.sku(), socket.getAsInt(), Numbers.counted(Usable.most(platform), "processor")));
        }
    }
}
