package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import sledwright.report.Schemas;

/** Three prices of one wish. */
class PricePointsCommandTest {

    private static final String FILE = "scenarios/cache-node.yaml";

    private static Run quote(String... more) {
        return Run.of(Stream.concat(Stream.of("quote", FILE), Stream.of(more)).toArray(String[]::new));
    }

    /** The points are those that the comparison marks. */
    @Test
    void pointsAreThoseOfTheCurve() throws IOException {
        Run run = quote("--set", "price_points=3", "--set", "objective=most-cores", "--format", "json");
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
        assertThat(Schemas.faults("quote-result", run.out())).isEmpty();
        JsonNode answer = new ObjectMapper().readTree(run.out());
        JsonNode curve = new ObjectMapper().readTree(Run.of("compare", FILE, "--figure", "cores", "--over", "price", "--format", "json").out()).get("curves").get(0).get("points");
        List<JsonNode> points = StreamSupport.stream(curve.spliterator(), false).toList();
        assertThat(answer.get("status").asText()).isEqualTo("proved");
        assertThat(answer.get("best")).isEqualTo(points.get(0).get("price"));
        assertThat(answer.get("alternatives")).hasSize(3);
        long before = 0;
        for (JsonNode one : answer.get("alternatives")) {
            assertThat(points).anySatisfy(point -> {
                assertThat(point.get("price")).isEqualTo(one.get("price"));
                assertThat(point.get("value").asInt()).isEqualTo(one.get("cores").asInt());
                assertThat(switch (one.get("mark").asText()) {
                    case "unit" -> point.get("best_per_unit").asBoolean();
                    case "knee" -> point.get("knee").asBoolean();
                    default -> true;
                }).isTrue();
            });
            assertThat(one.get("price").asLong()).isGreaterThan(before);
            before = one.get("price").asLong();
        }
        assertThat(answer.get("alternatives").get(0).get("mark").asText()).isEqualTo("cheapest");
    }

    @Test
    void whatCannotBeBuiltIsExplainedAsEver() {
        Run run = quote("--set", "price_points=2", "--set", "limit.price=1");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.out()).contains("impossible: no valid build exists", "What conflicts");
        assertThat(quote("--set", "price_points=4").err()).contains("price_points \"4\": must be from 0 to 3 points");
    }

    /** Each is held against the one before, by what is paid, and the document begins with the choice. */
    @Test
    void documentsBeginWithTheChoice() throws IOException {
        JsonNode points = new ObjectMapper().readTree(quote("--set", "price_points=3", "--format", "json").out()).get("alternatives");
        assertThat(points.get(2).get("reasons").get(0).asText()).startsWith("For %s EUR more than the one before: ".formatted(
                points.get(2).get("net").decimalValue().subtract(points.get(1).get("net").decimalValue())));
        String page = quote("--set", "price_points=3", "--format", "html").out().replace('\u00a0', ' ');
        assertThat(page.indexOf("Your choice of prices, and what the next one costs and brings")).isPositive().isLessThan(page.indexOf("The choices side by side"));
        assertThat(page.indexOf("The choices side by side")).isLessThan(page.indexOf("Option 1: what you get"));
        assertThat(page).contains("Option 1, the least price: ", " more than the option before", "from the least price up")
                .doesNotContain("knee", "has the lowest price");
    }

    @Test
    void textSaysWhatEachIsChosenFor() {
        assertThat(quote("--set", "price_points=3").out()).contains("chosen for", "least price");
    }
}
