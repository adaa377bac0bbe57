package sledwright.report;

import static org.assertj.core.api.Assertions.assertThat;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CatalogView;
import sledwright.desk.view.CheckView;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.explain.Explanation;
import sledwright.explain.conflict.Conflict;
import sledwright.explain.conflict.Lacks;
import sledwright.explain.conflict.Relaxation;
import sledwright.explain.whynot.WhyNot;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.report.build.BuildJson;
import sledwright.report.catalog.CatalogJson;
import sledwright.report.check.CheckJson;
import sledwright.report.quote.QuoteJson;
import sledwright.report.text.Json;
import sledwright.rules.Order;
import sledwright.rules.Violation;
import sledwright.samples.Answers;
import sledwright.samples.Samples;
import sledwright.words.Sentence;

class JsonTest {

    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES).build();

    private static JsonNode read(String json) throws IOException {
        return MAPPER.readTree(json);
    }

    private static QuoteView view(Findings findings) {
        return QuoteView.of(Answers.outcome(findings), Answers.SHOP, Explanation.NONE);
    }

    @Test
    void aQuoteIsWrittenKeyByKey() {
        assertThat(QuoteJson.of(view(Answers.findings(Answers.ASKED, Status.PROVED, Answers.order(Answers.ASKED, Answers.sled()))))).startsWith("""
                {
                  "request": "render node",
                  "currency": "EUR",
                  "status": "proved",
                  "best": 442.00,
                  "bound": 442.00,
                  "objective": "cheapest",
                  "machines": 1,
                  "today": "2025-01-01",
                  "priced_on": "2025-01-01",
                  "valid_until": null,
                  "warnings": [],
                  "alternatives": [
                    {
                      "rank": 1,
                      "price": 442.00,
                      "platform": "SLED",
                      "processor": "P10",
                      "processors": 1,
                      "cooling": "LOW",
                      "supply": null,
                      "supplies": 0,
                      "machines": 1,
                      "modules": {
                        "R32": 4
                      },
                      "slots": {
                        "1A1": "R32",
                        "1B1": "R32",
                        "1C1": "R32",
                        "1D1": "R32"
                      },
                      "volumes": [],
                      "driver": null,
                      "cards": {},
                      "extras": {},
                      "enclosures": [],
                      "cores": 10,
                      "memory_gb": 128,
                      "usable_gb": 128,
                      "memory_mts": 2400,
                      "speed_set_by": "processor",
                      "bandwidth_gbs": 76.8,
                      "work": 200,
                      "work_held_by": null,
                      "throughput": 200,
                      "throughput_estimated": false,
                      "load_w": 186,
                      "wall_w": null,
                      "base_ghz": 2.2,
                      "all_core_ghz": 2.6,
                      "spare_slots": 8,
                      "lead_days": 0,
                      "lines": [
                        {
                          "kind": "part",
                          "sku": "SLED",
                          "description": "SLED",
                          "lot": "S1",
                          "supplier": "sample shop",
                          "condition": "new",
                          "lead_days": 0,
                          "quantity": 1,
                          "unit_cost": null,
                          "unit_price": 150.00,
                          "total": 150.00
                        },
                """).endsWith("""
                  "alternatives_complete": true,
                  "doubts": [],
                  "why_not": [],
                  "conflicts": [],
                  "relaxations": [],
                  "catalog_lacks": [],
                  "notes": [],
                  "more_work": null,
                  "too_many": null,
                  "steps": null
                }
                """);
    }

    @Test
    void everyQuoteKeepsItsSchema() {
        WhyNot beaten = new WhyNot("R32", WhyNot.Verdict.BEATEN, List.of(Sentence.plain("It is dearer.")), List.of(), Optional.of(new WhyNot.Offer(
                new BigDecimal("620.00"), new BigDecimal("26.00"), Map.of("memory", new BigDecimal("26.00")), Optional.of(new BigDecimal("43.50")), 4)));
        WhyNot barred = new WhyNot("R16", WhyNot.Verdict.BARRED, List.of(Sentence.plain("It does not fit.")), List.of("rank-limit"), Optional.empty());
        Explanation explanation = new Explanation(List.of(beaten, barred),
                List.of(new Conflict(List.of(new Conflict.Member("limit.price", Optional.empty(), Sentence.plain("a price")),
                        new Conflict.Member("use", Optional.of("R16"), Sentence.plain("R16 in every machine"))), List.of("budget", "cores"), Sentence.plain("Both cannot be."))),
                List.of(new Relaxation(List.of(new Relaxation.Change("limit.price", Optional.empty(), "400.00", "500.00"), new Relaxation.Change("stock", Optional.empty(), "", "")),
                        new BigDecimal("500.00"), Sentence.plain("500.00 EUR would do."))),
                List.of(new Lacks.Lack("BOX", new Violation("in-stock", "", Sentence.plain("No lot offers BOX.")))), List.of(Sentence.plain("There are more.")));
        Findings impossible = Answers.findings(Answers.ASKED, Status.IMPOSSIBLE);
        Findings value = new Findings(Answers.rich(), Status.BEST_FOUND, 400, 500.5, List.of(Answers.order(Answers.rich(), Answers.cool())), Doubts.of(Doubts.Cause.TIME));
        for (String json : List.of(QuoteJson.of(view(Answers.proved())), QuoteJson.of(view(Answers.unequal())), QuoteJson.of(view(value)),
                QuoteJson.of(QuoteView.of(Answers.outcome(impossible), Answers.SHOP, explanation)))) {
            assertThat(Schemas.faults("quote-result", json)).as(json).isEmpty();
        }
    }

    /** Whoever reads a key in a schema finds its meaning in the document. */
    @Test
    void everyKeyOfAResultIsDescribed() throws IOException {
        String document = Files.readString(Path.of("docs/json.md"));
        Set<String> described = Pattern.compile("`([a-z_.]+)`").matcher(document).results().flatMap(name -> Stream.of(name.group(1).split("\\.")))
                .collect(Collectors.toSet());
        List<Path> schemas;
        try (Stream<Path> files = Files.list(Path.of("docs/schemas"))) {
            schemas = files.filter(file -> file.toString().matches(".*(-result|build-figures)\\.schema\\.json")).sorted().toList();
        }
        assertThat(schemas).hasSizeGreaterThan(10);
        for (Path schema : schemas) {
            assertThat(keys(MAPPER.readTree(Files.readString(schema)))).as(schema.toString()).isSubsetOf(described);
        }
    }

    /** The keys of a schema and of all within it. */
    private static Stream<String> keys(JsonNode schema) {
        return Stream.concat(schema.path("properties").propertyStream().map(Map.Entry::getKey),
                StreamSupport.stream(schema.spliterator(), false).flatMap(JsonTest::keys));
    }

    @Test
    void theSchemaRefusesWhatIsNoAnswer() {
        String json = QuoteJson.of(view(Answers.proved()));
        assertThat(Schemas.faults("quote-result", json.replace("\"proved\"", "\"sure\""))).isNotEmpty();
        assertThat(Schemas.faults("quote-result", json.replace("\"price\": 594.00", "\"price\": \"594.00\""))).isNotEmpty();
        assertThat(Schemas.faults("quote-result", json.replace("\"lot\": \"B1\"", "\"lot\": 1"))).isNotEmpty();
        assertThat(Schemas.faults("quote-result", json.replace("\"load_w\"", "\"watts\""))).isNotEmpty();
    }

    @Test
    void theLinesAddUpToThePrice() throws IOException {
        for (Findings findings : List.of(Answers.proved(), Answers.unequal(),
                Answers.findings(Answers.rich(), Status.PROVED, Answers.order(Answers.rich(), Answers.cool())))) {
            for (JsonNode alternative : read(QuoteJson.of(view(findings))).get("alternatives")) {
                BigDecimal sum = BigDecimal.ZERO;
                for (JsonNode line : alternative.get("lines")) {
                    assertThat(line.get("unit_price").decimalValue().multiply(BigDecimal.valueOf(line.get("quantity").asInt())))
                            .isEqualByComparingTo(line.get("total").decimalValue());
                    sum = sum.add(line.get("total").decimalValue());
                }
                assertThat(alternative.get("price").decimalValue()).isEqualByComparingTo(sum);
            }
        }
    }

    @Test
    void anObjectiveThatIsNoMoneyIsAPlainFigure() throws IOException {
        JsonNode json = read(QuoteJson.of(view(new Findings(Answers.rich(), Status.BEST_FOUND, 400, 500.5,
                List.of(Answers.order(Answers.rich(), Answers.cool())), Doubts.NONE))));
        assertThat(json.get("best").toString()).isEqualTo("400");
        assertThat(json.get("bound").toString()).isEqualTo("500.5");
        assertThat(json.get("objective").asText()).isEqualTo("most-throughput");
    }

    @Test
    void machinesThatDifferAreListedTheHeaviestFirst() throws IOException {
        JsonNode best = read(QuoteJson.of(view(Answers.unequal()))).get("alternatives").get(0);
        assertThat(best.get("machines").asInt()).isEqualTo(3);
        assertThat(best.get("modules").toString()).isEqualTo("{\"R16B\":8}");
        assertThat(best.get("load_w").asInt()).isEqualTo(291);
        assertThat(best.get("builds")).hasSize(2);
        assertThat(best.get("builds").get(0).get("machines").asInt()).isEqualTo(2);
        assertThat(best.get("builds").get(1).get("modules").toString()).isEqualTo("{\"R16\":8}");
        assertThat(best.get("builds").get(1).get("load_w").asInt()).isEqualTo(287);
    }

    /** The heaviest machine is not the slowest: each figure is that of the machine which it names. */
    @Test
    void figuresNameTheMachineThatTheyAreOf() throws IOException {
        MemoryModule slow = Samples.module("R16S", 16).mts(1866).make();
        Build light = Samples.machine(Answers.BOX).cooling(Samples.LOW).channels(4, slow).build();
        Request request = Answers.ASKED.withMachines(3).withLimit(Samples.limit().make());
        Order order = Order.of(List.of(Answers.cool(), light, Answers.coolHeavier()), List.of(), request, Answers.SHOP);
        JsonNode build = read(Json.of(BuildJson.of(BuildView.of(order, false))));
        JsonNode of = build.get("figures_of");
        assertThat(of).isEqualTo(read("""
                {"modules": 0, "slots": 0, "memory_mts": 2, "speed_set_by": 2, "bandwidth_gbs": 2, "work": 0, "work_held_by": 0, "load_w": 0, "wall_w": 0}"""));
        assertThat(build.get("modules").toString()).isEqualTo("{\"R16B\":8}");
        assertThat(build.get("memory_mts").asInt()).isEqualTo(1866);
        of.fields().forEachRemaining(figure -> assertThat(build.get(figure.getKey())).as(figure.getKey())
                .isEqualTo(build.get("builds").get(figure.getValue().asInt()).get(figure.getKey())));
    }

    @Test
    void theLicenceIsALineOfItsOwn() throws IOException {
        JsonNode json = read(QuoteJson.of(view(Answers.findings(Answers.rich(), Status.PROVED, Answers.order(Answers.rich(), Answers.cool())))));
        List<String> licences = json.get("alternatives").get(0).get("lines").findParents("kind").stream()
                .filter(line -> line.get("kind").asText().equals("licence"))
                .map(line -> line.get("quantity") + " x " + line.get("unit_price") + " = " + line.get("total")).toList();
        assertThat(licences).containsExactly("20 x 10.00 = 200.00", "2 x 25.00 = 50.00");
    }

    @Test
    void anImpossibleRequestHasNoFigures() throws IOException {
        JsonNode json = read(QuoteJson.of(view(Answers.findings(Answers.ASKED, Status.IMPOSSIBLE))));
        assertThat(json.get("status").asText()).isEqualTo("impossible");
        assertThat(json.get("best").isNull()).isTrue();
        assertThat(json.get("bound").isNull()).isTrue();
        assertThat(json.get("alternatives")).isEmpty();
    }

    @Test
    void aVerdictHasItsBreachesAndTheFigures() throws IOException {
        CheckView view = CheckView.of(Answers.order(Answers.ASKED, Answers.cool()), false,
                List.of(new Violation("rank-limit", "1A", Sentence.plain("Too many ranks."))));
        String json = CheckJson.of(view);
        assertThat(Schemas.faults("check-result", json)).isEmpty();
        assertThat(json).startsWith("""
                {
                  "build": "render node",
                  "currency": "EUR",
                  "valid": false,
                  "violations": [
                    {
                      "rule": "rank-limit",
                      "where": "1A",
                      "message": "Too many ranks."
                    }
                  ],
                  "price": null,
                  "platform": "BOX",
                """);
        assertThat(read(json).get("throughput").asInt()).isEqualTo(400);
    }

    @Test
    void aMachineWithoutProcessorsIsShown() throws IOException {
        var build = Samples.machine(Answers.BOX).processors().slot("1A1", Answers.R16).build();
        String json = CheckJson.of(CheckView.of(Answers.order(Answers.ASKED, build), true, List.of(new Violation("socket-count", "", Sentence.plain("None.")))));
        assertThat(Schemas.faults("check-result", json)).isEmpty();
        assertThat(read(json).get("processor").isNull()).isTrue();
        assertThat(read(json).get("cooling").isNull()).isTrue();
    }

    @Test
    void aCatalogueIsCounted() throws IOException {
        String json = CatalogJson.of(CatalogView.of(Answers.SHOP));
        assertThat(Schemas.faults("catalog-result", json)).isEmpty();
        assertThat(read(json).get("counts").toString()).isEqualTo("{\"platforms\":2,\"sled_enclosures\":0,\"processors\":2,\"memory_modules\":3,"
                + "\"drives\":0,\"cards\":0,\"extras\":0,\"cooling_kits\":3,\"power_supplies\":1,\"lots\":10,\"units_in_stock\":83}");
        assertThat(read(json).get("enclosures")).isEmpty();
        assertThat(read(json).get("unsold").toString()).isEqualTo("[\"TALL\"]");
    }

    @Test
    void everyKeyIsDescribed() throws IOException {
        String described = Files.readString(Path.of("docs/json.md"));
        Set<String> keys = new TreeSet<>();
        for (String json : List.of(QuoteJson.of(view(Answers.proved())), CatalogJson.of(CatalogView.of(Answers.SHOP)),
                CheckJson.of(CheckView.of(Answers.order(Answers.ASKED, Answers.cool()), true, List.of(new Violation("a", "b", Sentence.plain("c"))))))) {
            collect(read(json), keys);
        }
        assertThat(keys).hasSizeGreaterThan(50).allSatisfy(key -> assertThat(described).contains("`" + key + "`"));
    }

    private static void collect(JsonNode node, Set<String> keys) {
        node.properties().forEach(entry -> {
            keys.add(entry.getKey());
            if (!Set.of("modules", "slots").contains(entry.getKey())) {
                collect(entry.getValue(), keys);
            }
        });
        if (node.isArray()) {
            node.forEach(child -> collect(child, keys));
        }
    }
}
