package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
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

    /** A pipe into which nobody writes would be waited for for ever; one into which somebody does is read like a file. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aPipeIsReadAndNotWaitedForForEver() throws Exception {
        Path pipe = work.resolve("pipe");
        assumeTrue(run("mkfifo", pipe.toString()), "no pipe can be made here");
        assertFault(Run.of("quote", pipe.toString()), "pipe: cannot be read (nothing came out of it for 10 s)");
        // The reader of the first still waits.
        Path other = work.resolve("other");
        assumeTrue(run("mkfifo", other.toString()), "no pipe can be made here");
        Thread writer = new Thread(() -> {
            try {
                Files.writeString(other, "kind: quote\nobjective: dearest\n");
            } catch (IOException unread) {
                throw new UncheckedIOException(unread);
            }
        });
        writer.start();
        assertFault(Run.of("quote", other.toString(), "--catalog", Folders.SHOP.toString()), "other:2: objective \"dearest\": must be one of");
        writer.join();
    }

    @Test
    void aTableOfThirtyMillionCellsIsAFault() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("offers.csv"), Files.readString(shop.resolve("offers.csv")) + (",".repeat(1999) + "\n").repeat(15_000));
        assertFault(Run.of("catalog", shop.toString()), "offers.csv:2513: up to here the file has more than 5000000 cells; split it");
        Path list = Files.writeString(work.resolve("list.csv"), "sku,lot,unit_price\n" + ("x,".repeat(1999) + "\n").repeat(15_000));
        assertFault(Run.of("catalog", "import", list.toString(), "--as", "offers", "--into", Folders.SHOP.toString()), "list.csv:2501: up to here the file has more than 5000000 cells; split it");
    }

    @Test
    void aCellOfMegabytesIsAFaultInWordsOfItsOwn() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("offers.csv"), Files.readString(shop.resolve("offers.csv")) + "M16,\"" + "x\n".repeat(11_000_000) + "\"\n");
        Run run = Run.of("catalog", shop.toString());
        assertFault(run, "offers.csv:14: a cell of the row has more than 100000 characters; is a quotation mark missing?");
        assertThat(run.err()).doesNotContain("Stream", "Constraint", "java");
    }

    @Test
    void aliasesCountAsIfTheyWereWrittenOut() throws IOException {
        String text = "x".repeat(19_000);
        Run words = Run.of("quote", request("kind: quote\nname: &a " + text + "\nforbid: [" + "*a, ".repeat(200) + "*a]\n").toString(), "--catalog", Folders.SHOP.toString());
        assertFault(words, "request.yaml:2: what stands here is repeated by aliases until it is larger than 3 MB");
        String skus = IntStream.range(0, 40_000).mapToObj(i -> "P" + i).collect(Collectors.joining(", "));
        StringBuilder order = new StringBuilder("kind: order\nlines:\n  a: { forbid: &f [" + skus + "] }\n");
        IntStream.range(0, 40).forEach(i -> order.append("  b").append(i).append(": { forbid: *f }\n"));
        assertFault(Run.of("order", request(order.toString()).toString(), "--catalog", Folders.SHOP.toString()),
                "request.yaml:3: what stands here is repeated by aliases until it is larger than 3 MB");
    }

    /** As many unknown names as a file holds, against a large catalogue, are reported within seconds. */
    @Test
    void unknownNamesInLongListsAreToldInTime() throws IOException {
        String names = IntStream.range(0, 200_000).mapToObj(i -> "Q" + i + "-X").collect(Collectors.joining(", "));
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        Run run = Run.of("quote", request("kind: quote\nforbid: [" + names + "]\n").toString(), "--catalog", "catalogs/heronfold-yard");
        assertFault(run, "forbid \"Q0-X\": is no part of the catalogue");
        assertThat(run.err()).contains("and more; put the first 100000 right");
        assertThat(ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before).isLessThan(20_000_000_000L);
    }

    @Test
    void keysWithinKeysWithoutEndAreAFault() throws IOException {
        String path = String.join(".", Collections.nCopies(4000, "require"));
        Run run = Run.of("quote", request("kind: quote\n").toString(), "--catalog", Folders.SHOP.toString(), "--set", path + "=1");
        assertFault(run, "...: must not go through more than 20 keys");
        assertFault(Run.of("order", request("kind: order\nlines: [ { name: a } ]\n").toString(), "--catalog", Folders.SHOP.toString(), "--set", "lines.a." + path + "=1"),
                "...: must not go through more than 20 keys");
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
