package sledwright.cli;

import java.time.Duration;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a time in seconds, with a fraction or without. */
final class Seconds implements ITypeConverter<Duration> {

    private static final double NANOS = 1e9;
    private static final double MOST = Duration.ofDays(365).toSeconds();

    @Override
    public Duration convert(String given) {
        double seconds;
        try {
            seconds = Double.parseDouble(given);
        } catch (NumberFormatException wrong) {
            seconds = Double.NaN;
        }
        if (seconds > 0 && seconds <= MOST) {
            return Duration.ofNanos((long) (seconds * NANOS));
        }
        throw new TypeConversionException("'%s' must be a number of seconds above 0, at most a year".formatted(given));
    }
}
