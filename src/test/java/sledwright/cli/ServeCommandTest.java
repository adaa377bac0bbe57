package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import sun.misc.Signal;
import sledwright.samples.Folders;
import sledwright.web.Servers;
import sledwright.web.Wire;
import sledwright.web.api.Inquiry;

class ServeCommandTest {

    /** Options that choose a form or a place of a result, or say where the shop is, which the server knows. */
    private static final Set<String> OF_A_TERMINAL = Set.of("format", "output", "catalog", "colour", "verbose", "help", "internal", "batch", "skip", "book");

    private static final String QUOTE = """
            kind: quote
            name: two of them
            machines: 2
            require: { cores: 10, memory_gb: 64 }
            limit: { price: 1500 }
            """;
    private static final String UPGRADE = """
            kind: upgrade
            build: { platform: WREN-2, processor: H1-08, processors: 1, cooling: WREN-HS-1, supply: RS-750, supply_count: 1, modules: { 1A1: M16, 1B1: M16 } }
            require: { memory_gb: 64 }
            """;

    /** A command, its options and what is piped into it. */
    record Asked(String command, List<String> options, String body) {

        /** The same as the address of a page. */
        String address() {
            List<String> query = new ArrayList<>();
            for (int i = 0; i < options.size(); i++) {
                String key = options.get(i).substring(2);
                boolean alone = i + 1 == options.size() || options.get(i + 1).startsWith("--");
                query.add(alone ? key : key + "=" + URLEncoder.encode(options.get(++i), StandardCharsets.UTF_8));
            }
            return "/api/" + command + "?today=2026-11-18" + query.stream().map("&"::concat).collect(Collectors.joining());
        }

        @Override
        public String toString() {
            return command + " " + String.join(" ", options);
        }
    }

    static Stream<Asked> questions() {
        String build = "kind: build\nplatform: WREN-2\nprocessor: H1-08\nprocessors: 1\ncooling: WREN-HS-1\nsupply: RS-750\nsupply_count: 1\nmodules: { 1A1: M16 }\n";
        String restock = """
                kind: restock
                name: one month
                horizon_months: 1
                budget: 600
                samples: 20
                depreciation: { platforms: 0.02, processors: 0.035, memory: 0.03, cooling: 0.01 }
                supply: [ { sku: M16, supplier: Fen Surplus, unit_cost: 12.25, lead_days: 3, available: 40 } ]
                classes:
                  - { name: plain, demand: { poisson: 2 }, require: { cores: 8, memory_gb: 64 }, limit: { lead_days: 10 }, margin: 60, loss: 5 }
                """;
        return Stream.of(
                new Asked("quote", List.of(), QUOTE),
                new Asked("quote", List.of("--why-not", "H2-16", "--why-not", "M64", "--steps", "--set", "require.cores=8", "--time-limit", "20"), QUOTE),
                new Asked("quote", List.of("--set", "limit.price=3"), QUOTE),
                new Asked("check", List.of(), build),
                new Asked("check", List.of("--set", "processors=2"), build),
                new Asked("compare", List.of("--figure", "cores", "--figure", "memory", "--over", "price", "--years", "4", "--price-per-kwh", "0.30", "--duty", "0.5",
                        "--together", "0.2", "--by-platform", "--platform", "WREN-2"), QUOTE),
                new Asked("order", List.of("--seed", "3"), "kind: order\nlines:\n  a: { machines: 2, require: { cores: 8 } }\n  b: { machines: 1, require: { memory_gb: 64 } }\n"),
                new Asked("upgrade", List.of(), UPGRADE),
                new Asked("upgrade", List.of("--for", "customer"), UPGRADE),
                new Asked("order", List.of("--for", "customer"), "kind: order\nlines:\n  a: { machines: 1, require: { cores: 8 } }\n"),
                new Asked("compare", List.of("--for", "customer", "--figure", "cores"), QUOTE),
                new Asked("quote", List.of("--for", "customer"), QUOTE),
                new Asked("restock", List.of("--levels", "--seed", "7"), restock));
    }

    @ParameterizedTest
    @MethodSource("questions")
    void answersAreThoseOfTheCommandsToTheLastByte(Asked asked) {
        List<String> arguments = new ArrayList<>(List.of(asked.command(), "-", "--catalog", Folders.SHOP.toString(), "--format", "json"));
        arguments.addAll(asked.options());
        arguments.addAll(List.of("--today", "2026-11-18"));
        Run run = Run.piped(asked.body(), arguments.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isIn(ExitCode.DONE, ExitCode.NO_VALID_BUILD);
        Wire.Reply reply = Wire.post(Servers.small().address(), asked.address(), "application/yaml", asked.body());
        assertThat(reply.status()).as(reply.body()).isEqualTo(200);
        assertThat(reply.body()).isEqualTo(run.out());
    }

    @Test
    void everyOptionOfACommandIsAKeyOfItsAddress() {
        PrintWriter nobody = new PrintWriter(OutputStream.nullOutputStream());
        CommandLine commands = Main.commands(new Terminal(null, OutputStream.nullOutputStream(), nobody, Map.of(), () -> Run.TODAY, () -> false), new Boundary(nobody, false));
        for (Inquiry inquiry : Inquiry.ALL) {
            Set<String> options = commands.getSubcommands().get(inquiry.name()).getCommandSpec().options().stream()
                    .map(option -> option.longestName().substring(2)).filter(name -> !OF_A_TERMINAL.contains(name)).collect(Collectors.toCollection(TreeSet::new));
            assertThat(inquiry.keys().stream().map(key -> key.name()).toList()).as(inquiry.name()).containsExactlyInAnyOrderElementsOf(options);
        }
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void theProgramEndsCleanlyWhenTheSystemAsksForIt() throws Exception {
        Process server = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-Xshare:auto",
                "-cp", System.getProperty("java.class.path"), "sledwright.cli.Main", "serve", "--catalog", Folders.SHOP.toString(), "--port", "0").start();
        try (BufferedReader out = new BufferedReader(new InputStreamReader(server.getInputStream(), StandardCharsets.UTF_8))) {
            String ready = out.readLine();
            assertThat(ready).matches("ready http://127\\.0\\.0\\.1:\\d+/");
            URI address = URI.create(ready.substring("ready ".length()));
            assertThat(Wire.get(address, "/api/health").body()).isEqualTo("{\"status\":\"ready\"}\n");
            long asked = System.nanoTime();
            assertThat(Wire.post(address, "/api/quote", "application/yaml", QUOTE).status()).isEqualTo(200);
            assertThat(TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - asked)).as("ms for the first answer").isLessThan(2_000);
            new ProcessBuilder("kill", "-TERM", String.valueOf(server.pid())).start().waitFor();
            assertThat(server.waitFor(10, TimeUnit.SECONDS)).isTrue();
            assertThat(server.exitValue()).isEqualTo(ExitCode.DONE);
            String log = new String(server.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(log.lines()).as("its own question, and two").hasSize(3).allMatch(line -> line.contains(" /api/"));
        } finally {
            server.destroyForcibly();
        }
    }

    @Test
    void controlCEndsIt() throws Exception {
        PipedInputStream seen = new PipedInputStream();
        PipedOutputStream out = new PipedOutputStream(seen);
        CompletableFuture<Run> run = CompletableFuture.supplyAsync(() -> Run.into(out, Map.of(), false, "serve", "--catalog", Folders.SHOP.toString(), "--port", "0"));
        assertThat(new BufferedReader(new InputStreamReader(seen, StandardCharsets.UTF_8)).readLine()).startsWith("ready http://127.0.0.1:");
        Signal.raise(new Signal("INT"));
        assertThat(run.get(10, TimeUnit.SECONDS).code()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void whereNobodyCanListenIsSaid() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Run run = Run.of("serve", "--catalog", Folders.SHOP.toString(), "--port", String.valueOf(taken.getLocalPort()));
            assertThat(run.code()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).contains("sledwright: nothing can listen at 127.0.0.1, port %s (Address already in use).\nMaybe choose another --port, or --port 0 for any that is free."
                    .formatted(taken.getLocalPort()));
        }
    }

    @Test
    void whatCannotBeServedIsRefusedAtOnce() {
        for (String[] wrong : new String[][] {{"--port", "70000", "--port 70000 must be from 0 to 65535."},
            {"--host", "0.0.0.0", "--host 0.0.0.0 can be reached from other machines, and nobody is asked there who they are.\nMaybe name who may come in, with --users FILE; 'sledwright users add' writes such a file."},
            {"--public", "https://offers.example.org", "--public https://offers.example.org says that others reach the server, and nobody is asked who they are.\nMaybe name who may come in"},
            {"--public", "offers.example.org/shop", "--public 'offers.example.org/shop' must be an address such as https://offers.example.org, without a path."},
            {"--users", "src/nowhere.csv", "src/nowhere.csv: there is no such file"},
            {"--catalog", "src", "catalog.yaml"}}) {
            Run run = Run.of("serve", wrong[0], wrong[1]);
            assertThat(run.code()).as(Arrays.toString(wrong)).isIn(ExitCode.USAGE, ExitCode.INPUT_FAULT);
            assertThat(run.err()).contains(wrong[2]);
            assertThat(run.out()).isEmpty();
        }
    }
}
