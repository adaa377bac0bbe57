package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.browser.Browser;
import sledwright.browser.DocumentChecks;
import sledwright.browser.InBrowser;
import sledwright.report.Schemas;

class RestockCommandTest {

    private static final String SHOP = "src/test/resources/shop";

    private static Path file(Path folder) throws IOException {
        Files.writeString(folder.resolve("supply.csv"), """
                sku,supplier,unit_cost,available,min_quantity,lead_days,condition
                M16,Quarry Parts,20.00,200,4,3,used
                """);
        return Files.writeString(folder.resolve("spring.yaml"), """
                kind: restock
                name: spring
                horizon_months: 2
                budget: 1500
                samples: 50
                supply: supply.csv
                depreciation: { memory: 0.05 }
                classes:
                  - name: small
                    demand: { poisson: 3 }
                    require: { memory_gb: 64 }
                    margin: 60
                    loss: 5
                  - name: huge
                    demand: { poisson: 1 }
                    require: { memory_gb: 100000 }
                    margin: 60
                """);
    }

    @Test
    void jsonKeepsItsSchemaAndTheBudget(@TempDir Path folder) throws IOException {
        Run run = Run.of("restock", file(folder).toString(), "--catalog", SHOP, "--levels", "--format", "json");
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
        assertThat(Schemas.faults("restock-result", run.out())).as(run.out()).isEmpty();
        JsonNode answer = new ObjectMapper().readTree(run.out());
        assertThat(answer.get("cost").decimalValue()).isLessThanOrEqualTo(answer.get("budget").decimalValue());
        assertThat(answer.get("classes").get(1).get("possible").asBoolean()).isFalse();
        assertThat(answer.get("classes").get(1).get("conflicts")).isNotEmpty();
        assertThat(run.err()).contains("what each part is worth");
    }

    @Test
    void whereNobodyOrdersNothingIsInUse(@TempDir Path folder) throws IOException {
        Run run = Run.of("restock", file(folder).toString(), "--catalog", SHOP, "--set", "classes.small.demand.poisson=0", "--set", "samples=10");
        assertThat(run.out()).contains("expected margin: 0.00 +/- 0.00 with the plan", "\nWhat to buy\nNothing: ", "\nParts in use\nNone.\n\nDead stock");
    }

    /** On the demo: a drive that nobody needs now has a price at which it moves, and so has the enclosure that sleds go into. */
    @Test
    void drivesCardsAndEnclosuresArePlannedLikeOtherParts(@TempDir Path folder) throws IOException {
        Path plan = Files.writeString(folder.resolve("whole.yaml"), """
                kind: restock
                name: whole machines
                horizon_months: 2
                budget: 1500
                samples: 10
                depreciation: { drives: 0.04, cards: 0.02, extras: 0.01, enclosures: 0.02 }
                supply: [ { sku: LB-2X10, supplier: Kaldvik, unit_cost: 5.00, available: 30, lead_days: 3, condition: used } ]
                classes:
                  - name: file server
                    demand: { poisson: 3 }
                    platforms: [LAPWING-R2]
                    require:
                      memory_gb: 16
                      storage: [ { name: files, usable_gb: 8000, level: 6 } ]
                      cards: [ { kind: network, ports: 2, port_gbit: 10 } ]
                    margin: 90
                  - { name: sled, demand: { poisson: 4 }, platforms: [FINCH-S2], require: { cores: 12, memory_gb: 64 }, margin: 60 }
                """);
        Run run = Run.of("restock", plan.toString(), "--catalog", "catalogs/heronfold-yard", "--format", "json");
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
        JsonNode parts = new ObjectMapper().readTree(run.out()).get("parts");
        assertThat(parts).filteredOn(part -> part.get("sku").asText().equals("LB-2X10")).singleElement()
                .satisfies(card -> assertThat(card.get("used").asDouble()).isPositive());
        assertThat(parts).filteredOn(part -> part.get("sku").asText().equals("FINCH-E4")).singleElement().satisfies(enclosure -> {
            assertThat(enclosure.get("used").asDouble()).isPositive();
            assertThat(enclosure.get("pay_at_most").isNull()).isFalse();
        });
        assertThat(parts).as("drives that move at a price").anySatisfy(part -> {
            assertThat(part.get("sku").asText()).matches("[A-Z]+35-.*");
            assertThat(part.get("dead").asBoolean()).isTrue();
            assertThat(part.get("pay_at_most").isNull()).isFalse();
        });
    }

    @Test
    void textStaysWithinEightyColumns(@TempDir Path folder) throws IOException {
        Run run = Run.of("restock", file(folder).toString(), "--catalog", SHOP, "--levels");
        assertThat(run.out()).contains("What to buy").contains("huge cannot be served at any price");
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
    }

    @Test
    void csvHasARowForEachPurchase(@TempDir Path folder) throws IOException {
        Run run = Run.of("restock", file(folder).toString(), "--catalog", SHOP, "--format", "csv");
        assertThat(run.out()).startsWith("sku,supplier,condition,quantity,unit_cost,cost,currency,lead_days,why\n");
    }

    @Test
    @InBrowser
    void pageIsSound(Browser browser, @TempDir Path folder) throws IOException {
        DocumentChecks.assertSound(browser, Run.of("restock", file(folder).toString(), "--catalog", SHOP, "--levels", "--format", "html").out());
        assertThat(browser.text()).contains("spring: what to stock for 2 months");
    }

    @Test
    void timeThatRanOutIsTold(@TempDir Path folder) throws IOException {
        Run run = Run.of("restock", file(folder).toString(), "--catalog", SHOP, "--time-limit", "0.001");
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).contains("Time ran out");
    }

    @Test
    void pageAndWorkbookHaveThePlan(@TempDir Path folder) throws IOException {
        Run page = Run.of("restock", file(folder).toString(), "--catalog", SHOP, "--levels", "--format", "html");
        assertThat(page.code()).as(page.err()).isEqualTo(ExitCode.DONE);
        assertThat(page.out()).startsWith("<!DOCTYPE html>").contains("<svg").contains("What to buy").contains("Dead stock").contains("Cannot be served at any price.");
        Path book = folder.resolve("plan.xlsx");
        assertThat(Run.of("restock", file(folder).toString(), "--catalog", SHOP, "--format", "xlsx", "--output", book.toString()).code())
                .isEqualTo(ExitCode.DONE);
        assertThat(entry(book, "xl/workbook.xml")).contains("name=\"Plan\"");
        assertThat(entry(book, "xl/sharedStrings.xml")).contains("Expected margin with the plan", "Expected margin if nothing is bought", "Gain", "Budget");
        assertThat(entry(book, "xl/worksheets/sheet1.xml")).contains("<v>1500.00</v>");
    }

    private static String entry(Path book, String name) throws IOException {
        try (ZipFile file = new ZipFile(book.toFile())) {
            return new String(file.getInputStream(file.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
