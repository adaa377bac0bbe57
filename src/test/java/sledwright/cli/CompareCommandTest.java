package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;

class CompareCommandTest {

    private static final String FILE = "scenarios/small-web-node.yaml";
    private static final String[] ENERGY = {"--years", "4", "--price-per-kwh", "0.28", "--duty", "0.6"};

    private static JsonNode json(String... arguments) throws IOException {
        Run run = Run.of(with(arguments, "--format", "json"));
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(Schemas.faults("compare-result", run.out())).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    private static String[] with(String[] arguments, String... more) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    /** What is better in some figure than whatever is cheaper: numbers that follow each other are a span. */
    @Test
    void aCustomerReadsWhichMachinesStandTogether() {
        Run letter = Run.of("compare", FILE, "--figure", "cores", "--together", "0.07", "--for", "customer");
        assertThat(letter.out().replaceAll("\\s+", " "))
                .containsPattern("better than every cheaper one of them by 7 % in some figure, and none that is so is missing: 1\u2013\\d+(, \\d+(\u2013\\d+)?)*\\. The machines:");
    }

    @Test
    void aRequestIsComparedInEveryFormat(@TempDir Path folder) throws IOException {
        JsonNode answer = json("compare", FILE);
        assertThat(answer.get("status").asText()).isEqualTo("proved");
        assertThat(answer.get("curves")).hasSize(5);
        int points = 0;
        for (JsonNode curve : answer.get("curves")) {
            points += curve.get("points").size();
            assertThat(curve.get("proved_points").asInt()).isEqualTo(curve.get("points").size());
        }

        Run text = Run.of("compare", FILE);
        assertThat(text.out()).startsWith("small-web-node: what money buys, 1 machine\nproved: ").contains("Throughput by price", "Load by price", "The builds");
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));

        List<Map<String, String>> rows = new CsvMapper().readerForMapOf(String.class).with(CsvSchema.emptySchema().withHeader())
                .<Map<String, String>>readValues(Run.of("compare", FILE, "--format", "csv").out()).readAll();
        assertThat(rows).hasSize(points);
        JsonNode first = answer.get("curves").get(0).get("points").get(1);
        assertThat(rows.get(1)).containsEntry("figure", "throughput").containsEntry("cost_amount", first.get("cost").asText())
                .containsEntry("value", first.get("value").asText()).containsEntry("energy_cost", "");

        assertThat(Run.of("compare", FILE, "--format", "svg").out()).startsWith("<?xml").contains("Usable memory by price");
        assertThat(Run.of("compare", FILE, "--format", "html").out()).startsWith("<!DOCTYPE html>");
        Path book = folder.resolve("a.xlsx");
        assertThat(Run.of("compare", FILE, "--format", "xlsx", "--output", book.toString()).code()).isEqualTo(ExitCode.DONE);
        assertThat(Files.readAllBytes(book)).startsWith('P', 'K');
    }

    /** The first point of a curve is the cheapest build, the last the one with the most of its figure. */
    @Test
    void curvesBeginAndEndWhereQuotesDo() throws IOException {
        JsonNode bandwidth = json("compare", FILE, "--figure", "bandwidth").get("curves").get(0);
        JsonNode points = bandwidth.get("points");
        JsonNode cheapest = quote("cheapest");
        JsonNode most = quote("most-bandwidth");
        assertThat(points.get(0).get("price")).isEqualTo(cheapest.get("price"));
        assertThat(points.get(points.size() - 1).get("price")).isEqualTo(most.get("price"));
        assertThat(points.get(points.size() - 1).get("value")).isEqualTo(most.get("bandwidth_gbs"));
    }

    private static JsonNode quote(String objective) throws IOException {
        return new ObjectMapper().readTree(Run.of("quote", FILE, "--set", "objective=" + objective, "--set", "alternatives=1", "--format", "json").out())
                .get("alternatives").get(0);
    }

    @Test
    void energyMakesTotalCosts() throws IOException {
        JsonNode answer = json(with(new String[] {"compare", FILE}, ENERGY));
        assertThat(answer.get("energy").get("price_per_kwh").decimalValue()).isEqualByComparingTo("0.28");
        assertThat(answer.get("curves")).hasSize(10);
        for (JsonNode curve : answer.get("curves")) {
            for (JsonNode point : curve.get("points")) {
                BigDecimal total = point.get("price").decimalValue().add(point.get("energy_cost").decimalValue());
                assertThat(point.get("total_cost").decimalValue()).isEqualByComparingTo(total);
                assertThat(point.get("cost")).isEqualTo(point.get(curve.get("cost").asText().equals("total") ? "total_cost" : "price"));
            }
        }
        assertThat(json(with(new String[] {"compare", FILE, "--over", "total", "--figure", "cores"}, ENERGY)).get("curves")).hasSize(1);
        Run text = Run.of(with(new String[] {"compare", FILE, "--over", "total", "--figure", "cores"}, ENERGY));
        assertThat(text.out()).contains("Energy: 4 years at 0.28 EUR a kWh, 60 % of the load on average.", "Cores by total cost").doesNotContain("Cores by price");
        assertThat(Run.of("compare", FILE, "--over", "total", "--figure", "cores", "--years", "1", "--price-per-kwh", "0.28").out())
                .contains("Energy: 1 year at 0.28 EUR a kWh, ");
    }

    @Test
    void platformsApartAndTogether() throws IOException {
        JsonNode answer = json("compare", FILE, "--by-platform", "--figure", "load", "--together", "0.5");
        assertThat(answer.get("by_platform").asBoolean()).isTrue();
        assertThat(answer.get("curves")).hasSize(4);
        assertThat(answer.get("together").get("complete").asBoolean()).isTrue();
        assertThat(answer.get("together").get("builds").size()).isGreaterThan(1);
        JsonNode one = json("compare", FILE, "--platform", "LAPWING-R1", "--figure", "load");
        for (JsonNode build : one.get("builds")) {
            assertThat(build.get("platform").asText()).isEqualTo("LAPWING-R1");
        }
        Run text = Run.of("compare", FILE, "--by-platform", "--together", "0.5");
        assertThat(text.out()).contains("platform by platform", "All figures together", "Capital letters are ahead");
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
    }

    @Test
    void nothingValidEndsWithFour() {
        for (String format : new String[] {"text", "json", "csv", "svg", "html", "xlsx"}) {
            Run run = Run.of("compare", FILE, "--set", "limit.price=1", "--format", format);
            assertThat(run.code()).as(format).isEqualTo(ExitCode.NO_VALID_BUILD);
            assertThat(run.err()).isEmpty();
            assertThat(run.out()).isNotEmpty();
        }
        assertThat(Run.of("compare", FILE, "--set", "limit.price=1").out()).contains("impossible: no build is valid");
    }

    @Test
    void timeThatIsOverIsSaid() {
        Run run = Run.of("compare", FILE, "--time-limit", "0.000001");
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).contains("best-found: not every point is proved", "- Throughput by price: no point is proved").doesNotContain("proved: no valid");
        assertThat(Run.of("compare", FILE, "--time-limit", "0.000001", "--format", "html").out()).contains("Not each price in these lists is certain to be the lowest for what it brings.");
    }

    /** Of mirrored memory a customer has half. */
    @Test
    void aLetterSaysWhatOfTheMemoryIsUsable() {
        assertThat(Run.of("compare", "scenarios/mirrored-ledger.yaml", "--for", "customer", "--time-limit", "0.0001").out().replaceAll("\\s+", " "))
                .contains("No machine was found for your request in the time at hand. ").doesNotContain("The machines:");
        assertThat(Run.of("compare", "scenarios/mirrored-ledger.yaml", "--for", "customer").out()).contains(" GB of it usable, at ");
    }

    @Test
    void wrongArgumentsAreNamed() {
        assertThat(Run.of("compare", FILE, "--over", "total").err()).contains("--over total needs to know about energy");
        assertThat(Run.of("compare", FILE, "--platform", "LAPWING-R9").err()).contains("--platform LAPWING-R9 is no platform of the catalogue, did you mean LAPWING-R");
        assertThat(Run.of("compare", FILE, "--platform", "TERN-R2").err()).contains("--platform TERN-R2 is none that the request allows: FIRECREST-T1,");
        assertThat(Run.of("compare", FILE, "--figure", "speed").err()).contains("'speed' must be one of throughput, work, cores, bandwidth, memory, load");
        assertThat(Run.of("compare", FILE, "--together", "-1").err()).contains("--together -1.0 must be a share from 0 to 10");
        assertThat(Run.of("compare", FILE, "--format", "pdf").err()).contains("--format pdf is not written by this command");
        Run years = Run.of("compare", FILE, "--years", "many");
        assertThat(years.code()).isEqualTo(ExitCode.USAGE);
        assertThat(years.err()).isEqualTo("sledwright: --years many: energy.years \"many\": must be a number\n--years many: energy.price_per_kwh is missing\n");
        Run both = Run.of("compare", FILE, "--years", "4", "--price-per-kwh", "-1", "--set", "require.cores=few");
        assertThat(both.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(both.err()).contains("--price-per-kwh -1: energy.price_per_kwh \"-1\": must be from 0", "--set require.cores=few: require.cores \"few\"");
    }
}
