package sledwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.QuoteFile;
import sledwright.request.RequestReader;
import sledwright.samples.RequestFiles;

/** The quotes among the demo's scenarios. */
final class DemoQuotes {

    private static final Path SCENARIOS = Path.of("scenarios");

    private DemoQuotes() {
    }

    /** Their files, by name. */
    static List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(SCENARIOS)) {
            return files.filter(file -> file.toString().endsWith(".yaml")).sorted()
                    .filter(file -> RequestFiles.open(file) instanceof QuoteFile).toList();
        }
    }

    /** @param sets changes to the request, as {@code --set} has them */
    static Job.Quote read(Path file, List<String> sets) {
        return (Job.Quote) RequestReader.read(Source.of(file), sets, Optional.empty(), Set.of(Kind.QUOTE));
    }
}
