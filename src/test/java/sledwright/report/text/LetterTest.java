package sledwright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class LetterTest {

    private static final String BEFORE = "w".repeat(Letter.WIDTH - 8) + " ";

    @Test
    void linesDoNotEndBetweenFiguresAndUnits() {
        assertThat(new Letter().paragraph(BEFORE + "has 512 GB").toString()).endsWith("has\n512 GB\n");
        assertThat(new Letter().lines(List.of(BEFORE + "of 1 \u00d7 B1-08")).toString()).endsWith("of\n1 \u00d7 B1-08\n");
        assertThat(new Letter().items("- ", List.of(BEFORE + "1\u202f234,50\u00a0\u20ac")).toString()).endsWith("\n  1 234,50 \u20ac\n");
        TextTable table = new TextTable().column("", TextTable.Fit.FLEXIBLE).row(BEFORE + BEFORE + "of 4 \u00d7 16 GB");
        assertThat(new Letter().table(table).toString()).endsWith("of\n4 \u00d7 16 GB\n");
    }

    @Test
    void whatIsWiderThanALineEndsWhereABlankIs() {
        assertThat(new Letter().paragraph("w".repeat(60) + "\u00a0" + "v".repeat(30)).toString()).isEqualTo("w".repeat(60) + "\n" + "v".repeat(30) + "\n");
    }

    @Test
    void signsThatAreNotSeenAreCountedAsTheyAreShown() {
        assertThat(new Letter().paragraph(BEFORE + "a\u202eb\u202ec").toString()).endsWith("\na\\u202Eb\\u202Ec\n");
    }
}
