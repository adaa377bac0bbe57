package sledwright.rules.cooling;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.Limits;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Processor;
import sledwright.domain.Thermal;
import sledwright.metrics.Quantity;
import sledwright.rules.Machine;
import sledwright.rules.Numbers;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/** {@value #ID}: the site's inlet air, corrected for altitude, is no warmer than the platform allows. */
public final class InletLimit extends Rule<Machine> {

    public static final String ID = "inlet-limit";

    public InletLimit() {
        super(ID, "The site's inlet temperature, corrected for altitude, is within what the platform allows for the TDP and module type.");
    }

    public static boolean allows(Thermal thermal, double tdpW, ModuleType type, Limits site) {
        if (site.inletC().isEmpty() || thermal.inlet().isEmpty()) {
            return true;
        }
        Optional<Thermal.InletRow> row = thermal.row(tdpW, type);
        return row.isPresent() && Quantity.within(correctedC(thermal, site), row.get().maxInletC());
    }

    private static double correctedC(Thermal thermal, Limits site) {
        return Quantity.rounded(thermal.correctedInletC(site.inletC().orElseThrow(), site.altitudeM()));
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Thermal thermal = machine.build().platform().thermal();
        Limits site = machine.request().limit();
        Set<ModuleType> types = machine.build().modules().values().stream().map(MemoryModule::type).collect(Collectors.toSet());
        List<Violation> broken = new ArrayList<>();
        for (Processor processor : machine.build().processors().stream().distinct().toList()) {
            types.stream().sorted().filter(type -> !allows(thermal, processor.tdpW(), type, site))
                    .map(type -> broken(thermal, processor, type, site)).forEach(broken::add);
        }
        return broken;
    }

    private Violation broken(Thermal thermal, Processor processor, ModuleType type, Limits site) {
        String tdp = Numbers.plain(processor.tdpW());
        return thermal.row(processor.tdpW(), type)
                .map(row -> broken(processor.sku(),
                        "The inlet air of %s C counts as %s C at %s m; with a processor of %s W and %s the platform allows %s C.",
                        Numbers.plain(site.inletC().orElseThrow()), Numbers.plain(correctedC(thermal, site)),
                        Numbers.plain(site.altitudeM()), tdp, type, Numbers.plain(row.maxInletC())))
                .orElseGet(() -> broken(processor.sku(),
                        "The platform states no inlet temperature for a processor of %s W with %s.", tdp, type));
    }
}
