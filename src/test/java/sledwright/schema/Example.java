package sledwright.schema;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.representer.Representer;
import org.yaml.snakeyaml.resolver.Resolver;
import sledwright.input.Faults;

/** A sound file, and what its reader says when something in it is changed. */
final class Example {

    private final Format format;
    private final Predicate<String> holdsNames;
    private final Path file;
    private final Path work;
    private final Object sound;
    private Object changed;

    /** A section somewhere in the file that has a key. */
    interface Holder {
        Object get();

        void set(Object value);

        void remove();

        /** Sets another key of the section. */
        void beside(String key, Object value);
    }

    /**
     * @param holdsNames whether the sections under a path may stand under names of their own
     * @param folder     where changed copies stand
     */
    Example(Format format, Predicate<String> holdsNames, Path file, Path folder) {
        this.format = format;
        this.holdsNames = holdsNames;
        this.file = file;
        work = folder.resolve(file.getFileName());
        sound = load();
    }

    static Yaml yaml() {
        DumperOptions dump = new DumperOptions();
        LoaderOptions load = new LoaderOptions();
        return new Yaml(new SafeConstructor(load), new Representer(dump), dump, load, new Resolver() {
            @Override
            protected void addImplicitResolvers() {
                addImplicitResolver(Tag.NULL, NULL, "~nN\0");
                addImplicitResolver(Tag.NULL, EMPTY, null);
            }
        });
    }

    /** How many places of the file have the path. */
    int places(String path) {
        return holders(sound, path).size();
    }

    /** How many sections the file has under a path; the whole file is one under the empty path. */
    int sections(String path) {
        return sections(sound, path).size();
    }

    /** Whether a section of the file has both of two keys, given by their paths. */
    boolean haveBoth(String path, String other) {
        int point = path.lastIndexOf('.');
        return sections(sound, point < 0 ? "" : path.substring(0, point)).stream()
                .anyMatch(section -> section.containsKey(path.substring(point + 1)) && section.containsKey(other.substring(point + 1)));
    }

    /** What the file has at a path. */
    List<Object> values(String path) {
        return holders(sound, path).stream().map(Holder::get).toList();
    }

    /** Whether the file writes a bare number at a path. */
    boolean hasNumber(String path) {
        return holders(sound, path).stream().anyMatch(holder -> holder.get() instanceof String text && text.matches("-?\\d+(\\.\\d+)?"));
    }

    /** Whether the reader names no fault after a change at one of the places of a path. */
    boolean accepts(String path, int place, Consumer<Holder> change) {
        changed = load();
        change.accept(holders(changed, path).get(place));
        return accepted();
    }

    /** Whether the reader names no fault after changes at two paths. */
    boolean accepts(String path, String other, int place, Consumer<Holder> change) {
        changed = load();
        change.accept(holders(changed, path).get(place));
        change.accept(holders(changed, other).get(place));
        return accepted();
    }

    private boolean accepted() {
        try {
            Files.writeString(work, yaml().dump(changed));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        Faults faults = new Faults();
        format.judge(work, faults);
        return faults.size() == 0;
    }

    private Object load() {
        try {
            return yaml().load(Files.readString(file));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private List<Holder> holders(Object root, String path) {
        int point = path.lastIndexOf('.');
        List<Holder> holders = new ArrayList<>();
        sections(root, point < 0 ? "" : path.substring(0, point)).forEach(map -> keys(map, path.substring(point + 1)).forEach(key -> holders.add(holder(map, key))));
        return holders;
    }

    private List<Map<Object, Object>> sections(Object root, String path) {
        if (path.isEmpty()) {
            return sections(root);
        }
        Stream<Object> values = holders(root, path).stream().map(Holder::get);
        return values.flatMap(value -> holdsNames.test(path) && value instanceof Map<?, ?> named ? named.values().stream() : Stream.of(value))
                .flatMap(value -> sections(value).stream()).toList();
    }

    @SuppressWarnings("unchecked")
    private static List<Map<Object, Object>> sections(Object value) {
        if (value instanceof Map<?, ?> map) {
            return List.of((Map<Object, Object>) map);
        }
        List<Map<Object, Object>> found = new ArrayList<>();
        if (value instanceof List<?> list) {
            list.forEach(item -> found.addAll(sections(item)));
        }
        return found;
    }

    private static List<Object> keys(Map<Object, Object> map, String segment) {
        return segment.equals("*") ? List.copyOf(map.keySet()) : map.containsKey(segment) ? List.of(segment) : List.of();
    }

    private static Holder holder(Map<Object, Object> map, Object key) {
        return new Holder() {
            @Override
            public Object get() {
                return map.get(key);
            }

            @Override
            public void set(Object value) {
                map.put(key, value);
            }

            @Override
            public void remove() {
                Map<Object, Object> left = new LinkedHashMap<>(map);
                left.remove(key);
                map.clear();
                map.putAll(left);
            }

            @Override
            public void beside(String other, Object value) {
                map.put(other, value);
            }
        };
    }
}
