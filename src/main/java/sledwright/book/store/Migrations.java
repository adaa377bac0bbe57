package sledwright.book.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import sledwright.input.FaultsException;

/** The steps that bring a database up to date. Each stands in a file of its own under {@code sledwright/book} and is never changed. */
final class Migrations {

    /** The last step that this program knows. */
    static final int LATEST = 8;

    /** What a database says of itself. */
    enum State {
        EMPTY, FOREIGN, OLDER, CURRENT, NEWER
    }

    private static final String STEPS = "book_migration";

    private Migrations() {
    }

    /**
     * How far a database is.
     *
     * @param own whether nothing but a book is expected in it
     */
    static State state(Connection connection, boolean own) throws SQLException {
        Set<String> tables = new HashSet<>();
        try (ResultSet found = connection.getMetaData().getTables(null, connection.getSchema(), "%", new String[] {"TABLE"})) {
            while (found.next()) {
                tables.add(found.getString("TABLE_NAME"));
            }
        }
        if (!tables.contains(STEPS)) {
            return own && !tables.isEmpty() ? State.FOREIGN : State.EMPTY;
        }
        int reached = reached(connection);
        return reached == 0 ? State.EMPTY : reached < LATEST ? State.OLDER : reached == LATEST ? State.CURRENT : State.NEWER;
    }

    private static int reached(Connection connection) throws SQLException {
        int reached = 0;
        try (Statement statement = connection.createStatement(); ResultSet steps = statement.executeQuery(
                "SELECT version FROM book_migration WHERE success")) {
            while (steps.next()) {
                String version = steps.getString(1);
                reached = Math.max(reached, version == null ? 0 : Integer.parseInt(version));
            }
        }
        return reached;
    }

    /** What is said when that fails. */
    static FaultsException failed(BookPlace place, FlywayException failed) {
        return Database.fault(place, "could not be brought up to date (%s)".formatted(failed.getMessage().lines().findFirst().orElse("")));
    }

    /** @param words what the dialect of the database has other words for */
    static void migrate(DataSource database, Map<String, String> words, int to) {
        Flyway.configure(Migrations.class.getClassLoader()).dataSource(database)
                .locations("classpath:sledwright/book").table(STEPS).placeholders(words).target(String.valueOf(to)).load().migrate();
    }
}
