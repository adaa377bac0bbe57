package sledwright.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static sledwright.label.LabelReaderTest.faults;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.input.Faults;
import sledwright.input.Located;
import sledwright.input.Place;
import sledwright.input.Source;

/** The last value that a field takes and the first that it does not, and fields that stand where they rarely do. */
class LabelBordersTest {

    private static final Place HERE = new Place("labels.txt", 1);

    @ParameterizedTest
    @CsvSource({
        "16GB 2Rx4 PC4-2400-T-RA1-11, 16GB 2Rx4 PC4-2400T-RA1-11",
        "16GB 2Rx4 PC4-2400-R, 16GB 2Rx4 PC4-2400-R",
        "16GB 2Rx4 PC4-19200-R-17-11-A1, 16GB 2Rx4 PC4-19200R-17-11-A1",
        "4GB 2Rx8 PC3-10600R-E, 4GB 2Rx8 PC3-10600R-E",
        "16GB 2Rx4 PC4-19200-17-11-A1-P2, 16GB 2Rx4 PC4-19200-17-11-A1-P2",
        "4GB 2Rx8 PC3-10600R-A1-P2, 4GB 2Rx8 PC3-10600R-A1-P2",
        "64GB 2S2Rx4 PC4-2666V 3DS, 64GB 2S2Rx4 PC4-2666V",
        "64GB 2S2Rx4 PC4-2666V 3DS LRDIMM, 64GB 2S2Rx4 PC4-2666V-L",
        "16GB 2Rx4 PC4-19100R, 16GB 2Rx4 PC4-19200R",
        "16GB 2Rx4 PC4-19300R, 16GB 2Rx4 PC4-19200R"})
    void fieldsThatStandApart(String typed, String printed) {
        Faults faults = new Faults();
        Optional<LabelReader.Read> label = LabelReader.read(typed, HERE, faults);
        assertThat(faults.all()).as(typed).isEmpty();
        assertThat(label.orElseThrow().label()).hasToString(printed);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            16GB 2Rx4 PC4-19099R | speed "19099": | the nearest is PC4-19200
            16GB 2Rx4 PC4-10600R | speed "10600": | PC3-10600 would be right
            16GB 2Rx4 PC4-10000E | speed "10000": | the nearest is PC4-12800
            DDR9 16GB 2Rx4 PC4-2400T-R | generation "DDR9": | must be PC3, PC4 or PC5
            LRDIM 16GB 2Rx4 PC4-2400T-R | word "LRDIM": | did you mean LRDIMM?
            16GB 2Rx4 PC4-2400T-TA1 | type "T": | a small-outline module fits no server slot
            16GB 2Rx4 PC4-2400T-RA1-111 | SPD revision "111": | must be 2 digits, such as 11
            64GB 2Rx4 PC5-4800B-RA0-10 | SPD revision "10": | must be 4 digits, such as 1010
            16GB 2Rx4 PC4-19200-A1-P2 | end of the label "P2": | the order is
            """)
    void fieldsThatCannotBe(String text, String begins, String holds) {
        assertThat(faults(text.strip())).singleElement().asString().startsWith(begins.strip()).contains(holds.strip());
    }

    @Test
    void wordsThatResembleNoneAreGivenNone() {
        assertThat(faults("XRDIMX 16GB 2Rx4 PC4-2400T-R")).singleElement().asString().startsWith("word \"XRDIMX\"");
        assertThat(faults("SHIP 16GB 2Rx4 PC4-2400T-R")).singleElement().asString().endsWith(LabelReader.RIGHT);
        assertThat(faults("16GB 2Rx4 PC4-2400T-ZA1")).singleElement().asString().doesNotContain("small-outline");
    }

    @Test
    void aLabelIsNoLongerThanItMayBe() {
        String label = LabelReader.RIGHT;
        assertThat(LabelReader.read(label + " ".repeat(200 - label.length()), HERE, new Faults())).isPresent();
        assertThat(faults(label + " ".repeat(201 - label.length()))).singleElement().asString().contains("longer than 200 characters");
    }

    @Test
    void cyclesFromFourToNinetyNine() {
        assertThat(new Latency(List.of(4)).cycles()).containsExactly(4);
        assertThat(new Latency(List.of(99, 4, 99)).cycles()).containsExactly(99, 4, 99);
        for (List<Integer> wrong : List.of(List.of(3), List.of(100), List.of(11, 11), List.of(11, 11, 3), List.<Integer>of())) {
            assertThatThrownBy(() -> new Latency(wrong)).isInstanceOf(IllegalArgumentException.class).hasMessageContaining(wrong.toString());
        }
    }

    /** Ranks times layers is what the controller sees, sixteen at most. */
    @Test
    void stacksOfTooManyRanks() {
        assertThat(Organisation.possible(4, Organisation.Stacking.THREE_DS, 4, 4)).isTrue();
        assertThat(Organisation.possible(4, Organisation.Stacking.THREE_DS, 8, 4)).isFalse();
    }

    @Test
    void labelsOfAFile(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("labels.txt"), "# in the box\n\n  \n16GB 2Rx4 PC4-2400T-R\n  # not this\n8GB 1Rx8 PC4-2400T-E\n");
        Faults faults = new Faults();
        List<Located<String>> labels = LabelLines.ofFile(Source.of(file), faults);
        assertThat(labels).extracting(Located::value).containsExactly("16GB 2Rx4 PC4-2400T-R", "8GB 1Rx8 PC4-2400T-E");
        assertThat(labels).extracting(label -> label.place().toString()).containsExactly(file + ":4", file + ":6");
        assertThat(faults.all()).isEmpty();
    }

    @Test
    void aFileWithoutLabels(@TempDir Path folder) throws IOException {
        Faults faults = new Faults();
        assertThat(LabelLines.ofFile(Source.of(Files.writeString(folder.resolve("none.txt"), "# nothing\n\n")), faults)).isEmpty();
        assertThat(faults.all()).singleElement().asString().contains("holds no label");
        Faults missing = new Faults();
        assertThat(LabelLines.ofFile(Source.of(folder.resolve("missing.txt")), missing)).isEmpty();
        assertThat(missing.all()).singleElement().asString().contains("there is no such file");
    }
}
