package sledwright.report.ask;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Desk;
import sledwright.desk.Reply;
import sledwright.desk.view.CheckView;
import sledwright.domain.Catalog;
import sledwright.input.Source;
import sledwright.samples.Folders;

class HandPieceTest {

    private static final String BUILD = "{ kind: build, platform: WREN-2, processor: H1-08, processors: 1, cooling: WREN-HS-1, supply: RS-750, supply_count: 1,"
            + " modules: { 1A1: M16, 1B1: M16 }, require: { memory_gb: 100.5, cards: [{ kind: network }] } }";

    /** The page is in English, whatever customers of the shop speak; figures are as the shop writes them. */
    @Test
    void breachesAreSaidInTheLanguageOfThePage(@TempDir Path folder) throws IOException {
        Path shop = Folders.copy(Folders.SHOP, folder);
        Files.writeString(shop.resolve("catalog.yaml"), "document: { locale: de }\n", StandardOpenOption.APPEND);
        Catalog catalog = CatalogReader.read(shop);
        Reply<CheckView> checked = Desk.of(catalog).check(Source.of("a page", BUILD.getBytes(StandardCharsets.UTF_8)), List.of());
        assertThat(checked).isInstanceOf(Reply.Answered.class);
        String page = HandPiece.of(((Reply.Answered<CheckView>) checked).answer(), catalog, "{}", Optional.empty());
        assertThat(page).contains("the request asks for 1 network card.", "the request asks for 100,5\u00a0GB.", "462,50").doesNotContain("Netzwerkkarte");
    }
}
