package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.catalog.NewShop;

/** A shop to start from: sound, without warnings, and fit to be quoted from. */
class CatalogNewCommandTest {

    @TempDir
    private Path folder;

    private static List<String> held(Path shop) throws IOException {
        try (Stream<Path> files = Files.walk(shop)) {
            return files.filter(Files::isRegularFile).map(file -> shop.relativize(file).toString().replace('\\', '/')).sorted().toList();
        }
    }

    @Test
    void itIsSoundAndQuotesFromTheStart() throws IOException {
        Path shop = folder.resolve("deep/my-shop");
        Run made = Run.of("catalog", "new", shop.toString(), "--today", "2026-11-20");
        assertThat(made.code()).as(made.err()).isEqualTo(ExitCode.DONE);
        assertThat(made.out().replace(shop.toString(), "SHOP")).contains("Look at it: sledwright catalog SHOP\nAsk it:     sledwright quote SHOP/requests/first-quote.yaml\n");
        assertThat(held(shop)).containsExactlyInAnyOrderElementsOf(NewShop.FILES);
        JsonNode look = new ObjectMapper().readTree(Run.of("catalog", shop.toString(), "--format", "json").out());
        assertThat(look.get("warnings")).isEmpty();
        assertThat(look.toString()).contains("2026-11-20");
        String text = Run.of("catalog", shop.toString()).out();
        assertThat(text).contains("no faults; prices of 2026-11-20 in EUR").doesNotContain("Worth a look", "without an offer");
        Run quote = Run.of("quote", shop.resolve("requests/first-quote.yaml").toString(), "--today", "2026-11-20", "--format", "json");
        assertThat(quote.code()).as(quote.err()).isEqualTo(ExitCode.DONE);
        JsonNode answer = new ObjectMapper().readTree(quote.out());
        assertThat(answer.get("status").asText()).isEqualTo("proved");
        assertThat(answer.get("warnings")).isEmpty();
        assertThat(answer.get("alternatives")).hasSizeGreaterThan(1);
    }

    /** The examples of the document are files of the shop, which the tests above read and ask. */
    @Test
    void theDocumentShowsItsFiles() throws IOException {
        Path shop = folder.resolve("shop");
        Run.of("catalog", "new", shop.toString());
        String formats = Files.readString(Path.of("docs/formats.md"));
        for (String file : List.of("platforms/rack-1.yaml", "requests/first-quote.yaml")) {
            assertThat(formats).as(file).contains("```yaml\n" + Files.readString(shop.resolve(file)) + "```");
        }
    }

    /** Whoever opens a file is told what it is for. */
    @Test
    void everyFileThatMayHaveCommentsHasThem() throws IOException {
        Path shop = folder.resolve("shop");
        Run.of("catalog", "new", shop.toString());
        for (String file : NewShop.FILES.stream().filter(name -> name.endsWith(".yaml")).toList()) {
            assertThat(Files.readString(shop.resolve(file))).as(file).startsWith("# ");
        }
    }

    @Test
    void whatIsThereStaysAsItIs() throws IOException {
        Path full = Files.createDirectories(folder.resolve("full"));
        Files.writeString(full.resolve("mine.txt"), "mine");
        Run run = Run.of("catalog", "new", full.toString());
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).contains(full + " is not empty; a new shop needs a folder of its own.");
        assertThat(held(full)).containsExactly("mine.txt");
        Path file = full.resolve("mine.txt");
        assertThat(Run.of("catalog", "new", file.toString()).err()).contains(file + " is a file; a new shop needs a folder of its own.");
        assertThat(Run.of("catalog", "new", file.resolve("below").toString()).err()).contains(file + " is a file");
        assertThat(Run.of("catalog", "new", "/proc/new-shop").err()).contains("/proc/new-shop could not be written (");
        assertThat(held(folder)).containsExactly("full/mine.txt");
        Path empty = Files.createDirectories(folder.resolve("empty"));
        assertThat(Run.of("catalog", "new", empty.toString(), "--format", "csv").out()).startsWith("file\ncatalog.yaml\n");
        assertThat(held(empty)).hasSameSizeAs(NewShop.FILES);
        assertThat(new ObjectMapper().readTree(Run.of("catalog", "new", folder.resolve("third").toString(), "--format", "json").out()).get("files")).hasSameSizeAs(NewShop.FILES);
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.map(path -> path.getFileName().toString())).containsExactlyInAnyOrder("full", "empty", "third");
        }
    }
}
