package sledwright.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class SourceTest {

    private static final Field NAMED = new Field("catalog", "../shop", new Place("standard input", 2), false);

    private final Faults faults = new Faults();

    private static Source bytes(String text) {
        return Source.of("standard input", text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void whatAFileNamesIsFoundFromItsFolder() {
        assertThat(Source.of(Path.of("requests/node.yaml")).beside(NAMED, "folder", "type it in", faults)).contains(Path.of("shop"));
        assertThat(faults.size()).isZero();
    }

    @Test
    void whatIsInNoFolderCanNameNoFile() {
        assertThat(bytes("").beside(NAMED, "folder", "type it in", faults)).isEmpty();
        assertThat(faults.all()).extracting(Fault::toString).containsExactly("standard input:2: catalog \"../shop\": a folder is found from the file"
                + " that names it, and standard input is none; type it in");
    }

    @Test
    void bytesAreReadLikeAFile() {
        assertThat(YamlReader.read(bytes("kind: quote\n"), faults).orElseThrow().values()).containsOnlyKeys("kind");
        assertThat(YamlReader.read(bytes("- a\n"), faults)).isEmpty();
        assertThat(faults.all()).extracting(Fault::toString).containsExactly("standard input:1: must hold keys and values, such as \"name: ...\"");
    }

    @Test
    void bytesAreLimitedLikeAFile() {
        assertThat(bytes("x".repeat(1_000_000)).bytes(1, faults)).isPresent();
        assertThat(bytes("x".repeat(1_000_001)).bytes(1, faults)).isEmpty();
        assertThat(faults.all()).extracting(Fault::toString).containsExactly("standard input: is larger than 1 MB");
    }

    @Test
    void aRequestWithoutNameIsCalledAsItsFile() {
        assertThat(Source.of(Path.of("requests/node.yaml")).plainName()).isEqualTo("node");
        assertThat(bytes("").plainName()).isEqualTo("request");
    }
}
