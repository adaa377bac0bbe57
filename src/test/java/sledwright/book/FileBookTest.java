package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static sledwright.book.Shelf.ANNA;
import static sledwright.book.Shelf.Found.NODE;
import static sledwright.book.Shelf.KEPT;
import static sledwright.book.Shelf.PAPERS;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.book.store.BookPlace;
import sledwright.catalog.CatalogReader;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.SheetAnswer;
import sledwright.domain.Catalog;
import sledwright.input.FaultsException;
import sledwright.samples.Folders;

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
            assertThat(restored.save(NODE, KEPT, "Nordmole", "", ANNA).number().place()).isEqualTo(quotes.size() + 1);
        }
    }

    /** A server that goes on writing into the old book would number quotes and keep units beside the new one. */
    @Test
    void nothingIsWrittenOnceAnotherBookStandsInItsPlace() throws IOException {
        Path file = place().file().orElseThrow();
        Path copy = folder.resolve("copy.db");
        save("Nordmole");
        book.backup(copy);
        save("Orchard Surveys");
        Path aside = Files.createDirectory(folder.resolve("aside"));
        for (String end : List.of("", "-wal", "-shm")) {
            Files.move(Path.of(file + end), aside.resolve(file.getFileName() + end));
        }
        String moved = "was moved, or another was put in its place, while it was open; end this program and start it again";
        assertThatThrownBy(() -> save("Nordmole")).isInstanceOf(FaultsException.class).hasMessageContaining(moved);
        Files.copy(copy, file);
        assertThatThrownBy(() -> save("Nordmole")).hasMessageContaining(moved);
        assertThatThrownBy(() -> book.find(BookSearch.everything(), ANNA)).hasMessageContaining(moved);
        try (Book restored = Book.open(place(), "0.1")) {
            assertThat(restored.save(NODE, KEPT, "Nordmole", "", ANNA).number()).hasToString("2026-0002");
        }
        Files.delete(file);
        Files.move(aside.resolve(file.getFileName()), file);
        assertThat(book.find(BookSearch.everything(), ANNA)).hasSize(2);
    }

    /** On a medium that cannot be written the database cannot put its log beside the book. */
    @Test
    void aBookWhoseFolderCannotBeWrittenSaysSo() throws IOException {
        Path file = folder.resolve("fixed.db");
        Book.open(BookPlace.of(file), "0.1").close();
        Files.createDirectory(folder.resolve("fixed.db-wal"));
        assertThatThrownBy(() -> Book.open(BookPlace.of(file), "0.1")).isInstanceOf(FaultsException.class)
                .hasMessageContaining("cannot be opened; the disk and the folder of a book must be such that can be written (");
    }

    /** An enclosure stays with the order as long as there is one; the bench is told where each sled goes. */
    @Test
    void whatHousesTheSledsOfAnOrderStaysWithIt() throws IOException {
        Path shop = Folders.copy(Shelf.SHOP, folder.resolve("frames"));
        offer(shop, "RS-750,A11", "REED-F4,A31,Marsh Trade,used,200,1,2,0,\nRS-750,A11");
        Answered answered = Shelf.answer("kind: order\nname: rack\nlines:\n  web: { machines: 2, require: { cores: 8, memory_gb: 16 }, platforms: [REED-S] }\n", shop);
        SavedQuote order = book.save(answered, KEPT, "Nordmole", "", ANNA);
        Catalog today = CatalogReader.read(shop);
        for (QuoteStep step : List.of(QuoteStep.SEND, QuoteStep.ACCEPT)) {
            book.step(order.number(), step, Optional.empty(), false, Optional.of(today), "", ANNA);
        }
        assertThat(book.reserved(Optional.empty(), ANNA).lots()).extracting(Reserved.Kept::sku).contains("REED-F4", "RS-750");
        offer(shop, "REED-S,A2,Marsh Trade,used,150,1,9,0,\n", "REED-S,A2,Marsh Trade,used,150,1,1,0,\nREED-S,A20,Marsh Trade,used,151,1,1,0,\n");
        Allocated moved = book.allocate(shop, ANNA, Shelf.TERMS);
        assertThat(moved.promises()).extracting(Allocated.Drawn::fate).containsExactly(Allocated.Fate.MOVED);
        book.apply(moved, shop, ANNA);
        OrderAnswer machines = ((SheetAnswer.Machines) QuotedMachines.of(book, order.number(), Optional.empty(), ANNA, Shelf.TERMS)).order();
        assertThat(machines.view().contents().enclosures()).singleElement().satisfies(frame -> assertThat(frame.sleds()).hasSize(2));
        offer(shop, "REED-F4,A31,Marsh Trade,used,200,1,2,0,\n", "");
        Allocated broken = book.allocate(shop, ANNA, Shelf.TERMS);
        assertThat(broken.promises().get(0).lacks()).contains("REED-F4 of lot A31, which houses its sleds: 1 wanted");
        book.apply(broken, shop, ANNA);
        assertThatThrownBy(() -> step(order, QuoteStep.PICK)).hasMessageContaining("not all machines of 2026-0001 have their parts");
    }

    @Test
    void machinesWhosePartsTheCatalogueHasLostAreNotPutTogether() throws IOException {
        Path shop = Folders.copy(Shelf.SHOP, folder.resolve("frames"));
        offer(shop, "RS-750,A11", "REED-F4,A31,Marsh Trade,used,200,1,2,0,\nRS-750,A11");
        book.save(Shelf.answer("kind: order\nname: rack\nlines:\n  web: { machines: 1, require: { cores: 8 }, platforms: [REED-S] }\n", shop), KEPT, "Nordmole", "", ANNA);
        Path frame = shop.resolve("enclosures").resolve(Files.list(shop.resolve("enclosures")).findFirst().orElseThrow().getFileName());
        Files.writeString(frame, Files.readString(frame).replace("sku: REED-F4", "sku: REED-F5"));
        offer(shop, "REED-F4,A31", "REED-F5,A31");
        assertThatThrownBy(() -> QuotedMachines.of(book, new QuoteNumber(2026, 1), Optional.empty(), ANNA, Shelf.TERMS)).hasMessage(
                "REED-F4 of 2026-0001, version 1, rack is not in this catalogue any more; name with --catalog the one that it was answered from, as it was then");
    }
}
