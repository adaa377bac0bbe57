package sledwright.book.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Statements of one transaction. */
public final class Sql {

    /** Makes something of a row. */
    @FunctionalInterface
    public interface Reading<T> {
        T of(ResultSet row) throws SQLException;
    }

    private final Connection connection;

    Sql(Connection connection) {
        this.connection = connection;
    }

    /** How many rows it changed. */
    public int change(String statement, Object... values) throws SQLException {
        try (PreparedStatement prepared = prepared(statement, values)) {
            return prepared.executeUpdate();
        }
    }

    /** The same statement for each of several rows of values. */
    public void changeEach(String statement, List<List<Object>> rows) throws SQLException {
        if (rows.isEmpty()) {
            return;
        }
        try (PreparedStatement prepared = connection.prepareStatement(statement)) {
            for (List<Object> row : rows) {
                set(prepared, row.toArray());
                prepared.addBatch();
            }
            prepared.executeBatch();
        }
    }

    /** All rows. */
    public <T> List<T> all(String query, Reading<T> reading, Object... values) throws SQLException {
        try (PreparedStatement prepared = prepared(query, values); ResultSet rows = prepared.executeQuery()) {
            List<T> all = new ArrayList<>();
            while (rows.next()) {
                all.add(reading.of(rows));
            }
            return all;
        }
    }

    /** The first row. */
    public <T> Optional<T> first(String query, Reading<T> reading, Object... values) throws SQLException {
        return all(query, reading, values).stream().findFirst();
    }

    private PreparedStatement prepared(String statement, Object... values) throws SQLException {
        PreparedStatement prepared = connection.prepareStatement(statement);
        try {
            set(prepared, values);
            return prepared;
        } catch (SQLException unset) {
            prepared.close();
            throw unset;
        }
    }

    private static void set(PreparedStatement prepared, Object... values) throws SQLException {
        for (int place = 0; place < values.length; place++) {
            Object value = values[place];
            if (value instanceof byte[] bytes) {
                prepared.setBytes(place + 1, bytes);
            } else if (value instanceof Integer number) {
                prepared.setInt(place + 1, number);
            } else if (value instanceof Long number) {
                prepared.setLong(place + 1, number);
            } else {
                // Days and moments stand as text, in the form of ISO 8601, which sorts as time does.
                prepared.setString(place + 1, value == null ? null : value.toString());
            }
        }
    }
}
