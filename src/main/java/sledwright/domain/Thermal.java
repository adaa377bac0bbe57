package sledwright.domain;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The inlet temperatures that a platform allows.
 *
 * @param altitudeFromM   metres above which thin air counts
 * @param metresPerKelvin metres above that which cost one kelvin
 * @param inlet           rows of the table; empty: no rule
 */
public record Thermal(double altitudeFromM, double metresPerKelvin, List<InletRow> inlet) {

    /**
     * @param maxTdpW   the hottest processor that the row serves, watts
     * @param maxInletC the warmest corrected inlet, degrees Celsius
     * @param types     module types that the row serves; empty: all
     */
    public record InletRow(double maxTdpW, double maxInletC, Set<ModuleType> types) {

        public InletRow {
            types = Set.copyOf(types);
        }

        boolean serves(ModuleType type) {
            return types.isEmpty() || types.contains(type);
        }
    }

    public Thermal {
        // Of rows of one TDP, one that names its module types takes precedence over one that serves all.
        inlet = inlet.stream().sorted(Comparator.comparingDouble(InletRow::maxTdpW)
                .thenComparing(row -> row.types().isEmpty())).toList();
    }

    /** The row that governs a processor of {@code tdpW} beside modules of a type: the one of least TDP that suffices. */
    public Optional<InletRow> row(double tdpW, ModuleType type) {
        for (InletRow row : inlet) {
            if (tdpW <= row.maxTdpW() && row.serves(type)) {
                return Optional.of(row);
            }
        }
        return Optional.empty();
    }

    /** The TDP of the last row, watts, or of the last that serves modules of a type; negative infinity where there is none. */
    public double hottestW(Optional<ModuleType> beside) {
        return inlet.stream().filter(row -> beside.isEmpty() || row.serves(beside.get())).mapToDouble(InletRow::maxTdpW).max()
                .orElse(Double.NEGATIVE_INFINITY);
    }

    /** The site's inlet temperature, degrees Celsius, made worse by thin air. */
    public double correctedInletC(double inletC, double altitudeM) {
        return inletC + Math.max(0, altitudeM - altitudeFromM) / metresPerKelvin;
    }
}
