package sledwright.input;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * One value as its file has it: a cell, or a scalar of YAML.
 *
 * @param name         its column or key
 * @param decimalComma whether the file may write decimals with a comma
 */
public record Field(String name, String text, Place place, boolean decimalComma) {

    private static final int LONGEST_SHOWN = 40;
    private static final int LONGEST_SKU = 64;
    /** What stands in headings, tables and file names; more than that fills pages. */
    private static final int LONGEST_WORDS = 200;
    /** About a page of paper. */
    private static final int LONGEST_PARAGRAPH = 3_000;
    private static final Vocabulary<Boolean> TRUTH = Vocabulary.of(List.of(true, false), String::valueOf);
    private static final LocalDate FIRST_DAY = LocalDate.of(1990, 1, 1);
    private static final LocalDate LAST_DAY = LocalDate.of(2199, 12, 31);

    /** The figure; empty, with a fault, when it is none or out of range. */
    public Optional<BigDecimal> decimal(Bounds bounds, Faults faults) {
        faults.asking().figure(name, bounds, false);
        return figure(bounds, faults);
    }

    private Optional<BigDecimal> figure(Bounds bounds, Faults faults) {
        Figure figure = Figure.parse(text, decimalComma);
        if (figure.value().isEmpty()) {
            fault(figure.problem(), faults);
            return Optional.empty();
        }
        BigDecimal value = figure.value().get();
        if (!bounds.holds(value)) {
            fault(bounds.right(value), faults);
            return Optional.empty();
        }
        return Optional.of(value);
    }

    /** The whole figure; empty, with a fault, when it is none or out of range. */
    public Optional<Integer> whole(Bounds bounds, Faults faults) {
        faults.asking().figure(name, bounds, true);
        Optional<BigDecimal> value = figure(bounds, faults);
        if (value.isPresent() && value.get().stripTrailingZeros().scale() > 0) {
            fault("must be a whole number", faults);
            return Optional.empty();
        }
        return value.map(BigDecimal::intValueExact);
    }

    /** What a word stands for; empty, with a fault that names the nearest, when it is none of them. */
    public <T> Optional<T> word(Vocabulary<T> words, Faults faults) {
        return word(words::find, words.words(), faults);
    }

    /** The same where only some of the words that are known are right. */
    public <T> Optional<T> word(Function<String, Optional<T>> lookup, Collection<String> words, Faults faults) {
        faults.asking().words(name, words);
        Optional<T> found = lookup.apply(text);
        if (found.isEmpty()) {
            fault("must be one of %s%s".formatted(String.join(", ", words), new Nearest(words).near(text)), faults);
        }
        return found;
    }

    /** True or false; empty, with a fault, when it is neither. */
    public Optional<Boolean> truth(Faults faults) {
        return word(TRUTH, faults);
    }

    /** A day; empty, with a fault, when it is none. */
    public Optional<LocalDate> date(Faults faults) {
        faults.asking().pattern(name, "^(199\\d|2[01]\\d\\d)-\\d{2}-\\d{2}$");
        try {
            LocalDate day = LocalDate.parse(text);
            if (day.isBefore(FIRST_DAY) || day.isAfter(LAST_DAY)) {
                fault("must be from %s to %s".formatted(FIRST_DAY, LAST_DAY), faults);
                return Optional.empty();
            }
            return Optional.of(day);
        } catch (DateTimeParseException noDate) {
            fault("must be a date, such as 2025-03-31", faults);
            return Optional.empty();
        }
    }

    /** A name or a description; empty, with a fault, when it is too long for a heading. */
    public Optional<String> words(Faults faults) {
        faults.asking().text(name, LONGEST_WORDS);
        return shorter(LONGEST_WORDS, faults);
    }

    /** Sentences; empty, with a fault, when they are too long for a page. */
    public Optional<String> paragraph(Faults faults) {
        faults.asking().text(name, LONGEST_PARAGRAPH);
        return shorter(LONGEST_PARAGRAPH, faults);
    }

    private Optional<String> shorter(int longest, Faults faults) {
        if (text.length() > longest) {
            fault("is longer than %s characters".formatted(longest), faults);
            return Optional.empty();
        }
        return Optional.of(text);
    }

    /** A part number; empty, with a fault, when it is blank or holds what cannot be seen or typed. */
    public Optional<String> sku(Faults faults) {
        faults.asking().sku(name, LONGEST_SKU);
        if (text.isBlank()) {
            fault("must not be empty", faults);
            return Optional.empty();
        }
        if (shorter(LONGEST_SKU, faults).isEmpty()) {
            return Optional.empty();
        }
        if (Printable.ascii(text)) {
            return Optional.of(text);
        }
        Optional<String> hidden = text.codePoints().filter(Field::hidden).mapToObj("U+%04X"::formatted).findFirst();
        hidden.ifPresent(code -> fault("has a character that cannot be seen (%s); take it out".formatted(code), faults));
        return hidden.isPresent() ? Optional.empty() : Optional.of(text);
    }

    private static boolean hidden(int character) {
        return Character.isISOControl(character) || Character.getType(character) == Character.FORMAT
                || Character.isWhitespace(character) && character != ' ' || Character.isSpaceChar(character) && character != ' ';
    }

    /** Adds a fault that shows this value. */
    public void fault(String problem, Faults faults) {
        faults.add(place, "%s \"%s\": %s".formatted(name, shown(text), problem), shown(text));
    }

    /** A text of the user's as a message shows it: short, without control characters. */
    public static String shown(String text) {
        String visible = Visible.of(text);
        return visible.length() <= LONGEST_SHOWN ? visible : visible.substring(0, LONGEST_SHOWN) + "...";
    }
}
