package sledwright.request;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogSource;
import sledwright.input.FaultsException;
import sledwright.input.Source;

/**
 * Each folder of {@code faults} is a case: files that replace those of the sound shop (an empty file with the ending
 * {@code .gone} takes one away), perhaps a request with overrides, and the faults to be printed, all of them.
 */
class FaultCasesTest {

    private static final Path SHOP = Path.of("src/test/resources/shop");
    private static final Path CASES = Path.of("src/test/resources/faults");
    private static final String GONE = ".gone";

    static Stream<Path> cases() throws IOException {
        try (Stream<Path> folders = Files.list(CASES)) {
            return folders.sorted().toList().stream();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void everyFaultIsNamed(Path folder, @TempDir Path work) throws IOException {
        copy(SHOP, work.resolve("shop"));
        copy(folder, work);
        Path request = work.resolve("request.yaml");
        Path sets = folder.resolve("sets.txt");
        List<String> overrides = Files.exists(sets) ? Files.readAllLines(sets) : List.of();
        FaultsException thrown = catchThrowableOfType(FaultsException.class, () -> {
            if (Files.exists(request)) {
                RequestReader.read(Source.of(request), overrides, Optional.of(CatalogSource.of(work.resolve("shop"))), List.of(Kind.values()));
            } else {
                CatalogReader.read(work.resolve("shop"));
            }
        });
        List<String> printed = thrown == null ? List.of()
                : thrown.faults().stream().map(fault -> fault.toString().replace(work + "/", "")).toList();
        assertThat(printed).isNotEmpty().containsExactlyElementsOf(Files.readAllLines(folder.resolve("expected.txt")));
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            files.filter(Files::isRegularFile).forEach(file -> place(file, to.resolve(from.relativize(file).toString())));
        }
    }

    private static void place(Path file, Path target) {
        try {
            Files.createDirectories(target.getParent());
            if (target.toString().endsWith(GONE)) {
                Files.delete(target.resolveSibling(target.getFileName().toString().replace(GONE, "")));
            } else {
                Files.copy(file, target, StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
