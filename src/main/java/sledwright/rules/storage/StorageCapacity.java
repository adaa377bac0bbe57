package sledwright.rules.storage;

import java.util.List;
import java.util.Optional;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.Volume;
import sledwright.domain.VolumeWish;
import sledwright.metrics.Quantity;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: every volume that the request asks for is there, as large, at its level, of its kind, with its hot spares. */
public final class StorageCapacity extends Rule<Machine> {

    public static final String ID = "storage-capacity";

    /** The key of a request that it holds a build to. */
    public static final String KEY = "require.storage";

    /** What of a volume can be given up by itself. */
    public static final String SPARES_KEY = "require.storage.hot_spares";

    public StorageCapacity() {
        super(ID, "Every volume that the request asks for is there: as large, at its level, of the kind and interface asked for, with"
                + " its hot spares.", KEY, SPARES_KEY);
    }

    /** Whether a given number of data drives are large enough. */
    public static boolean allows(VolumeWish wish, Drive.Kind drive, int drives) {
        return wish.takes(drive) && Quantity.reaches(wish.level().usableGb(drives, drive.capacityGb()), wish.usableGb());
    }

    @Override
    public List<Violation> judge(Machine machine) {
        return machine.request().equipment().volumes().stream().flatMap(wish -> breach(machine, wish).stream()).toList();
    }

    private Optional<Violation> breach(Machine machine, VolumeWish wish) {
        Optional<Volume> found = machine.build().fitout().volumes().stream().filter(volume -> volume.name().equals(wish.name()))
                .findFirst();
        if (found.isEmpty()) {
            return Optional.of(broken(wish.name(), "The machine has no volume %s; the request asks for %s GB at level %s.", wish.name(),
                    Numbers.plain(wish.usableGb()), wish.level().label()));
        }
        Volume volume = found.get();
        if (volume.level() != wish.level()) {
            return Optional.of(broken(wish.name(), "Volume %s is at level %s; the request asks for level %s.", wish.name(),
                    volume.level().label(), wish.level().label()));
        }
        Optional<Drive> other = volume.all().stream().filter(drive -> !wish.takes(drive.likeness())).findFirst();
        if (other.isPresent()) {
            return Optional.of(broken(wish.name(), "Volume %s has %s, a %s %s; the request asks for %s.", wish.name(), other.get().sku(),
                    other.get().link().label(), other.get().kind().label(), words(wish)));
        }
        if (!Quantity.reaches(volume.usableGb(), wish.usableGb())) {
            return Optional.of(broken(wish.name(), "Volume %s holds %s GB; the request asks for %s GB.", wish.name(),
                    Numbers.plain(volume.usableGb()), Numbers.plain(wish.usableGb())));
        }
        return volume.hotSpares().size() >= wish.hotSpares() ? Optional.empty()
                : Optional.of(broken(wish.name(), "Volume %s has %s; the request asks for %s.", wish.name(),
                Numbers.counted(volume.hotSpares().size(), "hot spare"), wish.hotSpares()));
    }

    private static String words(VolumeWish wish) {
        return (wish.link().map(DriveInterface::label).orElse("") + " " + wish.kind().map(DriveKind::label).orElse("drives")).strip();
    }
}
