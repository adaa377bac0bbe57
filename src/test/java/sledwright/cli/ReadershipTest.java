package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;
import sledwright.samples.Folders;
import sledwright.samples.SeededShop;

/** What a customer sees, by every command that answers customers and in every format that it writes. */
class ReadershipTest {

    private static final String ASKED = "require: { cores: 16, memory_gb: 64 }\nlimit: { lead_days: 9 }\n";
    private static final String STANDS = """
            build:
              platform: WREN-2
              processor: H1-08
              processors: 1
              cooling: WREN-HS-1
              supply: RS-750
              supply_count: 1
              modules: { 1A1: M16 }
            """;

    private static final Map<String, List<String>> FORMATS = Map.of("quote", List.of("text", "json", "csv", "html", "pdf", "eml"),
            "compare", List.of("text", "json", "csv", "html", "svg", "xlsx"), "order", List.of("text", "json", "csv", "html", "pdf", "xlsx", "eml"),
            "upgrade", List.of("text", "json", "csv"));

    /** What is left of a price is the shop's own, whatever is given away. */
    private static final String PAID = "discount_percent: 7.5\n";

    /** Requests by the command that answers them: some that can be met, some that stock does not let be met. */
    private static final Map<String, List<String>> REQUESTS = Map.of(
            "quote", List.of("kind: quote\n" + ASKED, "kind: quote\n" + PAID + ASKED, "kind: quote\nmachines: 99999\nrequire: { cores: 32 }\n", "kind: quote\nrequire: { cores: 16 }\nlimit: { price: 1 }\n"),
            "compare", List.of("kind: quote\n" + PAID + ASKED),
            "order", List.of("kind: order\n" + PAID + "delivery_charge: 7\nlines:\n  web: { machines: 2, require: { cores: 16 } }\n",
                    "kind: order\nlines:\n  web: { machines: 2, require: { cores: 16 }, limit: { lead_days: 0 } }\n  more: { require: { cores: 999 } }\n"),
            "upgrade", List.of("kind: upgrade\n" + STANDS + "require: { memory_gb: 64 }\n", "kind: upgrade\n" + STANDS + "require: { cores: 999 }\n"));

    @TempDir
    private Path folder;
    private SeededShop secrets;

    @BeforeEach
    void seed() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        secrets = SeededShop.in(shop);
        // So that every answer of the shop warns.
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(shop.resolve("catalog.yaml")) + "house: { margin_floor: 0.99 }\n");
    }

    private String answer(String command, String request, String format, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("asked.yaml"), "name: asked\ncatalog: shop\n" + request);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        String[] arguments = Stream.concat(Stream.of(command, file.toString(), "--format", format), Stream.of(more)).toArray(String[]::new);
        Run run = Run.into(out, Map.of(), false, arguments);
        assertThat(run.code()).as("%s as %s: %s", command, format, run.err()).isIn(ExitCode.DONE, ExitCode.NO_VALID_BUILD);
        return read(out.toByteArray(), format);
    }

    private static String read(byte[] written, String format) throws IOException {
        if (format.equals("pdf")) {
            try (PDDocument document = Loader.loadPDF(written)) {
                return new PDFTextStripper().getText(document);
            }
        }
        if (format.equals("eml")) {
            return MailsTest.shown(written);
        }
        if (!format.equals("xlsx")) {
            return new String(written, StandardCharsets.UTF_8);
        }
        StringBuilder all = new StringBuilder();
        try (ZipInputStream parts = new ZipInputStream(new ByteArrayInputStream(written))) {
            for (ZipEntry part = parts.getNextEntry(); part != null; part = parts.getNextEntry()) {
                all.append(new String(parts.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return all.toString();
    }

    @Test
    void aCustomerIsToldNothingOfTheShopsInAnyFormat() throws IOException {
        for (Map.Entry<String, List<String>> command : FORMATS.entrySet()) {
            for (String format : command.getValue()) {
                for (String request : REQUESTS.get(command.getKey())) {
                    String told = answer(command.getKey(), request, format, "--for", "customer");
                    assertThat(secrets.all().stream().filter(told::contains)).as("%s as %s: %s", command.getKey(), format, told).isEmpty();
                    assertThat(format.equals("json") ? Schemas.faults(command.getKey() + "-result", told) : List.of()).isEmpty();
                    assertThat(told.toLowerCase(Locale.ROOT).replaceAll("(?s)<style>.*?</style>|<pagemargins", "")).as("%s as %s", command.getKey(), format).doesNotContain("in stock", "margin", "this shop wants", "known cost");
                }
            }
        }
    }

    @Test
    void theShopIsToldLotsSuppliersAndCosts() throws IOException {
        for (String command : List.of("quote", "order", "upgrade", "compare")) {
            String told = answer(command, REQUESTS.get(command).get(0), "json");
            for (List<String> some : List.of(secrets.lots(), secrets.suppliers(), secrets.costs())) {
                assertThat(some.stream().filter(told::contains)).as(command).isNotEmpty();
            }
            assertThat(told.contains("this shop wants at least 99 %")).as(command).isEqualTo(command.equals("quote") || command.equals("order"));
            assertThat(answer(command, REQUESTS.get(command).get(0), "json", "--for", "shop")).isEqualTo(told)
                    .isEqualTo(answer(command, REQUESTS.get(command).get(0), "json", "--internal"));
        }
        String book = answer("compare", REQUESTS.get("compare").get(0), "xlsx", "--internal");
        assertThat(secrets.all().stream().filter(book::contains)).hasSizeGreaterThan(4);
        assertThat(answer("compare", REQUESTS.get("compare").get(0), "xlsx")).doesNotContain("Lotseed");
    }

    @Test
    void whatCustomersPayAddsUpWithoutLots() throws IOException {
        String order = answer("order", REQUESTS.get("order").get(0), "csv", "--for", "customer");
        List<String[]> rows = order.lines().skip(1).map(line -> line.split(",", -1)).toList();
        String price = answer("order", REQUESTS.get("order").get(0), "text", "--for", "customer");
        double sum = rows.stream().mapToDouble(cells -> Double.parseDouble(cells[cells.length - 1])).sum();
        assertThat(price.replace(",", "")).contains("\u20ac%s".formatted(String.format(Locale.ROOT, "%.2f", sum)), "Delivery").doesNotContain("To pick");
    }

    /** What lies in the machines that were asked for is the customer's matter; how many suppliers and bays there are is not. */
    @Test
    void ofWhatIsInTheWayCustomersAreToldTheirPart() {
        String file = "src/test/resources/sentences/files/few-suppliers.yaml";
        for (String reader : List.of("shop", "customer")) {
            assertThat(Run.of("order", file, "--for", reader).out().contains("supplier")).as(reader).isEqualTo(reader.equals("shop"));
            assertThat(Run.of("order", file, "--set", "suppliers_max=3", "--set", "lines.web.machines=4", "--for", reader).out().contains("in stock have 4 bays"))
                    .as(reader).isEqualTo(reader.equals("shop"));
            assertThat(Run.of("order", file, "--set", "suppliers_max=3", "--set", "lines.web.forbid=[FEED-L]", "--for", reader).out()).contains("No enclosure on offer feeds");
        }
    }

    @Test
    void optionsThatContradictAreNamed() throws IOException {
        Files.writeString(folder.resolve("asked.yaml"), "kind: quote\ncatalog: shop\n" + ASKED);
        String file = folder.resolve("asked.yaml").toString();
        assertThat(Run.of("quote", file, "--internal", "--for", "customer").err()).contains("--internal is not for the customer's eyes.");
        assertThat(Run.of("quote", file, "--steps", "--for", "customer").err()).contains("--steps is not for the customer's eyes.");
        assertThat(Run.of("quote", file, "--for", "nobody").err()).contains("'nobody' must be one of customer, shop");
    }
}
