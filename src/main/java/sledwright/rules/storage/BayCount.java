package sledwright.rules.storage;

import java.util.List;
import sledwright.domain.BayGroup;
import sledwright.domain.Build;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: a group of bays holds no more drives than it has bays. */
public final class BayCount extends Rule<Machine> {

    public static final String ID = "bay-count";

    public BayCount() {
        super(ID, "A group of drive bays holds no more drives than it has bays, hot spares included.");
    }

    public static boolean allows(BayGroup group, int drives) {
        return drives <= group.count();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Build build = machine.build();
        return build.platform().expansion().bays().stream().filter(group -> !allows(group, drives(build, group)))
                .map(group -> broken(group.name(), "The bays %s hold %s; there are %s.", group.name(),
                        Numbers.counted(drives(build, group), "drive"), group.count())).toList();
    }

    private static int drives(Build build, BayGroup group) {
        return build.fitout().volumes().stream().filter(volume -> volume.group().equals(group.name()))
                .mapToInt(volume -> volume.all().size()).sum();
    }
}
