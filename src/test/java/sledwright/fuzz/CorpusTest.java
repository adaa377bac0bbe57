package sledwright.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every kept input is read or refused with faults. */
class CorpusTest {

    @TestFactory
    Stream<DynamicTest> everyKeptInputIsReadOrRefused() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (Target target : Target.values()) {
            assertThat(target.inputs()).as("inputs of " + target).isNotEmpty();
            target.inputs().forEach(input -> tests.add(replay(target.name(), input, target::read)));
        }
        Target.found().forEach(input -> tests.add(replay("found", input, Target::readChosen)));
        return tests.stream();
    }

    private static DynamicTest replay(String from, Path input, Consumer<byte[]> reader) {
        return DynamicTest.dynamicTest(from + " " + input.getFileName(), () -> reader.accept(Files.readAllBytes(input)));
    }
}
