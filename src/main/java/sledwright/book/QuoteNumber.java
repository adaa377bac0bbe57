package sledwright.book;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a quote is called: the year in which it was made and its place in that year, from 1.
 */
public record QuoteNumber(int year, int place) implements Comparable<QuoteNumber> {

    private static final Pattern FORM = Pattern.compile("(\\d{4})-(\\d{4,9})");
    private static final int DIGITS = 4;

    /** The number that a text is; empty where it is none. */
    public static Optional<QuoteNumber> named(String text) {
        Matcher found = FORM.matcher(text.strip());
        return found.matches() ? Optional.of(new QuoteNumber(Integer.parseInt(found.group(1)), Integer.parseInt(found.group(2))))
                : Optional.empty();
    }

    @Override
    public int compareTo(QuoteNumber other) {
        return year == other.year ? Integer.compare(place, other.place) : Integer.compare(year, other.year);
    }

    @Override
    public String toString() {
        String digits = Integer.toString(place);
        return "%s-%s%s".formatted(year, "0".repeat(Math.max(0, DIGITS - digits.length())), digits);
    }
}
