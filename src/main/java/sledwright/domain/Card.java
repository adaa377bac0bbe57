package sledwright.domain;

import java.util.Optional;

/**
 * An expansion card.
 *
 * @param ports    of a network card; 0 of others
 * @param portGbit Gbit/s of each port
 * @param support  what a controller does for drives; empty for other cards
 */
public record Card(String sku, String description, CardKind kind, CardShape shape, int ports, double portGbit,
                   Optional<DriveSupport> support) implements Part {

    public double powerW() {
        return shape.powerW();
    }

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
