package sledwright.domain;

import java.util.OptionalDouble;

/**
 * Where machines stand.
 *
 * @param inletC    air at a machine's inlet, degrees Celsius; empty: not known
 * @param altitudeM metres above the sea
 * @param mainsV    volts of the mains; empty: not known
 */
public record Site(OptionalDouble inletC, double altitudeM, OptionalDouble mainsV) {

    /** Whether the mains are low line. */
    public boolean lowLine() {
        return mainsV.isPresent() && mainsV.getAsDouble() < Supply.LOW_LINE_BELOW_V;
    }
}
