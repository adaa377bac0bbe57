package sledwright.rules.cooling;

import java.util.List;
import sledwright.domain.CoolingKit;
import sledwright.domain.Processor;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the cooling kit is rated for the processor's TDP. */
public final class HeatSinkRating extends Rule<Machine> {

    public static final String ID = "heat-sink-rating";

    public HeatSinkRating() {
        super(ID, "The cooling kit is rated for the processor's TDP.");
    }

    public static boolean allows(CoolingKit kit, Processor processor) {
        return processor.tdpW() <= kit.maxTdpW();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        CoolingKit kit = machine.build().cooling();
        return machine.build().processors().stream().distinct().filter(processor -> !allows(kit, processor))
                .map(processor -> broken(processor.sku(), "%s is rated for %s W; %s has a TDP of %s W.", kit.sku(),
                        Numbers.plain(kit.maxTdpW()), processor.sku(), Numbers.plain(processor.tdpW())))
                .toList();
    }
}
