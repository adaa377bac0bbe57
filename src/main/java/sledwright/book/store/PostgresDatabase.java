package sledwright.book.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import org.flywaydb.core.api.FlywayException;
import sledwright.input.FaultsException;

/** A book in a database that several desks share. */
final class PostgresDatabase implements Database {

    private static final Map<String, String> WORDS = Map.of("keep_history", """
            CREATE FUNCTION history_stands() RETURNS trigger LANGUAGE plpgsql AS $keep$
            BEGIN RAISE EXCEPTION 'history is only added to'; END $keep$;
            CREATE TRIGGER history_stays BEFORE UPDATE OR DELETE ON history FOR EACH ROW EXECUTE FUNCTION history_stands();
            """);
    private static final int MOST_CONNECTIONS = 10;
    private static final long PATIENCE_MS = 10_000;

    private final BookPlace place;
    private final HikariDataSource pool;

    private PostgresDatabase(BookPlace place, HikariDataSource pool) {
        this.place = place;
        this.pool = pool;
    }

    static PostgresDatabase open(BookPlace place) {
        HikariDataSource pool = pool(place);
        try {
            upToDate(place, pool);
            return new PostgresDatabase(place, pool);
        } catch (SQLException failed) {
            pool.close();
            throw failed(place, failed);
        } catch (RuntimeException refused) {
            pool.close();
            throw refused;
        }
    }

    private static HikariDataSource pool(BookPlace place) {
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(place.address().orElseThrow());
        config.setMaximumPoolSize(MOST_CONNECTIONS);
        config.setMinimumIdle(1);
        config.setConnectionTimeout(PATIENCE_MS);
        config.setAutoCommit(false);
        try {
            return new HikariDataSource(config);
        } catch (HikariPool.PoolInitializationException unreachable) {
            Throwable why = unreachable.getCause();
            throw why instanceof SQLException failed ? Database.fault(place, "cannot be reached", failed)
                    : Database.fault(place, "cannot be reached");
        }
    }

    private static void upToDate(BookPlace place, HikariDataSource pool) throws SQLException {
        Migrations.State state;
        try (Connection connection = pool.getConnection()) {
            state = Migrations.state(connection, false);
            connection.rollback();
        }
        if (state == Migrations.State.NEWER) {
            throw Database.fault(place, "was written by a newer version of this program, which knows more than this one; use that version");
        }
        if (state != Migrations.State.CURRENT) {
            try {
                Migrations.migrate(pool, WORDS, Migrations.LATEST);
            } catch (FlywayException failed) {
                throw Migrations.failed(place, failed);
            }
        }
    }

    @Override
    public <T> T read(Work<T> work) {
        return transaction(Connection.TRANSACTION_REPEATABLE_READ, work);
    }

    @Override
    public <T> T write(Work<T> work) {
        return transaction(Connection.TRANSACTION_READ_COMMITTED, work);
    }

    private <T> T transaction(int isolation, Work<T> work) {
        try (Connection connection = pool.getConnection()) {
            connection.setTransactionIsolation(isolation);
            boolean done = false;
            try {
                T result = work.on(new Sql(connection));
                connection.commit();
                done = true;
                return result;
            } finally {
                if (!done) {
                    connection.rollback();
                }
            }
        } catch (SQLException failed) {
            throw failed(place, failed);
        }
    }

    @Override
    public void compact() {
        // Its server clears away what was deleted.
    }

    @Override
    public void backup(Path target) {
        throw Database.fault(place, "a shared database is backed up with its own tools, such as pg_dump");
    }

    private static FaultsException failed(BookPlace place, SQLException failed) {
        return Database.fault(place, "the database failed", failed);
    }

    @Override
    public void close() {
        pool.close();
    }
}
