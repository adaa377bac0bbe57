package sledwright.cli;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import sledwright.book.QuoteNumber;
import sledwright.book.Signature;

/** Who writes into the book, and on which day. */
final class BookOptions {

    /** Reads the number of a quote. */
    static final class Number implements ITypeConverter<QuoteNumber> {

        @Override
        public QuoteNumber convert(String given) {
            return QuoteNumber.named(given).orElseThrow(() ->
                    new TypeConversionException("'%s' must be the number of a quote such as 2026-0001".formatted(given)));
        }
    }

    @Option(names = "--by", order = 1, paramLabel = "NAME", description = "Who does it. Default: the name under which you are logged in.")
    private String who;

    /** Who does something, and when: now, or at the beginning of the day that is said to be today. */
    Signature signature(SharedOptions shared) {
        Map<String, String> environment = shared.terminal().environment();
        String name = Stream.of(Optional.ofNullable(who), Optional.ofNullable(environment.get("USER")),
                Optional.ofNullable(environment.get("LOGNAME")), Optional.of(System.getProperty("user.name")))
                .flatMap(Optional::stream).filter(given -> !given.isBlank()).findFirst().orElse("unknown");
        Instant at = shared.today().map(day -> day.atStartOfDay().toInstant(ZoneOffset.UTC))
                .orElseGet(() -> Instant.now(Clock.systemUTC()));
        return new Signature(name.strip(), at, shared.day());
    }
}
