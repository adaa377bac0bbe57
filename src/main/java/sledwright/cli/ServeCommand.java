package sledwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.input.Reason;
import sledwright.web.WebServer;
import sledwright.web.WebSettings;

/** {@code serve}: the page and its API. */
@Command(
        name = "serve",
        sortOptions = false,
        description = "Serves the page and the API until Ctrl-C. Prints 'ready' and the address as soon as questions are answered. The"
                + " catalogue is read again when its files change.",
        footer = {
            "",
            "Examples:",
            "  sledwright serve --catalog catalogs/heronfold-yard",
            "  sledwright serve --catalog catalogs/heronfold-yard --port 0"})
final class ServeCommand implements Callable<Integer> {

    private static final int HIGHEST_PORT = 65_535;

    private final Terminal terminal;

    @Option(names = "--catalog", paramLabel = "DIR",
            description = "The shop's folder. May be left out where there is only one: this folder, or one in a folder 'catalogs'.")
    private Path catalog;

    @Option(names = "--port", paramLabel = "PORT", defaultValue = "8080",
            description = "Listen at this port; 0: any that is free. Default: ${DEFAULT-VALUE}.")
    private int port;

    @Option(names = "--host", paramLabel = "ADDRESS", defaultValue = "127.0.0.1",
            description = "Listen at this address of the machine: 127.0.0.1, localhost or ::1. Default: ${DEFAULT-VALUE}.")
    private String host;

    // Read from the bare arguments, since it must count where they cannot be parsed, too.
    @Option(names = "--verbose", description = "Show where in the program a failure happened.")
    private boolean verbose;

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "Show this help.")
    private boolean help;

    ServeCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        requireAddress();
        WebSettings settings = new WebSettings(folder(), host, port, WebSettings.Bounds.ofThisMachine(), terminal.err()::println,
                this::tellDefect);
        try (Ending ending = Ending.listen(); WebServer server = WebServer.start(settings)) {
            PrintWriter out = new PrintWriter(terminal.out(), false, StandardCharsets.UTF_8);
            out.print("ready " + server.address() + "\n");
            out.flush();
            ending.await();
            return ExitCode.DONE;
        } catch (IOException taken) {
            throw new UsageException(
                    "nothing can listen at %s, port %s (%s).\nMaybe choose another --port, or --port 0 for any that is free."
                    .formatted(host, port, Reason.of(taken.getCause() instanceof IOException why ? why : taken)));
        }
    }

    private void requireAddress() {
        if (port < 0 || port > HIGHEST_PORT) {
            throw new UsageException("--port %s must be from 0 to %s.".formatted(port, HIGHEST_PORT));
        }
        if (!WebServer.LOOPBACK.contains(host)) {
            throw new UsageException("--host %s can be reached from other machines, and nobody is asked there who they are.\n"
                    .formatted(host) + "Maybe leave it out, and put a server before it that asks for a password.");
        }
    }

    private void tellDefect(Throwable defect) {
        terminal.err().println("sledwright: this is a defect of the program: " + defect);
        if (verbose) {
            defect.printStackTrace(terminal.err());
        }
    }

    private Path folder() {
        if (catalog != null) {
            return catalog;
        }
        if (isShop(Path.of(""))) {
            return Path.of("");
        }
        List<Path> shops = shops(Path.of("catalogs"));
        if (shops.size() != 1) {
            throw new UsageException("name the catalogue's folder, such as catalogs/heronfold-yard");
        }
        return shops.get(0);
    }

    private static boolean isShop(Path folder) {
        return Files.isRegularFile(folder.resolve("catalog.yaml"));
    }

    private static List<Path> shops(Path folder) {
        try (Stream<Path> folders = Files.list(folder)) {
            return folders.filter(ServeCommand::isShop).sorted().toList();
        } catch (IOException none) {
            return List.of();
        }
    }
}
