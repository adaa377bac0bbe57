package sledwright.book;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import sledwright.book.store.BookPlace;
import sledwright.book.store.SharedServer;
import sledwright.book.store.WithSharedServer;
import sledwright.input.FaultsException;

@WithSharedServer
class SharedBookTest extends BookTest {

    @Override
    BookPlace place() {
        return SharedServer.fresh();
    }

    @Test
    void aSharedDatabaseIsBackedUpWithItsOwnTools() {
        assertThatThrownBy(() -> book.backup(folder.resolve("copy.db"))).isInstanceOf(FaultsException.class)
                .hasMessageContaining("a shared database is backed up with its own tools, such as pg_dump");
    }
}
