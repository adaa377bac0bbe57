package sledwright.report.restock;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.RestockView;
import sledwright.domain.Condition;
import sledwright.domain.SupplierNames;
import sledwright.domain.SupplyOffer;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.report.text.Screen;
import sledwright.restock.RestockPlan;
import sledwright.restock.Restocker;
import sledwright.samples.Variations;
import sledwright.words.Sentence;

/** What stands beside a plan: how sure it is, and what its way of serving costs. */
class RestockNotesTest {

    private static final Job.Restock JOB = (Job.Restock) RequestReader.read(Source.of(Path.of("src/test/resources/sentences/files/dear.yaml")), List.of(), Optional.empty(),
            Set.of(Kind.RESTOCK));

    private static RestockPlan plan(boolean closed) {
        RestockPlan made = Restocker.plan(JOB.catalog(), JOB.plan(), 0, Deadline.never(), line -> { });
        RestockPlan.Effort effort = made.effort();
        return new RestockPlan(made.request(), made.buys(), made.earned(), made.bound(),
                new RestockPlan.Effort(effort.builds(), closed, effort.courses(), effort.late()), made.classes(), made.parts());
    }

    private static String notes(RestockPlan plan) {
        return Sentence.joined(" ", List.copyOf(RestockNotes.of(new RestockView(plan, JOB.catalog(), 0, List.of())).values())).toString();
    }

    @Test
    void whatTheBoundIsOverIsSaid() {
        assertThat(notes(plan(true))).contains(" builds that the search found; at its mean shadow prices no other build earns more, but on some course one may.");
        assertThat(notes(plan(false))).contains(" builds that the search found; others may add to it.");
    }

    /** All 8 modules that the only supplier has. */
    @Test
    void purchaseOrdersSayWhoHasNoMoreAndWhatIsTheShopsOwn() throws IOException {
        RestockPlan plan = Restocker.plan(JOB.catalog(), Variations.offers(JOB.plan(), List.of(new SupplyOffer("M08", "Quarry Parts", Condition.USED, 200, 8, 4, 3))), 0,
                Deadline.never(), line -> { });
        RestockView view = new RestockView(plan, JOB.catalog(), 0, List.of());
        assertThat(view.orders()).singleElement().satisfies(order -> {
            assertThat(order.total()).isEqualTo(plan.cost()).isEqualTo(1600);
            assertThat(order.units()).isEqualTo(8);
            assertThat(order.own()).isFalse();
        });
        assertThat(RestockText.of(view, Screen.PLAIN)).contains("Purchase order to Quarry Parts").contains("It has no more").doesNotContain("own shelf");
        assertThat(RestockPage.of(view)).contains("Purchase order to Quarry Parts").contains("It has no more of it.");
        RestockView own = new RestockView(plan, Variations.of(JOB.catalog(), new SupplierNames(Map.of(), Set.of("quarry parts"))), 0, List.of());
        assertThat(RestockText.of(own, Screen.PLAIN).replaceAll("\\s+", " ")).contains("This is the shop's own shelf: nothing has to be ordered.");
        Map<String, String> files = new HashMap<>();
        try (ZipInputStream workbook = new ZipInputStream(new ByteArrayInputStream(RestockSheets.of(view)))) {
            for (ZipEntry entry = workbook.getNextEntry(); entry != null; entry = workbook.getNextEntry()) {
                files.put(entry.getName(), new String(workbook.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        assertThat(files.get("xl/workbook.xml")).contains("name=\"Order 1 Quarry Parts\"");
        assertThat(files.get("xl/sharedStrings.xml")).contains("It has no more of it.").contains("Total");
    }
}
