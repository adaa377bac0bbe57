package sledwright.rules.choice;

import java.util.List;
import sledwright.domain.Request;
import sledwright.rules.Housing;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: no part that the request forbids is in the machine, or in the enclosure that it stands in. */
public final class ForbiddenPart extends Rule<Machine> {

    public static final String ID = "forbidden-part";

    public ForbiddenPart() {
        super(ID, "No part that the request forbids is in the machine.", "forbid");
    }

    public static boolean allows(Request request, String sku) {
        return !request.forbid().contains(sku);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        return machine.build().partCounts().keySet().stream().filter(sku -> !allows(machine.request(), sku))
                .map(sku -> broken(sku, "The machine holds %s, which the request forbids.", sku)).toList();
    }

    @Override
    public List<Violation> judgeAround(Housing housing) {
        return housing.filled().partCounts().keySet().stream().filter(sku -> !allows(housing.request(), sku))
                .map(sku -> broken(sku, "The machine stands in an enclosure with %s, which the request forbids.", sku)).toList();
    }
}
