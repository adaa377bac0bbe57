package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.book.store.BookPlace;

/** Quotes that versions before addressed to another than their customer. */
class AddressedQuotesTest {

    @TempDir
    Path folder;

    @Test
    void theyLoseWhatNamesACustomerWhoIsErased() {
        NewVersion plain = Shelf.version(List.of(Map.of("L1", 1)), Shelf.DAY.plusDays(5));
        Asked asked = new Asked("node", "kind: quote\ncustomer: [Fenland, Dyke 2]\n".getBytes(StandardCharsets.UTF_8), List.of(), Shelf.SHOP);
        byte[] letter = "Dear Fenland,\n".getBytes(StandardCharsets.UTF_8);
        NewVersion old = new NewVersion(asked, plain.head(), plain.catalog(), plain.options(), List.of("node", "fenland", "dyke 2"),
                NewVersion.packed(Map.of("text.shop", letter, "json.shop", letter, "text.customer", letter, "pdf.customer", letter)));
        try (Book book = Book.open(BookPlace.of(folder.resolve("book.db")), "0.1")) {
            book.save(old, "Fenland", "", Shelf.ANNA);
            SavedQuote other = book.save(old, "Rival Ltd", "", Shelf.ANNA);
            assertThat(book.erase("Fenland", Shelf.ANNA)).isEqualTo(new Erased(1, 0));
            assertThat(new String(book.asked(other).request(), StandardCharsets.UTF_8)).isEqualTo("kind: quote\ncustomer: [\"Rival Ltd\"]\n");
            assertThatThrownBy(() -> book.paper(other, 1, "pdf.customer")).hasMessage("2026-0002 is not kept as pdf; it is kept as json, text");
            assertThat(book.paper(other, 1, "json.shop")).isEqualTo(letter);
            assertThat(book.find(new BookSearch(Optional.empty(), Optional.empty(), Optional.of("dyke"), Optional.empty(), Optional.empty(), Optional.empty()), Shelf.ANNA)).isEmpty();
            assertThat(book.history(other.number(), Shelf.ANNA)).extracting(HistoryEntry::detail).containsExactly("", "papers that were addressed to another");
            assertThat(book.find(other.number(), Shelf.ANNA).state()).isEqualTo(QuoteState.DRAFT);
        }
    }
}
