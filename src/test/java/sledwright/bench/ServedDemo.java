package sledwright.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;

/**
 * The demo shop's server as a process of its own, so that its figures are not those of whoever asks.
 *
 * @param process that serves
 * @param address where
 * @param seconds from its start until it was ready
 * @param work    the folder of its book and its log
 */
record ServedDemo(Process process, URI address, double seconds, Path work) implements AutoCloseable {

    private static final Pattern USED = Pattern.compile("(?m)(?:generation|heap)\\b.* used (\\d+)K");

    static ServedDemo start() throws IOException {
        Path work = Files.createTempDirectory("served");
        long begun = System.nanoTime();
        Process process = new ProcessBuilder(program("java"), "-XX:+UseSerialGC", "-Xmx512m", "-cp", System.getProperty("java.class.path"), "sledwright.cli.Main", "serve",
                "--catalog", "catalogs/heronfold-yard", "--port", "0", "--book", work.resolve("book.db").toString()).redirectError(work.resolve("log").toFile()).start();
        String ready = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8)).readLine();
        if (ready == null || !ready.startsWith("ready ")) {
            throw new IllegalStateException(Files.readString(work.resolve("log")));
        }
        return new ServedDemo(process, URI.create(ready.substring("ready ".length())), (System.nanoTime() - begun) / 1e9, work);
    }

    private static String program(String name) {
        return Path.of(System.getProperty("java.home"), "bin", name).toString();
    }

    /** Of all its threads, since it began. */
    double cpuMillis() {
        return process.info().totalCpuDuration().map(Duration::toNanos).orElse(0L) / 1e6;
    }

    /** What its heap holds once it is cleared, and what the system has given it. */
    String memory() throws IOException {
        tell("GC.run");
        long used = USED.matcher(tell("GC.heap_info")).results().mapToLong(found -> Long.parseLong(found.group(1))).sum();
        String most = Files.readAllLines(Path.of("/proc", String.valueOf(process.pid()), "status")).stream().filter(line -> line.startsWith("VmHWM")).findFirst().orElse("");
        return "heap in use %s MB of 512, memory of the process at most %s MB".formatted(used >> 10, Long.parseLong(most.replaceAll("\\D", "")) >> 10);
    }

    private String tell(String command) throws IOException {
        Process jcmd = new ProcessBuilder(program("jcmd"), String.valueOf(process.pid()), command).redirectErrorStream(true).start();
        return new String(jcmd.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    List<String> defects() throws IOException {
        return Files.readAllLines(work.resolve("log")).stream().filter(line -> line.contains("defect")).toList();
    }

    @Override
    public void close() {
        process.destroy();
        try {
            process.waitFor(10, TimeUnit.SECONDS);
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }
}
