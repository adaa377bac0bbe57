package sledwright.book.store;

import java.nio.file.Path;
import java.sql.SQLException;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import java.util.List;

/** What keeps the book. Threads may share one. */
public interface Database extends AutoCloseable {

    /** Reads what was true at one moment; nobody waits for it. */
    <T> T read(Work<T> work);

    /** Changes all or nothing, one after another; what it returned from is on the disk. */
    <T> T write(Work<T> work);

    /**
     * A whole copy of what was true at one moment, readable by its owner alone.
     *
     * @param target where nothing is yet
     */
    void backup(Path target);

    /** Writes the whole anew without what was deleted, so that nothing of it is left; others wait meanwhile. */
    void compact();

    @Override
    void close();

    /** @throws FaultsException when it cannot be opened, or is newer than this program */
    static Database open(BookPlace place) {
        return place.file().isPresent() ? SqliteDatabase.open(place) : PostgresDatabase.open(place);
    }

    /** What is said when it fails. */
    static FaultsException fault(BookPlace place, String problem) {
        return new FaultsException(List.of(new Fault(place.toString(), 0, problem)));
    }

    /** What is said when it fails, with the database's own reason in one line. */
    static FaultsException fault(BookPlace place, String problem, SQLException failed) {
        String reason = String.valueOf(failed.getMessage()).replaceAll("\\s+", " ").strip();
        return fault(place, "%s (%s)".formatted(problem, reason));
    }
}
