package sledwright.schema;

import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import sledwright.input.Asking;
import sledwright.input.Bounds;

/** What a reader asked for, by path; {@code *} stands for a key that the file chooses. Sections of alike kind bear one path, whatever their names. */
final class Asked implements Asking {

    /** What is known of one path. */
    static final class Key {

        final Set<Shape> shapes = EnumSet.noneOf(Shape.class);
        final Set<String> words = new LinkedHashSet<>();
        final Set<String> patterns = new LinkedHashSet<>();
        Bounds bounds;
        Bounds count;
        boolean whole;
        int longestSku;
        int longestText;
    }

    private final Map<String, Key> keys = new LinkedHashMap<>();
    private final Set<String> names = new HashSet<>();

    /** In the order in which they were first asked for. */
    Map<String, Key> keys() {
        return keys;
    }

    @Override
    public void shape(String path, Shape shape) {
        keys.computeIfAbsent(general(path), plain -> new Key()).shapes.add(shape);
    }

    @Override
    public void named(String path) {
        names.add(path);
    }

    @Override
    public void count(String path, Bounds bounds) {
        key(path).count = bounds;
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
    public void text(String path, int longest) {
        key(path).longestText = longest;
    }

    @Override
    public void pattern(String path, String regex) {
        key(path).patterns.add(regex);
    }

    /** A key whose shape was asked for. Columns of a table that stands beside the file have none. */
    private Key key(String path) {
        String general = general(path);
        boolean isOfTable = !keys.containsKey(general) && !general.endsWith(".*");
        return isOfTable ? new Key() : keys.computeIfAbsent(general, plain -> new Key());
    }

    private String general(String path) {
        String unnamed = names.stream().filter(name -> path.startsWith(name + ".")).findFirst()
                .map(name -> name.substring(0, name.lastIndexOf('.')) + path.substring(name.length())).orElse(path);
        StringBuilder general = new StringBuilder();
        for (String segment : unnamed.split("\\.")) {
            Key above = keys.get(general.toString());
            boolean free = above != null && above.shapes.contains(Shape.FREE_KEYS);
            general.append(general.isEmpty() ? "" : ".").append(free ? "*" : segment);
        }
        return general.toString();
    }
}
