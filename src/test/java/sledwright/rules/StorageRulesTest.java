package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Equipped.BIG_SSD;
import static sledwright.samples.Equipped.CONTROLLER;
import static sledwright.samples.Equipped.HDD;
import static sledwright.samples.Equipped.NVME;
import static sledwright.samples.Equipped.OTHER_SSD;
import static sledwright.samples.Equipped.SAS;
import static sledwright.samples.Equipped.SSD;
import static sledwright.samples.Equipped.machine;
import static sledwright.samples.Equipped.machineOfOne;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.RaidLevel;
import sledwright.domain.VolumeWish;
import sledwright.rules.storage.BayCount;
import sledwright.rules.storage.DriveBay;
import sledwright.rules.storage.StorageCapacity;
import sledwright.rules.storage.VolumeDriver;
import sledwright.rules.storage.VolumeDrives;
import sledwright.samples.MachineSketch;
import sledwright.samples.Samples;

/** Drives in a machine of two processors with eight front bays, two fast ones on the second socket, and four ports on board. */
class StorageRulesTest extends RuleGroup {

    @ForRule(DriveBay.ID)
    Examples driveBay() {
        return offender("a drive of 3.5 inches in bays of 2.5", machine().with(f -> f.volume("data", RaidLevel.LEVEL_1, "front", HDD, HDD).driver("onboard")))
                .says("front", "HDD-4000 is a 3.5 drive; the bays front take 2.5.")
                .andOffender("an NVMe drive in bays that are wired for others", machine().with(f -> f.volume("data", RaidLevel.LEVEL_0, "front", NVME)))
                .says("front", "NV-1600 is a NVMe drive; the bays front are wired for SATA, SAS.")
                .andOffender("bays of the second socket beside one processor", machineOfOne().with(f -> f.volume("fast", RaidLevel.LEVEL_1, "fast", NVME, NVME)))
                .says("fast", "The bays fast are wired to socket 2, which is empty.")
                .andOffender("bays that the platform has not", machine().with(f -> f.volume("data", RaidLevel.LEVEL_1, "rear", SSD, SSD).driver("onboard")))
                .says("data", "BOX has no group of drive bays rear.")
                .innocent("drives in bays of their size and interface", machine().with(f -> f.volume("data", RaidLevel.LEVEL_1, "front", SSD, SSD).driver("onboard")))
                .innocent("bays of the second socket beside two processors", machine().with(f -> f.volume("fast", RaidLevel.LEVEL_1, "fast", NVME, NVME)));
    }

    @ForRule(BayCount.ID)
    Examples bayCount() {
        return offender("nine drives in eight bays", machine().with(f -> f.volume("data", RaidLevel.LEVEL_6, "front", 7, SAS, 0)
                        .volume("system", RaidLevel.LEVEL_1, "front", 2, SAS, 0).driver("X1").card("X1", CONTROLLER)))
                .alsoBreaks(VolumeDriver.ID).says("front", "The bays front hold 9 drives; there are 8.")
                .andOffender("hot spares count", machine().with(f -> f.volume("fast", RaidLevel.LEVEL_1, "fast", 2, NVME, 1)))
                .says("fast", "The bays fast hold 3 drives; there are 2.")
                .innocent("eight drives in eight bays", machine().with(f -> f.volume("data", RaidLevel.LEVEL_6, "front", 6, SAS, 0)
                        .volume("system", RaidLevel.LEVEL_1, "front", 2, SAS, 0).driver("X1").card("X1", CONTROLLER)));
    }

    @ForRule(VolumeDrives.ID)
    Examples volumeDrives() {
        return offender("two capacities", machine().with(f -> f.volume("data", RaidLevel.LEVEL_1, "front", SSD, BIG_SSD).driver("onboard")))
                .says("data", "The drives of volume data are not alike: SSD-480 is 2.5 SATA ssd of 480 GB, SSD-960 is 2.5 SATA ssd of 960 GB.")
                .andOffender("two drives at level 5", raid(RaidLevel.LEVEL_5, 2))
                .says("data", "Volume data has 2 data drives; level 5 takes three or more.")
                .andOffender("three drives at level 6", raid(RaidLevel.LEVEL_6, 3))
                .says("data", "Volume data has 3 data drives; level 6 takes four or more.")
                .andOffender("three drives at level 1", raid(RaidLevel.LEVEL_1, 3))
                .says("data", "Volume data has 3 data drives; level 1 takes two.")
                .andOffender("five drives at level 10", raid(RaidLevel.LEVEL_10, 5))
                .says("data", "Volume data has 5 data drives; level 10 takes an even number from four on.")
                .andOffender("none at level 0", machine().with(f -> f.volume("data", RaidLevel.LEVEL_0, "front")))
                .says("data", "Volume data has 0 data drives; level 0 takes one or more.")
                .innocent("two part numbers that are alike", machine().with(f -> f.volume("data", RaidLevel.LEVEL_1, "front", SSD, OTHER_SSD).driver("onboard")))
                .innocent("three drives at level 5", raid(RaidLevel.LEVEL_5, 3))
                .innocent("six drives at level 10", raid(RaidLevel.LEVEL_10, 6));
    }

    private static MachineSketch raid(RaidLevel level, int drives) {
        return machine().with(f -> f.volume("data", level, "front", drives, SAS, 0).driver("X1").card("X1", CONTROLLER));
    }

    @ForRule(VolumeDriver.ID)
    Examples volumeDriver() {
        return offender("nothing drives them", machine().with(f -> f.volume("data", RaidLevel.LEVEL_0, "front", SSD)))
                .says("", "Nothing drives the SATA drives.")
                .andOffender("an interface that the board does not drive", machine().with(f -> f.volume("data", RaidLevel.LEVEL_1, "front", SAS, SAS).driver("onboard")))
                .says("onboard", "The board drives no SAS drives.")
                .andOffender("a level that the board does not know", machine().with(f -> f.volume("data", RaidLevel.LEVEL_5, "front", 3, SSD, 0).driver("onboard")))
                .says("onboard", "The board knows no level 5.")
                .andOffender("more drives than ports", machine().with(f -> f.volume("data", RaidLevel.LEVEL_0, "front", 4, SSD, 0)
                        .volume("more", RaidLevel.LEVEL_0, "front", 1, SSD, 0).driver("onboard")))
                .says("onboard", "The board has 4 ports for 5 drives.")
                .andOffender("a slot without a controller", machine().with(f -> f.volume("data", RaidLevel.LEVEL_0, "front", SSD).driver("X1")))
                .says("", "The SATA drives hang on slot X1, in which there is no controller.")
                .andOffender("a board that drives none", Samples.machine(Samples.platform().make()).channels(4, Samples.R16)
                        .with(f -> f.volume("data", RaidLevel.LEVEL_0, "front", SSD).driver("onboard")))
                .alsoBreaks(DriveBay.ID).says("", "The SATA drives hang on the board, which drives none by itself.")
                .andOffender("bays that do not know the level", machine().with(f -> f.volume("fast", RaidLevel.LEVEL_0, "fast", NVME, NVME)))
                .says("fast", "The bays fast know no level 0 for NVMe drives.")
                .innocent("a single drive needs no level", machine().with(f -> f.volume("fast", RaidLevel.LEVEL_0, "fast", NVME)))
                .innocent("a controller for the level that the board does not know", raid(RaidLevel.LEVEL_5, 3))
                .innocent("as many drives as ports", machine().with(f -> f.volume("data", RaidLevel.LEVEL_0, "front", 4, SSD, 0).driver("onboard")))
                .innocent("a driver that nothing hangs on", machine().with(f -> f.volume("fast", RaidLevel.LEVEL_0, "fast", NVME).driver("X1")));
    }

    @ForRule(StorageCapacity.ID)
    Examples storageCapacity() {
        return offender("no such volume", machine().equipment(asked(500, RaidLevel.LEVEL_1, 0)))
                .says("data", "The machine has no volume data; the request asks for 500 GB at level 1.")
                .andOffender("480 GB of 480.5", mirrored().equipment(asked(480.5, RaidLevel.LEVEL_1, 0)))
                .says("data", "Volume data holds 480 GB; the request asks for 480.5 GB.")
                .andOffender("another level", mirrored().equipment(asked(400, RaidLevel.LEVEL_0, 0)))
                .says("data", "Volume data is at level 1; the request asks for level 0.")
                .andOffender("one hot spare too few", mirrored().equipment(asked(400, RaidLevel.LEVEL_1, 1)))
                .says("data", "Volume data has 0 hot spares; the request asks for 1.")
                .andOffender("another kind", mirrored().equipment(new Equipment(List.of(new VolumeWish("data", 400, RaidLevel.LEVEL_1, Optional.of(DriveKind.HDD),
                        Optional.empty(), 0)), List.of(), Map.of(), EnclosureFrom.OWN)))
                .says("data", "Volume data has SSD-480, a SATA ssd; the request asks for hdd.")
                .andOffender("another interface", mirrored().equipment(new Equipment(List.of(new VolumeWish("data", 400, RaidLevel.LEVEL_1, Optional.empty(),
                        Optional.of(DriveInterface.SAS), 0)), List.of(), Map.of(), EnclosureFrom.OWN)))
                .says("data", "Volume data has SSD-480, a SATA ssd; the request asks for SAS drives.")
                .innocent("480 GB of 480", mirrored().equipment(asked(480, RaidLevel.LEVEL_1, 0)))
                .innocent("more hot spares than asked for", machine().with(f -> f.volume("data", RaidLevel.LEVEL_1, "front", 2, SSD, 1).driver("onboard"))
                        .equipment(asked(480, RaidLevel.LEVEL_1, 0)))
                .innocent("none asked for", mirrored());
    }

    private static MachineSketch mirrored() {
        return machine().with(f -> f.volume("data", RaidLevel.LEVEL_1, "front", SSD, SSD).driver("onboard"));
    }

    private static Equipment asked(double usableGb, RaidLevel level, int spares) {
        return new Equipment(List.of(new VolumeWish("data", usableGb, level, Optional.empty(), Optional.empty(), spares)), List.of(), Map.of(), EnclosureFrom.OWN);
    }
}
