package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.samples.Folders;

/** The same inputs and seed give the same bytes, run after run, in whatever language and time zone. */
class SamenessTest {

    private static final String SHOP = "catalogs/heronfold-yard";

    /** Languages with other digits, another dotless i, another calendar, decimal commas; zones on both sides of midnight. */
    private record Home(Locale locale, TimeZone zone) {
    }

    private static final List<Home> HOMES = List.of(new Home(Locale.ROOT, TimeZone.getTimeZone("UTC")),
            new Home(Locale.forLanguageTag("ar-SA-u-nu-arab"), TimeZone.getTimeZone("Pacific/Kiritimati")),
            new Home(Locale.forLanguageTag("tr-TR"), TimeZone.getTimeZone("UTC")),
            new Home(Locale.forLanguageTag("th-TH-u-ca-buddhist-nu-thai"), TimeZone.getTimeZone("Pacific/Pago_Pago")));

    static Stream<List<String>> commands() {
        return Stream.of(List.of("quote", "scenarios/render-node.yaml", "--steps", "--why-not", "B1-04"), List.of("quote", "scenarios/too-much-for-the-money.yaml"),
                List.of("check", "scenarios/build-broken.yaml"), List.of("check", "scenarios/build-valid.yaml"), List.of("upgrade", "scenarios/sled-in-place.yaml"),
                List.of("catalog", SHOP), List.of("label", "16GB 2Rx4 PC4-2400T-RA1-11"), List.of("catalog", "export", SHOP, "--as", "memory"),
                List.of("catalog", "import", "docs/examples/palisander-list.csv", "--as", "offers", "--mapping", "docs/examples/palisander-list.yaml", "--into", SHOP),
                List.of("catalog", "diff", SHOP, SHOP, "scenarios/render-node.yaml"), List.of("compare", "scenarios/four-years-of-power.yaml"),
                List.of("sheet", "scenarios/build-valid.yaml"));
    }

    static Stream<List<String>> documents() {
        return Stream.of(List.of("quote", "scenarios/render-node.yaml", "--format", "html"), List.of("quote", "scenarios/render-node.yaml", "--internal", "--format", "pdf"),
                List.of("compare", "scenarios/four-years-of-power.yaml", "--format", "html"), List.of("compare", "scenarios/four-years-of-power.yaml", "--format", "svg"),
                List.of("compare", "scenarios/four-years-of-power.yaml", "--format", "xlsx"), List.of("sheet", "scenarios/build-valid.yaml", "--format", "html"),
                List.of("sheet", "scenarios/build-valid.yaml", "--format", "svg"), List.of("sheet", "scenarios/build-valid.yaml", "--format", "pdf"),
                List.of("catalog", "export", SHOP, "--as", "processors", "--format", "xlsx"));
    }

    @ParameterizedTest
    @MethodSource("commands")
    void textJsonAndCsvAreTheSameEverywhere(List<String> command) {
        for (String format : List.of("text", "json", "csv")) {
            assertSame(Stream.concat(command.stream(), Stream.of("--format", format, "--seed", "7", "--time-limit", "600")).toArray(String[]::new));
        }
    }

    @ParameterizedTest
    @MethodSource("documents")
    void documentsAndWorkbooksAreTheSameEverywhere(List<String> command) {
        assertSame(Stream.concat(command.stream(), Stream.of("--seed", "7", "--time-limit", "600")).toArray(String[]::new));
    }

    @ParameterizedTest
    @ValueSource(strings = {"text", "json", "csv"})
    void ordersAreTheSameEverywhere(String format, @TempDir Path folder) throws IOException {
        Path order = Files.writeString(folder.resolve("order.yaml"), """
                kind: order
                delivery_charge: 10
                lines:
                  web: { machines: 3, platforms: [REED-S], require: { cores: 8, memory_gb: 32 } }
                  data: { machines: 3, platforms: [WREN-2], require: { cores: 16, memory_gb: 64 }, priority: 3 }
                """);
        assertSame("order", order.toString(), "--catalog", Folders.SHOP.toString(), "--format", format, "--seed", "7", "--time-limit", "600");
    }

    @ParameterizedTest
    @ValueSource(strings = {"html", "xlsx", "csv", "text"})
    void plansAreTheSameInEveryForm(String format) {
        assertSame(HOMES.subList(0, 2), "restock", "scenarios/sled-restock.yaml", "--set", "samples=10", "--format", format, "--seed", "7", "--time-limit", "600");
    }

    /** A plan is made by several workers at once. */
    @Test
    void stockPlansAreTheSameEverywhereAndWithAnyNumberOfWorkers() throws InterruptedException, ExecutionException {
        String[] words = {"restock", "scenarios/sled-restock.yaml", "--set", "samples=20", "--levels", "--format", "json", "--seed", "7", "--time-limit", "600"};
        String usual = assertSame(HOMES.subList(0, 2), words);
        for (int workers : new int[] {1, 3}) {
            ForkJoinPool pool = new ForkJoinPool(workers);
            try {
                assertThat(pool.submit(() -> run(words)).get()).as("%d workers", workers).isEqualTo(usual);
            } finally {
                pool.shutdown();
            }
        }
    }

    private static void assertSame(String... words) {
        assertSame(HOMES, words);
    }

    /** @return what is printed everywhere */
    private static String assertSame(List<Home> homes, String... words) {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        String first = null;
        try {
            for (Home home : homes) {
                Locale.setDefault(home.locale());
                TimeZone.setDefault(home.zone());
                String now = run(words);
                first = first == null ? now : first;
                assertThat(now).as("%s in %s", String.join(" ", words), home).isEqualTo(first);
            }
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
        return first;
    }

    private static String run(String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = Run.into(out, Map.of(), false, words);
        assertThat(run.code()).as(run.err()).isNotEqualTo(ExitCode.DEFECT);
        assertThat(out.size() + run.err().length()).isPositive();
        // Progress shows seconds, which differ in every run.
        return HexFormat.of().formatHex(out.toByteArray()) + run.err().replaceAll("(?m)^sledwright: \\d+(\\.\\d+)? s: .*\\R", "");
    }
}
