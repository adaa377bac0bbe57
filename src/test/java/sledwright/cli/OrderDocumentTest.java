package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.ArrayList;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.browser.Browser;
import sledwright.browser.DocumentChecks;
import sledwright.browser.InBrowser;
import sledwright.samples.Folders;

/** The quote of an order as a document: its sums, its words, its looks. */
class OrderDocumentTest {

    private static final String LINES = "delivery_charge: 7\nlines:\n  web: { machines: 2, require: { cores: 16 } }\n  files: { require: { memory_gb: 64 } }\n";
    private static final String SHORT = "lines:\n  web: { machines: 2, require: { cores: 16 }, limit: { lead_days: 0 } }\n  more: { require: { cores: 999 } }\n";
    private static final String HOSTILE = "<script>alert('x')</script> & \u202edesrever";

    @TempDir
    private Path folder;
    private Path shop;

    @BeforeEach
    void copyShop() throws IOException {
        shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
    }

    private void stationery(String yaml) throws IOException {
        Path file = shop.resolve("catalog.yaml");
        Files.writeString(file, Files.readString(file) + "document:\n" + yaml.indent(2));
    }

    private byte[] bytes(String yaml, String format, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("order.yaml"), "kind: order\ncatalog: shop\n" + yaml);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = Run.into(out, Map.of(), false, Stream.concat(Stream.of("order", file.toString(), "--format", format), Stream.of(more)).toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isIn(ExitCode.DONE, ExitCode.NO_VALID_BUILD);
        return out.toByteArray();
    }

    private String html(String yaml, String... more) throws IOException {
        return new String(bytes(yaml, "html", more), StandardCharsets.UTF_8);
    }

    private static String shown(String html) {
        return html.replaceAll("(?s)<style>.*?</style>", "").replaceAll("<[^>]+>", " ").replaceAll("[\\s\u00a0]+", " ");
    }

    /** What stands at a glance, and under every line and enclosure, comes to the price, and the tax is on all of it. */
    @Test
    void sumsAndTaxAddUp() throws IOException {
        stationery("tax_percent: 19\ntax_name: VAT\nvalid_days: 10");
        JsonNode answer = new ObjectMapper().readTree(bytes(LINES, "json"));
        BigDecimal net = answer.get("price").decimalValue().setScale(2);
        BigDecimal tax = net.multiply(new BigDecimal("0.19")).setScale(2, RoundingMode.HALF_UP);
        String text = shown(html(LINES)).replace(",", "");
        assertThat(text).contains("Before VAT \u20ac" + net, "VAT 19 % \u20ac" + tax, "Total for 3 machines with VAT \u20ac" + net.add(tax), "You asked for 3 machines on 2 lines.",
                "Nothing that our parts make up meets all of it for less.", "This quote is valid until 26 November 2026.");
        BigDecimal sum = answer.get("delivery").decimalValue();
        for (JsonNode line : answer.get("lines")) {
            BigDecimal price = line.get("price").decimalValue().setScale(2);
            sum = sum.add(price);
            assertThat(text).contains(line.get("line").asText() + " You asked for", "before VAT \u20ac" + price);
        }
        assertThat(sum).isEqualByComparingTo(net);
        try (ReadableWorkbook book = new ReadableWorkbook(new ByteArrayInputStream(bytes(LINES, "xlsx")))) {
            assertThat(book.getSheets().map(sheet -> sheet.getName())).containsExactly("Machines", "Parts", "Sums", "About");
            BigDecimal parts = BigDecimal.ZERO;
            for (Row row : book.findSheet("Parts").orElseThrow().read().subList(1, book.findSheet("Parts").orElseThrow().read().size())) {
                parts = parts.add(row.getCellAsNumber(8).orElseThrow());
            }
            assertThat(parts).isEqualByComparingTo(net);
            assertThat(book.findSheet("Sums").orElseThrow().read()).anySatisfy(row -> assertThat(row.getCellText(0) + row.getCellText(1)).startsWith("Total with VAT"));
        }
    }

    @Test
    void theShopSeesLotsAndTheCustomerDoesNot() throws IOException {
        stationery("tax_percent: 19");
        assertThat(shown(html(LINES, "--for", "shop"))).contains("Internal.", "Lots, costs and margins", "Who delivers", "Proved: no order of all these machines comes to less.");
        assertThat(shown(html(LINES))).doesNotContain("Internal.", "Lots", "Who delivers");
    }

    /** What has to be bought is a sheet for each supplier; what stands on the shop's own shelf is not bought, and customers see none of it. */
    @Test
    void whatIsOrderedFromEachSupplierIsASheet() throws IOException {
        JsonNode answer = new ObjectMapper().readTree(bytes(LINES, "json", "--for", "shop"));
        List<String> sheets = new ArrayList<>();
        try (ReadableWorkbook book = new ReadableWorkbook(new ByteArrayInputStream(bytes(LINES, "xlsx", "--for", "shop")))) {
            book.getSheets().map(sheet -> sheet.getName()).filter(name -> name.startsWith("Order ")).forEach(sheets::add);
            int units = 0;
            for (JsonNode supplier : answer.get("suppliers")) {
                if (!supplier.get("own").asBoolean()) {
                    String name = sheets.stream().filter(sheet -> sheet.endsWith(supplier.get("supplier").asText())).findFirst().orElseThrow();
                    List<Row> rows = book.findSheet(name).orElseThrow().read();
                    Row total = rows.get(rows.size() - 1);
                    assertThat(total.getCellAsNumber(4).orElseThrow().intValue()).as(name).isEqualTo(supplier.get("units").asInt());
                    assertThat(rows.subList(1, rows.size() - 1).stream().mapToInt(row -> row.getCellAsNumber(4).orElseThrow().intValue()).sum())
                            .isEqualTo(supplier.get("units").asInt());
                    units += supplier.get("units").asInt();
                }
            }
            assertThat(units).isPositive();
            assertThat(about(book)).startsWith("What: Says", "Internal: Costs and lots: not for the customer.");
        }
        try (ReadableWorkbook book = new ReadableWorkbook(new ByteArrayInputStream(bytes(LINES, "xlsx")))) {
            assertThat(book.getSheets().map(sheet -> sheet.getName())).noneMatch(sheets::contains);
            assertThat(String.valueOf(about(book))).doesNotContain("Internal");
        }
    }

    private static List<String> about(ReadableWorkbook book) throws IOException {
        return book.findSheet("About").orElseThrow().openStream().map(row -> row.getCellText(0) + ": " + row.getCellText(1)).toList();
    }

    @Test
    void whatIsMissingIsSaidAndWhatWaitingCosts() throws IOException {
        String text = shown(html(SHORT));
        assertThat(text).contains("machines can be delivered. Missing are: ", "1 of more", "None of these machines can be delivered.", "you asked for at least 999 cores");
        assertThat(shown(html(SHORT, "--for", "shop"))).contains("Short: machines are missing.");
        assertThat(shown(html("lines:\n  more: { require: { cores: 999 } }\n", "--for", "shop"))).contains("Impossible: not one of the machines can be delivered.");
        String hurried = Run.of("order", "scenarios/short-order.yaml", "--for", "customer", "--time-limit", "0.001").out();
        assertThat(hurried).contains("More may be possible than was found; please ask us again.", "None of these machines was found yet.")
                .doesNotContain("None of them can be delivered.", "None of these machines can be delivered.");
        stationery("tax_percent: 20");
        assertThat(shown(html("lines:\n  web: { machines: 6, require: { cores: 8 }, limit: { lead_days: 0 } }\n"))).contains("can be delivered");
    }

    /** A way out of a line is priced for one machine whatever the line asks for, and by the list; an order that waits is what was asked for. */
    @Test
    void whatPricesOfWhatWouldBePossibleAreIsSaid() throws IOException {
        String more = "lines:\n  more: { machines: 3, require: { cores: 999 } }\n";
        assertThat(shown(html("discount_percent: 10\n" + more))).contains("Each of these is enough by itself. Prices are for one machine. Prices are before the discount of 10 %.");
        assertThat(Run.of("order", "src/test/resources/sentences/files/later.yaml", "--for", "customer", "--set", "agreed_price=123").out().replaceAll("\\s+", " "))
                .contains("all of it can be delivered for \u20ac123.00.");
        stationery("tax_percent: 19\ntax_name: MwSt\nlocale: de");
        assertThat(shown(html(more))).contains("Jede dieser \u00c4nderungen gen\u00fcgt f\u00fcr sich allein. Die Preise gelten f\u00fcr einen Rechner, ohne MwSt.");
    }

    /** The rows of the pick list come to what is paid, as the papers have it. */
    @Test
    void whatIsTakenOffIsARowOfTheTable() throws IOException {
        for (String granted : List.of("discount_percent: 10\n", "agreed_price: 123.45\n")) {
            for (String reader : List.of("customer", "shop")) {
                JsonNode answer = new ObjectMapper().readTree(bytes(granted + LINES, "json"));
                List<String> rows = new String(bytes(granted + LINES, "csv", "--for", reader), StandardCharsets.UTF_8).lines().skip(1).toList();
                assertThat(rows.stream().map(row -> new BigDecimal(row.substring(row.lastIndexOf(',') + 1))).reduce(BigDecimal.ZERO, BigDecimal::add))
                        .isEqualByComparingTo(answer.get("net").decimalValue());
                assertThat(rows.get(rows.size() - 1)).contains(",discount,").containsAnyOf("\"10 %\"", "\"agreed price\"");
            }
        }
    }

    /** What sits in an enclosure beside sleds is in the letter with its price, the customer's own with none. */
    @Test
    void theLetterHasThePartsOfEnclosures() throws IOException {
        String text = new String(bytes("on_hand: { REED-F4: 1, RS-1200: 2 }\nlines:\n  nodes: { platforms: [REED-S] }\n", "text", "--for", "customer"), StandardCharsets.UTF_8);
        assertThat(text.substring(text.lastIndexOf("Enclosure 1: ")).replaceAll("\\s+", " ")).contains("1 REED-F4, ", "1 RS-1200, ", "yours", "Total \u20ac0.00");
    }

    /** A sled for an enclosure that the customer has can do nothing without it. */
    @Test
    void whoseTheEnclosureIsIsSaid() throws IOException {
        String text = new String(bytes("on_hand: { REED-F4: 1, RS-1200: 2 }\nlines:\n  mine: { platforms: [REED-S], enclosure: own }\n  yours: { platforms: [REED-S] }\n", "text",
                "--for", "customer"), StandardCharsets.UTF_8).replaceAll("\\s+", " ");
        String mine = text.substring(text.indexOf("mine:"), text.indexOf("yours:"));
        String yours = text.substring(text.indexOf("yours:"));
        assertThat(mine).contains("for an enclosure that you have", "Power: from your enclosure");
        assertThat(yours).doesNotContain("you have").contains("Power: from the enclosure");
    }

    @Test
    void aShopThatSpeaksGermanWritesItsPapersSo() throws IOException {
        stationery("tax_percent: 19\ntax_name: MwSt\nvalid_days: 10\nlocale: de");
        String page = html("customer: Moorwerk\n" + LINES);
        assertThat(page).contains("<html lang=\"de\">");
        assertThat(shown(page)).contains("Angebot f\u00fcr Moorwerk", "Gew\u00fcnscht: 3 Rechner in 2 Posten.", "Auf einen Blick", "Dieses Angebot gilt bis zum 26. November 2026.", "Arbeit, je Rechner")
                .doesNotContain("You asked", "Total", "Labour");
        try (PDDocument paper = Loader.loadPDF(bytes(LINES, "pdf"))) {
            assertThat(new PDFTextStripper().getText(paper)).contains("Ihr Angebot", "Summe f\u00fcr 3 Rechner mit MwSt");
            assertThat(paper.getDocumentCatalog().getLanguage()).isEqualTo("de");
        }
        assertThat(bytes(LINES, "pdf")).isEqualTo(bytes(LINES, "pdf"));
    }

    @Test
    @InBrowser
    void itIsSoundInABrowser(Browser browser) throws IOException {
        stationery("tax_percent: 19\nterms: ['%s']".formatted(HOSTILE.replace("'", "''")));
        DocumentChecks.assertSound(browser, html("customer: '%s'\n".formatted(HOSTILE.replace("'", "''")) + LINES, "--internal"));
        assertThat(browser.text()).contains("<script>alert('x')</script> & \ufffddesrever");
        DocumentChecks.assertSound(browser, html(SHORT));
    }
}
