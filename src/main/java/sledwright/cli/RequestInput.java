package sledwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.input.Reason;
import sledwright.input.Source;
import sledwright.input.YamlReader;

/** What a command is asked about: a file, what is piped in, or what its options say alone. */
final class RequestInput {

    /** What FILE is for. */
    static final String FILE = " -: standard input. May be left out where --catalog and --set say all.";

    private static final String PIPE = "-";
    private static final String PIPED = "standard input";

    private RequestInput() {
    }

    /**
     * @param file     as the user named it; null: not at all
     * @param kind     what the request is where there is no file to say so
     * @param sets     what is said of it beside a file
     * @param catalog  the catalogue that is named beside a file
     * @return empty when nothing says what is asked
     */
    static Optional<Source> of(Path file, String kind, List<String> sets, Optional<Path> catalog, Terminal terminal) {
        if (file == null) {
            return sets.isEmpty() || catalog.isEmpty() ? Optional.empty() : Optional.of(Source.unwritten("arguments", "kind: " + kind));
        }
        return Optional.of(file.toString().equals(PIPE) ? piped(terminal) : Source.of(file));
    }

    /** Whether the number of a quote in the book is named in the place of a file. */
    static boolean isOfBook(Path file) {
        return file != null && file.toString().matches("[0-9]{4}-[0-9]{4,9}") && !Files.exists(file);
    }

    private static Source piped(Terminal terminal) {
        try {
            return Source.of(PIPED, terminal.in().readNBytes(YamlReader.MOST_MEGABYTES * 1_000_000 + 1));
        } catch (IOException unreadable) {
            throw new FaultsException(List.of(new Fault(PIPED, 0, "cannot be read (%s)".formatted(Reason.of(unreadable)))));
        }
    }
}
