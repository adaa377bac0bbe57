package sledwright.web.page;

import java.util.List;
import java.util.stream.Stream;

/**
 * A key of a request that the form has a field for.
 *
 * @param key     as a request has it, such as {@code require.cores}
 * @param label   what people call it
 * @param unit    behind the field; may be empty
 * @param choices words that it takes; empty: it takes a figure or a text
 * @param hint    one sentence, for whoever wonders
 */
public record Wish(String key, String label, String unit, Shape shape, List<Choice> choices, String hint) {

    /** How a wish is put in. */
    public enum Shape {
        FIGURE, TEXT, LINES, CHOICE, SEVERAL, PARTS, VOLUME, CARD, UNITS
    }

    /** A word of the request and what people call it. */
    public record Choice(String value, String label) {
    }

    /** Wishes that stand together where one is chosen. */
    public record Group(String title, List<Wish> wishes) {

        Group(String title, List<Wish> first, List<Wish> others) {
            this(title, Stream.concat(first.stream(), others.stream()).toList());
        }
    }

    static Wish figure(String key, String label, String unit, String hint) {
        return new Wish(key, label, unit, Shape.FIGURE, List.of(), hint);
    }

    static Wish text(String key, String label, String hint) {
        return new Wish(key, label, "", Shape.TEXT, List.of(), hint);
    }

    static Wish choice(String key, String label, String hint, Choice... choices) {
        return new Wish(key, label, "", Shape.CHOICE, List.of(choices), hint);
    }

    static Wish of(Shape shape, String key, String label, String hint, List<Choice> choices) {
        return new Wish(key, label, "", shape, choices, hint);
    }
}
