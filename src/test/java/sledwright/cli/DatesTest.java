package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

/** The day of an answer: what can be there by a day, how long an offer holds and how old its prices are. */
class DatesTest {

    /** Of 8 cores the small shop's cheapest need modules that take two days; others take seven. */
    private static final String ASKED = "require: { cores: 8, memory_gb: 16 }\n";

    @TempDir
    private Path folder;
    private Path shop;

    @BeforeEach
    void copyShop() throws IOException {
        shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        Path offers = shop.resolve("offers.csv");
        Files.write(offers, Files.readAllLines(offers).stream().filter(row -> !row.startsWith("M64")).toList());
    }

    private void catalog(String more) throws IOException {
        Path file = shop.resolve("catalog.yaml");
        Files.writeString(file, Files.readString(file) + more);
    }

    private String file(String kind, String yaml) throws IOException {
        return Files.writeString(folder.resolve(kind + ".yaml"), "kind: " + kind + "\ncatalog: shop\n" + yaml).toString();
    }

    private static Run run(String command, String file, String today, String... more) {
        return Run.of(Stream.concat(Stream.of(command, file, "--today", today), Stream.of(more)).toArray(String[]::new));
    }

    private static JsonNode json(Run run, int code) throws IOException {
        assertThat(run.code()).as(run.err()).isEqualTo(code);
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void daysAreCountedFromTheDayOfTheAnswer() throws IOException {
        String file = file("quote", ASKED + "alternatives: 1\nlimit: { by: 2025-04-12 }\n");
        JsonNode early = json(run("quote", file, "2025-04-10", "--format", "json"), ExitCode.DONE);
        assertThat(early.get("today").asText()).isEqualTo("2025-04-10");
        assertThat(early.get("alternatives").get(0).get("lead_days").asInt()).isEqualTo(2);
        assertThat(early.get("alternatives").get(0).get("ready_on").asText()).isEqualTo("2025-04-12");
        assertThat(Schemas.faults("quote-result", early.toString())).isEmpty();
        JsonNode late = json(run("quote", file, "2025-04-11", "--format", "json"), ExitCode.NO_VALID_BUILD);
        assertThat(late.get("status").asText()).isEqualTo("impossible");
        assertThat(late.get("conflicts").get(0).get("keys").toString()).isEqualTo("[\"limit.by\"]");
        assertThat(late.get("conflicts").get(0).get("rules").toString()).isEqualTo("[\"lead-time\"]");
        assertThat(late.get("relaxations").get(0).get("changes").get(0).toString()).contains("\"from\":\"2025-04-12\"", "\"to\":\"2025-04-13\"");
        assertThat(run("quote", file, "2025-04-11").out().replaceAll("\\s+", " "))
                .contains("delivery by 2025-04-12", "he last part arrives on 2025-04-13 at the earliest", "ait until 2025-04-13 instead of 2025-04-12");
        assertThat(run("quote", file, "2025-04-11", "--set", "limit.by=2025-04-13").code()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void theLesserOfDaysAndDayHolds() throws IOException {
        String file = file("quote", ASKED + "limit: { by: 2025-04-30, lead_days: 1 }\n");
        JsonNode answer = json(run("quote", file, "2025-04-10", "--format", "json"), ExitCode.NO_VALID_BUILD);
        assertThat(answer.get("relaxations").get(0).get("keys").toString()).isEqualTo("[\"limit.lead_days\"]");
        JsonNode both = json(run("quote", file, "2025-04-29", "--format", "json"), ExitCode.NO_VALID_BUILD);
        assertThat(both.get("relaxations").get(0).get("keys").toString()).contains("limit.lead_days", "limit.by");
    }

    @Test
    void onADayThatIsOverNotEvenWhatIsHereCanBeDelivered() throws IOException {
        String here = file("quote", ASKED + "limit: { by: 2025-04-10 }\non_hand: { M16: 99 }\n");
        assertThat(run("quote", here, "2025-04-10").code()).isEqualTo(ExitCode.DONE);
        JsonNode over = json(run("quote", here, "2025-04-11", "--format", "json"), ExitCode.NO_VALID_BUILD);
        assertThat(over.get("conflicts").get(0).get("rules").toString()).isEqualTo("[\"lead-time\"]");
        assertThat(over.get("relaxations").get(0).get("changes").get(0).toString()).contains("\"to\":\"2025-04-11\"");
    }

    @Test
    void aCheckedBuildIsHeldToTheDay() throws IOException {
        String file = file("build", "platform: WREN-2\nprocessor: H1-08\nprocessors: 1\ncooling: WREN-HS-1\nsupply: RS-750\nsupply_count: 1\n"
                + "modules: { 1A1: M16 }\nlimit: { by: 2025-04-12 }\n");
        assertThat(run("check", file, "2025-04-10").code()).isEqualTo(ExitCode.DONE);
        Run late = run("check", file, "2025-04-11");
        assertThat(late.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(late.out().replaceAll("\\s+", " ")).contains("lead-time", "Lot A6 of M16 arrives on 2025-04-13; the request allows 2025-04-12.");
    }

    @Test
    void anOrderCountsItsDayTheSame() throws IOException {
        String file = file("order", "ship_by: 2025-04-12\nlines:\n  web:\n" + (ASKED + "limit: { by: 2025-05-01 }\n").indent(4));
        JsonNode order = json(run("order", file, "2025-04-10", "--format", "json"), ExitCode.DONE);
        assertThat(order.get("lines").get(0).get("builds").get(0).get("ready_on").asText()).isEqualTo("2025-04-12");
        JsonNode late = json(run("order", file, "2025-04-11", "--format", "json"), ExitCode.NO_VALID_BUILD);
        assertThat(late.get("shortage").get("later").get("lead_days").asInt()).isEqualTo(2);
        assertThat(late.get("lines").get(0).get("relaxations").get(0).get("keys").toString()).isEqualTo("[\"limit.by\"]");
    }

    @Test
    void staleFiguresAreForTheShopAlone() throws IOException {
        catalog("house: { stale_after_days: 14 }\n");
        String file = file("quote", ASKED);
        assertThat(run("quote", file, "2025-04-14").out()).doesNotContain("days old");
        String warned = "The prices are of 2025-03-31 and 15 days old; this shop offers none that are older than 14 days.";
        for (String command : List.of("quote", "compare")) {
            Run shops = run(command, file, "2025-04-15");
            assertThat(shops.out().replaceAll("\\s+", " ")).as(command).contains(warned);
            assertThat(shops.code()).isEqualTo(ExitCode.DONE);
            assertThat(json(run(command, file, "2025-04-15", "--format", "json"), ExitCode.DONE).get("warnings").get(0).asText()).isEqualTo(warned);
            for (String format : List.of("html", "text")) {
                Run refused = run(command, file, "2025-04-15", "--format", format, "--for", "customer");
                assertThat(refused.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
                assertThat(refused.out()).isEmpty();
                assertThat(refused.err()).contains(
                        "no answer for the customer: the prices are of 2025-03-31, older than this shop offers them.\n"
                        + "Maybe bring the catalogue up to date, or allow them with --stale-prices.");
                Run allowed = run(command, file, "2025-04-15", "--format", format, "--for", "customer", "--stale-prices");
                assertThat(allowed.code()).isEqualTo(ExitCode.DONE);
                assertThat(allowed.out()).doesNotContain("days old");
            }
        }
        assertThat(run("quote", file, "2025-03-01", "--format", "html").code()).as("prices of a later day").isEqualTo(ExitCode.DONE);
    }

    @Test
    void lotsThatAreOverAreWarnedOf() throws IOException {
        Path offers = shop.resolve("offers.csv");
        List<String> rows = Files.readAllLines(offers);
        Files.write(offers, rows.stream().map(row -> row + (row.startsWith("sku") ? ",valid_until" : row.startsWith("M16,A6") ? ",2025-04-12" : ",")).toList());
        String file = file("quote", ASKED + "alternatives: 1\n");
        assertThat(json(run("quote", file, "2025-04-12", "--format", "json"), ExitCode.DONE).get("warnings")).isEmpty();
        assertThat(json(run("quote", file, "2025-04-13", "--format", "json"), ExitCode.DONE).get("warnings").get(0).asText())
                .isEqualTo("Lot A6 of M16 was offered until 2025-04-12: ask Fen Surplus before it is promised.");
        assertThat(run("quote", file, "2025-04-13", "--for", "customer").out()).doesNotContain("Fen Surplus");
    }

    @Test
    void anOfferHoldsFromTheDayOfTheAnswer() throws IOException {
        catalog("document: { valid_days: 10 }\n");
        String file = file("quote", ASKED + "alternatives: 1\n");
        JsonNode answer = json(run("quote", file, "2025-06-01", "--format", "json"), ExitCode.DONE);
        assertThat(answer.get("valid_until").asText()).isEqualTo("2025-06-11");
        assertThat(answer.get("priced_on").asText()).isEqualTo("2025-03-31");
        String page = run("quote", file, "2025-06-01", "--format", "html").out().replaceAll("<[^>]+>", " ").replaceAll("\\s+", " ");
        assertThat(page).contains("Date 1 June 2025", "Valid until 11 June 2025", "2\u00a0days: the last part is here on 3 June 2025");
    }

    @Test
    void aDayThatIsNoneIsNamed() throws IOException {
        assertThat(run("quote", file("quote", ASKED), "tomorrow").err()).contains("'--today': 'tomorrow' must be a date, such as 2026-11-18");
        assertThat(run("quote", file("quote", ASKED + "limit: { by: soon }\n"), "2025-04-01").err()).contains("quote.yaml:4: limit.by \"soon\"", "must be a date");
    }
}
