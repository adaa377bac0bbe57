package sledwright.label;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sledwright.domain.ModuleType;
import sledwright.input.Bounds;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Nearest;
import sledwright.input.Place;

/**
 * Reads the label of a module in either form, in any case and with any blanks, hyphens or underlines between its fields. What follows
 * the rate has a fixed order; the other fields may stand anywhere.
 */
public final class LabelReader {

    static final String RIGHT = "16GB 2Rx4 PC4-2400T-RA1-11";

    private static final int LONGEST = 200;
    private static final Bounds CAPACITY = Bounds.of(1, 1024, "GB");
    private static final String ENDS = "(?![A-Z0-9])";
    private static final Pattern DASHES = Pattern.compile("[\\u2010-\\u2015\\u2212]");
    private static final Pattern GAP = Pattern.compile("[\\s,;:()/_|-]+");
    private static final Pattern CAPACITY_FORM = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,9})?)\\s*(GI?B|G|[MT]I?B)" + ENDS);
    private static final Pattern ORGANISATION_FORM =
            Pattern.compile("(\\d{1,4})\\s*([SD]?)\\s*(\\d{0,4})\\s*R\\s*[X*]\\s*(\\d{1,4})" + ENDS);
    private static final Pattern RATE_FORM = Pattern.compile("(PC|DDR)\\s?(\\d)([A-Z]?)[\\s_-]*(\\d{3,6})([A-Z]{0,12})" + ENDS);
    private static final Pattern WORD = Pattern.compile("[^\\s,;:()/_|-]+");
    /** Words that sellers add; the type that some of them state. */
    private static final Map<String, Optional<ModuleType>> WORDS = Map.ofEntries(
            Map.entry("RDIMM", Optional.of(ModuleType.RDIMM)), Map.entry("REG", Optional.of(ModuleType.RDIMM)),
            Map.entry("REGISTERED", Optional.of(ModuleType.RDIMM)), Map.entry("LRDIMM", Optional.of(ModuleType.LRDIMM)),
            Map.entry("UDIMM", Optional.of(ModuleType.UDIMM)), Map.entry("UNBUFFERED", Optional.of(ModuleType.UDIMM)),
            Map.entry("ECC", Optional.empty()), Map.entry("3DS", Optional.of(ModuleType.THREE_DS)), Map.entry("EC4", Optional.empty()),
            Map.entry("EC8", Optional.empty()), Map.entry("DDR3", Optional.empty()), Map.entry("DDR4", Optional.empty()),
            Map.entry("DDR5", Optional.empty()), Map.entry("DIMM", Optional.empty()));

    /**
     * What a text was read as.
     *
     * @param passedOver words behind a whole label that are no field, such as a maker's name
     */
    record Read(ModuleLabel label, List<String> passedOver) {

        Read {
            passedOver = List.copyOf(passedOver);
        }
    }

    private final String text;
    private final Place place;
    private final Faults faults;
    private final Map<String, String> seen = new HashMap<>();
    private final List<String> words = new ArrayList<>();
    private final List<String> rest = new ArrayList<>();
    private Optional<Integer> capacityGb = Optional.empty();
    private Optional<Organisation> organisation = Optional.empty();
    private Optional<LabelTail> tail = Optional.empty();
    private int position;
    private boolean apart;

    private LabelReader(String text, Place place, Faults faults) {
        this.text = text;
        this.place = place;
        this.faults = faults;
    }

    /** The label; empty, with a fault for each field that is wrong, when it is none. */
    static Optional<Read> read(String given, Place place, Faults faults) {
        int before = faults.size();
        if (given.length() > LONGEST) {
            faults.add(place, "is longer than %s characters; a label is like %s".formatted(LONGEST, RIGHT));
            return Optional.empty();
        }
        LabelReader reader = new LabelReader(normal(given), place, faults);
        reader.scan();
        if (!faults.since(before)) {
            reader.agree();
        }
        return faults.since(before) ? Optional.empty() : Optional.of(new Read(reader.label(), reader.rest));
    }

    private static String normal(String given) {
        String plain = DASHES.matcher(given).replaceAll("-").replace('×', 'x').replace('\u00a0', ' ');
        return plain.toUpperCase(Locale.ROOT).strip();
    }

    /** Which fields begin a text that stands alone, so that words of several labels can be separated. */
    static List<String> startsOf(String given) {
        String text = normal(given);
        List<String> kinds = new ArrayList<>();
        Map.of("capacity", CAPACITY_FORM, "ranks", ORGANISATION_FORM, "speed", RATE_FORM).forEach((kind, form) -> {
            if (form.matcher(text).lookingAt()) {
                kinds.add(kind);
            }
        });
        return kinds;
    }

    private void scan() {
        while (skip()) {
            Optional<Matcher> capacity = take(CAPACITY_FORM);
            Optional<Matcher> ranks = capacity.isPresent() ? Optional.empty() : take(ORGANISATION_FORM);
            Optional<Matcher> rate = capacity.isPresent() || ranks.isPresent() ? Optional.empty() : take(RATE_FORM);
            if (capacity.isPresent()) {
                once("capacity", capacity.get()).ifPresent(this::capacity);
            } else if (ranks.isPresent()) {
                once("ranks x width", ranks.get()).ifPresent(this::organisation);
            } else if (rate.isPresent()) {
                rate(rate.get());
            } else {
                word(take(WORD).orElseThrow().group());
            }
        }
        if (tail.isEmpty() && !seen.containsKey("speed")) {
            faults.add(place, "speed is missing: a label states it as PC4-2400T or PC4-19200R; a whole label is like " + RIGHT);
        }
    }

    /** Goes to the next field; whether there is one. */
    private boolean skip() {
        Matcher gap = GAP.matcher(text).region(position, text.length());
        if (gap.lookingAt()) {
            apart = gap.group().isBlank();
            position = gap.end();
        }
        return position < text.length();
    }

    private Optional<Matcher> take(Pattern form) {
        Matcher found = at(form);
        if (!found.lookingAt()) {
            return Optional.empty();
        }
        position = found.end();
        return Optional.of(found);
    }

    private Matcher at(Pattern form) {
        return form.matcher(text).region(position, text.length());
    }

    /** A field that no label has twice; the same again does no harm. */
    private Optional<Matcher> once(String name, Matcher found) {
        String written = GAP.matcher(found.group()).replaceAll("");
        String earlier = seen.putIfAbsent(name, written);
        if (earlier != null && !earlier.equals(written)) {
            fault(name, found.group(), "the label already says " + earlier);
        }
        return earlier == null ? Optional.of(found) : Optional.empty();
    }

    private void capacity(Matcher found) {
        String unit = found.group(2);
        double gb = Double.parseDouble(found.group(1)) * (unit.startsWith("T") ? 1024 : unit.startsWith("M") ? 1.0 / 1024 : 1);
        if (gb != Math.rint(gb) || !CAPACITY.holds(BigDecimal.valueOf(gb))) {
            fault("capacity", found.group(), "must be a whole number %s, such as 16GB".formatted(CAPACITY));
        } else {
            capacityGb = Optional.of((int) gb);
        }
    }

    private void organisation(Matcher found) {
        int ranks = Integer.parseInt(found.group(1));
        int width = Integer.parseInt(found.group(4));
        Organisation.Stacking stacking = Organisation.Stacking.lettered(found.group(2));
        int layers = found.group(3).isEmpty() ? 1 : Integer.parseInt(found.group(3));
        if (Organisation.possible(ranks, stacking, layers, width)) {
            organisation = Optional.of(new Organisation(ranks, stacking, layers, width));
        } else {
            fault("ranks x width", found.group(), "ranks must be 1, 2, 4 or 8, the width 4, 8 or 16, layers of a stack 2, 4 or 8"
                    + nearestOrganisation(found.group()));
        }
    }

    private static String nearestOrganisation(String written) {
        return new Nearest(Organisation.all().stream().map(Organisation::toString).toList()).near(written.replaceAll("\\s", ""));
    }

    private void rate(Matcher found) {
        List<LabelTail.Part> parts = new ArrayList<>();
        while (skip() && !at(CAPACITY_FORM).lookingAt() && !at(ORGANISATION_FORM).lookingAt() && !at(RATE_FORM).lookingAt()) {
            String part = take(WORD).orElseThrow().group();
            if (WORDS.containsKey(part)) {
                words.add(part);
            } else {
                parts.add(new LabelTail.Part(part, apart));
            }
        }
        boolean again = seen.containsKey("speed");
        seen.putIfAbsent("speed", found.group());
        Optional<LabelTail> read = LabelTail.read(found, parts, place, faults);
        read.ifPresent(known -> rest.addAll(known.rest()));
        if (!again) {
            tail = read;
        } else if (tail.isPresent() && read.isPresent()) {
            join(tail.get(), read.get(), found.group());
        }
    }

    private void join(LabelTail said, LabelTail more, String written) {
        if (!said.isOfRate(more)) {
            fault("speed", written, "the label already says " + seen.get("speed"));
        } else if (said.isOfOtherType(more)) {
            fault("type", more.letter().orElseThrow().name(), "the label already says " + said.letter().orElseThrow());
        } else {
            tail = Optional.of(said.joined(more));
        }
    }

    private void word(String word) {
        if (WORDS.containsKey(word)) {
            words.add(word);
        } else if (isWhole()) {
            rest.add(word);
        } else if (word.matches("\\d*[SD]?\\d*R.*") && word.matches(".*\\d.*")) {
            fault("ranks x width", word, "must be ranks, R, x and the device width" + nearestOrganisation(word));
            seen.putIfAbsent("ranks x width", word);
        } else if (word.matches("(PC|P\\d|C\\d|DD?R).*")) {
            fault("generation", word, "must be PC3, PC4 or PC5, with the rate behind it, such as PC4-2400T"
                    + new Nearest(List.of("PC3", "PC3L", "PC4", "PC5")).near(word));
            seen.putIfAbsent("speed", word);
        } else if (word.matches("\\d+[A-Z]{0,3}")) {
            fault("capacity", word, "must be a number and GB, such as 16GB"
                    + new Nearest(List.of("1GB", "2GB", "4GB", "8GB", "16GB", "32GB", "64GB", "128GB", "256GB")).near(word));
        } else {
            fault("word", word, "is no field of a label; a label is like " + RIGHT
                    + (word.contains("DIM") ? new Nearest(WORDS.keySet().stream().sorted().toList()).near(word) : ""));
        }
    }

    /** Whether all has been read that a catalogue needs of a label; what follows may be text of a maker's or a seller's. */
    private boolean isWhole() {
        return capacityGb.isPresent() && organisation.isPresent() && tail.flatMap(LabelTail::letter).isPresent();
    }

    /** Holds the fields against each other. */
    private void agree() {
        LabelTail said = tail.orElseThrow();
        Generation generation = said.speed().generation();
        if (!rest.isEmpty() && !isWhole()) {
            fault(LabelTail.END, rest.get(0), LabelTail.order(generation));
        }
        for (String word : words) {
            if (word.startsWith("DDR") && !word.equals(generation.name())) {
                fault("generation", word, "the label also says %s, which is %s".formatted(generation.prefix(), generation));
            }
            WORDS.get(word).ifPresent(type -> agreeOnType(word, type, said));
        }
        if (capacityGb.isPresent() && organisation.isPresent()) {
            agreeOnCapacity(capacityGb.get(), organisation.get(), generation);
        }
    }

    private void agreeOnType(String word, ModuleType type, LabelTail said) {
        boolean stacked = organisation.map(Organisation::stacked).orElse(false);
        if (type == ModuleType.THREE_DS) {
            if (organisation.isPresent() && !stacked) {
                fault("type", word, "%s is not stacked; a stacked module has ranks such as 2S4Rx4".formatted(organisation.get()));
            }
        } else if (said.letter().isPresent() && said.letter().get().type() != type) {
            fault("type", word, "the letter %s says %s".formatted(said.letter().get(), said.letter().get().type()));
        }
    }

    private void agreeOnCapacity(int gb, Organisation org, Generation generation) {
        double density = org.densityMbit(gb);
        if (generation.densitiesMbit().stream().noneMatch(known -> known == density)) {
            int nearest = generation.densitiesMbit().stream()
                    .min(Comparator.comparingDouble(known -> Math.abs(Math.log(org.capacityGb(known) / gb))))
                    .map(known -> (int) org.capacityGb(known)).orElseThrow();
            fault("capacity", gb + "GB", "with %s each device would hold %s Gbit, which %s devices do not; nearest is %sGB"
                    .formatted(org, LabelMeanings.plain(density / 1024), generation, nearest));
        }
    }

    private ModuleLabel label() {
        LabelTail said = tail.orElseThrow();
        Optional<ModuleLetter> letter = said.letter().or(() -> words.stream().flatMap(word -> WORDS.get(word).stream())
                .filter(type -> type != ModuleType.THREE_DS).findFirst().map(this::letter));
        return said.label(capacityGb, organisation, letter);
    }

    private ModuleLetter letter(ModuleType type) {
        return switch (type) {
            case RDIMM, THREE_DS -> ModuleLetter.R;
            case LRDIMM -> ModuleLetter.L;
            case UDIMM -> words.contains("ECC") ? ModuleLetter.E : ModuleLetter.U;
        };
    }

    private void fault(String name, String written, String problem) {
        new Field(name, written, place, false).fault(problem, faults);
    }
}
