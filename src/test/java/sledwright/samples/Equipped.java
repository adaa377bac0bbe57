package sledwright.samples;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import sledwright.domain.BayGroup;
import sledwright.domain.Card;
import sledwright.domain.CardHeight;
import sledwright.domain.CardKind;
import sledwright.domain.CardShape;
import sledwright.domain.CardSlot;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.DriveSupport;
import sledwright.domain.Expansion;
import sledwright.domain.Extra;
import sledwright.domain.FormFactor;
import sledwright.domain.Need;
import sledwright.domain.RaidLevel;

/** Sample drives, cards and extras, and what a sample platform takes of them. */
public final class Equipped {

    public static final Drive SSD = drive("SSD-480", DriveKind.SSD, DriveInterface.SATA, FormFactor.SMALL, 480, 3);
    public static final Drive OTHER_SSD = drive("SSD-480B", DriveKind.SSD, DriveInterface.SATA, FormFactor.SMALL, 480, 4);
    public static final Drive BIG_SSD = drive("SSD-960", DriveKind.SSD, DriveInterface.SATA, FormFactor.SMALL, 960, 4);
    public static final Drive SAS = drive("SAS-1200", DriveKind.HDD, DriveInterface.SAS, FormFactor.SMALL, 1200, 7);
    public static final Drive HDD = drive("HDD-4000", DriveKind.HDD, DriveInterface.SATA, FormFactor.LARGE, 4000, 9);
    public static final Drive NVME = drive("NV-1600", DriveKind.SSD, DriveInterface.NVME, FormFactor.SMALL, 1600, 11);

    public static final Card NET = new Card("NET-2X10", "NET-2X10", CardKind.NETWORK, new CardShape(3, 8, CardHeight.LOW, 160, 11), 2, 10, Optional.empty());
    public static final Card FAST_NET = new Card("NET-2X25", "NET-2X25", CardKind.NETWORK, new CardShape(3, 8, CardHeight.FULL, 170, 16), 2, 25, Optional.empty());
    public static final Card CONTROLLER = new Card("CTL-8", "CTL-8", CardKind.CONTROLLER, new CardShape(3, 8, CardHeight.LOW, 168, 13), 0, 0,
            Optional.of(new DriveSupport(Set.of(DriveInterface.SATA, DriveInterface.SAS, DriveInterface.NVME), 8,
                    Set.of(RaidLevel.LEVEL_0, RaidLevel.LEVEL_1, RaidLevel.LEVEL_5, RaidLevel.LEVEL_6, RaidLevel.LEVEL_10))));

    public static final Extra FANS = new Extra("FANS-2", "FANS-2", 9);
    public static final Extra BLANK = new Extra("BLANK", "BLANK", 0);
    public static final Extra RISER = new Extra("RISER-2", "RISER-2", 1);
    public static final Extra RAILS = new Extra("RAILS", "RAILS", 0);

    /**
     * Eight front bays, two NVMe bays on the second socket, four ports of SATA on board with levels 0 and 1; slot X1 of full height, X2 low behind a
     * riser on the second socket; fans for two processors, a blank for each empty socket.
     */
    public static final Expansion EXPANSION = new Expansion(
            List.of(new BayGroup("front", 8, Set.of(FormFactor.SMALL), Set.of(DriveInterface.SATA, DriveInterface.SAS), Set.of(), OptionalInt.empty()),
                    new BayGroup("fast", 2, Set.of(FormFactor.SMALL), Set.of(DriveInterface.NVME), Set.of(RaidLevel.LEVEL_1), OptionalInt.of(2))),
            Optional.of(new DriveSupport(Set.of(DriveInterface.SATA), 4, Set.of(RaidLevel.LEVEL_0, RaidLevel.LEVEL_1))),
            List.of(new CardSlot("X1", new CardShape(3, 16, CardHeight.FULL, 312, 75), OptionalInt.of(1), Optional.empty()),
                    new CardSlot("X2", new CardShape(3, 8, CardHeight.LOW, 168, 25), OptionalInt.of(2), Optional.of("RISER-2"))),
            List.of(new Need(Need.Cause.PROCESSORS, 2, Map.of("FANS-2", 1)), new Need(Need.Cause.EMPTY_SOCKETS, 0, Map.of("BLANK", 1))));

    private Equipped() {
    }

    public static Drive drive(String sku, DriveKind kind, DriveInterface link, FormFactor size, double capacityGb, double powerW) {
        return new Drive(sku, sku, new Drive.Kind(kind, link, size, capacityGb), powerW, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** A machine of the sample platform with two processors, memory, and the fans that they call for. */
    public static MachineSketch machine() {
        return Samples.machine(Samples.platform().expansion(EXPANSION).make()).channels(4, Samples.R16).with(fitout -> fitout.extra(FANS, 1));
    }

    /** The same with one processor and the blank that the empty socket calls for. */
    public static MachineSketch machineOfOne() {
        return Samples.machine(Samples.platform().expansion(EXPANSION).make()).processors(1, Samples.P10).channels(4, Samples.R16)
                .with(fitout -> fitout.extra(BLANK, 1));
    }
}
