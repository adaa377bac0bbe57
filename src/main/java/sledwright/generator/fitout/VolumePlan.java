package sledwright.generator.fitout;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.BayGroup;
import sledwright.domain.Drive;
import sledwright.domain.VolumeWish;

/**
 * What volumes of a machine are made of.
 *
 * @param price      drives with their labour, all machines, minor units
 * @param microwatts of the heaviest machine's drives
 * @param range      by how much another deal of the drives could make that less
 * @param uneven     kinds of which machines may get units of unequal watts; one by itself is dealt as well as can be
 * @param choices    one for each volume, in the order of the request
 * @param draws      how the drives of each kind are drawn
 */
record VolumePlan(long price, long microwatts, long range, int uneven, List<Choice> choices, Map<Drive.Kind, Drawn> draws) {

    /** A way to draw drives of one kind, among all ways. */
    record Drawn(DriveDraws draws, DriveDraws.Way way) {
    }

    /** @param drives data drives; hot spares are further ones */
    record Choice(VolumeWish wish, Drive.Kind kind, BayGroup group, int drives) {

        /** Drives of one machine. */
        int all() {
            return drives + wish.hotSpares();
        }
    }

    VolumePlan {
        choices = List.copyOf(choices);
        draws = Collections.unmodifiableMap(new LinkedHashMap<>(draws));
    }

    /** Whether some volume hangs on a driver. */
    boolean isDriven() {
        return choices.stream().anyMatch(choice -> choice.kind().link().needsDriver());
    }

    /** Drives of one machine. */
    int parts() {
        return choices.stream().mapToInt(Choice::all).sum();
    }
}
