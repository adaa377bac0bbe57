package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import sledwright.browser.Browser;
import sledwright.browser.DocumentChecks;
import sledwright.browser.InBrowser;
import sledwright.report.Schemas;

/** The bench sheets of an order: every machine has one, with its own lots and bay, and all lots together are what is fetched. */
class OrderSheetsTest {

    private static final String ORDER = "src/test/resources/sentences/files/few-suppliers.yaml";
    private static final String[] WHOLE = {"--set", "suppliers_max=3"};

    private static Run run(String format, String... more) {
        String[] arguments = new String[6 + more.length];
        System.arraycopy(new String[] {"sheet", ORDER, "--format", format, WHOLE[0], WHOLE[1]}, 0, arguments, 0, 6);
        System.arraycopy(more, 0, arguments, 6, more.length);
        return Run.of(arguments);
    }

    @Test
    void everyMachineHasASheetWithItsOwnLotsAndBay() throws IOException {
        Run run = run("json");
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
        assertThat(Schemas.faults("sheet-result", run.out())).isEmpty();
        JsonNode sheets = new ObjectMapper().readTree(run.out());
        JsonNode order = new ObjectMapper().readTree(Run.of("order", ORDER, "--format", "json", WHOLE[0], WHOLE[1]).out());
        assertThat(sheets.get("made_from").asText()).isEqualTo("order");
        assertThat(sheets.get("sheets")).hasSize(order.get("delivered").asInt());
        Map<String, Integer> fetched = new HashMap<>();
        for (JsonNode lot : sheets.get("lots")) {
            fetched.put(lot.get("sku").asText() + " " + lot.get("lot").asText(), lot.get("units").asInt());
            int shared = 0;
            for (JsonNode share : lot.get("shares")) {
                shared += share.get("each").asInt() * (share.hasNonNull("line") ? share.get("last").asInt() - share.get("first").asInt() + 1 : 1);
            }
            assertThat(shared).as(lot.toString()).isEqualTo(lot.get("units").asInt());
        }
        Set<String> machines = new HashSet<>();
        Set<String> bays = new HashSet<>();
        Map<String, Integer> picked = new HashMap<>();
        for (JsonNode sheet : sheets.get("sheets")) {
            assertThat(machines.add(sheet.get("line").asText() + " " + sheet.get("machine").asInt())).isTrue();
            assertThat(sheet.get("machines").asInt()).isEqualTo(1);
            if (!sheet.get("bay").isNull()) {
                assertThat(bays.add(sheet.get("enclosure").asInt() + " " + sheet.get("bay").asInt())).isTrue();
            }
            sheet.get("picks").forEach(pick -> picked.merge(pick.get("sku").asText() + " " + pick.get("lot").asText(), pick.get("units").asInt(), Integer::sum));
        }
        assertThat(bays).isNotEmpty();
        for (JsonNode enclosure : sheets.get("enclosures")) {
            enclosure.get("sleds").forEach(sled -> assertThat(bays).contains(enclosure.get("enclosure").asInt() + " " + sled.get("bay").asInt()));
        }
        for (JsonNode lot : sheets.get("lots")) {
            for (JsonNode share : lot.get("shares")) {
                if (share.hasNonNull("enclosure")) {
                    picked.merge(lot.get("sku").asText() + " " + lot.get("lot").asText(), share.get("each").asInt(), Integer::sum);
                }
            }
        }
        assertThat(picked).isEqualTo(fetched);
        for (JsonNode line : order.get("picks")) {
            assertThat(fetched).containsEntry(line.get("sku").asText() + " " + line.get("lot").asText(), line.get("quantity").asInt());
        }
    }

    @Test
    void onePaperHoldsThemAll() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run.into(out, Map.of(), false, "sheet", ORDER, "--format", "pdf", WHOLE[0], WHOLE[1]);
        try (PDDocument paper = Loader.loadPDF(out.toByteArray())) {
            String text = new PDFTextStripper().getText(paper).replaceAll("[\\s\u00a0]+", " ");
            assertThat(text).contains("Parts to pick for the whole order, by lot", "machine 1 of", "of enclosure 1 (", "Picked by, date", "Serial number");
            assertThat(paper.getNumberOfPages()).isGreaterThan(2);
        }
        assertThat(run("csv").out()).startsWith("sheet,machines,action,sku,description,lot,supplier,units,line,machine,enclosure,bay\n");
        assertThat(run("text").out()).contains("Enclosure 1: ", "Bay 1 ", " each");
    }

    /** It stands beside its box, on the line of its description, however narrow its column is. */
    @Test
    void noPartNumberStandsByItself() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run.into(out, Map.of(), false, "sheet", "scenarios/branch-offices-order.yaml", "--format", "pdf", "--time-limit", "2");
        try (PDDocument paper = Loader.loadPDF(out.toByteArray())) {
            PDFTextStripper lines = new PDFTextStripper();
            lines.setSortByPosition(true);
            lines.setEndPage(1);
            assertThat(lines.getText(paper)).containsPattern("(?m)^[A-Z0-9]+(-[A-Z0-9]+)+ \\w").doesNotContainPattern("(?m)^[A-Z0-9]+(-[A-Z0-9]+)+\\s*$");
        }
    }

    @Test
    void whatIsMissingIsSaidFirst() {
        Run run = run("text", "--set", "lines.web.machines=400");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.err()).contains("machines of this order cannot be delivered; these sheets are of the other ");
        assertThat(run.out()).contains("machines of this order cannot be delivered");
        Run none = Run.of("sheet", ORDER, "--set", "lines.web.require.cores=9999");
        assertThat(none.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(none.err()).contains("no sheet, because none of its machines was found", "sledwright order");
        assertThat(Run.of("sheet", ORDER, "--rank", "1").err()).contains("only a quote has alternatives");
    }

    @Test
    @InBrowser
    void theyAreSoundInABrowser(Browser browser) {
        DocumentChecks.assertSound(browser, run("html").out());
    }
}
