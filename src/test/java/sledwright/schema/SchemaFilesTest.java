package sledwright.schema;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The published schemas are those that the readers make today; {@code -Dsledwright.refreshSchemas=true} writes them again. */
class SchemaFilesTest {

    private static final Path SCHEMAS = Path.of("docs/schemas");

    @ParameterizedTest
    @EnumSource(Format.class)
    void theFileIsWhatTheReaderMakes(Format format, @TempDir Path work) throws IOException {
        String made = SchemaGenerator.text(SchemaGenerator.schema(format, work));
        if (Boolean.getBoolean("sledwright.refreshSchemas")) {
            Files.writeString(SCHEMAS.resolve(format.file()), made);
        }
        for (Path example : format.examples()) {
            assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(made)
                    .validate(Files.readString(example), InputFormat.YAML)).as(example.toString()).isEmpty();
        }
        assertThat(made).isEqualTo(Files.readString(SCHEMAS.resolve(format.file())));
    }
}
