package sledwright.report.text;

import java.util.ArrayList;
import java.util.List;

/** Running text, folded to a width. */
final class Paragraph {

    private Paragraph() {
    }

    /**
     * The text in lines of at most {@code width} characters, broken at blanks, and within a word only where it must be; at least one line.
     */
    static List<String> fold(String text, int width) {
        List<String> lines = new ArrayList<>();
        String left = text.strip();
        while (left.length() > width) {
            int blank = left.lastIndexOf(' ', width);
            int end = blank > 0 ? blank : width;
            lines.add(left.substring(0, end).stripTrailing());
            left = left.substring(end).stripLeading();
        }
        lines.add(left);
        return lines;
    }

    /** The text behind a mark, its further lines indented as far. */
    static List<String> item(String mark, String text, int width) {
        List<String> lines = new ArrayList<>();
        for (String line : fold(text, width - mark.length())) {
            lines.add((lines.isEmpty() ? mark : " ".repeat(mark.length())) + line);
        }
        return lines;
    }
}
