package sledwright.book.store;

import java.sql.SQLException;

/** What is done in one transaction; short, for others wait. */
@FunctionalInterface
public interface Work<T> {

    T on(Sql sql) throws SQLException;
}
