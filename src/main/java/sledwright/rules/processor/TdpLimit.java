package sledwright.rules.processor;

import java.util.List;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: no processor's TDP is above what the platform feeds. */
public final class TdpLimit extends Rule<Machine> {

    public static final String ID = "tdp-limit";

    public TdpLimit() {
        super(ID, "No processor's TDP is above the platform's limit.");
    }

    public static boolean allows(Platform platform, Processor processor) {
        return processor.tdpW() <= platform.processors().maxTdpW();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Platform platform = machine.build().platform();
        return machine.build().processors().stream().distinct().filter(processor -> !allows(platform, processor))
                .map(processor -> broken(processor.sku(), "%s has a TDP of %s W; %s takes up to %s W.", processor.sku(),
                        Numbers.plain(processor.tdpW()), platform.sku(), Numbers.plain(platform.processors().maxTdpW())))
                .toList();
    }
}
