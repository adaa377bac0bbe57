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

    /** Whether a drive of that kind may serve it. */
    public boolean takes(Drive.Kind drive) {
        return kind.map(drive.kind()::equals).orElse(true) && link.map(drive.link()::equals).orElse(true);
    }
}
