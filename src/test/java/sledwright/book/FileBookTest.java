package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static sledwright.book.Shelf.ANNA;
import static sledwright.book.Shelf.Found.NODE;
import static sledwright.book.Shelf.PAPERS;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.book.store.BookPlace;
import sledwright.input.FaultsException;

class FileBookTest extends BookTest {

    @Override
    BookPlace place() {
        return BookPlace.of(folder.resolve("deep/er/b.db"));
    }

    @Test
    void aBackupIsWholeWhileOthersWriteAndCanBeGoneBackTo() throws Exception {
        ExecutorService writer = Executors.newSingleThreadExecutor();
        Path copy = folder.resolve("copy.db");
        try {
            save("Nordmole");
            Future<?> writing = writer.submit(() -> IntStream.range(0, 40).forEach(one -> save("Orchard Surveys")));
            book.backup(copy);
            writing.get();
        } finally {
            writer.shutdownNow();
        }
        assertThatThrownBy(() -> book.backup(copy)).isInstanceOf(FaultsException.class).hasMessageContaining("is there already; name a file that is not");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(copy))).isEqualTo("rw-------");
        try (Book restored = Book.open(BookPlace.of(copy), "0.1")) {
            List<SavedQuote> quotes = restored.find(BookSearch.everything(), ANNA);
            assertThat(quotes).hasSizeBetween(1, 41);
            assertThat(quotes).allSatisfy(quote -> {
                assertThat(restored.paper(quote, 1, "text.shop")).isEqualTo(PAPERS.get("text.shop"));
                assertThat(restored.history(quote.number(), ANNA)).hasSize(1);
            });
            assertThat(restored.save(NODE, PAPERS, "Nordmole", "", ANNA).number().place()).isEqualTo(quotes.size() + 1);
        }
    }
}
