package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.FormFactor;
import sledwright.domain.RaidLevel;
import sledwright.domain.Volume;
import sledwright.samples.Equipped;

/**
 * Usable capacity of volumes, by the worked example of a published storage reference guide, in its chapter on RAID capacity; the fewest drives by
 * the manual of a network store.
 */
class VolumeCapacityTest {

    private static double usable(RaidLevel level, double... gb) {
        List<Drive> drives = DoubleStream.of(gb)
                .mapToObj(size -> Equipped.drive("D", DriveKind.HDD, DriveInterface.SATA, FormFactor.LARGE, size, 5)).toList();
        return new Volume("v", level, "front", drives, List.of()).usableGb();
    }

    private static double ofSix(RaidLevel level) {
        return usable(level, Collections.nCopies(6, 40.0).stream().mapToDouble(Double::doubleValue).toArray());
    }

    @Test
    void sixDrivesOf40Gb() {
        assertThat(ofSix(RaidLevel.LEVEL_0)).isEqualTo(240);
        assertThat(ofSix(RaidLevel.LEVEL_5)).isEqualTo(200);
        assertThat(ofSix(RaidLevel.LEVEL_10)).isEqualTo(120);
    }

    @Test
    void theSmallestDriveCounts() {
        assertThat(usable(RaidLevel.LEVEL_5, 20, 30, 40, 45)).isEqualTo(60);
    }

    @Test
    void fewestDrives() {
        assertThat(RaidLevel.LEVEL_5.takes(2)).isFalse();
        assertThat(RaidLevel.LEVEL_5.takes(3)).isTrue();
        assertThat(RaidLevel.LEVEL_6.takes(3)).isFalse();
        assertThat(RaidLevel.LEVEL_6.takes(4)).isTrue();
        assertThat(RaidLevel.LEVEL_10.takes(2)).isFalse();
        assertThat(RaidLevel.LEVEL_10.takes(5)).isFalse();
        assertThat(RaidLevel.LEVEL_10.takes(6)).isTrue();
    }
}
