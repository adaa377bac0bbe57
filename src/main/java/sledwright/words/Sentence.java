package sledwright.words;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Something to say whose words and figures are written when it is, in the manner of the place where it stands: in that place's language,
 * and for its readers. As a string it reads as on a command line; sentences are equal that read the same.
 */
public final class Sentence {

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
        int gaps = 0;
        for (Gap gap = gap(template, 0); gap != null; gap = gap(template, gap.end)) {
            gaps += gap.percent ? 0 : 1;
        }
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
        int from = 0;
        int next = 0;
        for (Gap gap = gap(template, 0); gap != null; gap = gap(template, from)) {
            text.append(template, from, gap.start);
            from = gap.end;
            text.append(gap.percent ? "%" : in(manner, values.get(gap.number == 0 ? next++ : gap.number - 1)));
        }
        return text.append(template, from, template.length()).toString();
    }

    /** The first gap of a template from some place on; null where there is none. An answer has hundreds, for which patterns take long. */
    private static Gap gap(String template, int from) {
        for (int start = template.indexOf('%', from); start >= 0; start = template.indexOf('%', start + 1)) {
            int digits = start + 1;
            while (digits < template.length() && template.charAt(digits) >= '0' && template.charAt(digits) <= '9') {
                digits++;
            }
            boolean numbered = digits > start + 1 && digits < template.length() && template.charAt(digits) == '$';
            int sign = numbered ? digits + 1 : start + 1;
            if (sign < template.length() && isGap(template.charAt(sign))) {
                return new Gap(start, sign + 1, numbered ? Integer.parseInt(template.substring(start + 1, digits)) : 0,
                        template.charAt(sign) == '%');
            }
        }
        return null;
    }

    private static boolean isGap(char sign) {
        return sign == '%' || sign >= 'a' && sign <= 'z' || sign >= 'A' && sign <= 'Z';
    }

    /**
     * Where a template leaves something out.
     *
     * @param number  which value stands there, from 1 on; 0: the next
     * @param percent whether a percent sign stands there instead
     */
    private record Gap(int start, int end, int number, boolean percent) {
    }
}
