package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.report.check.CheckJson;
import sledwright.report.compare.CompareJson;
import sledwright.report.order.OrderJson;
import sledwright.report.quote.QuoteJson;
import sledwright.report.text.Json;
import sledwright.report.upgrade.UpgradeJson;

/** A program in Java reads an answer with Jackson into the records that it was written from, and nothing is lost. */
class JsonReadBackTest {

    /** All that a reader sets up. */
    private static final JsonMapper READER = JsonMapper.builder().propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES, DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN).build();

    private static Class<? extends Record> answers(String command) {
        return switch (command) {
            case "quote" -> QuoteJson.class;
            case "check" -> CheckJson.class;
            case "compare" -> CompareJson.class;
            case "upgrade" -> UpgradeJson.class;
            case "order" -> OrderJson.class;
            default -> throw new IllegalArgumentException(command);
        };
    }

    @ParameterizedTest
    @CsvSource({
        "quote, file-server.yaml --why-not TERN-R2", "quote, too-much-for-the-money.yaml --for customer", "quote, small-web-node.yaml --steps",
        "check, build-broken.yaml", "compare, small-web-node.yaml --figure cores --together 0.05", "upgrade, sled-in-place.yaml",
        "order, short-order.yaml --time-limit 0.5"
    })
    void anAnswerIsReadBackAsItWas(String command, String words) throws JsonProcessingException {
        String written = Run.of((command + " scenarios/" + words + " --format json").split(" ")).out();
        Record answer = READER.readValue(written, answers(command));
        assertThat(Json.of(answer)).isEqualTo(written);
        assertThat(READER.readValue(READER.writeValueAsString(answer), answers(command))).isEqualTo(answer);
        assertThat(READER.writeValueAsString(answer) + "\n").isEqualToIgnoringWhitespace(Json.onOneLine(written));
    }
}
