package sledwright.rules.choice;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import sledwright.domain.Request;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: every part that the request wants used is in the machine. */
public final class RequiredPart extends Rule<Machine> {

    public static final String ID = "required-part";

    public RequiredPart() {
        super(ID, "Every part that the request wants used is in every machine.", "use");
    }

    /** Whether a choice among parts, one of which the machine takes, keeps every wish that only that choice can grant. */
    public static boolean allows(Request request, Set<String> choices, String chosen) {
        return request.use().isEmpty() || request.use().stream().filter(choices::contains).allMatch(chosen::equals);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Set<String> present = new HashSet<>(machine.build().partCounts().keySet());
        machine.build().fitout().housed().ifPresent(housed -> present.addAll(housed.partCounts().keySet()));
        return machine.request().use().stream().sorted().filter(sku -> !present.contains(sku))
                .map(sku -> broken(sku, "The request wants %s used, and the machine does without it.", sku)).toList();
    }
}
