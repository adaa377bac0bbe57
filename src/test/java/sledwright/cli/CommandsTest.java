package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sun.misc.Signal;
import sledwright.report.Schemas;

class CommandsTest {

    private static final String VALID = "scenarios/build-valid.yaml";
    private static final String BROKEN = "scenarios/build-broken.yaml";
    private static final String SHOP = "catalogs/heronfold-yard";

    @Test
    void aValidBuildEndsWithZero() {
        Run run = Run.of("check", VALID);
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).startsWith("build-valid\nvalid: every rule holds\n");
    }

    @Test
    void anInvalidBuildEndsWithFourAndItsResult() {
        Run run = Run.of("check", BROKEN, "--format", "json");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.err()).isEmpty();
        assertThat(Schemas.faults("check-result", run.out())).isEmpty();
        assertThat(run.out()).contains("\"valid\": false", "\"rule\": \"rank-limit\"", "\"rule\": \"blocked-slot\"");
    }

    @Test
    void aChangeOfTheFileIsJudged() {
        Run run = Run.of("check", VALID, "--set", "limit.inlet_c=31", "--set", "limit.price=1");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.out()).contains("inlet-limit", "budget");
    }

    @Test
    void aCatalogueIsCounted() {
        Run run = Run.of("catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).startsWith("Heronfold Yard").containsPattern("\nplatforms +\\d+\nsled enclosures +\\d+\n");
        assertThat(Run.of("catalog", "--catalog", SHOP)).isEqualTo(run);
        assertThat(Schemas.faults("catalog-result", Run.of("catalog", SHOP, "--format", "json").out())).isEmpty();
    }

    @Test
    void aCatalogueIsNamedOnce() {
        assertThat(Run.of("catalog").code()).isEqualTo(ExitCode.USAGE);
        assertThat(Run.of("catalog", SHOP, "--catalog", SHOP).code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void everyFaultOfAFileIsListedAndNothingElse(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("bad.yaml"), """
                kind: build
                platform: FINCH-S5
                processor: S2-18X
                processors: two
                cooling: FINCH-S4-HS86
                modules: { 1A1: NOTHING }
                """);
        Run run = Run.of("check", file.toString(), "--catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSizeGreaterThanOrEqualTo(3)
                .allSatisfy(line -> assertThat(line).startsWith(file + ":").matches(".*:[0-9]+: .+"));
        List<Integer> lines = run.err().lines().map(line -> Integer.valueOf(line.substring(file.toString().length() + 1).split(":")[0])).toList();
        assertThat(lines).isSorted();
        assertThat(run.err()).doesNotContain("\tat ");
    }

    @Test
    void aFileOfAnotherKindIsAFault() {
        Run run = Run.of("check", "scenarios/render-node.yaml");
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).startsWith("scenarios/render-node.yaml:").contains("build");
    }

    @Test
    void aMissingFileIsAFault() {
        Run run = Run.of("quote", "scenarios/nowhere.yaml");
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).startsWith("scenarios/nowhere.yaml: ");
        assertThat(run.out()).isEmpty();
    }

    /** A command that no document shows is not found. */
    @Test
    void everyCommandStandsInTheReadmeAndHasItsKeysDescribed() throws IOException {
        String names = Run.of().err().lines().filter(line -> line.contains("it is one of ")).findFirst().orElseThrow()
                .replaceAll(".*it is one of ", "");
        String readme = Files.readString(Path.of("README.md"));
        String keys = Files.readString(Path.of("docs/json.md"));
        assertThat(names.split(", ")).hasSizeGreaterThan(8).allSatisfy(name -> {
            assertThat(readme).contains("| `sledwright " + name + " ");
            // The server answers with the JSON of the other commands, and users have none.
            assertThat(Set.of("serve", "users").contains(name) || keys.contains("## `" + name + "`\n")).as(name).isTrue();
        });
    }

    @Test
    void aCommandNearlyRightIsSuggested() {
        Run run = Run.of("quot", "x.yaml");
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).contains("Did you mean: sledwright quote?").contains("Try 'sledwright --help'.");
        assertThat(run.out()).isEmpty();
    }

    @Test
    void noCommandIsWrong() {
        Run run = Run.of();
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).startsWith("sledwright: a command is missing; it is one of quote, check, catalog, label, ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"check", "check|a|b", "check|a|--fromat|json", "check|a|--format|xml", "check|a|--time-limit|0",
        "check|a|--time-limit|soon", "check|a|--time-limit|NaN", "check|a|--seed|x", "check|a|--colour|red", "quote", "quote|a|--set",
        "catalog|--verbos"})
    void wrongArgumentsEndWithTwo(String arguments) {
        Run run = Run.of(arguments.split("\\|"));
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).startsWith("sledwright").contains("Try 'sledwright").doesNotContain("\tat ");
        assertThat(run.out()).isEmpty();
    }

    @Test
    void wrongWordsNameTheRightOnes() {
        assertThat(Run.of("check", "a", "--format", "xml").err()).contains("'xml' must be one of text, json, csv, html, pdf, svg, xlsx");
        assertThat(Run.of("check", "a", "--time-limit", "-1").err()).contains("'-1' must be a number of seconds above 0");
        assertThat(Run.of("check", VALID, "--format", "JSON").code()).isEqualTo(ExitCode.DONE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"html", "pdf", "svg", "xlsx"})
    void formatsThatACommandDoesNotWriteAreRefusedBeforeAnyWork(String format) {
        Run run = Run.of("check", "nowhere.yaml", "--format", format);
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).contains("--format " + format + " is not written by this command.", "Maybe take one of text, json, csv.");
    }

    @Test
    void aPartThatNobodyKnowsIsNoQuestion() {
        Run run = Run.of("quote", "scenarios/render-node.yaml", "--why-not", "NV4R32-24-24X");
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).contains("--why-not NV4R32-24-24X is no part of the catalogue, did you mean NV4R32-24-24?");
        Run housed = Run.of("quote", "scenarios/render-node.yaml", "--why-not", "FINCH-PS-1400");
        assertThat(housed.code()).isEqualTo(ExitCode.DONE);
        assertThat(housed.out()).contains("FINCH-PS-1400");
    }

    @Test
    void verboseShowsWhere() {
        assertThat(Run.of("check", "nowhere.yaml", "--verbose").err()).contains("nowhere.yaml: ", "\tat sledwright.");
    }

    @Test
    void aDefectIsCalledOne() {
        OutputStream broken = new OutputStream() {
            @Override
            public void write(int one) {
                throw new IllegalStateException("the sky fell");
            }
        };
        Run run = Run.into(broken, Map.of(), false, "catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.DEFECT);
        assertThat(run.err()).isEqualToNormalizingNewlines("sledwright: this is a defect of the program: java.lang.IllegalStateException: the sky fell\n"
                + "Maybe run it again with --verbose and report what it shows.\n");
    }

    @Test
    void memoryThatIsFullIsSaid() {
        OutputStream greedy = new OutputStream() {
            @Override
            public void write(int one) {
                throw new OutOfMemoryError("Java heap space");
            }
        };
        Run run = Run.into(greedy, Map.of(), false, "catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.DEFECT);
        assertThat(run.err()).isEqualToNormalizingNewlines("sledwright: the memory that Java may use is full.\nMaybe allow more: SLEDWRIGHT_JAVA_OPTIONS=-Xmx4g\n");
    }

    @Test
    void anInterruptAsksForTheBestFound() throws InterruptedException {
        StringWriter err = new StringWriter();
        try (Interrupt interrupt = Interrupt.listen(new PrintWriter(err, true))) {
            Signal.raise(new Signal("INT"));
            for (int wait = 0; wait < 500 && err.toString().isEmpty(); wait++) {
                Thread.sleep(10);
            }
            assertThat(interrupt.isAsked()).isTrue();
        }
        assertThat(err.toString()).isEqualToNormalizingNewlines("sledwright: stopping with the best found; press Ctrl-C again to end at once\n");
    }

    @Test
    void aFullStandardOutputIsNoSuccess() {
        OutputStream full = new OutputStream() {
            @Override
            public void write(int one) throws IOException {
                throw new IOException("No space left on device");
            }
        };
        Run run = Run.into(full, Map.of(), false, "catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).contains("could not be written to standard output (No space left on device)");
    }

    @Test
    void colourIsForTerminals() {
        assertThat(Run.of(Map.of(), true, "catalog", SHOP).out()).contains("\u001b[");
        assertThat(Run.of(Map.of(), false, "catalog", SHOP).out()).doesNotContain("\u001b[");
        assertThat(Run.of(Map.of("NO_COLOR", "1"), true, "catalog", SHOP).out()).doesNotContain("\u001b[");
        assertThat(Run.of(Map.of("NO_COLOR", ""), true, "catalog", SHOP).out()).contains("\u001b[");
        assertThat(Run.of(Map.of("TERM", "dumb"), true, "catalog", SHOP).out()).doesNotContain("\u001b[");
        assertThat(Run.of(Map.of("NO_COLOR", "1"), false, "catalog", SHOP, "--colour", "always").out()).contains("\u001b[");
        assertThat(Run.of(Map.of(), true, "catalog", SHOP, "--colour", "never").out()).doesNotContain("\u001b[");
        assertThat(Run.of(Map.of(), true, "catalog", SHOP, "--format", "json").out()).doesNotContain("\u001b[");
    }

    @Test
    void theWidthComesFromTheTerminal() {
        assertThat(Run.of("check", VALID).out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        assertThat(Run.of(Map.of("COLUMNS", "200"), true, "check", VALID, "--colour", "never").out().lines())
                .anySatisfy(line -> assertThat(line.length()).isBetween(81, 200));
        assertThat(Run.of(Map.of("COLUMNS", "many"), true, "check", VALID, "--colour", "never")).isEqualTo(Run.of("check", VALID));
    }

    @Test
    void theVersionIsTold() {
        Run run = Run.of("--version");
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).startsWith("sledwright (not from a jar)");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "quote", "check", "catalog", "upgrade", "sheet", "order"})
    void helpIsCompleteAndItsExamplesAreReal(String command) {
        Run run = command.isEmpty() ? Run.of("--help") : Run.of(command, "--help");
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.err()).isEmpty();
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        List<String> examples = run.out().lines().filter(line -> line.startsWith("  sledwright " + command)).toList();
        assertThat(examples).hasSizeGreaterThanOrEqualTo(2);
        Matcher paths = Pattern.compile("(scenarios|catalogs)/[a-z0-9./-]+").matcher(String.join("\n", examples));
        while (paths.find()) {
            assertThat(Path.of(paths.group())).exists();
        }
        if (!command.isEmpty()) {
            assertThat(run.out()).contains("--format", "--output", "--catalog", "--seed", "--time-limit", "--colour", "--verbose", "--help");
        }
    }

    @Test
    void helpOfQuoteNamesItsOwnOptions() {
        assertThat(Run.of("quote", "--help").out()).contains("--set=KEY=VALUE", "--why-not=SKU", "Repeatable");
    }
}
