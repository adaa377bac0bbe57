package sledwright.desk;

import java.util.Optional;

/**
 * A question that cannot be answered as it is put, although nothing is wrong in what was read.
 *
 * @param key     what of the question, by the name that every face gives it: {@code why-not}; empty: all of it
 * @param value   of that key, as it was given
 * @param problem what is wrong, as it goes on behind key and value; where there is no key, a sentence
 * @param way     what can be asked instead
 */
public record Misasking(String key, String value, String problem, Optional<Way> way) {

    static Misasking of(String sentence) {
        return new Misasking("", "", sentence, Optional.empty());
    }

    /** Goes on with {@code verb}, such as {@code is no part of the catalogue}. */
    static Misasking of(String key, String value, String verb) {
        return new Misasking(key, value, " " + verb, Optional.empty());
    }

    /** Goes on with a sentence of its own. */
    static Misasking of(String key, String value, String sentence, Way way) {
        return new Misasking(key, value, ": " + sentence, Optional.of(way));
    }

    /** What can be asked instead; each face has its own words for it. */
    public sealed interface Way {

        /** Say what electricity costs, in the question or in the request. */
        record GiveEnergy() implements Way {
        }

        /** Choose among those that there are, or ask the request for as many as wanted. */
        record MoreAlternatives(int found, int wanted) implements Way {
        }

        /** Do without that key. */
        record LeaveOut() implements Way {
        }
    }
}
