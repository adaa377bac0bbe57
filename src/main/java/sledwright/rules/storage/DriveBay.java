package sledwright.rules.storage;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.BayGroup;
import sledwright.domain.Build;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.Expansion;
import sledwright.domain.FormFactor;
import sledwright.domain.Volume;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: drives sit in bays of their form factor and interface, wired to a socket that is fitted. */
public final class DriveBay extends Rule<Machine> {

    public static final String ID = "drive-bay";

    public DriveBay() {
        super(ID, "Every drive sits in a bay of its form factor and interface, wired to a fitted socket.");
    }

    /** Whether drives of that kind sit in the group with a given number of fitted processors. */
    public static boolean allows(BayGroup group, Drive.Kind drive, int processors) {
        return isLive(group, processors) && group.formFactors().contains(drive.formFactor()) && group.links().contains(drive.link());
    }

    private static boolean isLive(BayGroup group, int processors) {
        return Expansion.isLive(group.socket(), processors);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Build build = machine.build();
        List<Violation> broken = new ArrayList<>();
        for (Volume volume : build.fitout().volumes()) {
            Optional<BayGroup> group = build.platform().expansion().group(volume.group());
            if (group.isEmpty()) {
                broken.add(broken(volume.name(), "%s has no group of drive bays %s.", build.platform().sku(), volume.group()));
                continue;
            }
            if (!isLive(group.get(), build.processors().size())) {
                broken.add(broken(volume.name(), "The bays %s are wired to socket %s, which is empty.", volume.group(),
                        group.get().socket().getAsInt()));
            }
            Set<Drive> seen = new LinkedHashSet<>(volume.all());
            seen.forEach(drive -> misfit(drive, group.get()).ifPresent(broken::add));
        }
        return broken;
    }

    private Optional<Violation> misfit(Drive drive, BayGroup group) {
        if (!group.formFactors().contains(drive.formFactor())) {
            return Optional.of(broken(group.name(), "%s is a %s drive; the bays %s take %s.", drive.sku(), drive.formFactor().label(),
                    group.name(), group.formFactors().stream().sorted().map(FormFactor::label).collect(Collectors.joining(", "))));
        }
        return group.links().contains(drive.link()) ? Optional.empty()
                : Optional.of(broken(group.name(), "%s is a %s drive; the bays %s are wired for %s.",
                drive.sku(), drive.link().label(), group.name(),
                group.links().stream().sorted().map(DriveInterface::label).collect(Collectors.joining(", "))));
    }
}
