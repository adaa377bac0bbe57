package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.book.store.BookPlace;

/** {@code -Dsledwright.kills=200} kills more often. */
class KilledWritersTest {

    private static final int KILLS = Integer.getInteger("sledwright.kills", 12);

    @TempDir
    Path folder;

    @Test
    void nothingThatWasSaidToBeDoneIsLostAndNothingIsHalfThere() throws Exception {
        Path file = folder.resolve("b.db");
        Book.open(BookPlace.of(file), "0.1").close();
        Set<String> said = new HashSet<>();
        Random random = new Random(Long.getLong("sledwright.seed", 1));
        for (int kill = 0; kill < KILLS; kill++) {
            said.addAll(killed(file, random.nextInt(120)));
        }
        assertThat(said).hasSizeGreaterThan(KILLS);
        try (Book book = Book.open(BookPlace.of(file), "0.1")) {
            List<SavedQuote> quotes = book.find(BookSearch.everything(), Shelf.ANNA);
            assertThat(quotes.stream().map(quote -> quote.number().place())).containsExactlyElementsOf(
                    IntStream.rangeClosed(1, quotes.size()).boxed().toList());
            Set<String> there = new HashSet<>();
            Map<QuoteNumber, Long> kept = new HashMap<>();
            book.reserved(Optional.empty(), Shelf.ANNA).lots().forEach(one -> kept.merge(one.number(), (long) one.units(), Long::sum));
            for (SavedQuote quote : quotes) {
                there.add("saved " + quote.number());
                assertThat(quote.offered().price()).isPresent();
                assertThat(book.paper(quote, 1, "text.shop")).isEqualTo(Shelf.PAPERS.get("text.shop"));
                boolean held = quote.state() == QuoteState.SENT;
                assertThat(kept.getOrDefault(quote.number(), 0L)).as(quote.number() + " keeps").isEqualTo(held ? 2 : 0);
                assertThat(book.history(quote.number(), Shelf.ANNA)).hasSize(held ? 2 : 1);
                if (held) {
                    there.add("held " + quote.number());
                }
            }
            assertThat(there).containsAll(said);
        }
    }

    /** What a writer said before it was killed, a given number of milliseconds after its first word. */
    private static Set<String> killed(Path file, int after) throws IOException, InterruptedException {
        Path out = file.resolveSibling("out");
        Process writer = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC", "-cp", System.getProperty("java.class.path"), KilledWriter.class.getName(), file.toString())
                .redirectErrorStream(true).redirectOutput(out.toFile()).start();
        while (writer.isAlive() && Files.size(out) == 0) {
            Thread.sleep(2);
        }
        Thread.sleep(after);
        writer.destroyForcibly();
        assertThat(writer.waitFor(30, TimeUnit.SECONDS)).isTrue();
        String text = Files.readString(out);
        // A line that was cut off says nothing.
        Set<String> said = new HashSet<>(List.of(text.substring(0, text.lastIndexOf('\n') + 1).split("\n")));
        assertThat(said).allSatisfy(line -> assertThat(line).matches("(saved|held) \\d{4}-\\d{4,}"));
        return said;
    }
}
