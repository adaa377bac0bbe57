package sledwright.words;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Something to say whose words and figures are written when it is, in the manner of the place where it stands: in that place's language,
 * and for its readers. As a string it reads as on a command line; sentences are equal that read the same.
 */
public final class Sentence {

    private static final Pattern GAP = Pattern.compile("%(?:(\\d+)\\$)?([a-zA-Z%])");

    private final Function<Manner, String> written;

    private Sentence(Function<Manner, String> written) {
        this.written = written;
    }

    /**
     * A sentence with gaps: {@code %s} for the next value, {@code %2$s} for the second, {@code %%} for a percent sign.
     *
     * @param values sentences, variables, and anything else that is written the same everywhere, such as part numbers and whole numbers
     */
    public static Sentence of(String template, Object... values) {
        long gaps = GAP.matcher(template).results().filter(gap -> !gap.group(2).equals("%")).count();
        if (gaps != values.length) {
            throw new IllegalArgumentException("\"%s\" has no gap for each of %s".formatted(template, Arrays.toString(values)));
        }
        List<Object> parts = parts(Stream.of(values));
        return new Sentence(manner -> filled(manner.words(template), parts, manner));
    }

    /** Words without figures; no sign in them is a gap. */
    public static Sentence plain(String words) {
        return new Sentence(manner -> manner.words(words));
    }

    /** Sentences, variables and words one behind the other. */
    public static Sentence joined(String separator, List<?> parts) {
        List<Object> fixed = parts(parts.stream());
        return new Sentence(manner -> fixed.stream().map(part -> in(manner, part)).collect(Collectors.joining(separator)));
    }

    /** {@code a}, {@code a and b}, {@code a, b and c}. */
    public static Sentence list(List<?> parts) {
        List<Object> fixed = parts(parts.stream());
        return new Sentence(manner -> manner.list(fixed.stream().map(part -> in(manner, part)).toList()));
    }

    /** The same with a capital at its beginning. */
    public Sentence capital() {
        return new Sentence(manner -> Sentences.capital(in(manner)));
    }

    /** Whether it says nothing. */
    public boolean isEmpty() {
        return toString().isEmpty();
    }

    /** The text. */
    public String in(Manner manner) {
        return written.apply(manner);
    }

    @Override
    public String toString() {
        return in(Manner.COMMAND_LINE);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Sentence sentence && toString().equals(sentence.toString());
    }

    @Override
    public int hashCode() {
        return toString().hashCode();
    }

    private static List<Object> parts(Stream<?> values) {
        return values.<Object>map(value -> value instanceof Sentence || value instanceof Variable ? value : String.valueOf(value)).toList();
    }

    private static String in(Manner manner, Object part) {
        return part instanceof Sentence sentence ? sentence.in(manner)
                : part instanceof Variable variable ? variable.in(manner) : (String) part;
    }

    private static String filled(String template, List<Object> values, Manner manner) {
        StringBuilder text = new StringBuilder();
        Matcher gap = GAP.matcher(template);
        int from = 0;
        int next = 0;
        while (gap.find()) {
            text.append(template, from, gap.start());
            from = gap.end();
            text.append(gap.group(2).equals("%") ? "%"
                    : in(manner, values.get(gap.group(1) == null ? next++ : Integer.parseInt(gap.group(1)) - 1)));
        }
        return text.append(template.substring(from)).toString();
    }
}
