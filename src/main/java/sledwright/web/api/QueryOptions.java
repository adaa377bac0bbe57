package sledwright.web.api;

import java.time.Duration;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jetty.util.Fields;
import sledwright.input.Fault;
import sledwright.input.Field;
import sledwright.input.Nearest;
import sledwright.input.Place;
import sledwright.web.http.RefusedException;

/** The options of a question as its address has them, each known to be one that the question takes. */
final class QueryOptions {

    /** Nobody waits longer on a page, and a program can ask again. */
    static final int MOST_SECONDS = 600;

    private final Map<String, List<String>> values;

    private QueryOptions(Map<String, List<String>> values) {
        this.values = values;
    }

    /** @throws RefusedException with everything that is wrong */
    static QueryOptions of(Fields query, List<OptionKey> keys) {
        List<Fault> faults = new ArrayList<>();
        Map<String, List<String>> values = new LinkedHashMap<>();
        for (Fields.Field given : query) {
            Optional<OptionKey> key = keys.stream().filter(known -> known.name().equals(given.getName())).findFirst();
            if (key.isEmpty()) {
                faults.add(new Fault(Place.of("the address"), "%s is no option of this question%s".formatted(Field.shown(given.getName()),
                        new Nearest(keys.stream().map(OptionKey::name).toList()).hint(given.getName())), Field.shown(given.getName())));
            } else {
                wrong(key.get(), given.getValues()).ifPresent(faults::add);
                values.put(given.getName(), given.getValues());
            }
        }
        if (!faults.isEmpty()) {
            throw RefusedException.of(faults);
        }
        return new QueryOptions(values);
    }

    private static Optional<Fault> wrong(OptionKey key, List<String> given) {
        if (key.shape() != OptionKey.Shape.TEXTS && given.size() > 1) {
            return fault(key, given.get(1), "stands twice; it may stand once");
        }
        if (key.shape() == OptionKey.Shape.FIGURE && parsed(given.get(0)).isEmpty()) {
            return fault(key, given.get(0), "must be a number");
        }
        if (key.shape() == OptionKey.Shape.FLAG && !List.of("", "true", "false").contains(given.get(0))) {
            return fault(key, given.get(0), "must be true or false, or stand alone");
        }
        return Optional.empty();
    }

    private static Optional<Fault> fault(OptionKey key, String value, String problem) {
        return Optional.of(new Fault(Place.of(key.name()), problem, Field.shown(value)));
    }

    private static OptionalDouble parsed(String text) {
        try {
            double figure = Double.parseDouble(text);
            return Double.isFinite(figure) ? OptionalDouble.of(figure) : OptionalDouble.empty();
        } catch (NumberFormatException none) {
            return OptionalDouble.empty();
        }
    }

    /** What tells it from a question with other options. */
    String all() {
        return values.toString();
    }

    List<String> texts(String key) {
        return values.getOrDefault(key, List.of());
    }

    Optional<String> text(String key) {
        return texts(key).stream().findFirst();
    }

    OptionalDouble figure(String key) {
        return text(key).map(QueryOptions::parsed).orElse(OptionalDouble.empty());
    }

    boolean flag(String key) {
        return text(key).map(value -> !value.equals("false")).orElse(false);
    }

    long seed() {
        double seed = figure("seed").orElse(0);
        if (seed != Math.rint(seed) || Math.abs(seed) > 1L << 53) {
            throw RefusedException.of(400, "seed", text("seed").orElse(""), "must be a whole number");
        }
        return (long) seed;
    }

    /** The day to answer as on; empty: today. */
    Optional<LocalDate> today() {
        return text("today").map(given -> day("today", given));
    }

    /** The day that stands under a key; empty: none does. */
    Optional<LocalDate> day(String key) {
        return text(key).filter(given -> !given.isEmpty()).map(given -> day(key, given));
    }

    private static LocalDate day(String key, String given) {
        try {
            return LocalDate.parse(given);
        } catch (DateTimeParseException noDay) {
            throw RefusedException.of(400, key, given, "must be a date, such as 2026-11-18");
        }
    }

    /** @param otherwise seconds where none are asked for */
    Duration time(int otherwise) {
        double seconds = figure("time-limit").orElse(otherwise);
        if (!(seconds > 0 && seconds <= MOST_SECONDS)) {
            throw RefusedException.of(400, "time-limit", text("time-limit").orElse(""),
                    "must be a number of seconds above 0, at most %s".formatted(MOST_SECONDS));
        }
        return Duration.ofNanos((long) (seconds * 1e9));
    }
}
