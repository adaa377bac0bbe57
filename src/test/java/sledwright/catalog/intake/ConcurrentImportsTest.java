package sledwright.catalog.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BrokenBarrierException;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogTable;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.samples.Folders;

/** Imports that run at once, in threads and in processes: what is said to be written is there, and who has not written gets a message. */
class ConcurrentImportsTest {

    private static final int EACH = 25;

    @TempDir
    Path work;
    private Path shop;

    @BeforeEach
    void copyShop() throws IOException {
        shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
    }

    /** Imports one row; whether it was written. */
    private static boolean imports(Path shop, CatalogTable table, String name, String list) throws IOException {
        try {
            CatalogImport made = CatalogImport.of(shop, table, Source.of(name + ".csv", list.getBytes(StandardCharsets.UTF_8)), Optional.empty(), Optional.empty());
            if (!made.refused().isEmpty()) {
                return false;
            }
            assertThat(made.apply()).isPresent();
            return true;
        } catch (FaultsException told) {
            assertThat(told.faults()).allSatisfy(fault -> assertThat(fault.message()).containsPattern("run it again$|is already a"));
            return false;
        }
    }

    /** Imports lots one after the other; the names of those that were written. */
    private static List<String> importLots(Path shop, String name) throws IOException {
        List<String> written = new ArrayList<>();
        for (int lot = 0; lot < EACH; lot++) {
            String id = name + lot;
            if (imports(shop, CatalogTable.OFFERS, id, "sku,lot,supplier,condition,unit_price,available\nM16,%s,Fen,new,40,1\n".formatted(id))) {
                written.add(id);
            }
        }
        return written;
    }

    private void assertAllThere(List<String> written) throws IOException {
        List<String> lots = CatalogReader.read(shop).lots("M16").stream().map(lot -> lot.lot()).filter(lot -> lot.contains("-")).toList();
        assertThat(lots).containsExactlyInAnyOrderElementsOf(written);
        assertThat(written).isNotEmpty();
        try (Stream<Path> files = Files.list(shop)) {
            assertThat(files.filter(file -> file.getFileName().toString().startsWith("offers.csv.bak"))).hasSameSizeAs(written);
        }
    }

    @Test
    void threadsLoseNothing() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<Future<List<String>>> runs = threads.invokeAll(Stream.of("a-", "b-", "c-", "d-")
                    .<Callable<List<String>>>map(name -> () -> importLots(shop, name)).toList());
            List<String> written = new ArrayList<>();
            for (Future<List<String>> run : runs) {
                written.addAll(run.get());
            }
            assertAllThere(written);
        } finally {
            threads.shutdownNow();
        }
    }

    /** Imports lots as soon as a line comes in, and prints those that were written. */
    static final class Importer {

        public static void main(String[] words) throws IOException {
            System.out.println("ready");
            System.in.read();
            importLots(Path.of(words[0]), words[1]).forEach(System.out::println);
        }
    }

    @Test
    void processesLoseNothing() throws Exception {
        List<Process> processes = new ArrayList<>();
        List<BufferedReader> said = new ArrayList<>();
        try {
            for (String name : List.of("a-", "b-")) {
                processes.add(start(Importer.class, shop.toString(), name));
                said.add(new BufferedReader(new InputStreamReader(processes.get(processes.size() - 1).getInputStream(), StandardCharsets.UTF_8)));
            }
            for (BufferedReader each : said) {
                assertThat(each.readLine()).isEqualTo("ready");
            }
            for (Process process : processes) {
                process.getOutputStream().write('\n');
                process.getOutputStream().close();
            }
            List<String> written = new ArrayList<>();
            said.forEach(each -> each.lines().forEach(written::add));
            for (Process process : processes) {
                assertThat(process.waitFor()).isZero();
            }
            assertAllThere(written);
        } finally {
            processes.forEach(Process::destroyForcibly);
        }
    }

    private static Process start(Class<?> main, String... words) throws IOException {
        return new ProcessBuilder(Stream.concat(Stream.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-ea", "-cp",
                System.getProperty("java.class.path"), main.getName()), Stream.of(words)).toList()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    }

    /** Two tables that are sound one by one may contradict each other. */
    @Test
    void importsIntoTwoTablesDoNotContradictEachOther() throws Exception {
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            Future<?> memory = threads.submit(() -> each(together, sku -> imports(shop, CatalogTable.MEMORY, "memory",
                    "sku,generation,type,capacity_gb,ranks,device_width,speed_mts,voltage,power_w\n%s,DDR4,RDIMM,16,1,4,2400,1.2,4\n".formatted(sku))));
            Future<?> processors = threads.submit(() -> each(together, sku -> imports(shop, CatalogTable.PROCESSORS, "processors",
                    "sku,socket,generation,cores,threads,base_ghz,all_core_ghz,tdp_w,memory_mts,sockets_max,throughput\n%s,HS1,Heath 1,8,16,2.1,2.5,85,2400,2,100\n"
                            .formatted(sku))));
            memory.get();
            processors.get();
        } finally {
            threads.shutdownNow();
        }
        assertThat(CatalogReader.read(shop).part("Z1")).isPresent();
    }

    private interface Import {

        boolean of(String sku) throws IOException;
    }

    private static Void each(CyclicBarrier together, Import run) throws IOException, InterruptedException, BrokenBarrierException, TimeoutException {
        for (int number = 0; number < EACH; number++) {
            together.await(1, TimeUnit.MINUTES);
            run.of("Z" + number);
        }
        return null;
    }

    /** Takes the lock and keeps it. */
    static final class Holder {

        public static void main(String[] words) throws IOException, InterruptedException {
            System.out.println(FolderLock.take(Path.of(words[0])).isPresent());
            Thread.sleep(Long.MAX_VALUE);
        }
    }

    @Test
    void anotherImportIsWaitedForByNobodyAndItsDeathFreesTheLock() throws Exception {
        CatalogImport made = CatalogImport.of(shop, CatalogTable.OFFERS, Source.of("list.csv", "sku,lot,unit_price\nM16,A7,40\n".getBytes(StandardCharsets.UTF_8)),
                Optional.empty(), Optional.empty());
        Process holder = start(Holder.class, shop.toString());
        try (BufferedReader said = new BufferedReader(new InputStreamReader(holder.getInputStream(), StandardCharsets.UTF_8))) {
            assertThat(said.readLine()).isEqualTo("true");
            assertThat(FolderLock.take(shop)).isEmpty();
            assertTold(made);
        } finally {
            holder.destroyForcibly().waitFor();
        }
        try (FolderLock ours = FolderLock.take(shop).orElseThrow()) {
            assertThat(FolderLock.take(shop)).as("of another thread, say").isEmpty();
            assertTold(made);
        }
        assertThat(made.apply()).isPresent();
    }

    private void assertTold(CatalogImport made) {
        assertThatThrownBy(made::apply).isInstanceOf(FaultsException.class)
                .hasMessage(shop.resolve("offers.csv") + ": another import is writing; nothing was written: run it again");
        assertThat(shop.resolve("offers.csv")).hasSameTextualContentAs(Folders.SHOP.resolve("offers.csv"));
        assertThat(shop.resolve("offers.csv.bak")).doesNotExist();
    }
}
