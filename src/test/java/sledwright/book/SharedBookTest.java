package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import sledwright.book.store.BookPlace;
import sledwright.book.store.SharedServer;
import sledwright.book.store.WithSharedServer;
import sledwright.input.FaultsException;

@WithSharedServer
class SharedBookTest extends BookTest {

    private BookPlace at;

    @Override
    BookPlace place() {
        at = SharedServer.fresh();
        return at;
    }

    @Test
    void aSharedDatabaseIsBackedUpWithItsOwnTools() {
        assertThatThrownBy(() -> book.backup(folder.resolve("copy.db"))).isInstanceOf(FaultsException.class)
                .hasMessageContaining("a shared database is backed up with its own tools, such as pg_dump");
    }

    /** Three processes work on one review, and one of them is killed: none is worked on twice, and what the dead one had comes back. */
    @Test
    void processesShareAReview() throws Exception {
        int quotes = 40;
        for (int quote = 0; quote < quotes; quote++) {
            book.save(Shelf.version(List.of(Map.of("L1", 1)), Shelf.DAY.plusDays(5)), "Nordmole", "", Shelf.ANNA);
        }
        book.rows(sql -> {
            ReviewRows.begin(sql, SharingReviewer.RUN, false, Shelf.DAY);
            return null;
        });
        long now = 1_000_000_000L;
        Process killed = reviewer("killed", now, true);
        while (killed.isAlive() && Files.size(folder.resolve("killed")) == 0) {
            Thread.sleep(5);
        }
        Process second = reviewer("second", now, false);
        Process third = reviewer("third", now, false);
        killed.destroyForcibly().waitFor();
        assertThat(second.waitFor(60, TimeUnit.SECONDS) && third.waitFor(60, TimeUnit.SECONDS)).isTrue();
        List<String> taken = new ArrayList<>(Files.readAllLines(folder.resolve("second")));
        taken.addAll(Files.readAllLines(folder.resolve("third")));
        List<String> back = book.rows(sql -> ReviewRows.take(sql, SharingReviewer.RUN, quotes, now + ReviewRows.SILENCE_MS + 1)).stream()
                .map(QuoteNumber::toString).filter(number -> !taken.contains(number)).toList();
        assertThat(taken).doesNotHaveDuplicates();
        assertThat(back).containsAll(Files.readAllLines(folder.resolve("killed"))).hasSize(4);
        assertThat(taken).hasSize(quotes - back.size());
    }

    private Process reviewer(String name, long now, boolean slow) throws IOException {
        return new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-cp",
                System.getProperty("java.class.path"), SharingReviewer.class.getName(), at.address().orElseThrow(), String.valueOf(now), String.valueOf(slow))
                .redirectError(ProcessBuilder.Redirect.DISCARD).redirectOutput(folder.resolve(name).toFile()).start();
    }
}
