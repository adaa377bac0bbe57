package sledwright.rules.choice;

import java.util.List;
import java.util.stream.Collectors;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: the platform is one that the request names, where it names any. */
public final class AskedPlatform extends Rule<Machine> {

    public static final String ID = "asked-platform";

    public AskedPlatform() {
        super(ID, "The platform is one that the request names, where it names any.");
    }

    public static boolean allows(Request request, Platform platform) {
        return request.platforms().isEmpty() || request.platforms().contains(platform.sku());
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Platform platform = machine.build().platform();
        return allows(machine.request(), platform) ? List.of() : List.of(broken(platform.sku(),
                "The platform is %s; the request asks for %s.", platform.sku(),
                machine.request().platforms().stream().sorted().collect(Collectors.joining(" or "))));
    }
}
