package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

/** Commands that are given the number of a quote in the place of a file: of an order, 2026-0001, and of one request, 2026-0002. */
class BookPapersTest {

    @TempDir
    private static Path folder;
    private static Path shop;

    @BeforeAll
    static void save() throws IOException {
        shop = Folders.shopOfTwoWeeks(folder.resolve("shop"));
        Path order = Files.writeString(folder.resolve("order.yaml"), "kind: order\nname: two rooms\ncatalog: shop\ncustomer: [Nordmole]\nlines:\n"
                + "  web: { machines: 2, require: { cores: 8, memory_gb: 16 }, enclosure: own }\n  files: { machines: 1, require: { cores: 8, memory_gb: 48 }, enclosure: own }\n");
        Path node = Files.writeString(folder.resolve("node.yaml"), "kind: quote\nname: small node\ncatalog: shop\nrequire: { cores: 8, memory_gb: 16 }\nenclosure: own\n");
        assertThat(run("book", "save", order.toString(), "--customer", "Nordmole", "--today", "2026-03-02").out()).isEqualTo("2026-0001\n");
        assertThat(run("book", "save", node.toString(), "--customer", "Fenland", "--today", "2026-03-02").out()).isEqualTo("2026-0002\n");
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(shop.resolve("catalog.yaml")) + "# changed since\n");
    }

    private static Map<String, String> environment() {
        return Run.anna(folder);
    }

    private static Run run(String... words) {
        return Run.of(environment(), false, words);
    }

    private static byte[] bytes(String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(Run.into(out, environment(), false, words).code()).isEqualTo(ExitCode.DONE);
        return out.toByteArray();
    }

    @Test
    void whatWasKeptIsPrintedAgainByteForByte() {
        for (String format : new String[] {"text", "json", "csv", "html", "pdf", "xlsx", "eml"}) {
            assertThat(bytes("order", "2026-0001", "--format", format)).as(format).isNotEmpty().isEqualTo(bytes("book", "show", "2026-0001", "--format", format));
        }
        for (String format : new String[] {"text", "json", "csv", "html", "pdf", "eml"}) {
            assertThat(bytes("quote", "2026-0002", "--format", format)).as(format).isNotEmpty().isEqualTo(bytes("book", "show", "2026-0002", "--format", format));
        }
        assertThat(bytes("order", "2026-0001", "--format", "xlsx", "--for", "shop")).startsWith('P', 'K');
        assertThat(run("book", "show", "2026-0002", "--format", "xlsx").err()).isEqualTo("sledwright: 2026-0002 is not kept as xlsx; it is kept as csv, eml, html, json, pdf, text\n");
    }

    @Test
    void documentsBearTheNumberAndTheVersion() {
        assertThat(run("order", "2026-0001", "--for", "customer").out()).contains("Our reference: 2026-0001, version 1, two rooms");
        assertThat(run("quote", "2026-0002", "--for", "customer").out()).contains("Our reference: 2026-0002, version 1, small node");
        assertThat(run("quote", "2026-0002", "--format", "html").out()).contains("<title>Quote: 2026-0002, version 1, small node</title>", "2026-0002, version 1</");
        assertThat(run("order", "2026-0001", "--format", "html").out()).contains("<title>Quote for an order: 2026-0001, version 1, two rooms</title>");
        assertThat(run("quote", "2026-0002", "--format", "eml").out()).containsPattern("Subject: Quote: 2026-0002, version 1, small node\r?\n");
        assertThat(run("order", "2026-0001", "--format", "eml").out()).containsPattern("Subject: Quote for an order: 2026-0001, version 1, two rooms\r?\n");
        assertThat(run("sheet", "2026-0001").out()).startsWith("Bench sheet: 2026-0001, version 1, two rooms\n");
        assertThat(run("sheet", "2026-0002").out()).startsWith("Bench sheet: 2026-0002, version 1, small node");
    }

    @Test
    void theBenchGetsASheetForEveryMachineOfAnOrder() {
        Run sheet = run("sheet", "2026-0001");
        assertThat(sheet.code()).isEqualTo(ExitCode.DONE);
        assertThat(sheet.out()).contains("Parts to pick for the whole order, by lot", "web, machine 1 of 2", "web, machine 2 of 2", "files, machine 1 of 1",
                "[ ]  REED-S     A2   Marsh Trade      2  web 1 to 2: 1 each");
        assertThat(bytes("sheet", "2026-0001", "--format", "pdf")).startsWith('%', 'P', 'D', 'F');
        assertThat(Schemas.faults("sheet-result", run("sheet", "2026-0001", "--format", "json").out())).isEmpty();
    }

    /** What the shop takes from its own shelf and what it buys, supplier by supplier. */
    @Test
    void aQuoteForOneRequestIsAnOrderToTheShop() {
        Run order = run("order", "2026-0002");
        assertThat(order.out()).startsWith("2026-0002, version 1, small node: 1 machine on 1 line\nthe machines as they are kept\nprice: 251.50 EUR")
                .contains("M16        A6   Fen Surplus  used          2      1   21.50   21.50", "Who delivers");
        String json = run("order", "2026-0002", "--format", "json").out();
        assertThat(Schemas.faults("order-result", json)).isEmpty();
        assertThat(json).contains("\"ended\": \"kept\"");
    }

    @Test
    void whatDoesNotGoTogetherIsSaid() {
        assertThat(run("quote", "2026-0001").err()).isEqualTo("sledwright: 2026-0001 is an order.\nMaybe run 'sledwright order 2026-0001'.\n");
        assertThat(run("order", "2026-0002", "--format", "pdf").err())
                .isEqualTo("sledwright: 2026-0002 is a quote for one request.\nMaybe run 'sledwright quote 2026-0002', or add --for shop.\n");
        assertThat(run("quote", "2026-0002", "--set", "machines=2").err()).isEqualTo("sledwright: 2026-0002 is a quote of the book, which is printed as it was kept, without --set,"
                + " --why-not and --steps.\nMaybe run 'sledwright book revise 2026-0002 --set KEY=VALUE'.\n");
        assertThat(run("order", "2026-0001", "--set", "lines.web.machines=1").err()).isEqualTo("sledwright: 2026-0001 is a quote of the book, which is printed as it was kept,"
                + " without --set.\nMaybe run 'sledwright book revise 2026-0001 --set KEY=VALUE'.\n");
        assertThat(run("order", "2026-0009").err()).contains("there is no quote 2026-0009 in the book");
    }
}
