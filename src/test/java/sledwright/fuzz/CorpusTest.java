package sledwright.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every kept input is read or refused with faults. */
class CorpusTest {

    @TestFactory
    Stream<DynamicTest> everyKeptInputIsReadOrRefused() throws IOException {
        Stream<DynamicTest> tests = Stream.empty();
        for (Target target : Target.values()) {
            try (Stream<Path> files = Files.list(target.inputs())) {
                List<Path> inputs = files.sorted().toList();
                assertThat(inputs).as("inputs of " + target).isNotEmpty();
                tests = Stream.concat(tests, inputs.stream()
                        .map(input -> DynamicTest.dynamicTest(target + " " + input.getFileName(), () -> target.read(Files.readAllBytes(input)))));
            }
        }
        return tests;
    }

    /** A reader without a search would only seem to be searched. */
    @Test
    void everyReaderIsSearched() {
        assertThat(Arrays.stream(ReadersFuzz.class.getDeclaredClasses()).filter(ReadersFuzz.Search.class::isAssignableFrom)
                .filter(search -> !Modifier.isAbstract(search.getModifiers())).map(Class::getSimpleName))
                .containsExactlyInAnyOrderElementsOf(Arrays.stream(Target.values()).map(Target::search).toList());
    }
}
