package sledwright.domain;

import java.util.OptionalDouble;

/**
 * A drive.
 *
 * @param capacityGb    decimal, as drives are sold
 * @param readMbs       MB/s; empty where nobody says
 * @param writeMbs      MB/s
 * @param enduranceDwpd writes of its whole capacity that it bears each day
 */
public record Drive(String sku, String description, Kind likeness, double powerW, OptionalDouble readMbs, OptionalDouble writeMbs,
                    OptionalDouble enduranceDwpd) implements Part {

    /** What drives of one volume have in common; part numbers may differ. */
    public record Kind(DriveKind kind, DriveInterface link, FormFactor formFactor, double capacityGb) {
    }

    public DriveKind kind() {
        return likeness.kind();
    }

    /** What it is wired by. */
    public DriveInterface link() {
        return likeness.link();
    }

    public FormFactor formFactor() {
        return likeness.formFactor();
    }

    public double capacityGb() {
        return likeness.capacityGb();
    }

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
