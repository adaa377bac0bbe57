package sledwright.domain;

/** Anything else that is sold by the piece: rails, fan sets, blanks, risers, licences, carriage, tests. */
public record Extra(String sku, String description, double powerW) implements Part {

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
