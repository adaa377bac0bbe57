package sledwright.book.store;

import java.sql.SQLException;
import java.sql.Statement;
import java.util.function.Function;

/**
 * Somebody's change while it waits to be written, maybe together with others. It is done once all of them are on the disk. Only one thread
 * at a time works on it, and the lock that hands it on makes what was written seen.
 */
final class WaitingWrite<T> {

    private final Work<T> work;
    private T made;
    private Throwable wrong;
    private boolean done;

    WaitingWrite(Work<T> work) {
        this.work = work;
    }

    /**
     * What goes wrong in it leaves nothing of it, and all of the others. Marks are set and left by hand: the driver's own turn on that it
     * begins transactions by itself.
     */
    void run(Sql sql, Statement statement) throws SQLException {
        statement.execute("SAVEPOINT one");
        try {
            made = work.on(sql);
        } catch (SQLException | RuntimeException | Error failed) {
            if (!rolledBack(statement)) {
                throw failed;
            }
            wrong = failed;
        }
        statement.execute("RELEASE one");
    }

    /** Where the database has ended everything already, as on a full disk, none of the others is there either. */
    private static boolean rolledBack(Statement statement) {
        try {
            statement.execute("ROLLBACK TO one");
            return true;
        } catch (SQLException over) {
            return false;
        }
    }

    void done() {
        done = true;
    }

    /** Nothing of any of them is there. */
    void failed(Throwable failed) {
        wrong = failed;
        done = true;
    }

    boolean isDone() {
        return done;
    }

    /** @param words what is said when the database fails */
    T result(Function<SQLException, ? extends RuntimeException> words) {
        if (wrong instanceof SQLException failed) {
            throw words.apply(failed);
        }
        if (wrong instanceof Error defect) {
            throw defect;
        }
        if (wrong != null) {
            throw (RuntimeException) wrong;
        }
        return made;
    }
}
