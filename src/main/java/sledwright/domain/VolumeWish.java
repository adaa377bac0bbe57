package sledwright.domain;

import java.util.Optional;

/**
 * A volume that each machine must have.
 *
 * @param usableGb  the least
 * @param kind      empty: any
 * @param link      empty: any
 * @param hotSpares further drives of the same, which wait for one to fail
 */
public record VolumeWish(String name, double usableGb, RaidLevel level, Optional<DriveKind> kind, Optional<DriveInterface> link,
        int hotSpares) {

    /** The same volume of another size. */
    public VolumeWish with(double gb) {
        return new VolumeWish(name, gb, level, kind, link, hotSpares);
    }

    /** The same volume with another number of hot spares. */
    public VolumeWish withHotSpares(int number) {
        return new VolumeWish(name, usableGb, level, kind, link, number);
    }

    /** The same volume at another level. */
    public VolumeWish at(RaidLevel other) {
        return new VolumeWish(name, usableGb, other, kind, link, hotSpares);
    }

    /** What drives may serve it, such as {@code SATA SSD}; empty: any. */
    public String drives() {
        return (link.map(DriveInterface::label).orElse("") + " " + kind.map(Enum::name).orElse("")).strip();
    }

    /** Whether a drive of that kind may serve it. */
    public boolean takes(Drive.Kind drive) {
        return kind.map(drive.kind()::equals).orElse(true) && link.map(drive.link()::equals).orElse(true);
    }
}
