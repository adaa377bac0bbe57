package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.input.WholeFile;
import sledwright.samples.Folders;

/** Files and disks that are hostile or broken end in a clear message, and nothing of the user's is lost. */
class HostileFilesTest {

    @TempDir
    Path work;

    private static void assertFault(Run run, String words) {
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(words).doesNotContain("\tat ", "defect");
    }

    private Path request(String text) throws IOException {
        return Files.writeString(work.resolve("request.yaml"), text);
    }

    @Test
    void aFileOfAGigabyteIsNotRead() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        for (String name : List.of("offers.csv", "catalog.yaml", "platforms/wren-2.yaml")) {
            try (RandomAccessFile file = new RandomAccessFile(shop.resolve(name).toFile(), "rw")) {
                file.setLength(1_000_000_000);
            }
        }
        Run run = Run.of("catalog", shop.toString());
        assertFault(run, "offers.csv: is larger than 64 MB");
        assertThat(run.err()).contains("catalog.yaml: is larger than 3 MB", "wren-2.yaml: is larger than 3 MB");
    }

    @Test
    void aDeviceWithoutEndIsNotReadToItsEnd() {
        assumeTrue(Files.exists(Path.of("/dev/zero")));
        assertFault(Run.of("quote", "/dev/zero"), "/dev/zero: is larger than 3 MB");
    }

    @Test
    void aFileThatGivesOtherBytesThanItsSizeIsReadAgain() {
        assumeTrue(Files.exists(Path.of("/proc/cpuinfo")));
        assertFault(Run.of("quote", "/proc/cpuinfo"), "/proc/cpuinfo: was changed while it was read; run it again");
    }

    @Test
    void aFileThatFailsWhileItIsReadIsAFault() {
        assumeTrue(Files.exists(Path.of("/proc/self/mem")));
        assertFault(Run.of("quote", "/proc/self/mem"), "/proc/self/mem: cannot be read (Input/output error)");
    }

    @Test
    void whatMayNotBeReadSaysSo() throws IOException {
        assumeTrue(Files.getFileStore(work).supportsFileAttributeView("posix"));
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.setPosixFilePermissions(shop.resolve("memory.csv"), PosixFilePermissions.fromString("-wx-wx-wx"));
        Files.setPosixFilePermissions(shop.resolve("platforms"), PosixFilePermissions.fromString("-wx-wx-wx"));
        try {
            assumeTrue(!Files.isReadable(shop.resolve("memory.csv")), "the superuser may read anything");
            Run run = Run.of("catalog", shop.toString());
            assertFault(run, "memory.csv: cannot be read (permission denied)");
            assertThat(run.err()).contains("platforms: cannot be listed (permission denied)");
        } finally {
            Files.setPosixFilePermissions(shop.resolve("platforms"), PosixFilePermissions.fromString("rwxrwxrwx"));
        }
    }

    @Test
    void aFileIsNoCatalogue() {
        assertFault(Run.of("catalog", "README.md"), "README.md: is a file; a catalogue is a folder");
    }

    @ParameterizedTest
    @ValueSource(strings = {"catalog: ../../../../../../etc", "catalog: /dev", "catalog: \"a\\0b\"", "catalog: ''", "catalog: ~root"})
    void aCatalogueThatIsNoneIsAFault(String line) throws IOException {
        assertFault(Run.of("quote", request("kind: quote\n" + line + "\n").toString()), "");
    }

    @Test
    void aNameTooLongForTheDiskIsAFault() throws IOException {
        assertFault(Run.of("quote", request("kind: quote\ncatalog: " + "x".repeat(5000) + "\n").toString()), "there is no such folder");
    }

    @Test
    void deepNestingIsAFault() throws IOException {
        assertFault(Run.of("quote", request("kind: quote\nuse: " + "[".repeat(100_000) + "\n").toString(), "--catalog", Folders.SHOP.toString()), "not readable as YAML");
    }

    @ParameterizedTest
    @ValueSource(strings = {"limit.price=.nan", "limit.price=.inf", "limit.price=1e400", "limit.price=99999999999999999999", "machines=2147483648",
            "require.cores=-1", "worth.gb=Infinity", "step=1e-400"})
    void absurdFiguresAreFaults(String set) throws IOException {
        assertFault(Run.of("quote", request("kind: quote\n").toString(), "--catalog", Folders.SHOP.toString(), "--set", set), "--set " + set);
    }

    @Test
    void stockThatCannotBeCountedIsAFault() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        StringBuilder offers = new StringBuilder(Files.readString(shop.resolve("offers.csv")));
        for (int lot = 0; lot < 5; lot++) {
            offers.append("M16,Z%d,Marsh Trade,new,1000000000,1,10000000,,\n".formatted(lot));
        }
        Files.writeString(shop.resolve("offers.csv"), offers);
        assertFault(Run.of("catalog", shop.toString()), "offers.csv:14: up to here the stock comes to more than can be counted; lower available or unit_price");
    }

    @Test
    void namesCannotTurnTheTextAround() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(shop.resolve("catalog.yaml")).replace("Reedmere", "Reed\u202Emere"));
        Run run = Run.of("catalog", shop.toString());
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).startsWith("Reed\\u202Emere").doesNotContain("\u202E");
        Run missing = Run.of("catalog", work + "/a\u001b[31m\u202E");
        assertFault(missing, "/a\\u001B[31m\\u202E");
    }

    @Test
    void linksAreFollowedAndStay() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Path real = Files.move(shop.resolve("offers.csv"), work.resolve("real.csv"));
        Files.createSymbolicLink(shop.resolve("offers.csv"), real);
        Path list = Files.writeString(work.resolve("list.csv"), "sku,lot,unit_price\nM16,A7,40\n");
        assertThat(Run.of("catalog", "import", list.toString(), "--as", "offers", "--into", shop.toString(), "--apply").code()).isEqualTo(ExitCode.DONE);
        assertThat(shop.resolve("offers.csv")).isSymbolicLink();
        assertThat(Files.readString(real)).contains("M16,A7,Marsh Trade,new,40,");
        Files.createSymbolicLink(work.resolve("ring"), work.resolve("ring"));
        assertFault(Run.of("quote", work.resolve("ring").toString()), "ring: ");
    }

    @Test
    void aFullDiskLosesNothing() throws Exception {
        Path disk = Files.createDirectory(work.resolve("disk"));
        assumeTrue(mount("-t", "tmpfs", "-o", "size=16k", "tmpfs", disk.toString()), "no small disk can be mounted here");
        try {
            Path old = Files.writeString(disk.resolve("old.csv"), "old");
            Run run = Run.of("catalog", "export", "catalogs/heronfold-yard", "--as", "offers", "--output", old.toString());
            assertThat(run.code()).isEqualTo(ExitCode.USAGE);
            assertThat(run.err()).contains("could not be written");
            assertThat(old).hasContent("old");
            try (Stream<Path> left = Files.list(disk)) {
                assertThat(left).containsExactly(old);
            }
            assertThat(mount("-o", "remount,ro", disk.toString())).isTrue();
            assertThat(Run.of("catalog", Folders.SHOP.toString(), "--output", old.toString()).code()).isEqualTo(ExitCode.USAGE);
            assertThat(old).hasContent("old");
        } finally {
            run("umount", disk.toString());
        }
    }

    private static boolean mount(String... words) throws Exception {
        return run(Stream.concat(Stream.of("mount"), Stream.of(words)).toArray(String[]::new));
    }

    private static boolean run(String... words) throws Exception {
        try {
            Process process = new ProcessBuilder(words).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
            return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException unknown) {
            return false;
        }
    }

    /** Writes one of two contents over the other until it is killed. */
    static final class Writer {

        private static final int SIZE = 3_000_000;

        public static void main(String[] words) throws IOException {
            for (int i = 0; ; i++) {
                WholeFile.replace(Path.of(words[0]), String.valueOf((char) ('a' + i % 2)).repeat(SIZE).getBytes(StandardCharsets.US_ASCII));
            }
        }
    }

    @Test
    void aKillDuringAWriteLeavesAWholeFile() throws Exception {
        Path file = Files.writeString(work.resolve("kept.txt"), "old");
        Process writer = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp", System.getProperty("java.class.path"),
                Writer.class.getName(), file.toString()).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        try {
            while (writer.isAlive() && Files.size(file) == 3) {
                Thread.onSpinWait();
            }
            assertThat(writer.isAlive()).isTrue();
        } finally {
            writer.destroyForcibly().waitFor();
        }
        String left = Files.readString(file);
        assertThat(left).hasSize(Writer.SIZE);
        assertThat(left.chars().distinct().count()).isEqualTo(1);
    }
}
