package sledwright.cli;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import sledwright.desk.Reply;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.input.Reason;
import sledwright.input.Source;
import sledwright.report.text.FaultsJson;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/**
 * Requests, one a line, answered on all cores and written in their order, one answer a line. Only as many lines are in hand as keep the
 * cores at work, so that the memory taken does not grow with the file.
 */
final class Batch {

    /** Lines that are read ahead for each core: one slow answer then does not keep the others waiting. */
    private static final int AHEAD = 64;
    /** Of a line that is longer nothing more is kept. */
    private static final int MOST_BYTES = 1_000_000;
    private static final long PROGRESS_EVERY_NS = TimeUnit.SECONDS.toNanos(2);

    /** @param faulty whether something was wrong with the line, so that its answer lists faults */
    private record Answer(String line, boolean faulty) {
    }

    private final Terminal terminal;
    private final Function<Source, Reply<String>> asked;
    private final long start = System.nanoTime();
    private long told = start;
    private int skipped;
    private int answered;
    private int faulty;

    /** @param asked answers one request with a document in JSON; asked from several threads at once */
    Batch(Terminal terminal, Function<Source, Reply<String>> asked) {
        this.terminal = terminal;
        this.asked = asked;
    }

    /**
     * @param file {@code -}: standard input
     * @param skip lines at the beginning that are skipped
     * @return how many lines had faults
     * @throws UsageException when the file cannot be read, or answers cannot be written
     */
    int run(Path file, int skip) {
        skipped = skip;
        int cores = Runtime.getRuntime().availableProcessors();
        ExecutorService threads = Executors.newFixedThreadPool(cores);
        try (InputStream lines = new BufferedInputStream(open(file))) {
            Queue<Future<Answer>> waiting = new ArrayDeque<>();
            int number = 0;
            for (Optional<byte[]> line = next(lines); line.isPresent(); line = next(lines)) {
                if (++number > skip) {
                    byte[] request = line.get();
                    int place = number;
                    waiting.add(threads.submit(() -> answer(file.toString(), place, request)));
                    if (waiting.size() >= cores * AHEAD) {
                        write(waiting.remove());
                    }
                }
            }
            while (!waiting.isEmpty()) {
                write(waiting.remove());
            }
        } catch (IOException | UncheckedIOException unreadable) {
            throw new UsageException("--batch %s cannot be read (%s).".formatted(file, Reason.of(
                    unreadable instanceof UncheckedIOException wrapped ? wrapped.getCause() : (IOException) unreadable)));
        } finally {
            threads.shutdownNow();
        }
        tell("all of ");
        return faulty;
    }

    /** The next line, its bytes as they are, so that its reader finds what is no text; empty behind the last. */
    private static Optional<byte[]> next(InputStream lines) throws IOException {
        int sign = lines.read();
        if (sign < 0) {
            return Optional.empty();
        }
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (; sign >= 0 && sign != '\n'; sign = lines.read()) {
            if (line.size() <= MOST_BYTES) {
                line.write(sign);
            }
        }
        return Optional.of(line.toByteArray());
    }

    private Answer answer(String name, int number, byte[] request) {
        if (request.length > MOST_BYTES) {
            String tooLong = "is a line of more than %s bytes; a request is much shorter".formatted(MOST_BYTES);
            return faulty(name, number, List.of(new Fault(name, number, tooLong)));
        }
        try {
            return new Answer(Json.onOneLine(Replies.answer(asked.apply(Source.ofJson(name, request)))), false);
        } catch (FaultsException wrong) {
            return faulty(name, number, wrong.faults());
        } catch (UsageException misasked) {
            return faulty(name, number, List.of(new Fault(name, number, misasked.getMessage())));
        }
    }

    /** A line is all that its reader sees, so its faults are in the first of one, and so is what stands there already. */
    private static Answer faulty(String name, int number, List<Fault> faults) {
        return new Answer(Json.onOneLine(FaultsJson.of(faults.stream()
                .map(fault -> new Fault(name, number, fault.message().replace(", first at line 1", ""), fault.value())).toList())), true);
    }

    private InputStream open(Path file) throws IOException {
        return file.toString().equals("-") ? terminal.in() : Files.newInputStream(file);
    }

    private void write(Future<Answer> waiting) {
        Answer answer = of(waiting);
        try {
            terminal.out().write(answer.line().getBytes(StandardCharsets.UTF_8));
            terminal.out().flush();
        } catch (IOException failed) {
            throw new UsageException("the answers could not be written to standard output (%s).\nMaybe go on with --skip %s."
                    .formatted(Reason.of(failed), skipped + answered));
        }
        answered++;
        faulty += answer.faulty() ? 1 : 0;
        if (System.nanoTime() - told > PROGRESS_EVERY_NS) {
            tell("");
        }
    }

    private void tell(String all) {
        told = System.nanoTime();
        double seconds = (told - start) / 1e9;
        terminal.err().println("sledwright: %s%s answered in %s s, %s a second%s".formatted(all, Numbers.counted(answered, "request"),
                Numbers.plain(Math.rint(seconds * 10) / 10), Numbers.plain(Math.rint(answered / Math.max(seconds, 1e-3))),
                faulty == 0 ? "" : ", %s with faults".formatted(faulty)));
    }

    private static Answer of(Future<Answer> waiting) {
        try {
            return waiting.get();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof Error grave) {
                throw grave;
            }
            throw failed.getCause() instanceof RuntimeException defect ? defect : new IllegalStateException(failed.getCause());
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(ended);
        }
    }
}
