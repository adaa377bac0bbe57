package sledwright.request;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Catalog;
import sledwright.input.Source;

/** Every catalogue and every scenario that is shipped can be read. */
class ShippedFilesTest {

    static Stream<Path> catalogues() throws IOException {
        return in(Path.of("catalogs"));
    }

    static Stream<Path> scenarios() throws IOException {
        return in(Path.of("scenarios"));
    }

    private static Stream<Path> in(Path folder) throws IOException {
        try (Stream<Path> found = Files.list(folder)) {
            return found.filter(file -> !file.toString().endsWith(".csv")).sorted().toList().stream();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("catalogues")
    void catalogue(Path folder) {
        Catalog catalog = CatalogReader.read(folder);
        assertThat(catalog.platforms()).isNotEmpty();
        assertThat(catalog.processors()).isNotEmpty();
        assertThat(catalog.modules()).isNotEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("scenarios")
    void scenario(Path file) {
        assertThat(RequestReader.read(Source.of(file), List.of(), Optional.empty(), List.of(Kind.values())).name()).isNotEmpty();
    }
}
