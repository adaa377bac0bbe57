package sledwright.rules.storage;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.BayGroup;
import sledwright.domain.Build;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveSupport;
import sledwright.domain.Fitout;
import sledwright.domain.RaidLevel;
import sledwright.domain.Volume;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: what drives a volume serves its interface, knows its level and has a port for each drive. */
public final class VolumeDriver extends Rule<Machine> {

    public static final String ID = "volume-driver";

    public VolumeDriver() {
        super(ID, "SATA and SAS volumes hang on one driver that serves their interfaces, knows their levels and has a port for each drive;"
                + " NVMe volumes hang on bays that know their level.");
    }

    /** Whether one driver serves a volume of a given number of data drives, ports aside. */
    public static boolean allows(DriveSupport driver, DriveInterface link, RaidLevel level, int drives) {
        return driver.links().contains(link) && knows(driver.levels(), level, drives);
    }

    /** Whether a group of bays serves an NVMe volume of a given number of data drives. */
    public static boolean allows(BayGroup group, RaidLevel level, int drives) {
        return knows(group.levels(), level, drives);
    }

    /** Whether one driver has ports for a given number of drives. */
    public static boolean allows(DriveSupport driver, int drives) {
        return drives <= driver.ports();
    }

    private static boolean knows(Set<RaidLevel> levels, RaidLevel level, int drives) {
        return !level.needsSupport(drives) || levels.contains(level);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Build build = machine.build();
        List<Violation> broken = new ArrayList<>(ofBays(build));
        Set<DriveInterface> links = EnumSet.noneOf(DriveInterface.class);
        driven(build).forEach(drive -> links.add(drive.link()));
        if (links.isEmpty()) {
            return broken;
        }
        Fitout fitout = build.fitout();
        Optional<DriveSupport> driver = driver(build);
        if (driver.isEmpty()) {
            broken.add(broken("", nothing(build), words(links)));
            return broken;
        }
        String name = fitout.driver().orElseThrow().equals(Fitout.ONBOARD) ? "The board" : fitout.cards().get(fitout.driver().get()).sku();
        links.stream().filter(link -> !driver.get().links().contains(link))
                .forEach(link -> broken.add(broken(fitout.driver().get(), "%s drives no %s drives.", name, link.label())));
        Set<RaidLevel> unknown = new LinkedHashSet<>();
        fitout.volumes().stream().filter(volume -> volume.all().stream().anyMatch(drive -> drive.link().needsDriver()))
                .filter(volume -> !knows(driver.get().levels(), volume.level(), volume.drives().size()))
                .forEach(volume -> unknown.add(volume.level()));
        unknown.forEach(level -> broken.add(broken(fitout.driver().get(), "%s knows no level %s.", name, level.label())));
        int drives = driven(build).size();
        if (!allows(driver.get(), drives)) {
            broken.add(broken(fitout.driver().get(), "%s has %s for %s.", name, Numbers.counted(driver.get().ports(), "port"),
                    Numbers.counted(drives, "drive")));
        }
        return broken;
    }

    /** The drives that need a driver. */
    private static List<Drive> driven(Build build) {
        return build.fitout().drives().stream().filter(drive -> drive.link().needsDriver()).toList();
    }

    /** What the machine's driver can do; empty where it has none. */
    private static Optional<DriveSupport> driver(Build build) {
        Fitout fitout = build.fitout();
        return fitout.driver().flatMap(name -> name.equals(Fitout.ONBOARD) ? build.platform().expansion().onboard()
                : Optional.ofNullable(fitout.cards().get(name)).flatMap(card -> card.support()));
    }

    private static String nothing(Build build) {
        Optional<String> driver = build.fitout().driver();
        if (driver.isEmpty()) {
            return "Nothing drives the %s drives.";
        }
        return driver.get().equals(Fitout.ONBOARD) ? "The %s drives hang on the board, which drives none by itself."
                : "The %s drives hang on slot " + driver.get().replace("%", "%%") + ", in which there is no controller.";
    }

    private List<Violation> ofBays(Build build) {
        List<Violation> broken = new ArrayList<>();
        for (Volume volume : build.fitout().volumes()) {
            Optional<BayGroup> group = build.platform().expansion().group(volume.group());
            boolean hangsOnBays = volume.all().stream().anyMatch(drive -> !drive.link().needsDriver());
            if (hangsOnBays && group.isPresent() && !allows(group.get(), volume.level(), volume.drives().size())) {
                broken.add(broken(volume.name(), "The bays %s know no level %s for NVMe drives.", volume.group(), volume.level().label()));
            }
        }
        return broken;
    }

    private static String words(Set<DriveInterface> links) {
        return links.stream().map(DriveInterface::label).collect(Collectors.joining(" and "));
    }
}
