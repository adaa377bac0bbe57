package sledwright.label;

import java.util.List;
import java.util.Optional;
import sledwright.domain.ModuleType;
import sledwright.label.LabelSpeed.Form;

/**
 * What the label of a module says. Fields that a label may leave out may be empty.
 *
 * @param spd      the SPD's revision as printed
 * @param suffixes what follows the fields of the standard
 */
public record ModuleLabel(Optional<Integer> capacityGb, Optional<Organisation> organisation, LabelSpeed speed,
        Optional<ModuleLetter> letter, Optional<RawCard> card, Optional<String> spd, List<String> suffixes) {

    public ModuleLabel {
        suffixes = List.copyOf(suffixes);
        boolean fits = speed.form() == Form.SPEED ? card.isEmpty() || letter.isPresent() : spd.isEmpty() || speed.latency().isPresent();
        if (!fits) {
            throw new IllegalArgumentException("fields that no label has together");
        }
    }

    boolean stacked() {
        return organisation.isPresent() && organisation.get().stacked();
    }

    /** How the module is buffered, or that it is stacked, which decides where it fits. */
    public Optional<ModuleType> type() {
        return stacked() ? Optional.of(ModuleType.THREE_DS) : letter.map(ModuleLetter::type);
    }

    /** The label as the standard prints it. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder();
        capacityGb.ifPresent(gb -> text.append(gb).append("GB "));
        organisation.ifPresent(org -> text.append(org).append(' '));
        text.append(speed.generation().prefix()).append(speed.voltage()).append('-');
        String raw = card.map(RawCard::toString).orElse("");
        String type = letter.map(ModuleLetter::name).orElse("");
        if (speed.form() == Form.SPEED) {
            text.append(speed.mts()).append(speed.bin().map(SpeedBin::name).orElse(""));
            add(text, type + raw);
            add(text, spd.orElse(""));
        } else {
            text.append(speed.designation()).append(type);
            add(text, speed.latency().map(Latency::onLabel).orElse(""));
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
