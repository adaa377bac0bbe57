package sledwright.label;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.label.LabelSpeed.Form;

/**
 * The rate of a label and what follows it, which has a fixed order.
 *
 * @param rest words behind all that, which are no field
 */
record LabelTail(LabelSpeed speed, Optional<ModuleLetter> letter, Optional<RawCard> card, Optional<String> spd, List<String> suffixes,
                 List<String> rest) {

    /**
     * A word behind the rate.
     *
     * @param apart whether blanks alone stand before it, so that it may be none of the label's
     */
    record Part(String text, boolean apart) {
    }

    static final String END = "end of the label";

    private static final int MOST_SUFFIXES = 2;
    /** A figure of no rate is taken for one in MB/s from here on. */
    private static final int LEAST_DESIGNATION = 10_000;
    private static final Pattern TYPE_AND_CARD = Pattern.compile("([A-Z])(?:([A-Z]{1,2}?)([0-9A-Z])?)?");
    private static final Pattern CARD = Pattern.compile("([A-Z]{1,2}?)([0-9A-Z])?");
    private static final Pattern SUFFIX = Pattern.compile("[A-Z]{1,2}\\d?");

    LabelTail {
        suffixes = List.copyOf(suffixes);
        rest = List.copyOf(rest);
    }

    /**
     * Reads from the rate on.
     *
     * @param rate  prefix, generation, voltage letter, figure, letters right behind it
     * @param parts what follows, word by word
     */
    static Optional<LabelTail> read(MatchResult rate, List<Part> parts, Place place, Faults faults) {
        int before = faults.size();
        Optional<LabelTail> tail = new Reader(rate, parts, place, faults).read();
        return faults.since(before) ? Optional.empty() : tail;
    }

    /** What is wrong with a word that is no field of a label of the generation. */
    static String order(Generation generation) {
        return "is no field that can stand there; the order is " + switch (generation) {
            case DDR3 -> "PC3L-12800R-11-13-E2";
            case DDR4 -> "PC4-2400T-RA1-11 or PC4-19200R-17-11-A1";
            case DDR5 -> "PC5-4800B-RA0-1010-XT";
        };
    }

    boolean isOfRate(LabelTail other) {
        return speed.generation() == other.speed.generation() && speed.mts() == other.speed.mts();
    }

    boolean isOfOtherType(LabelTail other) {
        return letter.isPresent() && other.letter.isPresent() && !letter.equals(other.letter);
    }

    /** Of this and another designation of the same module, the one that says more. */
    LabelTail joined(LabelTail other) {
        return weight() >= other.weight() ? this : other;
    }

    private long weight() {
        return Stream.of(speed.bin(), letter, speed.latency(), card, spd).filter(Optional::isPresent).count();
    }

    ModuleLabel label(Optional<Integer> capacityGb, Optional<Organisation> organisation, Optional<ModuleLetter> type) {
        return new ModuleLabel(capacityGb, organisation, speed, type, card, spd, suffixes);
    }

    /** Takes one part after the other. */
    private static final class Reader {

        private final MatchResult rate;
        private final Deque<Part> parts;
        private final Place place;
        private final Faults faults;
        private Generation generation;
        private Optional<SpeedBin> bin = Optional.empty();
        private Optional<ModuleLetter> letter = Optional.empty();
        private Optional<Latency> latency = Optional.empty();
        private Optional<RawCard> card = Optional.empty();
        private Optional<String> spd = Optional.empty();
        private final List<String> suffixes = new ArrayList<>();
        private final List<String> rest = new ArrayList<>();

        Reader(MatchResult rate, List<Part> parts, Place place, Faults faults) {
            this.rate = rate;
            this.parts = new ArrayDeque<>(parts);
            this.place = place;
            this.faults = faults;
        }

        Optional<LabelTail> read() {
            Optional<Generation> known = Generation.numbered(rate.group(2));
            if (known.isEmpty()) {
                fault("generation", rate.group(1) + rate.group(2), "must be PC3, PC4 or PC5, for DDR3, DDR4 or DDR5");
                return Optional.empty();
            }
            generation = known.get();
            String voltage = rate.group(3);
            if (!generation.volts().containsKey(voltage)) {
                prefix(voltage);
            }
            int figure = Integer.parseInt(rate.group(4));
            Optional<Generation.Rate> bySpeed = generation.ofMts(figure);
            Optional<Generation.Rate> found = bySpeed.or(() -> generation.ofDesignation(figure));
            if (found.isEmpty() && unknownRate(figure)) {
                return Optional.empty();
            }
            // DDR3 labels have one form, so a rate in MT/s there is a seller's, with the letter of the type behind it.
            boolean bandwidth = generation == Generation.DDR3 || bySpeed.isEmpty() && (found.isPresent() || figure >= LEAST_DESIGNATION);
            Form form = bandwidth ? Form.BANDWIDTH : Form.SPEED;
            if (form == Form.SPEED) {
                speedForm(rate.group(5), found.map(Generation.Rate::mts));
            } else {
                bandwidthForm(rate.group(5));
            }
            return found.map(exact -> new LabelTail(new LabelSpeed(generation, voltage, form, exact.mts(), bin, latency), letter, card, spd,
                    suffixes, rest));
        }

        /** Reports a letter between generation and rate that does not belong there: only voltages do, and not in every generation. */
        private void prefix(String letter) {
            String right = "must be " + generation.volts().keySet().stream().sorted().map(letters -> generation.prefix() + letters)
                    .collect(Collectors.joining(" or "));
            String behind = SpeedBin.named(letter, generation).map(known -> "; a speed bin stands behind the rate: %s-%s%s"
                    .formatted(generation.prefix(), rate.group(4), rate.group(5).isEmpty() ? letter : rate.group(5))).orElse("");
            fault(Generation.isVoltage(letter) ? "voltage" : "generation", generation.prefix() + letter, right + behind);
        }

        /** Reports the rate; whether it is one of another generation, so that nothing behind it can be judged. */
        private boolean unknownRate(int figure) {
            String elsewhere = Stream.of(Generation.values())
                    .filter(other -> other.ofMts(figure).or(() -> other.ofDesignation(figure)).isPresent())
                    .map(other -> "; %s-%s would be right".formatted(other.prefix(), figure)).collect(Collectors.joining());
            fault("speed", rate.group(4), "is no rate of %s in MT/s or MB/s; the nearest is %s%s"
                    .formatted(generation, generation.nearest(figure), elsewhere));
            return !elsewhere.isEmpty();
        }

        private void speedForm(String glued, Optional<Integer> mts) {
            if (!glued.isEmpty()) {
                bin = SpeedBin.named(glued, generation);
                if (bin.isEmpty()) {
                    String printed = generation.prefix() + "-" + rate.group(4);
                    String type = ModuleLetter.named(glued, generation).isPresent() && parts.isEmpty()
                            ? "; a module's type stands behind a hyphen: %s-%s".formatted(printed, glued) : "";
                    fault("bin", glued, "must be a speed bin: %s has %s%s".formatted(printed, names(SpeedBin.of(generation, mts)), type));
                }
            } else if (!parts.isEmpty() && ModuleLetter.named(next(), generation).isEmpty()) {
                bin = SpeedBin.named(next(), generation);
                bin.ifPresent(taken -> take());
            }
            if (!parts.isEmpty() && !isNumber(next())) {
                typeAndCard(take());
            }
            if (!parts.isEmpty() && isNumber(next())) {
                spd(take());
            }
            suffixes();
        }

        private void typeAndCard(String part) {
            Matcher found = TYPE_AND_CARD.matcher(part);
            if (!found.matches()) {
                fault("type and raw card", part, "must be like RA1: the type %s, then the raw card and its revision"
                        .formatted(names(ModuleLetter.of(generation))));
                return;
            }
            type(found.group(1));
            card(found.group(2), found.group(3));
        }

        private void type(String written) {
            letter = ModuleLetter.named(written, generation);
            if (letter.isEmpty()) {
                String small = written.equals("S") || written.equals("T") ? "; a small-outline module fits no server slot" : "";
                fault("type", written, "must be " + ModuleLetter.of(generation).stream()
                        .map(known -> "%s (%s)".formatted(known, known.meaning())).collect(Collectors.joining(", ")) + small);
            }
        }

        private void card(String letters, String revised) {
            // An O in the place of the revision is a zero written otherwise.
            Optional<String> revision = Optional.ofNullable(revised).map(written -> written.equals("O") ? "0" : written);
            card = Optional.ofNullable(letters).map(design -> new RawCard(design, revision));
        }

        private void spd(String part) {
            int digits = generation == Generation.DDR5 ? 4 : 2;
            if (part.length() == digits) {
                spd = Optional.of(part);
            } else {
                fault("SPD revision", part, "must be %s digits, such as %s".formatted(digits, digits == 4 ? "1010" : "11"));
            }
        }

        private void bandwidthForm(String glued) {
            boolean apart = glued.isEmpty() && !parts.isEmpty() && ModuleLetter.named(next(), generation).isPresent();
            String written = apart ? take() : glued;
            if (!written.isEmpty()) {
                type(written);
            }
            if (!parts.isEmpty() && isNumber(next())) {
                latency(take());
            }
            if (!parts.isEmpty() && isNumber(next())) {
                spd(take());
            }
            if (!parts.isEmpty()) {
                Matcher found = CARD.matcher(next());
                if (found.matches()) {
                    take();
                    card(found.group(1), found.group(2));
                } else if (!mayBeText()) {
                    fault("raw card", take(), "must be like A1: the raw card's letters and its revision");
                }
            }
            suffixes();
        }

        private void latency(String part) {
            List<Integer> cycles = switch (part.length()) {
                case 1, 2 -> List.of(Integer.parseInt(part));
                case 3 -> part.chars().map(digit -> digit - '0').boxed().toList();
                case 6 -> Stream.of(0, 2, 4).map(at -> Integer.parseInt(part.substring(at, at + 2))).toList();
                default -> List.of();
            };
            if (cycles.isEmpty() || !cycles.stream().allMatch(Latency::isCount)) {
                fault("CAS latency", part, "must be clock cycles, such as 11 or, with tRCD and tRP, 111111");
            } else {
                latency = Optional.of(new Latency(cycles));
            }
        }

        private void suffixes() {
            while (!parts.isEmpty()) {
                if (SUFFIX.matcher(next()).matches() && suffixes.size() < MOST_SUFFIXES && (letter.isPresent() || spd.isPresent())) {
                    suffixes.add(take());
                } else if (mayBeText()) {
                    parts.forEach(part -> rest.add(part.text()));
                    parts.clear();
                } else {
                    fault(END, take(), order(generation));
                }
            }
        }

        /** Whether what comes next may be no part of the label: all fields that a catalogue needs have been read. */
        private boolean mayBeText() {
            return letter.isPresent() && parts.element().apart();
        }

        private String next() {
            return parts.element().text();
        }

        private String take() {
            return parts.remove().text();
        }

        private static boolean isNumber(String part) {
            return part.chars().allMatch(c -> c >= '0' && c <= '9');
        }

        private static String names(List<? extends Enum<?>> known) {
            return known.stream().map(Enum::name).collect(Collectors.joining(", "));
        }

        private void fault(String name, String written, String problem) {
            new Field(name, written, place, false).fault(problem, faults);
        }
    }
}
