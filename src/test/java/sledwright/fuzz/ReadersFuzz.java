package sledwright.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Searches, guided by coverage, for bytes that break a reader; the first of them says which. Not part of a normal run, since the search rewrites
 * every class that is loaded; {@link CorpusTest} replays its inputs there. DEVELOPERS.md has the command. What is found is written beside the inputs.
 */
final class ReadersFuzz {

    @MethodSource("kept")
    @FuzzTest(maxDuration = "30s")
    void bytes(byte[] bytes) {
        Target.readChosen(bytes);
    }

    static List<byte[]> kept() throws IOException {
        List<byte[]> inputs = new ArrayList<>();
        for (Target target : Target.values()) {
            inputs.addAll(target.chosenInputs());
        }
        return inputs;
    }
}
