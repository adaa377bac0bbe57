package sledwright.rules.cooling;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Limits;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Thermal;
import sledwright.metrics.Quantity;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/**
 * {@value #ID}: the site's inlet air, corrected for altitude, is no warmer than the platform allows. What its table has no row for, it
 * cools at no inlet temperature, whether the site's is known or not.
 */
public final class InletLimit extends Rule<Machine> {

    public static final String ID = "inlet-limit";

    private static final String INLET = "limit.inlet_c";
    private static final String ALTITUDE = "limit.altitude_m";

    public InletLimit() {
        super(ID, "The site's inlet temperature, corrected for altitude, is within what the platform allows for the TDP and module type.",
                Set.of(PartKind.PROCESSORS, PartKind.MEMORY), INLET, ALTITUDE);
    }

    public static boolean allows(Thermal thermal, double tdpW, ModuleType type, Limits site) {
        if (thermal.inlet().isEmpty()) {
            return true;
        }
        Optional<Thermal.InletRow> row = thermal.row(tdpW, type);
        return row.isPresent() && (site.inletC().isEmpty() || Quantity.within(correctedC(thermal, site), row.get().maxInletC()));
    }

    /** Whether some row of the table, where there is one, serves a processor of a given number of watts beside any modules. */
    public static boolean allows(Thermal thermal, double tdpW) {
        return thermal.inlet().isEmpty() || tdpW <= thermal.hottestW(Optional.empty());
    }

    private static double correctedC(Thermal thermal, Limits site) {
        return Quantity.rounded(thermal.correctedInletC(site.inletC().orElseThrow(), site.altitudeM()));
    }

    /** The warmest inlets of each row at the site's altitude, or the greatest altitudes at the site's inlet. */
    @Override
    public Stream<Double> turningPoints(String key, Limits site, Catalog catalog) {
        return catalog.platforms().stream().map(Platform::thermal).flatMap(thermal -> thermal.inlet().stream()
                .flatMap(row -> key.equals(INLET) ? Stream.of(row.maxInletC() - thermal.correctedInletC(0, site.altitudeM()))
                        : highestM(thermal, row, site))).map(Quantity::rounded);
    }

    private static Stream<Double> highestM(Thermal thermal, Thermal.InletRow row, Limits site) {
        return site.inletC().stream().boxed().filter(inletC -> row.maxInletC() >= inletC && Double.isFinite(thermal.metresPerKelvin()))
                .map(inletC -> thermal.altitudeFromM() + (row.maxInletC() - inletC) * thermal.metresPerKelvin());
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Platform platform = machine.build().platform();
        Limits site = machine.request().limit();
        Set<ModuleType> types = machine.build().modules().values().stream().map(MemoryModule::type).collect(Collectors.toSet());
        List<Violation> broken = new ArrayList<>();
        for (Processor processor : machine.build().processors().stream().distinct().toList()) {
            if (allows(platform.thermal(), processor.tdpW())) {
                types.stream().sorted().filter(type -> !allows(platform.thermal(), processor.tdpW(), type, site))
                        .map(type -> broken(platform, processor, type, site)).forEach(broken::add);
            } else {
                broken.add(tooHot(platform, processor, Optional.empty()));
            }
        }
        return broken;
    }

    private Violation broken(Platform platform, Processor processor, ModuleType type, Limits site) {
        return platform.thermal().row(processor.tdpW(), type)
                .map(row -> broken(processor.sku(),
                        "The inlet air of %s C counts as %s C at %s m; with a processor of %s W and %s the platform allows %s C.",
                        Numbers.plain(site.inletC().orElseThrow()), Numbers.plain(correctedC(platform.thermal(), site)),
                        Numbers.plain(site.altitudeM()), Numbers.plain(processor.tdpW()), type, Numbers.plain(row.maxInletC())))
                .orElseGet(() -> tooHot(platform, processor, Optional.of(type)));
    }

    private Violation tooHot(Platform platform, Processor processor, Optional<ModuleType> beside) {
        double hottestW = platform.thermal().hottestW(beside);
        String modules = beside.map(type -> " beside " + type).orElse("");
        return hottestW < 0 ? broken(processor.sku(), "%s cools no processor%s at any inlet temperature.", platform.sku(), modules)
                : broken(processor.sku(), "%s cools processors of up to %s W%s; %s has a TDP of %s W.", platform.sku(),
                Numbers.plain(hottestW), modules, processor.sku(), Numbers.plain(processor.tdpW()));
    }
}
