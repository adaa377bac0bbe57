package sledwright.schema;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** Sound files, each with one thing changed: a key or an item taken away, without value, of another shape, out of range, twice, or too many. */
final class Changes {

    private static final List<Object> SHAPES = List.of(Map.of(), List.of(), "word", "");
    private static final List<String> FIGURES = List.of("-1", "0", "0.5", "1e15");

    /**
     * A changed file.
     *
     * @param name of the file that was changed
     * @param what path and change
     */
    record Change(String name, String what, String text) {
    }

    private final Map<String, Map<Object, Object>> siblings = new LinkedHashMap<>();
    /** By what was changed: alike places of one file are changed once. */
    private final Map<String, Change> found = new LinkedHashMap<>();
    private final String name;

    private Changes(String name) {
        this.name = name;
    }

    static List<Change> of(List<Path> files) throws IOException {
        List<Change> all = new ArrayList<>();
        Map<String, Map<Object, Object>> known = new LinkedHashMap<>();
        for (Path file : files) {
            note(known, "", Example.yaml().load(Files.readString(file)));
        }
        for (Path file : files) {
            Changes changes = new Changes(file.getFileName().toString());
            changes.siblings.putAll(known);
            changes.within(Example.yaml().load(Files.readString(file)), "", changed -> changed);
            all.addAll(changes.found.values());
        }
        return all;
    }

    /** What the files have under each key, by the path of its section. */
    private static void note(Map<String, Map<Object, Object>> known, String path, Object value) {
        if (value instanceof Map<?, ?> section) {
            section.forEach((key, inner) -> {
                known.computeIfAbsent(path, plain -> new LinkedHashMap<>()).putIfAbsent(key, inner);
                note(known, path + key + ".", inner);
            });
        } else if (value instanceof List<?> list) {
            list.forEach(item -> note(known, path, item));
        }
    }

    private void within(Object value, String path, UnaryOperator<Object> file) {
        if (value instanceof Map<?, ?> section) {
            section(section, path, file);
        } else if (value instanceof List<?> list) {
            list(list, path, file);
        }
    }

    private void section(Map<?, ?> section, String path, UnaryOperator<Object> file) {
        add(path + "unknown key", file.apply(with(section, "unknown", "4")));
        siblings.getOrDefault(path, Map.of()).forEach((key, value) -> {
            if (!section.containsKey(key)) {
                add(path + key + " added to " + section.keySet(), file.apply(with(section, key, value)));
                add(path + key + " added without value to " + section.keySet(), file.apply(with(section, key, null)));
            }
        });
        section.forEach((key, value) -> {
            Map<Object, Object> less = new LinkedHashMap<>(section);
            less.remove(key);
            add(path + key + " removed", file.apply(less));
            UnaryOperator<Object> set = changed -> file.apply(with(section, key, changed));
            replace(value, path + key, set);
            within(value, path + key + ".", set);
        });
    }

    private void list(List<?> list, String path, UnaryOperator<Object> file) {
        String plain = path.substring(0, path.length() - 1);
        for (int i = 0; i < list.size(); i++) {
            int at = i;
            List<Object> twice = new ArrayList<>(list);
            // A copy: one object twice would be written as an alias, which not all that check files by schemas follow.
            twice.add(Example.yaml().load(Example.yaml().dump(list.get(i))));
            add(plain + " item twice", file.apply(twice));
            List<Object> less = new ArrayList<>(list);
            less.remove(i);
            add(plain + " item removed", file.apply(less));
            UnaryOperator<Object> set = changed -> {
                List<Object> copy = new ArrayList<>(list);
                copy.set(at, changed);
                return file.apply(copy);
            };
            replace(list.get(i), plain + " item", set);
            within(list.get(i), path, set);
        }
    }

    private void replace(Object value, String path, UnaryOperator<Object> set) {
        add(path + " null", set.apply(null));
        add(path + " in a list", set.apply(List.of(value)));
        SHAPES.forEach(shape -> add(path + " = \"" + shape + "\"", set.apply(shape)));
        if (value instanceof String text && text.matches("-?\\d+(\\.\\d+)?")) {
            FIGURES.forEach(figure -> add(path + " = " + figure, set.apply(figure)));
        }
    }

    private void add(String what, Object file) {
        found.computeIfAbsent(what, key -> new Change(name, what, Example.yaml().dump(file)));
    }

    private static Map<Object, Object> with(Map<?, ?> section, Object key, Object value) {
        Map<Object, Object> copy = new LinkedHashMap<>(section);
        copy.put(key, value);
        return copy;
    }
}
