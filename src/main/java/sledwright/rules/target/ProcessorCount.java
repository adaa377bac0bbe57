package sledwright.rules.target;

import java.util.List;
import sledwright.domain.Requirements;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the machine has exactly the number of processors that the request asks for, where it asks. */
public final class ProcessorCount extends Rule<Machine> {

    public static final String ID = "processor-count";

    public ProcessorCount() {
        super(ID, "The machine has the number of processors that the request asks for.");
    }

    public static boolean allows(Requirements require, int fitted) {
        return require.processors() == 0 || require.processors() == fitted;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Requirements require = machine.request().require();
        int fitted = machine.build().processors().size();
        return allows(require, fitted) ? List.of() : List.of(broken("", "The machine has %s; the request asks for %d.",
                Numbers.counted(fitted, "processor"), require.processors()));
    }
}
