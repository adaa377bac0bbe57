package sledwright.label;

import java.util.List;
import java.util.Optional;
import sledwright.domain.ModuleType;

/**
 * What the label of a module says. Fields that a label may leave out may be empty.
 *
 * @param voltage   the letter after the prefix; may be empty
 * @param mts       transfer rate, MT/s, as the generation lists it
 * @param bin       only in the speed form
 * @param latency   only in the bandwidth form
 * @param card      the raw card, letters
 * @param revision  of the raw card; none without a card
 * @param spd       the SPD's revision as printed
 * @param suffixes  what follows the fields of the standard
 */
public record ModuleLabel(Optional<Integer> capacityGb, Optional<Organisation> organisation, Generation generation,
        String voltage, Form form, int mts, Optional<SpeedBin> bin, Optional<ModuleLetter> letter, Optional<Latency> latency,
        Optional<String> card, Optional<String> revision, Optional<String> spd, List<String> suffixes) {

    /** The two ways to print a label. */
    public enum Form {
        /** MT/s, then the speed bin. */
        SPEED,
        /** MB/s, then the module's type and the CAS latency. */
        BANDWIDTH
    }

    public ModuleLabel {
        suffixes = List.copyOf(suffixes);
        boolean fits = form == Form.SPEED
                ? generation != Generation.DDR3 && latency.isEmpty() && (card.isEmpty() || letter.isPresent())
                : bin.isEmpty() && (spd.isEmpty() || latency.isPresent());
        if (!fits || revision.isPresent() && card.isEmpty()) {
            throw new IllegalArgumentException("fields that no label has together");
        }
    }

    /** Supply voltage, V. */
    public double volts() {
        return generation.volts().get(voltage);
    }

    boolean stacked() {
        return organisation.isPresent() && organisation.get().stacked();
    }

    /** How the module is buffered, or that it is stacked, which decides where it fits. */
    public Optional<ModuleType> type() {
        return stacked() ? Optional.of(ModuleType.THREE_DS) : letter.map(ModuleLetter::type);
    }

    /** The bandwidth of the module as labels print it, MB/s. */
    int designation() {
        return generation.ofMts(mts).orElseThrow().designation();
    }

    /** The label as the standard prints it. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        capacityGb.ifPresent(gb -> text.append(gb).append("GB "));
        organisation.ifPresent(org -> text.append(org).append(' '));
        text.append(generation.prefix()).append(voltage).append('-');
        String raw = card.orElse("") + revision.orElse("");
        String type = letter.map(ModuleLetter::name).orElse("");
        if (form == Form.SPEED) {
            text.append(mts).append(bin.map(SpeedBin::name).orElse(""));
            add(text, type + raw);
            add(text, spd.orElse(""));
        } else {
            text.append(designation()).append(type);
            add(text, latency.map(Latency::onLabel).orElse(""));
            add(text, spd.orElse(""));
            add(text, raw);
        }
        suffixes.forEach(suffix -> add(text, suffix));
        return text.toString();
    }

    private static void add(StringBuilder text, String part) {
        if (!part.isEmpty()) {
            text.append('-').append(part);
        }
    }
}
