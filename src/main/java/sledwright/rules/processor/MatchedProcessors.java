package sledwright.rules.processor;

import java.util.List;
import java.util.stream.Collectors;
import sledwright.domain.Processor;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: all fitted processors are the same part. */
public final class MatchedProcessors extends Rule<Machine> {

    public static final String ID = "matched-processors";

    public MatchedProcessors() {
        super(ID, "All fitted processors are the same part.");
    }

    public static boolean allows(List<Processor> fitted) {
        return fitted.stream().distinct().count() <= 1;
    }

    @Override
    public List<Violation> judge(Machine machine) {
        List<Processor> fitted = machine.build().processors();
        return allows(fitted) ? List.of() : List.of(broken("", "The fitted processors differ: %s.",
                fitted.stream().map(Processor::sku).distinct().collect(Collectors.joining(", "))));
    }
}
