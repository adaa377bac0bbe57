package sledwright.web.api;

/**
 * A key that a question takes in its address: an option of the command by its long name.
 *
 * @param words what it is for
 */
public record OptionKey(String name, Shape shape, String words) {

    /** What stands behind the key, and how often the key may stand. */
    public enum Shape {
        TEXTS, TEXT, FIGURE, FLAG
    }

    static OptionKey texts(String name, String words) {
        return new OptionKey(name, Shape.TEXTS, words);
    }

    static OptionKey text(String name, String words) {
        return new OptionKey(name, Shape.TEXT, words);
    }

    static OptionKey figure(String name, String words) {
        return new OptionKey(name, Shape.FIGURE, words);
    }

    static OptionKey flag(String name, String words) {
        return new OptionKey(name, Shape.FLAG, words);
    }
}
