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

    /** Nobody takes note. */
    Asking NOBODY = new Asking() {
        @Override
        public void shape(String path, Shape shape) {
            // Nobody is there.
        }

        @Override
        public void named(String path) {
            // Nobody is there.
        }

        @Override
        public void count(String path, Bounds bounds) {
            // Nobody is there.
        }

        @Override
        public void figure(String path, Bounds bounds, boolean whole) {
            // Nobody is there.
        }

        @Override
        public void words(String path, Collection<String> words) {
            // Nobody is there.
        }

        @Override
        public void sku(String path, int longest) {
            // Nobody is there.
        }

        @Override
        public void pattern(String path, String regex) {
            // Nobody is there.
        }
    };

    /** A key is asked for; several shapes of one key are alternatives. */
    void shape(String path, Shape shape);

    /** The end of a path is no key but the name that the file gives one of the sections under the path before it. */
    void named(String path);

    /** How many values or sections may stand under a key. */
    void count(String path, Bounds bounds);

    /** A value must be a figure. Of a section with free keys: its keys must. */
    void figure(String path, Bounds bounds, boolean whole);

    /** A value must be one of these. Of a section with free keys: its keys must. */
    void words(String path, Collection<String> words);

    /** A value must be a part number. */
    void sku(String path, int longest);

    /** A value must look like this. */
    void pattern(String path, String regex);
}
