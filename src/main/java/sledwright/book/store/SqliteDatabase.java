package sledwright.book.store;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.ReentrantLock;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteJDBCLoader;
import sledwright.input.FaultsException;
import sledwright.input.Reason;

/**
 * A book in a file. Transactions that write begin as such: one that only finds out later that it writes may have to be begun again, again
 * and again. Within the process writers take turns in the order in which they came, and between processes the file's own lock decides.
 */
final class SqliteDatabase implements Database {

    /** How an append-only table is kept so. */
    static final Map<String, String> WORDS = Map.of("keep_history", """
            CREATE TRIGGER history_stands BEFORE UPDATE ON history BEGIN SELECT RAISE(ABORT, 'history is only added to'); END;
            CREATE TRIGGER history_stays BEFORE DELETE ON history BEGIN SELECT RAISE(ABORT, 'history is only added to'); END;
            """);

    private static final int PATIENCE_MS = 30_000;
    private static final int MOST_TOGETHER = 16;

    private final BookPlace place;
    private final SQLiteDataSource source;
    private final ReentrantLock turn = new ReentrantLock(true);
    private final ConcurrentLinkedQueue<WaitingWrite<?>> waiting = new ConcurrentLinkedQueue<>();
    private final Connection writer;
    private final Optional<Object> opened;
    private final ConcurrentLinkedDeque<Connection> readers = new ConcurrentLinkedDeque<>();

    private SqliteDatabase(BookPlace place, SQLiteDataSource source, Connection writer) {
        this.place = place;
        this.source = source;
        this.writer = writer;
        opened = key();
    }

    /** By what the system knows the file that stands in the book's place; empty where there is none, or where it has no such thing. */
    private Optional<Object> key() {
        try {
            return Optional.ofNullable(Files.readAttributes(place.file().orElseThrow(), BasicFileAttributes.class).fileKey());
        } catch (IOException none) {
            return Optional.empty();
        }
    }

    /** What is written after somebody has moved the book, or gone back to a backup, would be in a file that nobody looks at. */
    private void requireInPlace() {
        if (!key().equals(opened)) {
            throw Database.fault(place, "was moved, or another was put in its place, while it was open;"
                    + " end this program and start it again");
        }
    }

    static SqliteDatabase open(BookPlace place) {
        return open(place, Migrations.LATEST, PATIENCE_MS);
    }

    /**
     * @param to       the step up to which it is brought
     * @param patience milliseconds for which to wait for another process
     */
    static SqliteDatabase open(BookPlace place, int to, int patience) {
        Path file = place.file().orElseThrow();
        requireDriver(place);
        try {
            if (Files.isDirectory(file)) {
                throw Database.fault(place, "is a folder; a book is a file");
            }
            if (!Files.exists(file)) {
                create(place, file, to, patience);
            }
            OwnersFile.close(file);
            SQLiteDataSource source = source(file, SQLiteConfig.JournalMode.WAL, patience);
            upToDate(place, source, to);
            return new SqliteDatabase(place, source, source.getConnection());
        } catch (IOException unreachable) {
            throw Database.fault(place, "cannot be reached (%s)".formatted(Reason.of(unreachable)));
        } catch (SQLException failed) {
            throw failed(place, failed);
        }
    }

    /** The driver unpacks its part for this system into the folder for temporary files and loads it from there. */
    private static void requireDriver(BookPlace place) {
        try {
            if (SQLiteJDBCLoader.initialize()) {
                return;
            }
        } catch (Exception unloaded) {
            // Said below: what is wrong is the folder, whatever the driver makes of it.
        }
        throw Database.fault(place, ("cannot be opened, for SQLite cannot be unpacked into the folder for temporary files, %s,"
                + " or not be run from there; name another with SLEDWRIGHT_JAVA_OPTIONS=-Djava.io.tmpdir=FOLDER")
                .formatted(System.getProperty("java.io.tmpdir")));
    }

    /** Makes it whole beside its place first, so that nobody finds half a book there; of two at once the second uses the first's. */
    private static void create(BookPlace place, Path file, int to, int patience) throws IOException, SQLException {
        OwnersFile.createFolder(file);
        Path fresh = file.resolveSibling(".%s.%s.%s.new".formatted(file.getFileName(), ProcessHandle.current().pid(),
                Thread.currentThread().getId()));
        Files.deleteIfExists(fresh);
        OwnersFile.create(fresh);
        try {
            migrate(place, source(fresh, SQLiteConfig.JournalMode.DELETE, patience), to);
            // Of several that open it at once, none should find it still to be turned into what all use.
            source(fresh, SQLiteConfig.JournalMode.WAL, patience).getConnection().close();
            try {
                Files.createLink(file, fresh);
            } catch (UnsupportedOperationException noLinks) {
                Files.move(fresh, file);
            }
        } catch (FileAlreadyExistsException another) {
            // What the other made is as good.
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    private static SQLiteDataSource source(Path file, SQLiteConfig.JournalMode journal, int patience) {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(patience);
        config.setJournalMode(journal);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        // What is erased is overwritten, not only left out of the list of pages.
        config.setPragma(SQLiteConfig.Pragma.SECURE_DELETE, "true");
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
        return source;
    }

    private static void upToDate(BookPlace place, SQLiteDataSource source, int to) throws SQLException {
        Migrations.State state;
        try (Connection connection = source.getConnection()) {
            state = Migrations.state(connection, true);
            if (state == Migrations.State.OLDER) {
                Path file = place.file().orElseThrow();
                Path copy = file.resolveSibling("%s.before-%s".formatted(file.getFileName(), to));
                if (!Files.exists(copy)) {
                    copy(place, connection, copy);
                }
            }
        }
        switch (state) {
            case FOREIGN -> throw Database.fault(place, "is a database of another program; name a file of its own for the book");
            case NEWER -> throw Database.fault(place, "was written by a newer version of this program, which knows more than this one;"
                    + " use that version");
            case EMPTY, OLDER -> migrate(place, source, to);
            case CURRENT -> { }
        }
    }

    private static void migrate(BookPlace place, SQLiteDataSource source, int to) {
        try {
            Migrations.migrate(source, WORDS, to);
        } catch (FlywayException failed) {
            try (Connection connection = source.getConnection()) {
                // Another process may have done it meanwhile.
                if (Migrations.state(connection, true) == Migrations.State.CURRENT) {
                    return;
                }
            } catch (SQLException worse) {
                failed.addSuppressed(worse);
            }
            throw Migrations.failed(place, failed);
        }
    }

    @Override
    public <T> T read(Work<T> work) {
        requireInPlace();
        try {
            Connection free = readers.poll();
            Connection reader = free == null ? source.getConnection() : free;
            T read = transaction(reader, "BEGIN", work);
            readers.push(reader);
            return read;
        } catch (SQLException failed) {
            throw failed(place, failed);
        }
    }

    @Override
    public <T> T write(Work<T> work) {
        WaitingWrite<T> mine = new WaitingWrite<>(work);
        waiting.add(mine);
        turn.lock();
        try {
            if (!mine.isDone()) {
                together(first());
            }
        } finally {
            turn.unlock();
        }
        return mine.result(failed -> failed(place, failed));
    }

    private List<WaitingWrite<?>> first() {
        List<WaitingWrite<?>> first = new ArrayList<>();
        for (WaitingWrite<?> next = waiting.poll(); next != null; next = first.size() < MOST_TOGETHER ? waiting.poll() : null) {
            first.add(next);
        }
        return first;
    }

    /** Whoever waits is written with whoever has the turn, so that the disk is waited for once; each by itself comes to all or nothing. */
    private void together(List<WaitingWrite<?>> writes) {
        try (Statement marks = writer.createStatement()) {
            requireInPlace();
            transaction(writer, "BEGIN IMMEDIATE", sql -> {
                for (WaitingWrite<?> write : writes) {
                    write.run(sql, marks);
                }
                return null;
            });
            writes.forEach(WaitingWrite::done);
        } catch (SQLException | RuntimeException | Error failed) {
            writes.forEach(write -> write.failed(failed));
        }
    }

    /** Begun and ended by hand: the driver would begin the next one at once, and hold the file's lock for as long as nothing is done. */
    private static <T> T transaction(Connection connection, String begin, Work<T> work) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(begin);
            boolean done = false;
            try {
                T result = work.on(new Sql(connection));
                statement.execute("COMMIT");
                done = true;
                return result;
            } finally {
                if (!done) {
                    rollBack(statement);
                }
            }
        }
    }

    private static void rollBack(Statement statement) {
        try {
            statement.execute("ROLLBACK");
        } catch (SQLException over) {
            // A full disk has ended the transaction already; what failed is being thrown.
        }
    }

    @Override
    public void compact() {
        turn.lock();
        try (Statement statement = writer.createStatement()) {
            statement.execute("VACUUM");
            statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
        } catch (SQLException failed) {
            throw failed(place, failed);
        } finally {
            turn.unlock();
        }
    }

    @Override
    public void backup(Path target) {
        try (Connection connection = source.getConnection()) {
            copy(place, connection, target);
        } catch (SQLException failed) {
            throw failed(place, failed);
        }
    }

    /** Whole or not at all: beside the target first. */
    private static void copy(BookPlace place, Connection connection, Path target) throws SQLException {
        Path fresh = target.resolveSibling(".%s.%s.new".formatted(target.getFileName(), ProcessHandle.current().pid()));
        try {
            Files.deleteIfExists(fresh);
            // The database takes an empty file for a new one and leaves its rights as they are.
            OwnersFile.create(fresh);
            try (Statement statement = connection.createStatement()) {
                statement.execute("VACUUM INTO '%s'".formatted(fresh.toAbsolutePath().toString().replace("'", "''")));
            }
            Files.move(fresh, target);
        } catch (FileAlreadyExistsException there) {
            throw Database.fault(BookPlace.of(target), "is there already; name a file that is not");
        } catch (IOException unreachable) {
            throw Database.fault(BookPlace.of(target), "the copy cannot be written (%s)".formatted(Reason.of(unreachable)));
        } finally {
            deleteQuietly(fresh);
        }
    }

    private static void deleteQuietly(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException left) {
            // What failed before it is being thrown.
        }
    }

    private static FaultsException failed(BookPlace place, SQLException failed) {
        int code = failed.getErrorCode() & 0xFF;
        if (code == SQLiteErrorCode.SQLITE_FULL.code) {
            return Database.fault(place, "nothing was written, for the disk is full");
        }
        if (code == SQLiteErrorCode.SQLITE_NOTADB.code || code == SQLiteErrorCode.SQLITE_CORRUPT.code) {
            return Database.fault(place, "is no book, or is damaged; go back to a backup", failed);
        }
        if (code == SQLiteErrorCode.SQLITE_BUSY.code) {
            return Database.fault(place, "another process has been writing to it for too long; try again");
        }
        if (code == SQLiteErrorCode.SQLITE_CANTOPEN.code || code == SQLiteErrorCode.SQLITE_READONLY.code) {
            return Database.fault(place, "cannot be opened; the disk and the folder of a book must be such that can be written", failed);
        }
        return Database.fault(place, "the database failed", failed);
    }

    @Override
    public void close() {
        readers.forEach(SqliteDatabase::closeQuietly);
        turn.lock();
        try {
            closeQuietly(writer);
        } finally {
            turn.unlock();
        }
    }

    private static void closeQuietly(Connection connection) {
        try {
            connection.close();
        } catch (SQLException over) {
            // Everything that was said to be done is on the disk.
        }
    }
}
