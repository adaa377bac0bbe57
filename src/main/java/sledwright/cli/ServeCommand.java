package sledwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.input.Reason;
import sledwright.web.WebServer;
import sledwright.web.WebSettings;
import sledwright.web.shop.BookShelf;

/** {@code serve}: the page and its API. */
@Command(
        name = "serve",
        addMethodSubcommands = false,
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

    @Option(names = "--book", paramLabel = "PLACE",
            description = "The book of quotes: a file, or an address that begins with jdbc:postgresql:. Default: sledwright-book.db"
                    + " among your own data; a file is made by the first quote that is kept.")
    private String book;

    @Option(names = "--port", paramLabel = "PORT", defaultValue = "8080",
            description = "Listen at this port; 0: any that is free. Default: ${DEFAULT-VALUE}.")
    private int port;

    @Option(names = "--host", paramLabel = "ADDRESS", defaultValue = "127.0.0.1",
            description = "Listen at this address of the machine; any but 127.0.0.1, localhost and ::1 needs --users. Default:"
                    + " ${DEFAULT-VALUE}.")
    private String host;

    @Option(names = "--users", paramLabel = "FILE",
            description = "Ask who comes in: the users of this file, which 'sledwright users' writes.")
    private Path users;

    @Option(names = "--public", paramLabel = "ADDRESS",
            description = "The address by which browsers reach the server, such as https://offers.example.org, where that is another.")
    private String known;

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
        WebSettings.Place place = place();
        BookShelf shelf = BookOpening.shelf(book, terminal);
        WebSettings settings = new WebSettings(folder(), shelf, place, Optional.ofNullable(users), WebSettings.Bounds.ofThisMachine(),
                terminal.err()::println, this::tellDefect);
        try (shelf; Ending ending = Ending.listen(); WebServer server = WebServer.start(settings)) {
            PrintWriter out = new PrintWriter(terminal.out(), false, StandardCharsets.UTF_8);
            out.print("ready " + server.address() + "\n");
            out.flush();
            if (users != null && !place.isLoopback() && !place.isSecure()) {
                terminal.err().println("passwords come unencrypted over the network; maybe put a server with TLS before this one, and say"
                        + " --public https://...");
            }
            ending.await();
            return ExitCode.DONE;
        } catch (IOException taken) {
            throw new UsageException(
                    "nothing can listen at %s, port %s (%s).\nMaybe choose another --port, or --port 0 for any that is free."
                    .formatted(host, port, Reason.of(taken.getCause() instanceof IOException why ? why : taken)));
        }
    }

    private WebSettings.Place place() {
        if (port < 0 || port > HIGHEST_PORT) {
            throw new UsageException("--port %s must be from 0 to %s.".formatted(port, HIGHEST_PORT));
        }
        WebSettings.Place place = new WebSettings.Place(host, port, Optional.ofNullable(known).map(ServeCommand::address));
        if (!place.isLoopback() && users == null) {
            throw new UsageException("--host %s can be reached from other machines, and nobody is asked there who they are.\n"
                    .formatted(host) + "Maybe name who may come in, with --users FILE; 'sledwright users add' writes such a file.");
        }
        if (place.isEverywhere() && known == null) {
            throw new UsageException("--host %s is every address of this machine, and none of them is a name of the server.\n"
                    .formatted(host) + "Maybe say with --public by which address browsers reach it.");
        }
        if (known != null && users == null) {
            throw new UsageException("--public %s says that others reach the server, and nobody is asked who they are.\n".formatted(known)
                    + "Maybe name who may come in, with --users FILE; 'sledwright users add' writes such a file.");
        }
        return place;
    }

    private static URI address(String given) {
        try {
            URI address = new URI(given);
            boolean web = "https".equals(address.getScheme()) || "http".equals(address.getScheme());
            if (web && address.getHost() != null && List.of("", "/").contains(address.getPath()) && address.getUserInfo() == null
                    && address.getQuery() == null && address.getFragment() == null) {
                return address;
            }
        } catch (URISyntaxException none) {
            // Said below.
        }
        throw new UsageException("--public '%s' must be an address such as https://offers.example.org, without a path.".formatted(given));
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
