package sledwright.schema;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What the documents say that keys mean. */
final class Meanings {

    private final Map<String, String> byKey = new HashMap<>();

    private Meanings() {
    }

    static Meanings of(Format format) {
        Meanings meanings = new Meanings();
        format.headings().forEach(heading -> meanings.add(heading.place(), heading.above()));
        return meanings;
    }

    private void add(String place, String above) {
        List<String> lines;
        try {
            lines = Files.readAllLines(Path.of("docs").resolve(place.substring(0, place.indexOf('#'))));
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
        String title = place.substring(place.indexOf('#') + 1);
        int start = Math.max(lines.indexOf("### " + title), lines.indexOf("#### " + title));
        if (start < 0) {
            throw new AssertionError("no heading " + place);
        }
        for (String line : lines.subList(start + 1, lines.size())) {
            if (line.startsWith("#")) {
                return;
            }
            if (line.startsWith("| `")) {
                List<String> cells = Arrays.stream(line.split("\\|")).map(String::strip).toList();
                byKey.putIfAbsent(above + cells.get(1).replace("`", ""), cells.get(4).replace("`", ""));
            }
        }
    }

    /** A sentence; empty where the documents have none. */
    String of(String path) {
        String meaning = byKey.getOrDefault(path.replace(".*", ""), path.endsWith(".*") ? "" : byKey.getOrDefault(path, ""));
        return meaning.isEmpty() || path.endsWith(".*") ? "" : Character.toUpperCase(meaning.charAt(0)) + meaning.substring(1) + ".";
    }
}
