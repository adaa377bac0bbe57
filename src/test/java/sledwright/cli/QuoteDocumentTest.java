package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.browser.Browser;
import sledwright.browser.DocumentChecks;
import sledwright.browser.InBrowser;
import sledwright.samples.SeededShop;

/** The quote as a document: what a customer may read, what the shop alone reads, and how it is laid out. */
class QuoteDocumentTest {

    private static final Path SHOP = Path.of("src/test/resources/shop");
    private static final String DEMO = "scenarios/small-web-node.yaml";
    private static final String POSSIBLE = "require: { cores: 16, memory_gb: 64 }\nlimit: { lead_days: 9 }\nalternatives: 4\n";
    /** More machines than there are platforms. */
    private static final String SHORT_OF_STOCK = "machines: 12\nrequire: { cores: 16, memory_gb: 64 }\n";
    private static final String HOSTILE = "<script>alert('x')</script> \"q\" & 'p' &amp; \u202edesrever\u202c \u05e9\u05dc\u05d5\u05dd";

    @TempDir
    private Path folder;
    private Path shop;

    @BeforeEach
    void copyShop() throws IOException {
        shop = folder.resolve("shop");
        try (Stream<Path> files = Files.walk(SHOP)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path target = shop.resolve(SHOP.relativize(file).toString());
                Files.createDirectories(target.getParent());
                Files.copy(file, target);
            }
        }
    }

    private void stationery(String yaml) throws IOException {
        Path file = shop.resolve("catalog.yaml");
        Files.writeString(file, Files.readString(file) + "document:\n" + yaml.indent(2));
    }

    private String request(String yaml) throws IOException {
        return Files.writeString(folder.resolve("request.yaml"), "kind: quote\nname: survey node\ncatalog: shop\n" + yaml).toString();
    }

    private static byte[] bytes(int code, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = Run.into(out, Map.of(), false, Stream.concat(Stream.of("quote"), Stream.of(arguments)).toArray(String[]::new));
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(code);
        return out.toByteArray();
    }

    private static String html(int code, String file, String... more) {
        return new String(bytes(code, arguments(file, "html", more)), StandardCharsets.UTF_8);
    }

    private static String[] arguments(String file, String format, String... more) {
        List<String> all = new ArrayList<>(List.of(file, "--format", format));
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    /** The text of a PDF, and what it says of itself. */
    private static String pdfText(int code, String file, String... more) throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes(code, arguments(file, "pdf", more)))) {
            StringBuilder all = new StringBuilder(new PDFTextStripper().getText(document));
            for (String key : document.getDocumentInformation().getMetadataKeys()) {
                all.append('\n').append(document.getDocumentInformation().getPropertyStringValue(key));
            }
            all.append(new String(document.getDocumentCatalog().getMetadata().toByteArray(), StandardCharsets.UTF_8));
            return all.toString();
        }
    }

    /** What a page shows, entities resolved and lines joined. */
    private static String shown(String html) {
        return html.replaceAll("(?s)<style>.*?</style>", "").replace("<wbr/>", "").replaceAll("<[^>]+>", " ").replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"")
                .replace("&#39;", "'").replace("&amp;", "&").replaceAll("[\\s\u00a0]+", " ");
    }

    @Test
    void nothingOfTheShopsReachesTheCustomer() throws IOException {
        SeededShop secrets = SeededShop.in(shop);
        String file = request(POSSIBLE);
        String internal = shown(html(ExitCode.DONE, file, "--internal"));
        String internalPaper = pdfText(ExitCode.DONE, file, "--internal");
        for (List<String> some : List.of(secrets.lots(), secrets.suppliers(), secrets.costs().stream().map(cost -> "\u20ac" + cost).toList())) {
            assertThat(some.stream().filter(internal::contains)).as("told to the shop").hasSizeGreaterThan(4);
            assertThat(some.stream().filter(internalPaper::contains)).as("told to the shop on paper").hasSizeGreaterThan(4);
        }
        for (String customers : List.of(html(ExitCode.DONE, file), pdfText(ExitCode.DONE, file))) {
            assertThat(secrets.all().stream().filter(customers::contains)).isEmpty();
            assertThat(shown(customers)).doesNotContainIgnoringCase("margin").doesNotContainIgnoringCase("cost").doesNotContain("Internal");
        }
    }

    @Test
    void shortStockIsNotCountedForTheCustomer() throws IOException {
        String file = request(SHORT_OF_STOCK);
        String internal = shown(html(ExitCode.NO_VALID_BUILD, file, "--internal"));
        assertThat(internal).contains("in stock)");
        String customer = shown(html(ExitCode.NO_VALID_BUILD, file));
        assertThat(customer).contains("cannot be had").contains("from what we have").doesNotContain("in stock").doesNotContain("more unit")
                .doesNotContain("Internal");
        assertThat(pdfText(ExitCode.NO_VALID_BUILD, file)).contains("Your request", "survey node").doesNotContain("in stock");
    }

    @Test
    void aRequestThatCannotBeMetIsAnsweredInWords() throws IOException {
        String page = html(ExitCode.NO_VALID_BUILD, "scenarios/too-much-for-the-money.yaml");
        assertThat(shown(page)).contains("No machine that our parts make up meets your request as it stands.", "What stands in the way",
                "a price of at most \u20ac900.00 cannot be had together", "What would be possible", "Each of these is enough by itself.").doesNotContain("Terms", "discount");
        assertThat(shown(html(ExitCode.NO_VALID_BUILD, "scenarios/too-much-for-the-money.yaml", "--set", "discount_percent=7.5")))
                .contains("Prices are for all machines, before VAT. Prices are before the discount of 7.5 %.");
    }

    @Test
    void linesSumsAndTaxAddUp() throws IOException {
        stationery("tax_percent: 19\ntax_name: MwSt\nvalid_days: 10\nlocale: de\naddress: [Uferweg 1, Reedmere]\ncontact: shop@reedmere.example\nterms: Cash.");
        String file = request(POSSIBLE + "customer: [Fenland Survey, Dyke Road 2]\n");
        JsonNode best = new ObjectMapper().readTree(Run.of("quote", file, "--format", "json").out()).get("alternatives").get(0);
        BigDecimal net = best.get("price").decimalValue().setScale(2);
        BigDecimal tax = net.multiply(new BigDecimal("0.19")).setScale(2, RoundingMode.HALF_UP);
        String text = shown(html(ExitCode.DONE, file));
        assertThat(text).contains("Ohne MwSt " + plain(net), "MwSt, 19 % " + plain(tax), "Summe mit MwSt " + plain(net.add(tax)))
                .contains("Uferweg 1", "Reedmere", "shop@reedmere.example", "Fenland Survey", "Dyke Road 2", "Cash.")
                .contains("Preise vom 31. M\u00e4rz 2025", "G\u00fcltig bis 26. November 2026", "Angebot f\u00fcr Fenland Survey", "survey node");
        String paper = pdfText(ExitCode.DONE, file);
        assertThat(paper.replace('\n', ' ')).contains(german(net.add(tax)), "Fenland Survey", "G\u00fcltig bis 26. November 2026");
    }

    /** The amount as a reader in Germany writes it, put together by hand. */
    private static String german(BigDecimal amount) {
        String[] parts = amount.toPlainString().split("\\.");
        return parts[0].replaceAll("(?<=\\d)(?=(\\d{3})+$)", ".") + "," + parts[1] + "\u00a0\u20ac";
    }

    private static String plain(BigDecimal amount) {
        return german(amount).replace('\u00a0', ' ');
    }

    @Test
    void aShopWithoutStationeryQuotesPlainly() throws IOException {
        String text = shown(html(ExitCode.DONE, request(POSSIBLE)));
        assertThat(text).contains("Reedmere Stores", "Total \u20ac").doesNotContain("VAT").doesNotContain("Valid until");
    }

    /** The units of every option, at their prices, come to the option's price. */
    @Test
    void everyOptionIsPricedByLine() throws IOException {
        String page = html(ExitCode.DONE, DEMO);
        String matrix = page.substring(page.indexOf("Every option by line"));
        JsonNode answer = new ObjectMapper().readTree(Run.of("quote", DEMO, "--format", "json").out());
        for (JsonNode alternative : answer.get("alternatives")) {
            String head = "Option " + alternative.get("rank").asInt();
            BigDecimal sum = BigDecimal.ZERO;
            for (String row : matrix.substring(matrix.indexOf("<tbody>"), matrix.indexOf("</tbody>")).split("</tr>")) {
                Matcher each = Pattern.compile("data-label=\"Each\">\u20ac([\\d.]+)<").matcher(row);
                Matcher units = Pattern.compile("data-label=\"" + head + "\">(\\d+)<").matcher(row);
                if (each.find() && units.find()) {
                    sum = sum.add(new BigDecimal(each.group(1)).multiply(new BigDecimal(units.group(1))));
                }
            }
            assertThat(sum).as(head).isEqualByComparingTo(alternative.get("price").decimalValue());
            assertThat(matrix).contains("data-label=\"" + head + "\">\u20ac" + alternative.get("price").decimalValue().setScale(2) + "<");
        }
    }

    @Test
    void drivesCardsAndExtrasStandBeforeTheLabour() {
        String text = shown(html(ExitCode.DONE, "scenarios/file-server.yaml"));
        String lines = text.substring(text.indexOf("Every option by line"));
        assertThat(lines.indexOf("Labour, per machine")).isGreaterThan(lines.indexOf("SKH35-4000")).isGreaterThan(lines.indexOf("DB-8R6")).isGreaterThan(lines.indexOf("RAILS-2U"));
        assertThat(text).contains("Volume files 4 \u00d7 4000 GB HDD SATA and 1 hot spare at level 6: 8000 GB usable, in bays front 1 to front 5",
                "volume system (at least 200 GB, level 1, SSD), volume files (at least 8000 GB, level 6, 1 hot spare)");
    }

    @Test
    void whatAnotherOptionBuysIsSaidInTheShopsFigures() {
        assertThat(shown(html(ExitCode.DONE, DEMO))).contains("Option 2: \u20ac0.29 more", "+ 20 W less load: 171 W",
                "Option 3: \u20ac2.56 more", "+ 8.54 GB/s more memory bandwidth: 42.66 GB/s, \u20ac0.30 for each further GB/s",
                "&#8722; 4.8 less throughput: 75.1");
    }

    @Test
    void paperIsTheSameWheneverItIsMadeAndSaysWhatItIs() throws IOException {
        byte[] first = bytes(ExitCode.DONE, DEMO, "--format", "pdf");
        assertThat(bytes(ExitCode.DONE, DEMO, "--format", "pdf")).isEqualTo(first);
        try (PDDocument document = Loader.loadPDF(first)) {
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Quote: small-web-node");
            assertThat(document.getDocumentInformation().getAuthor()).startsWith("Heronfold Yard");
            assertThat(document.getDocumentInformation().getCreationDate().toInstant()).isEqualTo("2026-11-16T00:00:00Z");
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(document.getNumberOfPages()).isLessThanOrEqualTo(4);
        }
    }

    @Test
    void paperIsOfTheShopsSize() throws IOException {
        stationery("paper: Letter");
        try (PDDocument document = Loader.loadPDF(bytes(ExitCode.DONE, request(POSSIBLE), "--format", "pdf"))) {
            assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(612);
            assertThat(document.getPage(0).getMediaBox().getHeight()).isEqualTo(792);
        }
    }

    @Test
    void whatDoesNotGoTogetherIsRefused() {
        assertThat(Run.of("quote", DEMO, "--format", "html", "--steps").err()).contains("--steps is not written as html.");
        assertThat(Run.of("quote", DEMO, "--format", "pdf", "--why-not", "B1-04").err()).contains("--why-not is not for the customer's eyes.");
        Run internal = Run.of("quote", DEMO, "--format", "html", "--internal", "--why-not", "B1-04");
        assertThat(internal.code()).isEqualTo(ExitCode.DONE);
        assertThat(internal.out()).contains("Why not B1-04");
        assertThat(Run.of("check", "scenarios/build-valid.yaml", "--format", "html").code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    @InBrowser
    void hostileNamesAreShownAndNothingElse(Browser browser) throws IOException {
        stationery("address: [%s]\nterms: [%s]\ntax_name: %s\ntax_percent: 20".formatted(quoted(HOSTILE), quoted(HOSTILE), quoted(HOSTILE)));
        Path processors = shop.resolve("processors.csv");
        Files.writeString(processors, Files.readString(processors).replace("H1-08,Heath 1 with 8 cores", "H1-08,\"<b onload=x>'\"\"Heath\"\"</b>\""));
        String file = request("customer: [%s]\n%s".formatted(quoted(HOSTILE), POSSIBLE)).replace("survey node", HOSTILE);
        for (String[] more : new String[][] {{}, {"--internal"}}) {
            String page = html(ExitCode.DONE, file, more);
            assertThat(page).doesNotContain("<script").doesNotContain("<b onload").doesNotContain("\u202e");
            DocumentChecks.assertSound(browser, page);
            assertThat(browser.text()).contains("<script>alert('x')</script> \"q\" & 'p' &amp; \ufffddesrever\ufffd \u05e9\u05dc\u05d5\u05dd")
                    .contains("<b onload=x>'\"Heath\"</b>");
        }
        assertThat(pdfText(ExitCode.DONE, file)).contains("<script>alert('x')</script> \"q\" & 'p' &amp;").contains("<b onload=x>'\"Heath\"</b>");
    }

    private static String quoted(String text) {
        return "'" + text.replace("'", "''") + "'";
    }

    @Test
    @InBrowser
    void thePageCanBePrinted(Browser browser) throws IOException {
        try (PDDocument printed = Loader.loadPDF(browser.show(html(ExitCode.DONE, DEMO)).screen(Browser.DESKTOP, true).printed())) {
            assertThat(new PDFTextStripper().getText(printed)).contains("Total with VAT", "The options side by side", "Every option by line");
            assertThat(printed.getNumberOfPages()).isLessThanOrEqualTo(4);
            assertThat(printed.getPage(0).getMediaBox().getWidth()).isBetween(594f, 597f);
        }
    }

    @Test
    @InBrowser
    void documentsAreSoundInABrowser(Browser browser) {
        DocumentChecks.assertSound(browser, html(ExitCode.DONE, DEMO));
        DocumentChecks.assertSound(browser, html(ExitCode.DONE, "scenarios/render-farm.yaml", "--internal"));
        DocumentChecks.assertSound(browser, html(ExitCode.NO_VALID_BUILD, "scenarios/too-much-for-the-money.yaml"));
    }

    /** What it costs to run stands beside what it costs to buy, and adds up with what is paid; what is counted is said of one, too. */
    @Test
    void lettersSayWhatTheElectricityCosts() throws IOException {
        stationery("tax_percent: 19\ntax_name: MwSt.\nlocale: de\n");
        String request = "kind: quote\nrequire: { cores: 1, memory_gb: 1, spare_slots: 1 }\n"
                + "limit: { price: 5000 }\nenergy: { years: 1, price_per_kwh: 0.3 }\ndiscount_percent: 10\nalternatives: 2\n";
        JsonNode first = new ObjectMapper().readTree(Run.piped(request, "quote", "-", "--catalog", shop.toString(), "--format", "json").out())
                .get("alternatives").get(0);
        BigDecimal all = first.get("net").decimalValue().add(first.get("energy").decimalValue());
        String letter = Run.piped(request, "quote", "-", "--catalog", shop.toString(), "--for", "customer").out().replaceAll("\\s+", " ");
        assertThat(letter).contains("mindestens 1 Kern,", "mindestens 1 freier Speichersteckplatz,",
                "Preis höchstens 5.000,00 € ohne MwSt. Von", "Strom, 1 Jahr, bei 0,3 EUR je kWh: ",
                "Preis und Strom: " + all.toPlainString().replace('.', ',') + " € ohne MwSt. ");
        assertThat(Run.piped(request, "quote", "-", "--catalog", shop.toString(), "--format", "html").out()).contains(all.toPlainString().replace('.', ','));
        assertThat(Run.piped(request, "quote", "-", "--catalog", shop.toString()).out()).contains(" energy ", " with it ");
        String sleds = "kind: quote\nrequire: { cores: 24, memory_gb: 128 }\nlimit: { lead_days: 10 }\nenergy: { years: 3, price_per_kwh: 0.3 }\n";
        String demo = "catalogs/heronfold-yard";
        assertThat(Run.piped(sleds + "platforms: [FINCH-S4]\n", "quote", "-", "--catalog", demo, "--for", "customer").out().replaceAll("\\s+", " "))
                .contains("What is lost between the mains and the machine is not known and not in the electricity. ");
        assertThat(Run.of("quote", "scenarios/render-node.yaml", "--set", "price_points=3", "--set", "energy={ years: 3, price_per_kwh: 0.3 }",
                "--format", "html").out()).contains("not known and not in the electricity of Option 2.");
        String spare = "kind: quote\nrequire: { storage: [ { name: data, usable_gb: 100, level: 1, kind: ssd, hot_spares: 1 } ] }\n";
        assertThat(Run.piped(spare, "quote", "-", "--catalog", shop.toString(), "--for", "customer").out().replaceAll("\\s+", " "))
                .contains("data (mindestens 100 GB, Stufe 1, SSD, 1 Reservelaufwerk)");
    }
}
