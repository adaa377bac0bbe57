package sledwright.rules.target;

import java.util.List;
import java.util.Set;
import sledwright.domain.PartKind;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.rules.Machine;
import sledwright.rules.PartRule;
import sledwright.rules.Parts;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the machine has exactly the number of processors that the request asks for, where it asks. */
public final class ProcessorCount extends PartRule {

    public static final String ID = "processor-count";

    public ProcessorCount() {
        super(ID, "The machine has the number of processors that the request asks for.", Set.of(PartKind.PROCESSORS), "require.processors");
    }

    public static boolean allows(Requirements require, int fitted) {
        return require.processors() == 0 || require.processors() == fitted;
    }

    @Override
    public boolean allows(Parts parts, Request request) {
        return allows(request.require(), parts.fitted());
    }

    /** A machine without processors has no part that could be judged, but a number. */
    @Override
    public List<Violation> judge(Machine machine) {
        return judge(Parts.of(machine.build().platform()).with((Processor) null, machine.build().processors().size()), machine.request());
    }

    @Override
    protected List<Violation> breaches(Parts parts, Request request) {
        return List.of(broken("", "The machine has %s; the request asks for %s.",
                Numbers.counted(parts.fitted(), "processor"), request.require().processors()));
    }
}
