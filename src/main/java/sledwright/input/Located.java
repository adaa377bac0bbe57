package sledwright.input;

/** A value and where it was read. */
public record Located<T>(T value, Place place) {
}
