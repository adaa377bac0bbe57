package sledwright.words;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Something to say whose figures are still figures: each is written when the sentence is, in the manner of the place where it stands. As a
 * string it reads as on a command line; sentences are equal that read the same.
 */
public final class Sentence {

    private static final Pattern GAP = Pattern.compile("%(?:(\\d+)\\$)?([a-zA-Z%])");

    /** Strings, no two of them neighbours, and {@link Variable}s. */
    private final List<Object> pieces;

    private Sentence(List<Object> pieces) {
        this.pieces = List.copyOf(pieces);
    }

    /**
     * A sentence with gaps: {@code %s} for the next value, {@code %2$s} for the second, {@code %%} for a percent sign.
     *
     * @param values sentences, variables, and anything else that is written the same everywhere, such as part numbers and whole numbers
     */
    public static Sentence of(String template, Object... values) {
        Maker maker = new Maker();
        Matcher gap = GAP.matcher(template);
        int from = 0;
        int next = 0;
        int filled = 0;
        while (gap.find()) {
            maker.add(template.substring(from, gap.start()));
            from = gap.end();
            if (gap.group(2).equals("%")) {
                maker.add("%");
            } else {
                maker.add(values[gap.group(1) == null ? next++ : Integer.parseInt(gap.group(1)) - 1]);
                filled++;
            }
        }
        maker.add(template.substring(from));
        if (filled != values.length) {
            throw new IllegalArgumentException("\"%s\" has no gap for each of %s".formatted(template, Arrays.toString(values)));
        }
        return maker.made();
    }

    /** Words without figures; no sign in them is a gap. */
    public static Sentence plain(String words) {
        return joined("", List.of(words));
    }

    /** Sentences, variables and words one behind the other. */
    public static Sentence joined(String separator, List<?> parts) {
        Maker maker = new Maker();
        for (int part = 0; part < parts.size(); part++) {
            maker.add(part == 0 ? "" : separator);
            maker.add(parts.get(part));
        }
        return maker.made();
    }

    /** {@code a}, {@code a and b}, {@code a, b and c}. */
    public static Sentence list(List<?> parts) {
        int all = parts.size();
        return all < 2 ? joined("", parts) : of("%s and %s", joined(", ", parts.subList(0, all - 1)), parts.get(all - 1));
    }

    /** The same with a capital at its beginning. */
    public Sentence capital() {
        if (pieces.isEmpty() || !(pieces.get(0) instanceof String words)) {
            return this;
        }
        List<Object> changed = new ArrayList<>(pieces);
        changed.set(0, Sentences.capital(words));
        return new Sentence(changed);
    }

    /** Whether it says nothing. */
    public boolean isEmpty() {
        return pieces.isEmpty();
    }

    /** The text. */
    public String in(Manner manner) {
        return pieces.stream().map(piece -> piece instanceof Variable variable ? variable.in(manner) : (String) piece)
                .collect(Collectors.joining());
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

    private static final class Maker {

        private final List<Object> pieces = new ArrayList<>();
        private final StringBuilder words = new StringBuilder();

        void add(Object part) {
            if (part instanceof Sentence sentence) {
                sentence.pieces.forEach(this::add);
            } else if (part instanceof Variable) {
                end();
                pieces.add(part);
            } else {
                words.append(part);
            }
        }

        Sentence made() {
            end();
            return new Sentence(pieces);
        }

        private void end() {
            if (!words.isEmpty()) {
                pieces.add(words.toString());
                words.setLength(0);
            }
        }
    }
}
