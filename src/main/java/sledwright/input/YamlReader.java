package sledwright.input;

import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
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
    /** Sections within sections. */
    public static final int DEEPEST = 20;
    private static final int MOST_ALIASES = 50;
    /** Of a value or a key; a name of a million letters would keep whoever prints it busy for minutes. */
    private static final int LONGEST_TEXT = 20_000;
    private static final long MOST_REPEATED = MOST_MEGABYTES * 1_000_000L;

    private static final Resolver NULLS = new NullsAlone();

    private final Faults faults;
    private final Function<Integer, Place> places;
    private final Map<Node, Weighed> seen = new IdentityHashMap<>();
    private long repeated;

    /** Distinguishes an absent value from a present one; what a present one means is decided where its key is read. */
    private static final class NullsAlone extends Resolver {

        @Override
        protected void addImplicitResolvers() {
            addImplicitResolver(Tag.NULL, NULL, "~nN\0");
            addImplicitResolver(Tag.NULL, EMPTY, null);
        }
    }

    /**
     * A value that was read.
     *
     * @param weight its characters and values, all that it holds counted in
     */
    private record Weighed(Value value, long weight) {
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
            Value value = root == null ? new Value.Nothing(places.apply(1)) : convert(root).value();
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

    private Weighed convert(Node node) {
        Weighed known = seen.get(node);
        if (known != null) {
            return repeated(known, node);
        }
        Place place = place(node);
        // What an alias inside the node itself finds.
        seen.put(node, new Weighed(new Value.Nothing(place), 1));
        Weighed read;
        if (node instanceof MappingNode mapping) {
            read = group(mapping, place);
        } else if (node instanceof SequenceNode sequence) {
            List<Weighed> items = sequence.getValue().stream().map(this::convert).toList();
            read = new Weighed(new Value.Series(place, items.stream().map(Weighed::value).toList()), 1 + weight(items));
        } else {
            ScalarNode scalar = (ScalarNode) node;
            read = scalar.getTag().equals(Tag.NULL) || isTooLong(scalar.getValue(), place) ? new Weighed(new Value.Nothing(place), 1)
                    : new Weighed(new Value.Scalar(place, scalar.getValue()), 1L + scalar.getValue().length());
        }
        seen.put(node, read);
        return read;
    }

    private boolean isTooLong(String text, Place place) {
        if (text.length() > LONGEST_TEXT) {
            faults.add(place, "a text of %s characters stands here; none may be longer than %s".formatted(text.length(), LONGEST_TEXT));
        }
        return text.length() > LONGEST_TEXT;
    }

    /** What an alias stands for counts as if it were written out, so that no file makes more work than its size may. */
    private Weighed repeated(Weighed known, Node node) {
        boolean told = repeated > MOST_REPEATED;
        repeated += known.weight();
        if (repeated <= MOST_REPEATED) {
            return known;
        }
        if (!told) {
            faults.add(place(node), "what stands here is repeated by aliases until it is larger than %s MB".formatted(MOST_MEGABYTES));
        }
        return new Weighed(new Value.Nothing(known.value().place()), 1);
    }

    private static long weight(Collection<Weighed> values) {
        return values.stream().mapToLong(Weighed::weight).sum();
    }

    private Weighed group(MappingNode mapping, Place place) {
        Map<String, Weighed> values = new LinkedHashMap<>();
        Map<String, Place> keys = new LinkedHashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            Place keyPlace = place(tuple.getKeyNode());
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                faults.add(keyPlace, "a key must be a single value");
                continue;
            }
            if (isTooLong(key.getValue(), keyPlace)) {
                continue;
            }
            Place earlier = keys.putIfAbsent(key.getValue(), keyPlace);
            if (earlier == null) {
                values.put(key.getValue(), convert(tuple.getValueNode()));
            } else {
                faults.add(keyPlace, "key \"%s\" stands twice, first at line %s".formatted(Field.shown(key.getValue()), earlier.line()));
            }
        }
        Map<String, Value> read = new LinkedHashMap<>();
        values.forEach((key, value) -> read.put(key, value.value()));
        return new Weighed(new Value.Group(place, read, keys), 1 + weight(values.values())
                + keys.keySet().stream().mapToLong(String::length).sum());
    }

    private Place place(Node node) {
        return places.apply(node.getStartMark().getLine() + 1);
    }
}
