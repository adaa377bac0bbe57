package sledwright.report.text;

import java.util.List;
import sledwright.input.Visible;

/** A plain text in the making that is to be pasted into a mail: at most {@value #WIDTH} columns wide, paragraphs apart. */
public final class Letter {

    /** What mails have room for (RFC 5322, section 2.1.1, recommends at most 78 characters) with some left for marks of quotation. */
    public static final int WIDTH = 72;

    private final StringBuilder text = new StringBuilder();

    /** Running text, an empty line before it. */
    public Letter paragraph(String words) {
        gap();
        return fold(Paragraph.fold(whole(words), WIDTH));
    }

    /** Lines as they are, an empty line before them. */
    public Letter lines(List<String> lines) {
        gap();
        lines.forEach(line -> fold(Paragraph.fold(whole(line), WIDTH)));
        return this;
    }

    /** Each behind a mark; no empty line before them. */
    public Letter items(String mark, List<String> items) {
        items.forEach(item -> fold(Paragraph.item(mark, whole(item), WIDTH)));
        return this;
    }

    /** A table, an empty line before it. */
    public Letter table(TextTable table) {
        gap();
        return fold(table.unbroken().lines(WIDTH).stream().map(Visible::of).toList());
    }

    private void gap() {
        if (!text.isEmpty()) {
            text.append('\n');
        }
    }

    private Letter fold(List<String> lines) {
        lines.forEach(line -> text.append(plain(line)).append('\n'));
        return this;
    }

    /** Figures on one line with their units; what is not seen becomes longer before lines are filled. */
    private static String whole(String words) {
        return Unbroken.text(Visible.of(words));
    }

    /** Blanks that do not break would be lost on the way to a mail. */
    private static String plain(String words) {
        return words.replace('\u00a0', ' ').replace('\u202f', ' ');
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
