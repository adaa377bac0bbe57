package sledwright.schema;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import sledwright.input.Asking.Shape;
import sledwright.input.Bounds;
import sledwright.input.Faults;
import sledwright.schema.Asked.Key;

/**
 * The schema of a format, learned from its reader: keys, shapes, ranges and words from what it asks for while it reads the examples; what is
 * needed, what excludes what, what may be empty, null or double from whether it refuses examples that are changed so.
 */
final class SchemaGenerator {

    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private final Format format;
    private final Meanings meanings;
    private final Asked asked = new Asked();
    private final ObjectNode defined = JSON.objectNode();
    private final List<Example> examples;
    private final Map<String, Boolean> removable = new HashMap<>();
    private final Map<String, List<String>> rivals = new HashMap<>();

    private SchemaGenerator(Format format, Path work) {
        this.format = format;
        meanings = Meanings.of(format);
        Faults faults = new Faults(asked);
        format.examples().forEach(file -> format.read(file, faults));
        faults.throwIfAny();
        format.tables().forEach(table -> copy(table, work));
        examples = format.examples().stream().map(file -> new Example(format, path -> has(path, Shape.NAMED_SECTIONS), file, work)).toList();
    }

    private static void copy(Path table, Path work) {
        try {
            Files.copy(table, work.resolve(table.getFileName()));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private boolean has(String path, Shape shape) {
        return asked.keys().containsKey(path) && asked.keys().get(path).shapes.contains(shape);
    }

    /** @param work a folder for files of its own */
    static ObjectNode schema(Format format, Path work) {
        return new SchemaGenerator(format, work).root();
    }

    private ObjectNode root() {
        ObjectNode root = JSON.objectNode();
        root.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        root.put("$comment", "Made from the readers of the program; not edited by hand.");
        root.put("title", format.title());
        root.put("type", "object");
        section(root, "");
        if (!defined.isEmpty()) {
            root.set("$defs", defined);
        }
        return root;
    }

    private void section(ObjectNode node, String path) {
        List<String> children = children(path);
        node.put("additionalProperties", false);
        Set<String> required = children.stream().filter(this::isRequired).collect(Collectors.toCollection(LinkedHashSet::new));
        strings(node, "required", required.stream().map(SchemaGenerator::name).toList());
        ObjectNode properties = node.putObject("properties");
        children.forEach(child -> properties.set(name(child), value(child, required.contains(child))));
        ObjectNode together = JSON.objectNode();
        children.forEach(child -> strings(together, name(child), children.stream()
                .filter(other -> !required.contains(child) && !required.contains(other) && needs(child, other)).map(SchemaGenerator::name).toList()));
        if (!together.isEmpty()) {
            node.set("dependentRequired", together);
        }
        exclusions(node, children);
    }

    /** Of keys that exclude each other, a section has exactly one, or, where it may do without, at most one. */
    private void exclusions(ObjectNode section, List<String> children) {
        List<String> exclusive = children.stream().filter(child -> !rivals(child).isEmpty()).toList();
        List<String> needed = exclusive.stream().filter(key -> !isRemovable(key)).toList();
        for (String key : needed) {
            if (!rivals(key).containsAll(needed.stream().filter(other -> !other.equals(key)).toList())) {
                throw new AssertionError("each of " + needed + " must exclude all others, and one of them be needed; nothing else is provided for");
            }
        }
        if (!needed.isEmpty()) {
            ArrayNode oneOf = section.putArray("oneOf");
            needed.forEach(key -> present(oneOf.addObject(), List.of(key)));
        }
        ArrayNode never = JSON.arrayNode();
        exclusive.stream().filter(this::isRemovable).forEach(key -> rivals(key).stream().filter(rival -> needed.contains(rival) || name(rival).compareTo(name(key)) > 0)
                .forEach(rival -> present(never.addObject().putObject("not"), List.of(key, rival))));
        if (!never.isEmpty()) {
            section.set("allOf", never);
        }
    }

    /** All of the keys stand there; a key without value does not count. */
    private static void present(ObjectNode node, List<String> keys) {
        strings(node, "required", keys.stream().map(SchemaGenerator::name).toList());
        ObjectNode properties = node.putObject("properties");
        keys.forEach(key -> properties.putObject(name(key)).putObject("not").put("type", "null"));
    }

    /** The keys beside this one that the reader refuses wherever this one stands. */
    private List<String> rivals(String path) {
        return rivals.computeIfAbsent(path, key -> children(parent(key)).stream().filter(other -> !other.equals(key)
                && examples.stream().noneMatch(example -> example.haveBoth(key, other)) && excludes(key, other) && excludes(other, key)).toList());
    }

    private boolean excludes(String path, String other) {
        List<Object> values = examples.stream().flatMap(example -> example.values(other).stream()).toList();
        return values.stream().noneMatch(value -> any(path, (example, place) -> example.accepts(path, place, holder -> holder.beside(name(other), value))));
    }

    private List<String> children(String path) {
        return asked.keys().keySet().stream().filter(key -> !key.isEmpty() && parent(key).equals(path)).toList();
    }

    private static String parent(String path) {
        return path.contains(".") ? path.substring(0, path.lastIndexOf('.')) : "";
    }

    private static String name(String path) {
        return path.substring(path.lastIndexOf('.') + 1);
    }

    private ObjectNode value(String path, boolean required) {
        Key key = asked.keys().getOrDefault(path, new Key());
        ObjectNode node = JSON.objectNode();
        Set<String> types = new LinkedHashSet<>();
        if (key.shapes.contains(Shape.FREE_KEYS)) {
            types.add("object");
            keys(node.putObject("propertyNames"), key);
            properties(node, path, value(path + ".*", true));
        } else if (key.shapes.contains(Shape.LIST_OF_SECTIONS)) {
            if (key.shapes.contains(Shape.VALUE)) {
                types.addAll(scalar(node, path, key));
            }
            types.add("array");
            ObjectNode items = JSON.objectNode();
            items.put("type", "object");
            section(items, path);
            if (key.shapes.contains(Shape.NAMED_SECTIONS)) {
                types.add("object");
                defined.set(path, items);
                items = JSON.objectNode().put("$ref", "#/$defs/" + path);
                properties(node, path, items);
            }
            list(node, path, items);
        } else {
            if (key.shapes.contains(Shape.VALUE) || key.shapes.isEmpty()) {
                types.addAll(scalar(node, path, key));
            }
            if (key.shapes.contains(Shape.LIST_OF_VALUES)) {
                types.add("array");
                ObjectNode items = JSON.objectNode();
                type(items, scalar(items, path, key));
                list(node, path, items);
            }
            if (key.shapes.contains(Shape.SECTION)) {
                types.add("object");
                section(node, path);
            }
        }
        if (!required && mayBeNull(path)) {
            types.add("null");
        }
        ObjectNode typed = JSON.objectNode();
        String meaning = meanings.of(path);
        if (!meaning.isEmpty()) {
            typed.put("description", meaning);
        }
        if (node.has("enum") && types.contains("null")) {
            ((ArrayNode) node.get("enum")).addNull();
        }
        type(typed, types);
        return typed.setAll(node);
    }

    private boolean mayBeNull(String path) {
        return any(path, (example, place) -> example.accepts(path, place, holder -> holder.set(null)))
                || rivals(path).stream().anyMatch(rival -> any(rival, (example, place) -> example.accepts(rival, place, holder -> holder.beside(name(path), null))));
    }

    private static void type(ObjectNode node, Collection<String> types) {
        if (types.size() == 1) {
            node.put("type", types.iterator().next());
        } else {
            strings(node, "type", types);
        }
    }

    private static void keys(ObjectNode names, Key key) {
        if (!key.words.isEmpty()) {
            strings(names, "enum", key.words);
        } else if (key.bounds != null) {
            names.put("pattern", "^\\d+$");
        } else {
            names.put("minLength", 1);
        }
    }

    /** What stands under keys that the file chooses. */
    private void properties(ObjectNode node, String path, ObjectNode each) {
        node.set("additionalProperties", each);
        if (!any(path, (example, place) -> example.accepts(path, place, holder -> holder.set(Map.of())))) {
            node.put("minProperties", 1);
        }
        count(path).ifPresent(bounds -> number(node, "maxProperties", bounds.max()));
    }

    private Optional<Bounds> count(String path) {
        return Optional.ofNullable(asked.keys().get(path).count);
    }

    private void list(ObjectNode node, String path, ObjectNode items) {
        node.set("items", items);
        count(path).ifPresent(bounds -> number(node, "maxItems", bounds.max()));
        if (!any(path, (example, place) -> example.accepts(path, place, holder -> holder.set(List.of())))) {
            node.put("minItems", 1);
        }
        if (!any(path, (example, place) -> example.accepts(path, place, holder -> holder.set(doubled(holder.get()))))) {
            node.put("uniqueItems", true);
        }
    }

    private static Object doubled(Object list) {
        List<Object> items = new ArrayList<>(list instanceof List<?> many ? many : list instanceof Map<?, ?> named ? named.values() : List.of(list));
        items.add(items.get(0));
        return items;
    }

    /** Describes a single value and returns the types that it may have. */
    private Set<String> scalar(ObjectNode node, String path, Key key) {
        Set<String> types = new LinkedHashSet<>();
        if (key.bounds != null) {
            types.add(key.whole ? "integer" : "number");
            range(node, key.bounds);
            if (takesOnly(path, "true") && takesOnly(path, "false")) {
                types.add("boolean");
            }
        }
        if (Set.of("true", "false").equals(key.words)) {
            types.add("boolean");
        } else if (!key.words.isEmpty()) {
            boolean figures = key.words.stream().allMatch(word -> word.matches("\\d+"));
            types.add(figures ? "integer" : "string");
            if (key.words.stream().anyMatch(SchemaGenerator::isDecimal)) {
                types.add("number");
            }
            strings(node, "enum", key.words.stream().filter(word -> takes(path, word)).toList());
        }
        if (!key.patterns.isEmpty()) {
            types.add("string");
            node.put("pattern", String.join("|", key.patterns));
        }
        if (key.longestSku > 0) {
            types.add("string");
            node.put("minLength", 1);
            node.put("maxLength", key.longestSku);
        }
        if (key.longestText > 0) {
            node.put("maxLength", key.longestText);
        }
        if (types.isEmpty()) {
            types.add("string");
            if (examples.stream().anyMatch(example -> example.hasNumber(path))) {
                types.add("number");
            }
            if (!takes(path, "")) {
                node.put("minLength", 1);
            }
        }
        return types;
    }

    private boolean takesOnly(String path, String text) {
        return takes(path, text) && !takes(path, text + text);
    }

    /** Whether a value, or the first of a list, may be this text. */
    private boolean takes(String path, String text) {
        return any(path, (example, place) -> example.accepts(path, place, holder -> {
            if (holder.get() instanceof List<?>) {
                holder.set(new ArrayList<>(List.of(text)));
            } else {
                holder.set(text);
            }
        }));
    }

    private static void range(ObjectNode node, Bounds bounds) {
        number(node, bounds.above() ? "exclusiveMinimum" : "minimum", bounds.min());
        number(node, "maximum", bounds.max());
    }

    private static void number(ObjectNode node, String key, BigDecimal figure) {
        BigDecimal plain = figure.stripTrailingZeros();
        if (plain.scale() <= 0) {
            node.put(key, plain.longValueExact());
        } else {
            node.put(key, plain);
        }
    }

    private boolean isRequired(String path) {
        return !isRemovable(path) && !absent(path);
    }

    /** Whether the reader does without the key somewhere where an example has it. */
    private boolean isRemovable(String path) {
        return removable.computeIfAbsent(path, key -> any(key, (example, place) -> example.accepts(key, place, Example.Holder::remove)));
    }

    /** Whether a sound example has the section but not the key. */
    private boolean absent(String path) {
        String above = parent(path);
        return examples.stream().anyMatch(example -> example.sections(above) > example.places(path));
    }

    /** Whether a section that has a key must have another. */
    private boolean needs(String path, String other) {
        return !path.equals(other) && !isRemovable(other)
                && examples.stream().allMatch(example -> example.places(path) == example.places(other))
                && any(other, (example, place) -> example.accepts(path, other, place, Example.Holder::remove));
    }

    private int places(String path) {
        return examples.stream().mapToInt(example -> example.places(path)).sum();
    }

    private boolean any(String path, BiPredicate<Example, Integer> test) {
        if (places(path) == 0) {
            throw new AssertionError("no example of " + format + " has the key " + path);
        }
        for (Example example : examples) {
            for (int place = 0; place < example.places(path); place++) {
                if (test.test(example, place)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static void strings(ObjectNode node, String key, Collection<String> values) {
        if (!values.isEmpty()) {
            ArrayNode list = node.putArray(key);
            values.forEach(value -> {
                if (value.matches("\\d+")) {
                    list.add(Integer.parseInt(value));
                } else {
                    list.add(value);
                    if (isDecimal(value)) {
                        list.add(new BigDecimal(value));
                    }
                }
            });
        }
    }

    /** Whether people may write a word with or without quotes. */
    private static boolean isDecimal(String word) {
        return word.matches("\\d+\\.\\d+");
    }

    /** The text of a schema's file. */
    static String text(ObjectNode schema) {
        try {
            return new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(schema) + "\n";
        } catch (JsonProcessingException impossible) {
            throw new AssertionError(impossible);
        }
    }

}
