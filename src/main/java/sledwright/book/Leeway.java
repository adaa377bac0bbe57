package sledwright.book;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How far a customer may change one key of a request: a figure from one value to another, or one of some words.
 *
 * @param key   such as {@code require.cores}
 * @param from  the least, where it is a figure
 * @param to    the most, where it is a figure
 * @param words what may be chosen, where it is none
 */
public record Leeway(String key, Optional<BigDecimal> from, Optional<BigDecimal> to, List<String> words) {

    private static final Pattern WRITTEN = Pattern.compile(
            "([a-z_.]+)=(?:(\\d{1,9}(?:\\.\\d{1,6})?)\\.\\.(\\d{1,9}(?:\\.\\d{1,6})?)|([a-z0-9-]+(?:,[a-z0-9-]+)*))");
    private static final Pattern FIGURE = Pattern.compile("\\d{1,9}(\\.\\d{1,6})?");

    public Leeway {
        words = List.copyOf(words);
    }

    /** As it is written, {@code require.cores=8..32} or {@code workload=web-serving,fluid-flow}; empty where it is not. */
    public static Optional<Leeway> read(String text) {
        Matcher written = WRITTEN.matcher(text);
        if (!written.matches()) {
            return Optional.empty();
        }
        if (written.group(4) != null) {
            return Optional.of(new Leeway(written.group(1), Optional.empty(), Optional.empty(),
                    Arrays.asList(written.group(4).split(","))));
        }
        BigDecimal from = new BigDecimal(written.group(2));
        BigDecimal to = new BigDecimal(written.group(3));
        return from.compareTo(to) > 0 ? Optional.empty()
                : Optional.of(new Leeway(written.group(1), Optional.of(from), Optional.of(to), List.of()));
    }

    public boolean isFigure() {
        return from.isPresent();
    }

    /** Whether a value may be chosen. */
    public boolean holds(String value) {
        if (!isFigure()) {
            return words.contains(value);
        }
        return FIGURE.matcher(value).matches() && new BigDecimal(value).compareTo(from.orElseThrow()) >= 0
                && new BigDecimal(value).compareTo(to.orElseThrow()) <= 0;
    }

    @Override
    public String toString() {
        return key + "=" + (isFigure() ? from.orElseThrow().toPlainString() + ".." + to.orElseThrow().toPlainString()
                : String.join(",", words));
    }

    static String written(List<Leeway> all) {
        return String.join("\n", all.stream().map(Leeway::toString).toList());
    }

    static List<Leeway> readAll(String written) {
        return written.lines().map(line -> read(line).orElseThrow(() -> new IllegalStateException(line))).toList();
    }
}
