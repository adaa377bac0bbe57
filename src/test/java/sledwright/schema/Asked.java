package sledwright.schema;

import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import sledwright.input.Asking;
import sledwright.input.Bounds;

/** What a reader asked for, by path; {@code *} stands for a key that the file chooses. */
final class Asked implements Asking {

    /** What is known of one path. */
    static final class Key {

        final Set<Shape> shapes = EnumSet.noneOf(Shape.class);
        final Set<String> words = new LinkedHashSet<>();
        final Set<String> patterns = new LinkedHashSet<>();
        Bounds bounds;
        boolean whole;
        int longestSku;
    }

    private final Map<String, Key> keys = new LinkedHashMap<>();

    /** In the order in which they were first asked for. */
    Map<String, Key> keys() {
        return keys;
    }

    @Override
    public void shape(String path, Shape shape) {
        key(path).shapes.add(shape);
    }

    @Override
    public void figure(String path, Bounds bounds, boolean whole) {
        Key key = key(path);
        // A count that follows from other figures has a narrower range here and there.
        if (key.bounds == null || bounds.max().compareTo(key.bounds.max()) > 0) {
            key.bounds = bounds;
        }
        key.whole = whole;
    }

    @Override
    public void words(String path, Collection<String> words) {
        key(path).words.addAll(words);
    }

    @Override
    public void sku(String path, int longest) {
        key(path).longestSku = longest;
    }

    @Override
    public void pattern(String path, String regex) {
        key(path).patterns.add(regex);
    }

    private Key key(String path) {
        return keys.computeIfAbsent(general(path), plain -> new Key());
    }

    private String general(String path) {
        StringBuilder general = new StringBuilder();
        for (String segment : path.split("\\.")) {
            Key above = keys.get(general.toString());
            boolean free = above != null && above.shapes.contains(Shape.FREE_KEYS);
            general.append(general.isEmpty() ? "" : ".").append(free ? "*" : segment);
        }
        return general.toString();
    }
}
