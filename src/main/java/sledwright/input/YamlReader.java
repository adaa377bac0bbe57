package sledwright.input;

import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.composer.Composer;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.resolver.Resolver;

/**
 * Reads YAML into values that know their lines. Nothing is built from tags, scalars keep their text as written, and size, depth
 * and aliases are limited.
 */
public final class YamlReader {

    /** The largest text, in millions of bytes. */
    public static final int MOST_MEGABYTES = 3;
    private static final int DEEPEST = 20;
    private static final int MOST_ALIASES = 50;

    private static final Resolver NULLS = new NullsAlone();

    private final Faults faults;
    private final Function<Integer, Place> places;
    private final Map<Node, Value> seen = new IdentityHashMap<>();

    /** Tells an absent value from a present one; what a present one means is decided where its key is read. */
    private static final class NullsAlone extends Resolver {

        @Override
        protected void addImplicitResolvers() {
            addImplicitResolver(Tag.NULL, NULL, "~nN\0");
            addImplicitResolver(Tag.NULL, EMPTY, null);
        }
    }

    private YamlReader(Function<Integer, Place> places, Faults faults) {
        this.places = places;
        this.faults = faults;
    }

    /** The keys of a source; empty, with faults, when it holds none. */
    public static Optional<Value.Group> read(Source source, Faults faults) {
        return TextFile.read(source, MOST_MEGABYTES, faults)
                .flatMap(text -> new YamlReader(source::at, faults).group(text));
    }

    /** One value given outside a file; everything in it stands at {@code place}. */
    public static Optional<Value> value(String text, Place place, Faults faults) {
        return new YamlReader(line -> place, faults).parse(text);
    }

    private Optional<Value.Group> group(String text) {
        int before = faults.size();
        Optional<Value> value = parse(text);
        if (value.isPresent() && value.get() instanceof Value.Group group) {
            return Optional.of(group);
        }
        if (!faults.since(before)) {
            Place place = value.map(Value::place).orElse(places.apply(1));
            faults.add(place, "must hold keys and values, such as \"name: ...\"");
        }
        return Optional.empty();
    }

    private Optional<Value> parse(String text) {
        int before = faults.size();
        try {
            LoaderOptions options = options();
            Node root = new Composer(new ParserImpl(new StreamReader(text), options), NULLS, options).getSingleNode();
            Value value = root == null ? new Value.Nothing(places.apply(1)) : convert(root);
            return faults.since(before) && !(value instanceof Value.Group) ? Optional.empty() : Optional.of(value);
        } catch (MarkedYAMLException broken) {
            int line = broken.getProblemMark() == null ? 0 : broken.getProblemMark().getLine() + 1;
            faults.add(places.apply(line), "not readable as YAML: " + problem(broken, line));
        } catch (YAMLException broken) {
            faults.add(places.apply(0), "not readable as YAML: " + oneLine(broken.getMessage()));
        }
        return Optional.empty();
    }

    private static LoaderOptions options() {
        LoaderOptions options = new LoaderOptions();
        options.setNestingDepthLimit(DEEPEST);
        options.setMaxAliasesForCollections(MOST_ALIASES);
        options.setCodePointLimit(MOST_MEGABYTES * 1_000_000);
        options.setProcessComments(false);
        return options;
    }

    private static String problem(MarkedYAMLException broken, int line) {
        if (broken.getContext() == null) {
            return oneLine(broken.getProblem());
        }
        int begun = broken.getContextMark() == null ? line : broken.getContextMark().getLine() + 1;
        return oneLine(broken.getContext()) + (begun == line ? "" : " begun at line " + begun) + ", " + oneLine(broken.getProblem());
    }

    private static String oneLine(String problem) {
        return problem.strip().replaceAll("\\s*\\R\\s*", "; ");
    }

    private Value convert(Node node) {
        Value known = seen.get(node);
        if (known != null) {
            return known;
        }
        Place place = place(node);
        // What an alias inside the node itself finds.
        seen.put(node, new Value.Nothing(place));
        Value value;
        if (node instanceof MappingNode mapping) {
            value = group(mapping, place);
        } else if (node instanceof SequenceNode sequence) {
            value = new Value.Series(place, sequence.getValue().stream().map(this::convert).toList());
        } else {
            ScalarNode scalar = (ScalarNode) node;
            value = scalar.getTag().equals(Tag.NULL) ? new Value.Nothing(place) : new Value.Scalar(place, scalar.getValue());
        }
        seen.put(node, value);
        return value;
    }

    private Value group(MappingNode mapping, Place place) {
        Map<String, Value> values = new LinkedHashMap<>();
        Map<String, Place> keys = new LinkedHashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            Place keyPlace = place(tuple.getKeyNode());
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                faults.add(keyPlace, "a key must be a single value");
                continue;
            }
            Place earlier = keys.putIfAbsent(key.getValue(), keyPlace);
            if (earlier == null) {
                values.put(key.getValue(), convert(tuple.getValueNode()));
            } else {
                faults.add(keyPlace, "key \"%s\" stands twice, first at line %d".formatted(Field.shown(key.getValue()), earlier.line()));
            }
        }
        return new Value.Group(place, values, keys);
    }

    private Place place(Node node) {
        return places.apply(node.getStartMark().getLine() + 1);
    }
}
