package sledwright.rules.storage;

import java.util.ArrayList;
import java.util.List;
import sledwright.domain.Drive;
import sledwright.domain.RaidLevel;
import sledwright.domain.Volume;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** {@value #ID}: the drives of a volume are alike, and their number suits its level. */
public final class VolumeDrives extends Rule<Machine> {

    public static final String ID = "volume-drives";

    public VolumeDrives() {
        super(ID, "The drives of a volume are alike in kind, interface, form factor and capacity, and their number suits its level.");
    }

    /** Whether a volume of the level may have a given number of data drives. */
    public static boolean allows(RaidLevel level, int drives) {
        return level.takes(drives);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        List<Violation> broken = new ArrayList<>();
        for (Volume volume : machine.build().fitout().volumes()) {
            List<Drive> all = volume.all();
            all.stream().filter(drive -> !drive.likeness().equals(all.get(0).likeness())).findFirst()
                    .ifPresent(other -> broken.add(broken(volume.name(),
                    "The drives of volume %s are not alike: %s is %s, %s is %s.", volume.name(), all.get(0).sku(), words(all.get(0)),
                    other.sku(), words(other))));
            if (!allows(volume.level(), volume.drives().size())) {
                broken.add(broken(volume.name(), "Volume %s has %s; level %s takes %s.", volume.name(),
                        Numbers.counted(volume.drives().size(), "data drive"), volume.level().label(),
                        right(volume.level())));
            }
        }
        return broken;
    }

    private static Sentence words(Drive drive) {
        return Sentence.of("%s %s %s of %s GB", drive.formFactor().label(), drive.link().label(), drive.kind().label(),
                Numbers.plain(drive.capacityGb()));
    }

    private static String right(RaidLevel level) {
        return switch (level) {
            case LEVEL_0 -> "one or more";
            case LEVEL_1 -> "two";
            case LEVEL_5 -> "three or more";
            case LEVEL_6 -> "four or more";
            case LEVEL_10 -> "an even number from four on";
        };
    }
}
