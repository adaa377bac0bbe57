package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.report.book.BookJson;
import sledwright.report.book.DemandJson;
import sledwright.report.book.LostJson;
import sledwright.report.book.ReviewJson;
import sledwright.report.catalog.CatalogJson;
import sledwright.report.check.CheckJson;
import sledwright.report.compare.CompareJson;
import sledwright.report.intake.DifferenceJson;
import sledwright.report.intake.ImportJson;
import sledwright.report.label.LabelJson;
import sledwright.report.order.OrderJson;
import sledwright.report.quote.QuoteJson;
import sledwright.report.restock.RestockJson;
import sledwright.report.sheet.SheetJson;
import sledwright.report.text.Json;
import sledwright.report.upgrade.UpgradeJson;
import sledwright.report.Schemas;

/** A program in Java reads an answer with Jackson into the records that it was written from, and nothing is lost. */
class JsonReadBackTest {

    private static final List<Class<? extends Record>> ANSWERS = List.of(QuoteJson.class, CheckJson.class, CompareJson.class, UpgradeJson.class,
            OrderJson.class, SheetJson.class, RestockJson.class, CatalogJson.class, LabelJson.class, ImportJson.class, DifferenceJson.class);

    private static final String SHOP = "catalogs/heronfold-yard";

    /** All that a reader sets up, and what makes it strict. */
    private static final JsonMapper READER = JsonMapper.builder().propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES, DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN).build();

    private static void assertReadBack(Class<? extends Record> kind, String... command) throws JsonProcessingException {
        Run run = Run.of(Stream.concat(Stream.of(command), Stream.of("--format", "json")).toArray(String[]::new));
        assertThat(Schemas.faults(schema(kind), run.out())).isEmpty();
        Record answer = READER.readValue(run.out(), kind);
        assertThat(Json.of(answer)).isEqualTo(run.out());
        assertThat(READER.writeValueAsString(answer)).isEqualToIgnoringWhitespace(run.out());
        assertThat(READER.readValue(READER.writeValueAsString(answer), kind)).isEqualTo(answer);
    }

    /** Of a kind of answer; what the book says of one quote or of a customer's has a record within that of the whole. */
    private static String schema(Class<? extends Record> kind) {
        String name = kind == BookJson.Customer.class ? "Customer" : kind.getEnclosingClass() == null ? kind.getSimpleName() : kind.getEnclosingClass().getSimpleName();
        return name.replace("Json", "").toLowerCase(Locale.ROOT) + "-result";
    }

    @ParameterizedTest
    @CsvSource({
        "QuoteJson, quote scenarios/file-server.yaml --why-not TERN-R2", "QuoteJson, quote scenarios/small-web-node.yaml --steps",
        "QuoteJson, quote docs/examples/agreed.yaml --today 2026-11-18", "QuoteJson, quote docs/examples/quote.yaml --steps --today 2026-11-18",
        "QuoteJson, quote scenarios/too-much-for-the-money.yaml --for customer", "CheckJson, check scenarios/build-broken.yaml",
        "CompareJson, compare scenarios/small-web-node.yaml --figure cores --together 0.05", "UpgradeJson, upgrade scenarios/sled-in-place.yaml",
        "OrderJson, order scenarios/short-order.yaml --time-limit 0.5", "SheetJson, sheet scenarios/sled-upgrade.yaml",
        "RestockJson, restock scenarios/sled-restock.yaml --set samples=20", "CatalogJson, catalog " + SHOP,
        "LabelJson, label 16GB 2Rx4 PC4-2400T-RA1-11", "DifferenceJson, catalog diff " + SHOP + " " + SHOP + " scenarios/small-web-node.yaml",
        "ImportJson, catalog import docs/examples/palisander-list.csv --as offers --mapping docs/examples/palisander-list.yaml --into " + SHOP
    })
    void anAnswerIsReadBackAsItWas(String record, String command) throws JsonProcessingException {
        Class<? extends Record> kind = ANSWERS.stream().filter(one -> one.getSimpleName().equals(record)).findFirst().orElseThrow();
        assertReadBack(kind, command.split(" "));
    }

    @Test
    void soIsWhatTheBookSays(@TempDir Path folder) throws JsonProcessingException {
        String book = folder.resolve("book.db").toString();
        assertReadBack(BookJson.Quote.class, "book", "save", "scenarios/small-web-node.yaml", "--customer", "Mill", "--book", book);
        assertReadBack(BookJson.class, "book", "list", "--book", book);
        assertReadBack(BookJson.History.class, "book", "history", "2026-0001", "--book", book);
        assertReadBack(DemandJson.class, "book", "demand", "--months", "3", "--supply", "scenarios/spring-supply.csv", "--catalog", "catalogs/heronfold-yard", "--book", book);
        assertReadBack(LostJson.class, "book", "lost", "--months", "3", "--catalog", "catalogs/heronfold-yard", "--book", book);
        assertReadBack(BookJson.Customer.class, "book", "export", "--customer", "Mill", "--book", book);
        assertReadBack(ReviewJson.class, "book", "review", "--catalog", SHOP, "--book", book);
    }
}
