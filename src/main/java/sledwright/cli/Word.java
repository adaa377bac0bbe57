package sledwright.cli;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import sledwright.book.QuoteState;
import sledwright.desk.CompareQuestion;
import sledwright.desk.view.Audience;
import sledwright.input.Figure;

/** Reads one of an option's words, whatever its case. */
abstract class Word<E> implements ITypeConverter<E> {

    private final Map<String, E> words = new LinkedHashMap<>();

    private Word(List<String> words, Function<String, Optional<E>> named) {
        words.forEach(word -> this.words.put(word, named.apply(word).orElseThrow()));
    }

    private Word(List<E> words) {
        words.forEach(word -> this.words.put(word.toString(), word));
    }

    @Override
    public E convert(String given) {
        return words.keySet().stream().filter(given::equalsIgnoreCase).findFirst().map(words::get)
                .orElseThrow(() -> new TypeConversionException("'%s' must be one of %s"
                .formatted(given, String.join(", ", words.keySet()))));
    }

    static final class OfFormat extends Word<Format> {
        OfFormat() {
            super(Arrays.asList(Format.values()));
        }
    }

    static final class OfFigure extends Word<String> {
        OfFigure() {
            super(CompareQuestion.FIGURES);
        }
    }

    static final class OfCost extends Word<String> {
        OfCost() {
            super(CompareQuestion.COSTS);
        }
    }

    static final class OfState extends Word<QuoteState> {
        OfState() {
            super(QuoteState.labels(), QuoteState::named);
        }
    }

    static final class OfAudience extends Word<Audience> {
        OfAudience() {
            super(Arrays.asList(Audience.values()));
        }
    }

    static final class OfColour extends Word<Colour> {
        OfColour() {
            super(Arrays.asList(Colour.values()));
        }
    }

    /** How many months, at most as many as a shop looks back. */
    static final class OfMonths implements ITypeConverter<Integer> {

        private static final int MOST = 120;

        @Override
        public Integer convert(String given) {
            if (given.matches("[1-9][0-9]{0,2}") && Integer.parseInt(given) <= MOST) {
                return Integer.valueOf(given);
            }
            throw new TypeConversionException("'%s' must be a whole number of months from 1 to %s".formatted(given, MOST));
        }
    }

    /** An amount of money. */
    static final class OfAmount implements ITypeConverter<BigDecimal> {
        @Override
        public BigDecimal convert(String given) {
            return Figure.amount(given).orElseThrow(() -> new TypeConversionException("'%s' %s".formatted(given, Figure.NO_AMOUNT)));
        }
    }

    /** A day, which is no word of a list. */
    static final class OfDay implements ITypeConverter<LocalDate> {
        @Override
        public LocalDate convert(String given) {
            try {
                return LocalDate.parse(given);
            } catch (DateTimeParseException noDay) {
                throw new TypeConversionException("'%s' must be a date, such as 2026-11-18".formatted(given));
            }
        }
    }
}
