package sledwright.report.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class LongWordsTest {

    @Test
    void longWordsMayBreakInBrowsersAndNothingElseDoes() {
        assertThat(LongWords.breakable("<td data-label=\"ABCDEFGHIJKLMNOPQRSTUVWXYZ\">ABCDEFGHIJKLMNOPQRSTUVWXYZ and</td>"))
                .isEqualTo("<td data-label=\"ABCDEFGHIJKLMNOPQRSTUVWXYZ\">ABCDEFGHIJ<wbr/>KLMNOPQRST<wbr/>UVWXYZ and</td>");
        assertThat(LongWords.breakable("<p>&lt;&lt;&lt;&lt;&lt;&lt;&lt;&lt;&lt;ABCDEFGHIJKL</p>"))
                .isEqualTo("<p>&lt;&lt;&lt;&lt;&lt;&lt;&lt;&lt;&lt;A<wbr/>BCDEFGHIJK<wbr/>L</p>");
        for (String same : List.of("<p>ABCDEFGHIJKLMNOPQRST</p>", "<p>1,234,567,890,123,456.00</p>", "<script>ABCDEFGHIJKLMNOPQRSTUVWXYZ</script>",
                "<style>ABCDEFGHIJKLMNOPQRSTUVWXYZ</style>", "<svg><text>ABCDEFGHIJKLMNOPQRSTUVWXYZ</text></svg>")) {
            assertThat(LongWords.breakable(same)).isEqualTo(same);
        }
    }

    @Test
    void aWordMayBeAsLongAsATextMayBe() {
        assertThat(LongWords.breakable("<p>" + "x".repeat(20_000) + "</p>")).isEqualTo("<p>" + "xxxxxxxxxx<wbr/>".repeat(1_999) + "xxxxxxxxxx</p>");
    }

    @Test
    void linesOfPaperEndWhereNothingIsLost() {
        assertThat(LineBreaks.pieces("at 10 Gbit/s and Rp7.120.708,00 of")).containsExactly("at", "10", "Gbit/s", "and", "Rp7.120.708,00", "of");
        assertThat(LineBreaks.pieces("2\u00a0\u00d7\u00a0ABCDEFGHIJKLMNOPQRSTUVWXYZ")).containsExactly("2\u00a0\u00d7\u00a0ABCDEFGHIJ", "KLMNOPQRST", "UVWXYZ");
        assertThat(LineBreaks.pieces("1.234.567.890.123.456,00")).hasSize(1);
    }
}
