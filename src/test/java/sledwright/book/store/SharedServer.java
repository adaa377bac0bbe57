package sledwright.book.store;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** A PostgreSQL of the tests' own: on a port that was free, in a folder that goes with it, started at the first need. */
public final class SharedServer {

    private static final Path DEBIAN = Path.of("/usr/lib/postgresql");
    private static final int PATIENCE_S = 30;
    private static final AtomicInteger DATABASES = new AtomicInteger();

    private final Path folder;
    private final int port;
    private final Process server;

    /** The one of this process. */
    private static final class One {
        static final SharedServer SERVER = start();
    }

    private SharedServer(Path folder, int port, Process server) {
        this.folder = folder;
        this.port = port;
        this.server = server;
    }

    static boolean isInstalled() {
        return program("initdb").isPresent() && program("postgres").isPresent();
    }

    /** A database in which nothing is yet. */
    public static BookPlace fresh() {
        String name = "book_" + DATABASES.incrementAndGet();
        try (Connection connection = DriverManager.getConnection(One.SERVER.address("postgres")); Statement statement = connection.createStatement()) {
            statement.execute("CREATE DATABASE " + name);
        } catch (SQLException failed) {
            throw new IllegalStateException(failed);
        }
        return BookPlace.named(One.SERVER.address(name)).orElseThrow();
    }

    private String address(String database) {
        return "jdbc:postgresql://127.0.0.1:%s/%s?user=shop".formatted(port, database);
    }

    private static Optional<Path> program(String name) {
        Stream<Path> path = Arrays.stream(System.getenv("PATH").split(File.pathSeparator)).map(Path::of);
        try (Stream<Path> versions = Files.isDirectory(DEBIAN) ? Files.list(DEBIAN) : Stream.of()) {
            return Stream.concat(path, versions.sorted(Comparator.reverseOrder()).map(version -> version.resolve("bin")))
                    .map(folder -> folder.resolve(name)).filter(Files::isExecutable).findFirst();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static SharedServer start() {
        try {
            Path folder = Files.createTempDirectory("postgres");
            boolean root = "root".equals(System.getProperty("user.name"));
            if (root) {
                // It does not run as root, who would stand above its own rules.
                run(List.of("chown", "postgres", folder.toString()));
            }
            Path data = folder.resolve("data");
            run(as(root, program("initdb").orElseThrow().toString(), "-D", data.toString(), "-A", "trust", "-U", "shop", "-E", "UTF8",
                    "--locale=C", "--no-sync"));
            int port = free();
            ProcessBuilder builder = new ProcessBuilder(as(root, program("postgres").orElseThrow().toString(), "-D", data.toString(), "-p",
                    String.valueOf(port), "-k", folder.toString(), "-c", "listen_addresses=127.0.0.1", "-c", "fsync=off"));
            builder.redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).directory(new File("/"));
            SharedServer server = new SharedServer(folder, port, builder.start());
            Runtime.getRuntime().addShutdownHook(new Thread(server::stop));
            server.await();
            return server;
        } catch (IOException unstarted) {
            throw new UncheckedIOException(unstarted);
        }
    }

    private static List<String> as(boolean root, String... words) {
        List<String> command = new ArrayList<>(root ? List.of("setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups") : List.of());
        command.addAll(List.of(words));
        return command;
    }

    private static int free() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private static void run(List<String> command) throws IOException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).directory(new File("/")).start();
        String said = new String(process.getInputStream().readAllBytes());
        try {
            if (process.waitFor() != 0) {
                throw new IllegalStateException(command + ": " + said);
            }
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }

    private void await() {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        while (true) {
            try {
                DriverManager.getConnection(address("postgres")).close();
                return;
            } catch (SQLException notYet) {
                if (System.nanoTime() > end || !server.isAlive()) {
                    throw new IllegalStateException(notYet);
                }
            }
            try {
                Thread.sleep(50);
            } catch (InterruptedException stopped) {
                throw new IllegalStateException(stopped);
            }
        }
    }

    private void stop() {
        server.destroy();
        try {
            if (!server.waitFor(PATIENCE_S, TimeUnit.SECONDS)) {
                server.destroyForcibly();
            }
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.deleteIfExists(file);
                }
            }
        } catch (IOException | InterruptedException left) {
            // The system clears its folder of temporary files.
        }
    }
}
