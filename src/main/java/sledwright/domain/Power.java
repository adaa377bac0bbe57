package sledwright.domain;

import java.util.List;
import java.util.OptionalDouble;

/**
 * How a platform is fed.
 *
 * @param baseW    watts of the platform itself
 * @param budgetW  watts that the enclosure grants the machine; empty: no budget
 * @param supplies options to choose from; empty: the enclosure feeds the machine
 */
public record Power(double baseW, OptionalDouble budgetW, List<Supply> supplies) {

    public Power {
        supplies = List.copyOf(supplies);
    }
}
