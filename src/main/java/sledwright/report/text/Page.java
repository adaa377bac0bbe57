package sledwright.report.text;

import java.util.List;
import sledwright.input.Visible;
import sledwright.words.Sentence;

/** A text for people in the making. */
public final class Page {

    private final StringBuilder text = new StringBuilder();
    private final Screen screen;

    public Page(Screen screen) {
        this.screen = screen;
    }

    public Page line(String line) {
        return raw(Visible.of(line));
    }

    public Page line(Ink ink, String line) {
        return raw(screen.colour() ? ink.on(Visible.of(line)) : Visible.of(line));
    }

    private Page raw(String line) {
        text.append(line).append('\n');
        return this;
    }

    /** Running text. */
    public Page text(Ink ink, String words) {
        Paragraph.fold(words, screen.width()).forEach(line -> line(ink, line));
        return this;
    }

    public Page text(String words) {
        Paragraph.fold(words, screen.width()).forEach(this::line);
        return this;
    }

    public Page text(Ink ink, Sentence sentence) {
        return text(ink, sentence.in(screen.manner()));
    }

    public Page text(Sentence sentence) {
        return text(sentence.in(screen.manner()));
    }

    public Page item(String mark, Sentence sentence) {
        return item(mark, sentence.in(screen.manner()));
    }

    public Page item(String mark, String words) {
        Paragraph.item(mark, words, screen.width()).forEach(this::line);
        return this;
    }

    public Page items(List<?> sentences) {
        sentences.forEach(one -> item("- ", one instanceof Sentence sentence ? sentence.in(screen.manner()) : one.toString()));
        return this;
    }

    /** An empty line and a heading. */
    public Page heading(String words) {
        gap();
        Paragraph.fold(words, screen.width()).forEach(line -> line(Ink.HEAD, line));
        return this;
    }

    public Page gap() {
        return line("");
    }

    public Page table(TextTable table) {
        table.lines(screen.width()).forEach(this::line);
        return this;
    }

    public boolean fits(TextTable table) {
        return table.naturalWidth() <= screen.width();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
