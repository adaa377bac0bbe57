package sledwright.cli;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import sledwright.book.Book;
import sledwright.book.QuoteNumber;
import sledwright.book.Signature;
import sledwright.book.store.BookPlace;

/** Which book, and who writes into it on which day. */
final class BookOptions {

    /** Reads a day in the form of ISO 8601. */
    static final class Day implements ITypeConverter<LocalDate> {

        @Override
        public LocalDate convert(String given) {
            try {
                return LocalDate.parse(given);
            } catch (DateTimeParseException noDay) {
                throw new TypeConversionException("'%s' must be a day such as 2026-03-31".formatted(given));
            }
        }
    }

    /** Reads the number of a quote. */
    static final class Number implements ITypeConverter<QuoteNumber> {

        @Override
        public QuoteNumber convert(String given) {
            return QuoteNumber.named(given).orElseThrow(() ->
                    new TypeConversionException("'%s' must be the number of a quote such as 2026-0001".formatted(given)));
        }
    }

    @Option(names = "--book", paramLabel = "PLACE", description = "The book: a file, or jdbc:postgresql://HOST/NAME for one that several"
            + " desks share. Default: sledwright-book.db in $XDG_DATA_HOME/sledwright or ~/.local/share/sledwright.")
    private String place;

    @Option(names = "--by", paramLabel = "NAME", description = "Who does it. Default: the name under which you are logged in.")
    private String who;

    @Option(names = "--today", paramLabel = "DAY", converter = Day.class, description = "The day that counts as today, such as 2026-03-31.")
    private LocalDate today;

    /** The book, made where there is none. */
    Book open(Terminal terminal) {
        BookPlace where = place == null ? BookPlace.usual(terminal.environment()) : BookPlace.named(place).orElseThrow(() ->
                new UsageException("--book '%s' must be a file, or begin with jdbc:postgresql:".formatted(place)));
        return Book.open(where, Version.built());
    }

    /** Who does something, and when: now, or at the beginning of the day that is said to be today. */
    Signature signature(Terminal terminal) {
        String name = Stream.of(Optional.ofNullable(who), Optional.ofNullable(terminal.environment().get("USER")),
                Optional.ofNullable(terminal.environment().get("LOGNAME")), Optional.of(System.getProperty("user.name")))
                .flatMap(Optional::stream).filter(given -> !given.isBlank()).findFirst().orElse("unknown");
        Instant at = today == null ? Instant.now(Clock.systemUTC()) : today.atStartOfDay().toInstant(ZoneOffset.UTC);
        return new Signature(name.strip(), at, today == null ? LocalDate.now() : today);
    }
}
