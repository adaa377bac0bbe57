package sledwright.rules.enclosure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import sledwright.domain.Build;
import sledwright.domain.Enclosure;
import sledwright.domain.Platform;
import sledwright.rules.Housing;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: every sled has a bay of its own in an enclosure that takes its platform. */
public final class EnclosureBays extends Rule<Housing> {

    public static final String ID = "enclosure-bays";

    public EnclosureBays() {
        super(ID, "Every sled has a bay of its own in an enclosure that takes its platform.");
    }

    /** Whether the enclosure has a bay for each of a given number of sleds. */
    public static boolean allows(Enclosure enclosure, int sleds) {
        return sleds <= enclosure.bays();
    }

    /** Whether machines of the platform go into the enclosure's bays. */
    public static boolean allows(Enclosure enclosure, Platform platform) {
        return enclosure.takes(platform);
    }

    @Override
    public List<Violation> judge(Housing housing) {
        Enclosure enclosure = housing.filled().enclosure();
        List<Build> sleds = housing.filled().sleds();
        List<Violation> broken = new ArrayList<>();
        if (!allows(enclosure, sleds.size())) {
            broken.add(broken(enclosure.sku(), "%s holds %s and has %s.", enclosure.sku(),
                    Numbers.counted(sleds.size(), "sled"), Numbers.counted(enclosure.bays(), "bay")));
        }
        sleds.stream().map(Build::platform).filter(platform -> !allows(enclosure, platform)).map(Platform::sku).distinct()
                .forEach(sku -> broken.add(broken(enclosure.sku(), "A sled of %s stands in %s, which takes %s.", sku, enclosure.sku(),
                        enclosure.takes().stream().sorted().collect(Collectors.joining(", ")))));
        return broken;
    }
}
