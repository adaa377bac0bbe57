package sledwright.request;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.input.Faults;
import sledwright.input.Place;
import sledwright.input.Source;
import sledwright.input.Value;
import sledwright.input.Value.Group;
import sledwright.input.Value.Nothing;
import sledwright.input.Value.Scalar;
import sledwright.input.Value.Series;
import sledwright.input.YamlKey;
import sledwright.input.YamlReader;

/**
 * A request with keys that were said beside it, and for whom they say that it is.
 *
 * @param request as it was handed in
 * @param sets    as {@code path=value}
 */
public record Addressee(byte[] request, List<String> sets) {

    private static final String KEY = "customer";
    /** What stands without quotes and is no empty value. */
    private static final Pattern PLAIN = Pattern.compile("(?!(?i:null)$)[A-Za-z0-9][A-Za-z0-9_.-]*");

    private static final Set<Integer> HIDDEN = Set.of((int) Character.CONTROL, (int) Character.FORMAT, (int) Character.LINE_SEPARATOR,
            (int) Character.PARAGRAPH_SEPARATOR);

    public Addressee {
        request = request.clone();
        sets = List.copyOf(sets);
    }

    /** Whether the first of these lines is that customer. */
    public static boolean isFirst(List<String> lines, String customer) {
        return !lines.isEmpty() && CustomerName.of(lines.get(0)).equalsIgnoreCase(CustomerName.of(customer));
    }

    /** Whether it names that customer, be it only where something else was said beside it. */
    public boolean names(String customer) {
        String text = CustomerName.of(new String(request, StandardCharsets.UTF_8) + String.join("\n", sets)).toLowerCase(Locale.ROOT);
        // Of many requests few hold the letters, or ones that may stand for them.
        return (text.contains(CustomerName.of(customer).toLowerCase(Locale.ROOT)) || text.contains("\\"))
                && (isFirst(lines(), customer) || isFirst(new Addressee(request, List.of()).lines(), customer));
    }

    /** The lines that say for whom it is; empty where it names nobody. */
    public List<String> lines() {
        return group(request).map(read -> lines(Overrides.apply(read, sets, new Faults()))).orElse(List.of());
    }

    /**
     * The same for a customer: where it named another, nothing of that one is left. Further lines stay where the first is the customer. A
     * request that names nobody stays as it is.
     */
    public Addressee of(String customer) {
        List<String> written = new Addressee(request, List.of()).lines();
        List<String> said = lines();
        boolean theirs = isFirst(said, customer);
        if ((theirs || said.isEmpty()) && (written.isEmpty() || isFirst(written, customer))) {
            return this;
        }
        return new Addressee(written.isEmpty() ? request : written(written, theirs ? said : List.of(customer.strip())),
                sets.stream().filter(set -> !isKey(set)).toList());
    }

    private static boolean isKey(String set) {
        String path = set.substring(0, Math.max(0, set.indexOf('='))).strip();
        return path.equals(KEY) || path.startsWith(KEY + ".");
    }

    private byte[] written(List<String> before, List<String> lines) {
        Group read = group(request).orElseThrow();
        Place place = read.keys().get(KEY);
        Group wanted = read.with(KEY, place, new Series(place, lines.stream().map(line -> (Value) new Scalar(place, line)).toList()));
        String text = new String(request, StandardCharsets.UTF_8);
        // Where a remark names the customer, too, or an alias stands for what was there, all of it is written anew.
        return YamlKey.replaced(text, KEY, yaml(wanted.values().get(KEY))).filter(changed -> names(changed, before, lines).isEmpty()
                && group(bytes(changed)).filter(again -> yaml(again).equals(yaml(wanted))).isPresent()).map(Addressee::bytes)
                .orElseGet(() -> bytes(wanted.values().entrySet().stream().map(Addressee::entry)
                .collect(Collectors.joining("\n", "", "\n"))));
    }

    private static List<String> names(String text, List<String> before, List<String> now) {
        String small = text.toLowerCase(Locale.ROOT);
        return before.stream().filter(line -> !now.contains(line) && small.contains(line.strip().toLowerCase(Locale.ROOT))).toList();
    }

    private static List<String> lines(Group group) {
        Value value = group.values().get(KEY);
        Stream<Value> all = value instanceof Series list ? list.items().stream() : Stream.ofNullable(value);
        return all.filter(Scalar.class::isInstance).map(line -> ((Scalar) line).text()).toList();
    }

    private static Optional<Group> group(byte[] request) {
        return YamlReader.read(Source.of(Source.UNNAMED, request), new Faults());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String entry(Map.Entry<String, Value> entry) {
        return quoted(entry.getKey()) + ": " + yaml(entry.getValue());
    }

    private static String yaml(Value value) {
        if (value instanceof Group group) {
            return group.values().entrySet().stream().map(Addressee::entry).collect(Collectors.joining(", ", "{", "}"));
        }
        if (value instanceof Series list) {
            return list.items().stream().map(Addressee::yaml).collect(Collectors.joining(", ", "[", "]"));
        }
        return value instanceof Nothing ? "~" : quoted(((Scalar) value).text());
    }

    private static String quoted(String text) {
        return PLAIN.matcher(text).matches() ? text
                : text.codePoints().mapToObj(Addressee::letter).collect(Collectors.joining("", "\"", "\""));
    }

    private static String letter(int letter) {
        if (letter == '"' || letter == '\\') {
            return "\\" + (char) letter;
        }
        return HIDDEN.contains(Character.getType(letter)) ? "\\U%08x".formatted(letter) : Character.toString(letter);
    }

    @Override
    public byte[] request() {
        return request.clone();
    }
}
