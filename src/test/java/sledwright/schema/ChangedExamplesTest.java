package sledwright.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import sledwright.input.Faults;

/** The published schemas take and refuse the same files as the readers. */
class ChangedExamplesTest {

    /** What only the readers can decide: it depends on several values or another file, or is a language or a pattern of dates. */
    private static final String EQUIPMENT = "(.*\\.)?require\\.(cards\\.port(s|_gbit) added|storage\\.(hot_spares added|level = 0)).*";
    private static final Map<Format, String> OF_READERS_ALONE = Map.of(
            Format.QUOTE, EQUIPMENT,
            Format.CATALOG, "document\\.locale.*",
            Format.PLATFORM, "(memory\\.(channels|slots_per_channel|slot_names|counts_per_socket|speeds\\.mts)|cooling\\.covers|processors\\.(counts|sockets)|storage added|power\\.supplies\\.).*",
            Format.ENCLOSURE, "power\\.supplies\\..*",
            Format.BUILD, "processors?\\b.*|" + EQUIPMENT,
            Format.ORDER, "lines\\.name added.*|" + EQUIPMENT,
            Format.RESTOCK, "depreciation\\.\\w+ .*|supply .*|" + EQUIPMENT,
            Format.UPGRADE, "build\\.processors?\\b.*|" + EQUIPMENT,
            Format.MAPPING, "columns\\.sku .*|(as|breaks|replaces|constants|columns\\.\\w+|constants\\.\\w+) added.*|dates .*|decimal .*");

    /** Readers ignore an item without value, and over a key without value that only others would need; an editor had better show both, and a number for a name. */
    private static final Pattern OF_SCHEMAS_ALONE =
            Pattern.compile(".* item null|supplier_aliases\\.unknown key|(thermal\\.(altitude_from_m|metres_per_kelvin)|(build\\.)?processors?) added without value.*");

    private static final SchemaRegistry REGISTRY = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private static final Map<Format, Schema> SCHEMAS = new EnumMap<>(Format.class);

    @TempDir
    private Path work;

    private static Schema schema(Format format) {
        return SCHEMAS.computeIfAbsent(format, key -> {
            try {
                return REGISTRY.getSchema(Files.readString(Path.of("docs/schemas").resolve(key.file())));
            } catch (IOException missing) {
                throw new UncheckedIOException(missing);
            }
        });
    }

    private boolean isSound(BiConsumer<Path, Faults> reader, String name, String text) throws IOException {
        Faults faults = new Faults();
        reader.accept(Files.writeString(work.resolve(name), text), faults);
        return faults.size() == 0;
    }

    @BeforeEach
    void tables() throws IOException {
        for (Path table : Format.RESTOCK.tables()) {
            Files.copy(table, work.resolve(table.getFileName()));
        }
    }

    @ParameterizedTest
    @EnumSource(Format.class)
    void schemaAndReaderAgree(Format format) throws IOException {
        Schema schema = schema(format);
        Pattern ofReaders = Pattern.compile(OF_READERS_ALONE.getOrDefault(format, ""));
        TreeSet<String> disputed = new TreeSet<>();
        for (Changes.Change change : Changes.of(format.examples())) {
            boolean taken = schema.validate(change.text(), InputFormat.YAML).isEmpty();
            boolean read = isSound(format::judge, change.name(), change.text());
            if (taken && !read && !ofReaders.matcher(change.what()).matches()) {
                disputed.add("only the reader refuses: " + change.what());
            }
            // What is right of an amount the reader knows only with the catalogue's currency.
            if (!taken && read && isSound(format::read, change.name(), change.text()) && !OF_SCHEMAS_ALONE.matcher(change.what()).matches()) {
                disputed.add("only the schema refuses: " + change.what());
            }
        }
        assertThat(disputed).isEmpty();
    }

    /** By both, so that what an editor shows is what the program says. */
    @ParameterizedTest(name = "{0}: {2}")
    @CsvSource(delimiter = '|', value = {
            "ORDER | suppliers_max: 3 | supplier_max: 3", "ORDER | priority: 5 | prioirty: 5", "ORDER | spare_slots: 1 | spare_slot: 1",
            "ORDER | delivery_charge: 15 | delivery_charge: 15 EUR", "ORDER | delivery_charge: 15 | delivery_charge: -15",
            "ORDER | suppliers_max: 3 | suppliers_max: 0", "ORDER | suppliers_max: 3 | suppliers_max: 2.5",
            "ORDER | ship_by: 2025-04-14 | ship_by: 14.4.2025", "ORDER | M16: 8 | M16: many", "ORDER | M16: 8 | M16: -1",
            "ORDER | machines: 3 | machines: 0", "ORDER | machines: 3 | machines: [3]", "ORDER | priority: 5 | priority: 1001",
            "ORDER | uniform: true | uniform: always", "ORDER | objective: best-value | objective: most-memory",
            "ORDER | conditions: [used] | conditions: used", "ORDER | conditions: [used] | conditions: [worn]",
            "ORDER | platforms: [WREN-2] | platforms: WREN-2", "ORDER | power_w: 420 | price: 420", "ORDER | machines: 3 | on_hand: { M16: 1 }",
            "ORDER | machines: 3 | alternatives: 3", "ORDER | kind: order | kind: quote", "ORDER | kind: order | ''",
            "ORDER | machines: 2 | 2",
            "RESTOCK | budget: 1500.50 | buget: 1500.50", "RESTOCK | supply: supply.csv | supplies: supply.csv", "RESTOCK | sd: 6.5 | sigma: 6.5",
            "RESTOCK | horizon_months: 2 | horizon_months: 0", "RESTOCK | horizon_months: 2 | ''",
            "RESTOCK | service_level: 0.9 | service_level: 1", "RESTOCK | service_level: 0.9 | service_level: 90",
            "RESTOCK | samples: 100 | samples: 9", "RESTOCK | samples: 100 | samples: 100.5", "RESTOCK | memory: 0.03 | memory: 3 percent",
            "RESTOCK | memory: 0.03 | ram: 0.03", "RESTOCK | poisson: 2.5 | poisson: 2.5, months: [3]", "RESTOCK | poisson: 2.5 | poisson: 2.5, months: []",
            "RESTOCK | poisson: 2.5 | poison: 2.5",
            "RESTOCK | { poisson: 2.5 } | {}", "RESTOCK | { poisson: 2.5 } | 2.5", "RESTOCK | mean: 20, sd: 6.5 | mean: 20", "RESTOCK | sd: 6.5 | sd: -6.5",
            "RESTOCK | [26, 35, 22] | []", "RESTOCK | [26, 35, 22] | 26", "RESTOCK | [26, 35, 22] | [26, 3.5]",
            "RESTOCK | price_accepted: 900 | margin: 60, price_accepted: 900", "RESTOCK | price_accepted: 900 | loss: 900",
            "RESTOCK | price_accepted: 900 | price_accepted: 900 EUR",
            "RESTOCK | name: desk | title: desk", "RESTOCK | objective: cheapest | objective: best-value", "RESTOCK | power_w: 420 | price: 420",
            "RESTOCK | loss: 5 | on_hand: { M16: 1 }", "RESTOCK | loss: 5 | catalog: shop"})
    void typicalMistakesAreRefused(Format format, String right, String mistake) throws IOException {
        Path example = format.examples().get(0);
        String name = example.getFileName().toString();
        String sound = Files.readString(example);
        assertThat(sound).contains(right);
        assertThat(isSound(format::read, name, sound)).isTrue();
        assertThat(schema(format).validate(sound, InputFormat.YAML)).isEmpty();
        String wrong = sound.replaceFirst(Pattern.quote(right), mistake);
        assertThat(schema(format).validate(wrong, InputFormat.YAML)).as("the schema").isNotEmpty();
        assertThat(isSound(format::read, name, wrong)).as("the reader").isFalse();
    }
}
