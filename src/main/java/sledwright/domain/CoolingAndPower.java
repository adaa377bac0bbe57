package sledwright.domain;

import java.util.List;

/** How a platform is kept cool, and how it is fed. */
public record CoolingAndPower(List<CoolingKit> kits, Thermal thermal, Power power) {

    public CoolingAndPower {
        kits = List.copyOf(kits);
    }
}
