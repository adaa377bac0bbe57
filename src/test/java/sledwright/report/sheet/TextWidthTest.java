package sledwright.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.report.page.Pages;

/** The estimate against the font that paper is printed in. */
class TextWidthTest {

    private static final String LETTERS = IntStream.rangeClosed(' ', '~').mapToObj(Character::toString).collect(Collectors.joining());

    private static double measured(TrueTypeFont font, String text) throws IOException {
        double sum = 0;
        for (int character : text.codePoints().toArray()) {
            sum += font.getAdvanceWidth(font.getUnicodeCmapLookup().getGlyphId(character));
        }
        return sum / font.getUnitsPerEm();
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void neverLessThanIsDrawn(boolean bold) throws IOException {
        String file = bold ? "fonts/NotoSans-Bold.ttf" : "fonts/NotoSans-Regular.ttf";
        try (TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(Pages.class.getResourceAsStream(file)))) {
            for (int character : (LETTERS + "\u00e4\u00df\u0142\u0416\u03a9\u2192").codePoints().toArray()) {
                String letter = Character.toString(character);
                assertThat(TextWidth.of(letter, 1, bold)).as(letter).isGreaterThanOrEqualTo(measured(font, letter));
            }
            assertThat(TextWidth.of("NV4R32-24-24", 10, bold)).isLessThan(13 * measured(font, "NV4R32-24-24"));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "A", "AB", "ABCDEFGHIJ", "\ud83d\ude00\ud83d\ude00\ud83d\ude00\ud83d\ude00"})
    void whatIsTooWideLosesItsMiddle(String text) {
        for (double room = 0; room < 12; room += 0.5) {
            String shown = TextWidth.within(text, 1, true, room);
            assertThat(TextWidth.of(shown, 1, true)).isLessThanOrEqualTo(room + 1e-6);
            assertThat(shown.equals(text)).isEqualTo(TextWidth.of(text, 1, true) <= room);
            assertThat(shown.equals(text) || shown.isEmpty() || shown.contains("..")).isTrue();
            assertThat(shown.codePoints().noneMatch(character -> character >= 0xD800 && character <= 0xDFFF)).isTrue();
        }
    }
}
