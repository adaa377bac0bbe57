package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputTest {

    private static final String SHOP = "catalogs/heronfold-yard";

    @TempDir
    Path folder;

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void theFileHoldsWhatStandardOutputWould() throws IOException {
        Path file = folder.resolve("shop.json");
        Run run = Run.of("catalog", SHOP, "--format", "json", "--output", file.toString());
        assertThat(run).isEqualTo(new Run(ExitCode.DONE, "", ""));
        assertThat(Files.readString(file)).isEqualTo(Run.of("catalog", SHOP, "--format", "json").out());
        assertThat(names()).containsExactly("shop.json");
    }

    /** Nobody finds plain text in a document; whoever asks for it by name gets it. */
    @Test
    void aFileThatIsCalledAsAFormatIsHasNoOther() throws IOException {
        for (String ending : List.of("pdf", "html", "json", "CSV", "eml")) {
            Path file = folder.resolve("offer." + ending);
            Run run = Run.of("quote", "scenarios/render-node.yaml", "--output", file.toString());
            assertThat(run).isEqualTo(new Run(ExitCode.USAGE, "", "sledwright: --output %s would be written as text.\nMaybe add --format %s.\n".formatted(file, ending.toLowerCase())));
        }
        assertThat(Run.of("quote", "scenarios/render-node.yaml", "-o", folder.resolve("x.xlsx").toString()).err())
                .endsWith("Maybe choose another ending: this command does not write xlsx.\n");
        assertThat(names()).isEmpty();
        assertThat(Run.of("catalog", SHOP, "--format", "text", "-o", folder.resolve("shop.json").toString()).code()).isEqualTo(ExitCode.DONE);
        assertThat(Run.of("catalog", "export", SHOP, "--as", "offers", "-o", folder.resolve("offers.csv").toString()).code()).isEqualTo(ExitCode.DONE);
        assertThat(Run.of("catalog", "export", SHOP, "--as", "offers", "-o", folder.resolve("offers.xlsx").toString()).err()).contains("would be written as csv", "Maybe add --format xlsx");
    }

    @Test
    void anInvalidBuildIsAResultToo() throws IOException {
        Path file = folder.resolve("verdict.txt");
        assertThat(Run.of("check", "scenarios/build-broken.yaml", "-o", file.toString()).code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(Files.readString(file)).startsWith("build-broken\ninvalid: ");
    }

    @Test
    void aFailedRunLeavesTheOldFileWhole() throws IOException {
        Path file = Files.writeString(folder.resolve("old.txt"), "old");
        assertThat(Run.of("catalog", "nowhere", "--output", file.toString()).code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(Files.readString(file)).isEqualTo("old");
        assertThat(names()).containsExactly("old.txt");
    }

    @Test
    void theOldFileIsReplacedAndNotWrittenOver() throws IOException {
        Path file = Files.writeString(folder.resolve("old.txt"), "old");
        Path held = Files.createLink(folder.resolve("held.txt"), file);
        assertThat(Run.of("catalog", SHOP, "--output", file.toString()).code()).isEqualTo(ExitCode.DONE);
        assertThat(Files.readString(file)).startsWith("Heronfold Yard");
        assertThat(Files.readString(held)).isEqualTo("old");
        assertThat(names()).containsExactly("held.txt", "old.txt");
    }

    @Test
    void rightsAndLinksStay() throws IOException {
        assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));
        Path file = Files.writeString(folder.resolve("old.txt"), "old");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw----"));
        Path link = Files.createSymbolicLink(folder.resolve("link.txt"), Path.of("old.txt"));
        assertThat(Run.of("catalog", SHOP, "--output", link.toString()).code()).isEqualTo(ExitCode.DONE);
        assertThat(link).isSymbolicLink();
        assertThat(Files.readString(file)).startsWith("Heronfold Yard");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file))).isEqualTo("rw-rw----");
    }

    @Test
    void aDeviceIsWrittenToAndStaysOne() {
        Path device = Path.of("/dev/null");
        assumeTrue(Files.exists(device));
        assertThat(Run.of("catalog", SHOP, "--output", "/dev/null").code()).isEqualTo(ExitCode.DONE);
        assertThat(Files.isRegularFile(device)).isFalse();
    }

    @Test
    void anImpossiblePlaceIsToldBeforeAnyWork() throws IOException {
        Run missing = Run.of("catalog", "nowhere", "--output", folder.resolve("no/such/file.txt").toString());
        assertThat(missing.code()).isEqualTo(ExitCode.USAGE);
        assertThat(missing.err()).contains("there is no folder " + folder.resolve("no/such"));
        Run directory = Run.of("catalog", "nowhere", "--output", folder.toString());
        assertThat(directory.code()).isEqualTo(ExitCode.USAGE);
        assertThat(directory.err()).contains("is a folder");
        Path file = Files.writeString(folder.resolve("file"), "");
        Run below = Run.of("catalog", "nowhere", "--output", file.resolve("x").toString());
        assertThat(below.code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void aFolderWithoutWriteAccessIsTold() throws IOException {
        assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));
        Path locked = Files.createDirectory(folder.resolve("locked"));
        Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("r-xr-xr-x"));
        assumeTrue(!Files.isWritable(locked), "the superuser may write anywhere");
        Run run = Run.of("catalog", SHOP, "--output", locked.resolve("x").toString());
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).isEqualTo("sledwright: --output %s: nothing can be written into folder %s.%nMaybe choose another, or allow writing there.%n"
                .formatted(locked.resolve("x"), locked));
    }

    @Test
    void aFileWithoutWriteAccessIsTold() throws IOException {
        assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));
        Path locked = Files.createFile(folder.resolve("locked"));
        Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("r--r--r--"));
        assumeTrue(!Files.isWritable(locked), "the superuser may write anywhere");
        Run run = Run.of("catalog", SHOP, "--output", locked.toString());
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).isEqualTo("sledwright: --output %s is write-protected.%nMaybe choose another file, or allow writing to it.%n".formatted(locked));
    }

    @Test
    void aFullDeviceIsTold() {
        assumeTrue(Files.exists(Path.of("/dev/full")));
        Run run = Run.of("catalog", SHOP, "--output", "/dev/full");
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).isEqualTo("sledwright: the result could not be written to /dev/full (No space left on device).%n".formatted());
    }

    /** An open file that was deleted still stands among the process's files, but nowhere else. */
    @Test
    void aFileThatIsNowhereIsTold() throws IOException {
        Path open = Path.of("/proc/self/fd");
        assumeTrue(Files.exists(open));
        Path gone = folder.resolve("gone");
        try (OutputStream held = Files.newOutputStream(gone); Stream<Path> files = Files.list(open)) {
            Path file = files.filter(link -> pointsTo(link, gone)).findFirst().orElseThrow();
            Files.delete(gone);
            Run run = Run.of("catalog", SHOP, "--output", file.toString());
            assertThat(run.code()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).isEqualTo("sledwright: --output %s cannot be reached (there is no such file).%n".formatted(file));
        }
    }

    private static boolean pointsTo(Path link, Path file) {
        try {
            return Files.readSymbolicLink(link).equals(file.toRealPath());
        } catch (IOException closed) {
            return false;
        }
    }

    @Test
    void aFileIsPlainUnlessColourIsWanted() throws IOException {
        Path file = folder.resolve("x.txt");
        Run.of(Map.of("COLUMNS", "200"), true, "check", "scenarios/build-valid.yaml", "--output", file.toString());
        assertThat(Files.readString(file)).doesNotContain("\u001b").isEqualTo(Run.of("check", "scenarios/build-valid.yaml").out());
        Run.of(Map.of(), false, "catalog", SHOP, "--output", file.toString(), "--colour", "always");
        assertThat(Files.readString(file)).contains("\u001b[");
    }
}
