package sledwright.domain;

/** Anything else that is sold by the piece: rails, fan sets, blanks, risers, licences, carriage, tests. */
public record Extra(String sku, String description, double powerW) implements Part {
}
