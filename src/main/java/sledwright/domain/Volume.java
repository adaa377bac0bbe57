package sledwright.domain;

import java.util.ArrayList;
import java.util.List;

/**
 * Drives of a machine that hold data together, valid or not.
 *
 * @param group     name of the bay group that they sit in
 * @param drives    the data drives
 * @param hotSpares further drives, which wait for one to fail
 */
public record Volume(String name, RaidLevel level, String group, List<Drive> drives, List<Drive> hotSpares) {

    public Volume {
        drives = List.copyOf(drives);
        hotSpares = List.copyOf(hotSpares);
    }

    /** Data drives, then hot spares. */
    public List<Drive> all() {
        List<Drive> all = new ArrayList<>(drives);
        all.addAll(hotSpares);
        return all;
    }

    /** Usable GB: the smallest data drive counts; 0 where the level does not take their number. */
    public double usableGb() {
        return level.takes(drives.size())
                ? level.usableGb(drives.size(), drives.stream().mapToDouble(Drive::capacityGb).min().orElse(0)) : 0;
    }
}
