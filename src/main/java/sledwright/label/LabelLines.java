package sledwright.label;

import java.util.ArrayList;
import java.util.List;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Located;
import sledwright.input.Place;
import sledwright.input.Source;
import sledwright.input.TextFile;

/** Labels as a user gives them: on the command line, or one on each line of a file. */
public final class LabelLines {

    private static final int MOST_MEGABYTES = 3;

    private LabelLines() {
    }

    /**
     * The labels among arguments. One with a blank in it is a label; others that follow each other are the words of one label, until
     * a field begins that it already has.
     */
    public static List<Located<String>> ofArguments(List<String> arguments) {
        List<Located<String>> labels = new ArrayList<>();
        List<String> words = new ArrayList<>();
        List<String> kinds = new ArrayList<>();
        for (String argument : arguments) {
            boolean whole = argument.strip().indexOf(' ') >= 0;
            List<String> starts = LabelReader.startsOf(argument);
            if (whole || starts.stream().anyMatch(kinds::contains)) {
                end(words, kinds, labels);
            }
            words.add(argument);
            kinds.addAll(starts);
            if (whole) {
                end(words, kinds, labels);
            }
        }
        end(words, kinds, labels);
        return labels;
    }

    private static void end(List<String> words, List<String> kinds, List<Located<String>> labels) {
        if (!words.isEmpty()) {
            String label = String.join(" ", words);
            labels.add(new Located<>(label, Place.of("label \"%s\"".formatted(Field.shown(label)))));
        }
        words.clear();
        kinds.clear();
    }

    /** The labels of a file; empty lines and those that begin with # are ignored. None, with a fault, when it has no label. */
    public static List<Located<String>> ofFile(Source source, Faults faults) {
        int before = faults.size();
        List<Located<String>> labels = TextFile.lines(source, MOST_MEGABYTES, faults).stream()
                .filter(line -> !line.value().isBlank() && !line.value().strip().startsWith("#")).toList();
        if (labels.isEmpty() && !faults.since(before)) {
            faults.add(source.place(), "holds no label; it would have one on each line");
        }
        return labels;
    }

    /** The modules that those labels are on; those with a fault are left out. */
    public static List<Reading> read(List<Located<String>> labels, Faults faults) {
        List<Reading> readings = new ArrayList<>();
        for (Located<String> label : labels) {
            LabelReader.read(label.value(), label.place(), faults)
                    .ifPresent(found -> readings.add(Reading.of(label.value().strip(), found)));
        }
        return readings;
    }
}
