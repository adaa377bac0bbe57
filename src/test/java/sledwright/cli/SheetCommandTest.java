package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.report.Schemas;

class SheetCommandTest {

    private static final String BUILD = "scenarios/build-valid.yaml";
    private static final String QUOTE = "scenarios/small-web-node.yaml";
    private static final String UPGRADE = "scenarios/sled-in-place.yaml";

    @ParameterizedTest
    @ValueSource(strings = {BUILD, QUOTE, UPGRADE})
    void everySourceHasASheet(String file) {
        Run json = Run.of("sheet", file, "--format", "json");
        assertThat(json.err()).isEmpty();
        assertThat(json.code()).isEqualTo(ExitCode.DONE);
        assertThat(Schemas.faults("sheet-result", json.out())).isEmpty();
    }

    @Test
    void fullChannelsStandOnOneLineEachOfAPlainScreen() {
        assertThat(Run.of("sheet", "scenarios/rank-sparing-archive.yaml").out())
                .contains("1A: 64 GB  1A1 (1) QM3L32-44-16 32 GB  1A2 (5) QM3L32-44-16 32 GB  1A3 empty\n1B: 64 GB");
    }

    @Test
    void everyFormat(@TempDir Path folder) throws IOException {
        assertThat(Run.of("sheet", BUILD).out()).startsWith("Bench sheet: build-valid\n");
        assertThat(Run.of("sheet", BUILD, "--format", "csv").out()).startsWith("sheet,machines,action,");
        assertThat(Run.of("sheet", BUILD, "--format", "html").out()).startsWith("<!DOCTYPE html>").contains("<svg");
        assertThat(Run.of("sheet", BUILD, "--format", "svg").out()).startsWith("<?xml").contains("<svg");
        Path file = folder.resolve("sheet.pdf");
        assertThat(Run.of("sheet", BUILD, "--format", "pdf", "-o", file.toString()).code()).isEqualTo(ExitCode.DONE);
        assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1)).startsWith("%PDF-");
    }

    @Test
    void anAlternativeIsChosenByItsRank() {
        String first = Run.of("sheet", QUOTE).out();
        assertThat(first).startsWith("Bench sheet: small-web-node, alternative 1\n").contains("B2-06");
        assertThat(Run.of("sheet", QUOTE, "--rank", "1").out()).isEqualTo(first);
        assertThat(Run.of("sheet", QUOTE, "--rank", "2").out()).startsWith("Bench sheet: small-web-node, alternative 2\n").contains("B1-06L");
    }

    @Test
    void aRankBeyondTheListSaysHowManyThereAre() {
        Run run = Run.of("sheet", QUOTE, "--rank", "9");
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("--rank 9: the list has 5 alternatives.", "Maybe take one of 1 to 5");
        assertThat(Run.of("sheet", QUOTE, "--set", "alternatives=1", "--rank", "2").err()).contains("--rank 2: the list has 1 alternative.", "Maybe take 1");
    }

    @Test
    void aRankBelowOneOrOfWhatIsNoQuoteIsWrong() {
        assertThat(Run.of("sheet", "nowhere.yaml", "--rank", "0").code()).isEqualTo(ExitCode.USAGE);
        assertThat(Run.of("sheet", BUILD, "--rank", "1").err()).contains("--rank 1: only a quote has alternatives");
        assertThat(Run.of("sheet", UPGRADE, "--rank", "1").code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void nobodyPutsAnInvalidBuildTogether(@TempDir Path folder) throws IOException {
        Path old = Files.writeString(folder.resolve("sheet.html"), "old");
        Run run = Run.of("sheet", "scenarios/build-broken.yaml", "--format", "html", "-o", old.toString());
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).startsWith("build-broken: no sheet, because the build is invalid.\n").contains("- rank-limit: ", "- blocked-slot: ");
        assertThat(old).hasContent("old");
    }

    @Test
    void whatCannotBeBuiltHasNoSheet() {
        Run run = Run.of("sheet", "scenarios/too-much-for-the-money.yaml");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("no sheet, because no valid build was found", "sledwright quote");
        Run upgrade = Run.of("sheet", UPGRADE, "--set", "require.cores=4000");
        assertThat(upgrade.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(upgrade.err()).contains("no sheet, because no upgrade was found", "sledwright upgrade");
    }

    @Test
    void aBuildThatStockCannotFillHasNoSheet() {
        Run run = Run.of("sheet", BUILD, "--set", "machines=500");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.err()).contains("- in-stock: ");
    }
}
