package sledwright.rules.cooling;

import java.util.List;
import sledwright.domain.CoolingKit;
import sledwright.domain.PartKind;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.rules.PartRule;
import sledwright.rules.Parts;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the cooling kit is rated for the processor's TDP. */
public final class HeatSinkRating extends PartRule {

    public static final String ID = "heat-sink-rating";

    public HeatSinkRating() {
        super(ID, "The cooling kit is rated for the processor's TDP.", PartKind.PROCESSORS, PartKind.COOLING);
    }

    public static boolean allows(CoolingKit kit, Processor processor) {
        return processor.tdpW() <= kit.maxTdpW();
    }

    @Override
    public boolean allows(Parts parts, Request request) {
        return allows(parts.cooling(), parts.processor());
    }

    @Override
    protected List<Violation> breaches(Parts parts, Request request) {
        return List.of(broken(parts.processor().sku(), "%s is rated for %s W; %s has a TDP of %s W.", parts.cooling().sku(),
                Numbers.plain(parts.cooling().maxTdpW()), parts.processor().sku(), Numbers.plain(parts.processor().tdpW())));
    }
}
