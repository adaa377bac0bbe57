package sledwright.report.text;

import java.util.ArrayList;
import java.util.List;

/** Running text, folded to a width. */
final class Paragraph {

    private Paragraph() {
    }

    /**
     * The text in lines of at most {@code width} characters, broken at blanks, at those that should not break or within a word only where
     * it must be; at least one line.
     */
    static List<String> fold(String text, int width) {
        List<String> lines = new ArrayList<>();
        String left = text.strip();
        while (left.length() > width) {
            int blank = left.lastIndexOf(' ', width);
            int end = blank > 0 ? blank : hard(left, width);
            lines.add(left.substring(0, end).stripTrailing());
            left = left.substring(end).replaceFirst("^[\\s\u00a0\u202f]+", "");
        }
        lines.add(left);
        return lines;
    }

    private static int hard(String text, int width) {
        int blank = Math.max(text.lastIndexOf('\u00a0', width), text.lastIndexOf('\u202f', width));
        return blank > 0 ? blank : width;
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
