package sledwright.rules.processor;

import java.util.List;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.rules.PartRule;
import sledwright.rules.Parts;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: no processor's TDP is above what the platform feeds. */
public final class TdpLimit extends PartRule {

    public static final String ID = "tdp-limit";

    public TdpLimit() {
        super(ID, "No processor's TDP is above the platform's limit.", PartKind.PLATFORMS, PartKind.PROCESSORS);
    }

    public static boolean allows(Platform platform, Processor processor) {
        return processor.tdpW() <= platform.processors().maxTdpW();
    }

    @Override
    public boolean allows(Parts parts, Request request) {
        return allows(parts.platform(), parts.processor());
    }

    @Override
    protected List<Violation> breaches(Parts parts, Request request) {
        Platform platform = parts.platform();
        return List.of(broken(parts.processor().sku(), "%s has a TDP of %s W; %s takes up to %s W.", parts.processor().sku(),
                Numbers.plain(parts.processor().tdpW()), platform.sku(), Numbers.plain(platform.processors().maxTdpW())));
    }
}
