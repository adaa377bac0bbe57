package sledwright.request;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.samples.RequestFiles;

/** The published schemas take what is shipped and refuse what the readers refuse. */
class SchemaTest {

    private static final Path SCHEMAS = Path.of("docs/schemas");
    private static final SchemaRegistry REGISTRY = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    private static List<Error> errors(String schema, Path file) throws IOException {
        Schema loaded = REGISTRY.getSchema(Files.readString(SCHEMAS.resolve(schema + ".schema.json")));
        return loaded.validate(Files.readString(file), InputFormat.YAML);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> found = Files.list(folder)) {
            return found.filter(file -> !file.toString().endsWith(".csv") || !folder.endsWith("scenarios")).sorted().toList();
        }
    }

    static Stream<Path> catalogues() throws IOException {
        List<Path> folders = new ArrayList<>(files(Path.of("catalogs")));
        folders.add(Path.of("src/test/resources/shop"));
        return folders.stream();
    }

    static Stream<Path> scenarios() throws IOException {
        return files(Path.of("scenarios")).stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("catalogues")
    void soundCataloguesPass(Path folder) throws IOException {
        assertThat(errors("catalog", folder.resolve("catalog.yaml"))).isEmpty();
        for (Path platform : files(folder.resolve("platforms"))) {
            assertThat(errors("platform", platform)).as(platform.toString()).isEmpty();
        }
        for (Path enclosure : files(folder.resolve("enclosures"))) {
            assertThat(errors("enclosure", enclosure)).as(enclosure.toString()).isEmpty();
        }
    }

    /** The kind of a file as it was read, which is what the class of the reading is called. */
    private static String kind(Path file) {
        return RequestFiles.open(file).getClass().getSimpleName().replace("File", "").toLowerCase(Locale.ROOT);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void soundRequestsPass(Path file) throws IOException {
        assertThat(errors(kind(file), file)).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("documents")
    void requestsInDocumentsPass(String document, String kind, String request) throws IOException {
        Schema loaded = REGISTRY.getSchema(Files.readString(SCHEMAS.resolve(kind + ".schema.json")));
        assertThat(loaded.validate(request, InputFormat.YAML)).as(document).isEmpty();
    }

    static Stream<Arguments> documents() throws IOException {
        List<Path> documents = new ArrayList<>(files(Path.of("docs")));
        documents.add(Path.of("README.md"));
        Pattern request = Pattern.compile("```yaml\n((?:#[^\n]*\n)*kind: (\\w+)\n.*?)```", Pattern.DOTALL);
        List<Arguments> found = new ArrayList<>();
        for (Path document : documents) {
            if (document.toString().endsWith(".md")) {
                request.matcher(Files.readString(document)).results()
                        .forEach(block -> found.add(arguments(document.getFileName().toString(), block.group(2), block.group(1))));
            }
        }
        return found.stream();
    }

    @Test
    void theMappingOfTheDocumentsPasses() throws IOException {
        assertThat(errors("mapping", Path.of("docs/examples/palisander-list.yaml"))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"catalog, shop/shop/catalog.yaml", "catalog, shop-shapes/shop/catalog.yaml", "catalog, shop-document/shop/catalog.yaml", "catalog, shop-long-document/shop/catalog.yaml", "catalog, shop-suppliers/shop/catalog.yaml",
            "platform, platform-figures/shop/platforms/wren-2.yaml", "platform, platform-slots/shop/platforms/wren-2.yaml",
            "platform, platform-slots/shop/platforms/reed-sled.yaml", "platform, yaml-bombs/shop/platforms/loop.yaml",
            "enclosure, enclosure-figures/shop/enclosures/reed-frame.yaml", "enclosure, enclosure-shapes/shop/enclosures/bare.yaml",
            "enclosure, enclosure-shapes/shop/enclosures/reed-frame.yaml",
            "quote, request-keys/request.yaml", "quote, request-energy/request.yaml", "quote, request-shapes/request.yaml", "quote, request-no-kind/request.yaml",
            "quote, request-unknown-kind/request.yaml", "restock, restock-keys/request.yaml", "quote, request-and-shop/request.yaml",
            "build, build-missing/request.yaml", "build, build-names/request.yaml", "build, build-supply/request.yaml",
            "order, order-keys/request.yaml", "order, order-lines/request.yaml", "order, order-empty/request.yaml",
            "order, order-no-lines/request.yaml", "order, order-shapes/request.yaml",
            "upgrade, upgrade-keys/request.yaml", "upgrade, upgrade-no-build/request.yaml"})
    void whatTheReadersRefuseFails(String schema, String file) throws IOException {
        assertThat(errors(schema, Path.of("src/test/resources/faults").resolve(file))).isNotEmpty();
    }

    /** A line has the keys of a quote, but for those that concern one answer or the whole order. */
    @Test
    void aLineOfAnOrderIsAQuote() throws IOException {
        JsonNode quote = schema("quote").at("/properties");
        JsonNode line = schema("order").at("/$defs/lines/properties");
        Set<String> keys = new TreeSet<>(names(quote));
        keys.removeAll(Set.of("kind", "catalog", "customer", "alternatives", "step", "energy", "on_hand", "price_points",
                "discount_percent", "agreed_price"));
        keys.addAll(Set.of("priority", "uniform"));
        assertThat(names(line)).isEqualTo(keys);
    }

    private static Set<String> names(JsonNode properties) {
        Set<String> names = new TreeSet<>();
        properties.fieldNames().forEachRemaining(names::add);
        return names;
    }

    private static JsonNode schema(String name) throws IOException {
        return new ObjectMapper().readTree(SCHEMAS.resolve(name + ".schema.json").toFile());
    }
}
