package sledwright.rules.choice;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.rules.PartRule;
import sledwright.rules.Parts;
import sledwright.rules.Violation;

/** {@value #ID}: the platform is one that the request names, where it names any. */
public final class AskedPlatform extends PartRule {

    public static final String ID = "asked-platform";

    public AskedPlatform() {
        super(ID, "The platform is one that the request names, where it names any.", Set.of(PartKind.PLATFORMS), "platforms");
    }

    public static boolean allows(Request request, Platform platform) {
        return request.platforms().isEmpty() || request.platforms().contains(platform.sku());
    }

    @Override
    public boolean allows(Parts parts, Request request) {
        return allows(request, parts.platform());
    }

    @Override
    protected List<Violation> breaches(Parts parts, Request request) {
        return List.of(broken(parts.platform().sku(), "The platform is %s; the request asks for %s.", parts.platform().sku(),
                request.platforms().stream().sorted().collect(Collectors.joining(" or "))));
    }
}
