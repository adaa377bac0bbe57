package sledwright.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;

/** One run of the command line and what came of it. */
record Run(int code, String out, String err) {

    /** The day on which the demo's prices are of, so that what is shown stays as it is. */
    static final LocalDate TODAY = LocalDate.of(2026, 11, 16);

    static Run of(String... arguments) {
        return of(Map.of(), false, arguments);
    }

    /**
     * @param environment the process's variables
     * @param interactive whether standard output is a terminal
     */
    static Run of(Map<String, String> environment, boolean interactive, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = into(out, environment, interactive, arguments);
        return new Run(run.code(), out.toString(StandardCharsets.UTF_8), run.err());
    }

    /** A run whose results go to a stream of the caller's. */
    static Run into(OutputStream out, Map<String, String> environment, boolean interactive, String... arguments) {
        return into(out, new byte[0], environment, interactive, arguments);
    }

    /** A command about the book that anna keeps in a folder, on a day. */
    static Run onBook(Path folder, String day, String... words) {
        return of(anna(folder), false, Stream.of(Stream.of("book"), Arrays.stream(words), Stream.of("--today", day)).flatMap(some -> some)
                .toArray(String[]::new));
    }

    /** Who she is, and where her book is. */
    static Map<String, String> anna(Path folder) {
        return Map.of("XDG_DATA_HOME", folder.resolve("data").toString(), "USER", "anna");
    }

    /** A run into which something is piped. */
    static Run piped(String in, String... arguments) {
        return piped(in.getBytes(StandardCharsets.UTF_8), arguments);
    }

    static Run piped(byte[] in, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = into(out, in, Map.of(), false, arguments);
        return new Run(run.code(), out.toString(StandardCharsets.UTF_8), run.err());
    }

    private static Run into(OutputStream out, byte[] in, Map<String, String> environment, boolean interactive, String... arguments) {
        StringWriter err = new StringWriter();
        int code = Main.run(new Terminal(new ByteArrayInputStream(in), out, new PrintWriter(err, true), environment, () -> TODAY, () -> interactive), arguments);
        return new Run(code, "", err.toString());
    }
}
