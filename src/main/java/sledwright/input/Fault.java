package sledwright.input;

/**
 * Something wrong in an input file.
 *
 * @param file    the file as the user named it
 * @param line    its line, from 1; 0 where the fault is of the file as a whole
 * @param message the value and what would be right
 * @param value   the value by itself, as it was given; empty where the fault is of no single one
 */
public record Fault(String file, int line, String message, String value) {

    public Fault(Place place, String message, String value) {
        this(place.file(), place.line(), message, value);
    }

    /** A fault of no single value. */
    public Fault(String file, int line, String message) {
        this(file, line, message, "");
    }

    public Fault(Place place, String message) {
        this(place, message, "");
    }

    /** The fault as it is printed: {@code file:line: message}. */
    @Override
    public String toString() {
        return new Place(file, line) + ": " + message;
    }
}
