package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.api.Test;

/** What is asked need not stand in a file. */
class PipedRequestTest {

    private static final String SHOP = "catalogs/heronfold-yard";

    private static String named(String kind, String file) throws IOException {
        return Files.readString(Path.of("scenarios", file + ".yaml")).replaceFirst("(?m)^name: .*\n", "") + "\nname: " + file + "\n";
    }

    @ParameterizedTest
    @CsvSource({"quote, render-node", "compare, small-web-node", "check, build-valid", "upgrade, sled-in-place", "order, short-order"})
    void whatIsPipedInIsAnsweredLikeAFile(String command, String file) throws IOException {
        Run run = Run.piped(named(command, file), command, "-", "--catalog", SHOP, "--format", "json");
        Run ofFile = Run.of(command, "scenarios/" + file + ".yaml", "--set", "name=" + file, "--format", "json");
        assertThat(run.out()).isNotEmpty().isEqualTo(ofFile.out());
        assertThat(run.code()).isEqualTo(ofFile.code());
    }

    @Test
    void whatIsPipedInCanNameNoCatalogue() {
        Run run = Run.piped("kind: quote\ncatalog: ../" + SHOP + "\n", "quote", "-");
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).isEqualTo("standard input:2: catalog \"../catalogs/heronfold-yard\": a folder is found from the file that names it,"
                + " and standard input is none; give --catalog FOLDER instead\n");
        assertThat(run.out()).isEmpty();
    }

    @Test
    void whatIsPipedInCanNameNoTable() {
        Run run = Run.piped("kind: restock\nhorizon_months: 1\nsupply: supply.csv\nclasses: [{name: web, demand: {poisson: 2}, margin: 60}]\n",
                "restock", "-", "--catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).isEqualTo("standard input:3: supply \"supply.csv\": a file is found from the file that names it,"
                + " and standard input is none; list the offers under supply instead\n");
    }

    @Test
    void whatIsPipedInIsHeldToTheSameRules() {
        Run run = Run.piped("kind: quote\nrequires: {}\n", "quote", "-", "--catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).isEqualTo("standard input:2: unknown key \"requires\", did you mean require?\n");
    }

    @Test
    void optionsMaySayAll() throws IOException {
        Run run = Run.of("quote", "--catalog", SHOP, "--set", "require.cores=20", "--set", "require={cores: 20, memory_gb: 192}", "--format", "csv");
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).isEqualTo(Run.piped("kind: quote\nrequire: {cores: 20, memory_gb: 192}", "quote", "-", "--catalog", SHOP, "--format", "csv").out());
    }

    @Test
    void whatOptionsLackIsAFaultWithoutALine() {
        Run run = Run.of("quote", "--catalog", SHOP, "--set", "energy.years=3");
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).isEqualTo("--set energy.years=3: energy.price_per_kwh is missing\n");
        assertThat(Run.of("quote", "--catalog", SHOP, "--set", "kind=build").err()).isEqualTo("--set kind=build: kind \"build\": must be quote here\n"
                + "arguments: platform is missing\narguments: processor is missing\narguments: cooling is missing\n");
    }

    @Test
    void nothingAtAllIsAskedWithoutBoth() {
        String expected = "sledwright quote: FILE is missing; name a file with 'kind: quote', pipe one in and write -, or say all with --catalog and --set\n"
                + "Try 'sledwright quote --help'.\n";
        assertThat(Run.of("quote")).isEqualTo(new Run(ExitCode.USAGE, "", expected));
        assertThat(Run.of("quote", "--catalog", SHOP).err()).isEqualTo(expected);
        assertThat(Run.of("quote", "--set", "require.cores=4").err()).isEqualTo(expected);
    }
}
