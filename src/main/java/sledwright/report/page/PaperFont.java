package sledwright.report.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import sledwright.report.text.Unbroken;

/** The letters that papers are set in: which there are, and how wide they are. */
public final class PaperFont {

    /** All files name their letters; these need no look. */
    private static final int ASCII = 0x80;

    private static final PaperFont REGULAR = new PaperFont("fonts/NotoSans-Regular.ttf");
    private static final PaperFont BOLD = new PaperFont("fonts/NotoSans-Bold.ttf");

    private final TrueTypeFont font;
    private final CmapLookup letters;
    private final double em;

    private PaperFont(String file) {
        try (InputStream in = PaperFont.class.getResourceAsStream(file)) {
            font = new TTFParser().parse(new RandomAccessReadBuffer(in));
            letters = font.getUnicodeCmapLookup();
            em = font.getUnitsPerEm();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    /** Whether paper can show every letter of a text. */
    static boolean shows(String text) {
        return text.chars().allMatch(letter -> letter < ASCII)
                || text.codePoints().allMatch(letter -> REGULAR.glyph(letter) != 0 && BOLD.glyph(letter) != 0);
    }

    /** The width of the widest part of a text that stays on one line, in ems. */
    public static double widestPiece(String text, boolean bold) {
        return LineBreaks.pieces(Unbroken.text(Harmless.text(text))).stream().mapToDouble(piece -> width(piece, bold)).max().orElse(0);
    }

    /** The width of a text on one line, in ems. */
    public static double width(String text, boolean bold) {
        return (bold ? BOLD : REGULAR).width(text);
    }

    private double width(String text) {
        return text.codePoints().mapToDouble(this::advance).sum() / em;
    }

    private synchronized int glyph(int letter) {
        return letters.getGlyphId(letter);
    }

    private synchronized double advance(int letter) {
        try {
            return font.getAdvanceWidth(letters.getGlyphId(letter));
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }
}
