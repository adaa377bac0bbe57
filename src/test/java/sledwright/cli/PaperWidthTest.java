package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.browser.Browser;
import sledwright.browser.InBrowser;

/** Whatever the words and amounts of a shop are: paper shows every option, and nothing stands beyond its margins. */
class PaperWidthTest {

    /** 18 mm, in points; letters may be a hair wider than they are told. */
    private static final double MARGIN = 18 / 25.4 * 72 - 1;
    private static final Path DEMO = Path.of("catalogs/heronfold-yard");
    private static final String LONG = "CPU8XA1B2C" + "D".repeat(54);
    private static final String LONGER = "CPU12XA1B2" + "E".repeat(54);

    @TempDir
    private Path folder;
    private Path shop;

    @BeforeEach
    void startShop() {
        shop = folder.resolve("shop");
        assertThat(Run.of("catalog", "new", shop.toString()).code()).isEqualTo(ExitCode.DONE);
    }

    private static void edit(Path file, UnaryOperator<String> change) throws IOException {
        String before = Files.readString(file);
        assertThat(Files.writeString(file, change.apply(before))).content().isNotEqualTo(before);
    }

    private void rename(int letters) throws IOException {
        for (String file : List.of("processors.csv", "offers.csv")) {
            edit(shop.resolve(file), text -> text.replace("CPU-8,", LONG.substring(0, letters) + ",")
                    .replace("CPU-12,", LONGER.substring(0, letters) + ","));
        }
    }

    private String request() {
        return shop.resolve("requests/first-quote.yaml").toString();
    }

    private static byte[] bytes(String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = Run.into(out, Map.of(), false, arguments);
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
        return out.toByteArray();
    }

    private static String[] with(List<String> some, String... more) {
        return Stream.concat(some.stream(), Stream.of(more)).toArray(String[]::new);
    }

    /** The text of a paper, of which no letter stands beyond the right margin. */
    private static String fitting(byte[] pdf) throws IOException {
        List<String> beyond = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition letter) {
                    if (!letter.getUnicode().isBlank() && letter.getXDirAdj() + letter.getWidthDirAdj() > letter.getPageWidth() - MARGIN) {
                        beyond.add(letter.getUnicode());
                    }
                    super.processTextPosition(letter);
                }
            }.getText(document);
            assertThat(beyond).as("letters beyond the margin of\n" + text).isEmpty();
            return text;
        }
    }

    /** Both papers of a quote, whose tables have the heads of five options once each. */
    private static void assertFits(String option, String... quote) throws IOException {
        String customers = fitting(bytes(with(List.of("quote"), with(List.of(quote), "--format", "pdf"))));
        String shops = fitting(bytes(with(List.of("quote"), with(List.of(quote), "--format", "pdf", "--for", "shop"))));
        for (int rank = 1; rank <= 5; rank++) {
            Pattern head = Pattern.compile(option + " " + rank + "(?!:)\\b");
            assertThat(head.matcher(customers).results().count()).as("heads of %s %d", option, rank).isGreaterThanOrEqualTo(2);
            assertThat(head.matcher(shops).results().count()).as("heads of %s %d for the shop", option, rank).isPositive();
        }
    }

    @Test
    void germanWordsFit() throws IOException {
        Path german = Files.createDirectories(folder.resolve("german"));
        try (Stream<Path> files = Files.walk(DEMO)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path target = german.resolve(DEMO.relativize(file).toString());
                Files.createDirectories(target.getParent());
                Files.copy(file, target);
            }
        }
        edit(german.resolve("catalog.yaml"), text -> text.replace("locale: en", "locale: de"));
        for (String name : List.of("small-web-node", "licence-by-core", "in-memory-database")) {
            assertFits("Variante", "scenarios/" + name + ".yaml", "--catalog", german.toString());
        }
    }

    @Test
    void longPartNumbersFit() throws IOException {
        rename(28);
        assertFits("Option", request());
    }

    @Test
    @InBrowser
    void theLongestPartNumbersFitOnPaperAndScreens(Browser browser) throws IOException {
        rename(LONG.length());
        assertFits("Option", request());

        String html = new String(bytes("quote", request(), "--format", "html"), StandardCharsets.UTF_8);
        browser.show(html);
        for (int width : List.of(Browser.PHONE, 720, 900, Browser.DESKTOP)) {
            assertThat(browser.screen(width, false).sidewaysScroll()).as("sideways scroll at %d", width).isZero();
        }
        assertThat(browser.text()).contains(LONG).contains(LONGER);
        assertThat(fitting(browser.printed())).contains("Option 5");
    }

    @Test
    void largeAmountsFitAndStayWhole() throws IOException {
        edit(shop.resolve("offers.csv"), text -> Pattern.compile("(?<=,)(\\d+\\.\\d\\d)(?=[,\\n])").matcher(text)
                .replaceAll(price -> price.group(1).replace(".", "") + "00.00"));
        edit(shop.resolve("catalog.yaml"), text -> text.replace("currency: EUR", "currency: IDR").replace("locale: en", "locale: id"));
        assertFits("Option", request());
        assertThat(fitting(bytes("quote", request(), "--format", "pdf"))).containsPattern("Rp\\s?3\\.\\d\\d\\d\\.\\d\\d\\d,00");
    }

    @Test
    void longNamesOfSuppliersAndLinesFit() throws IOException {
        edit(shop.resolve("offers.csv"), text -> text.replace(",a supplier,", "," + "Supplierhouse".repeat(3).substring(0, 37) + ","));
        assertFits("Option", request());
        edit(shop.resolve("offers.csv"), text -> text.replace(",B01,", "," + "B".repeat(64) + ","));
        rename(LONG.length());
        assertFits("Option", request());

        Path order = Files.writeString(folder.resolve("order.yaml"), "kind: order\ncatalog: shop\nlines:\n  - name: " + "d".repeat(64)
                + "\n    machines: 1\n    require: { cores: 8, memory_gb: 32 }\n");
        String text = fitting(bytes("order", order.toString(), "--format", "pdf"));
        assertThat(text.substring(text.indexOf("At a glance"), text.indexOf("Terms"))).containsPattern("\u20ac\\d+\\.\\d\\d")
                .contains("VAT, 20").contains("Total");
    }
}
