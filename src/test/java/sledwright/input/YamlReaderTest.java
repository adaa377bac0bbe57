package sledwright.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.input.Value.Group;
import sledwright.input.Value.Nothing;
import sledwright.input.Value.Scalar;
import sledwright.input.Value.Series;

class YamlReaderTest {

    @TempDir
    Path folder;

    private final Faults faults = new Faults();

    private Group read(String text) throws IOException {
        Path file = folder.resolve("file.yaml");
        Files.writeString(file, text);
        return YamlReader.read(Source.of(file), faults).orElseThrow();
    }

    @Test
    void everyValueKnowsItsLine() throws IOException {
        Group top = read("\uFEFF# words\r\na: 1\r\nb:\r\n  c: { d: x,\r\n    e: y }\r\n  f:\r\n    - one\r\n    - [two]\r\n");
        Group b = (Group) top.values().get("b");
        Group c = (Group) b.values().get("c");
        Series f = (Series) b.values().get("f");
        assertThat(top.keys().get("b").line()).isEqualTo(3);
        assertThat(b.keys().get("c").line()).isEqualTo(4);
        assertThat(c.values().get("d").place().line()).isEqualTo(4);
        assertThat(c.values().get("e").place().line()).isEqualTo(5);
        assertThat(f.items()).extracting(item -> item.place().line()).containsExactly(7, 8);
    }

    @Test
    void scalarsKeepTheirText() throws IOException {
        Group top = read("a: 010\nb: yes\nc: 1e5\nd: 2025-03-31\ne: 'x'\nf: ''\n");
        assertThat(top.values().values()).extracting(value -> ((Scalar) value).text())
                .containsExactly("010", "yes", "1e5", "2025-03-31", "x", "");
    }

    @Test
    void nothingIsNoText() throws IOException {
        assertThat(read("a:\nb: ~\nc: null\nd: NULL\n").values().values()).hasSize(4).allMatch(value -> value instanceof Nothing);
    }

    @Test
    void aliasesStandForWhatTheyName() throws IOException {
        Group top = read("a: &a [1, 2]\nb: *a\n");
        assertThat(((Series) top.values().get("b")).items()).hasSize(2);
    }

    @Test
    void noTextIsEndless() throws IOException {
        assertThat(read("a: " + "x".repeat(20_000) + "\n").values().get("a")).isInstanceOf(Scalar.class);
        assertThat(faults.size()).isZero();
        YamlReader.read(Source.of("a page", ("a: 1\nb: " + "x".repeat(20_001) + "\n? " + "k".repeat(30_000) + "\n: 1\n").getBytes(StandardCharsets.UTF_8)), faults);
        assertThat(faults.all()).extracting(Fault::toString).containsExactly("a page:2: a text of 20001 characters stands here; none may be longer than 20000",
                "a page:3: a text of 30000 characters stands here; none may be longer than 20000");
    }

    @Test
    void aValueGivenOutsideAFileStandsAtItsPlace() {
        Place place = Place.of("--set a=[1, {b: 2}]");
        Series value = (Series) YamlReader.value("[1, {b: 2}]", place, faults).orElseThrow();
        assertThat(value.items().get(1).place()).isEqualTo(place);
        assertThat(place).hasToString("--set a=[1, {b: 2}]");
    }
}
