package sledwright.explain.audit;

import sledwright.input.Place;

/**
 * Something odd that does not keep a catalogue from being used.
 *
 * @param check   its identifier
 * @param message a finished sentence
 */
public record Warning(String check, Place place, String message) {

    /** As a fault is printed: {@code file:line: message}. */
    @Override
    public String toString() {
        return place + ": " + message;
    }
}
