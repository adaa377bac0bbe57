package sledwright.input;

import java.util.Collection;

/**
 * Takes note of what readers ask a file for. The schemas of the formats are made from it, so that they cannot say anything else than
 * the readers do. Paths are keys joined by points; what is listed bears the path of its list.
 */
public interface Asking {

    /** What may stand under a key. */
    enum Shape {
        VALUE, SECTION, LIST_OF_VALUES, LIST_OF_SECTIONS, NAMED_SECTIONS, FREE_KEYS
    }

    /** Nobody takes note of anything. */
    Asking NOBODY = new Asking() {
    };

    /** A key is asked for; several shapes of one key are alternatives. */
    default void shape(String path, Shape shape) {
    }

    /** The end of a path is no key but the name that the file gives one of the sections under the path before it. */
    default void named(String path) {
    }

    /** How many values or sections may stand under a key. */
    default void count(String path, Bounds bounds) {
    }

    /** A value must be a figure. Of a section with free keys: its keys must. */
    default void figure(String path, Bounds bounds, boolean whole) {
    }

    /** A value must be one of these. Of a section with free keys: its keys must. */
    default void words(String path, Collection<String> words) {
    }

    /** A value must be a part number. */
    default void sku(String path, int longest) {
    }

    /** A value has no more characters. */
    default void text(String path, int longest) {
    }

    /** A value must look like this. */
    default void pattern(String path, String regex) {
    }
}
