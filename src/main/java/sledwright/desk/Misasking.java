package sledwright.desk;

import java.util.Optional;

/**
 * A question that cannot be answered as it is put, although nothing is wrong in what was read.
 *
 * @param key     what of the question, by the name that every face gives it: {@code why-not}
 * @param value   as it was given
 * @param problem what is wrong with it, as the end of a sentence that begins with key and value
 * @param way     what would do
 */
public record Misasking(String key, String value, String problem, Optional<Way> way) {

    Misasking(String key, String value, String problem) {
        this(key, value, problem, Optional.empty());
    }

    /** What would do; each face has its own words for it. */
    public enum Way {
        /** Say what electricity costs, in the question or in the request. */
        GIVE_ENERGY,
        /** Ask the request for more alternatives. */
        MORE_ALTERNATIVES
    }
}
