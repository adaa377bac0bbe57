package sledwright.report;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The published schemas of results. */
public final class Schemas {

    private static final Path FOLDER = Path.of("docs/schemas");
    private static final String HOME = "https://sledwright.invalid/";
    private static final SchemaRegistry REGISTRY = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12,
            builder -> builder.schemas(all()));

    private Schemas() {
    }

    /** Where a document breaks the schema of that name; empty: nowhere. */
    public static List<String> faults(String schema, String json) {
        return REGISTRY.getSchema(SchemaLocation.of(HOME + schema + ".schema.json")).validate(json, InputFormat.JSON).stream()
                .map(Error::toString).toList();
    }

    private static Map<String, String> all() {
        Map<String, String> schemas = new HashMap<>();
        try (Stream<Path> files = Files.list(FOLDER)) {
            for (Path file : files.toList()) {
                schemas.put(HOME + file.getFileName(), Files.readString(file));
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return schemas;
    }
}
