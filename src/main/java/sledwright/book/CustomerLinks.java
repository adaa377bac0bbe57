package sledwright.book;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import sledwright.book.store.Database;
import sledwright.book.store.Sql;
import sledwright.request.CustomerName;

/** The customers' links that the book keeps, each until its last day; then nothing is left of it. */
public final class CustomerLinks {

    private static final String ALL = "SELECT digest, customer, name, request, leeway, until, made_by, made_at FROM customer_link";

    private final Database database;

    CustomerLinks(Database database) {
        this.database = database;
    }

    /** Keeps one, whose request names nobody but its customer; those that are over go. */
    public void keep(CustomerLink link, LocalDate today) {
        String request = link.customer().isEmpty() ? link.request() : Addressing.of(link.request(), link.customer());
        database.write(sql -> {
            sql.change("DELETE FROM customer_link WHERE until < ?", today);
            return sql.change("INSERT INTO customer_link (digest, customer, name, request, leeway, until, made_by, made_at)"
                    + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)", link.digest(), link.customer(), link.name(), request,
                    Leeway.written(link.may()), link.until(), link.made().by(), link.made().at());
        });
    }

    /** The link of that digest, where it is not over. */
    public Optional<CustomerLink> find(String digest, LocalDate today) {
        return database.read(sql -> sql.first(ALL + " WHERE digest = ? AND until >= ?", CustomerLinks::read, digest, today));
    }

    /** Those that are not over, the last first. */
    public List<CustomerLink> all(LocalDate today) {
        return database.read(sql -> sql.all(ALL + " WHERE until >= ? ORDER BY made_at DESC, digest", CustomerLinks::read, today));
    }

    /**
     * Ends one at once.
     *
     * @return whether there was one
     */
    public boolean end(String id) {
        return database.write(sql ->
                sql.change("DELETE FROM customer_link WHERE SUBSTR(digest, 1, ?) = ?", CustomerLink.ID_LETTERS, id) > 0);
    }

    /** All of a customer, also those that are over and not gone yet. */
    static List<CustomerLink> of(Sql sql, String customer) throws SQLException {
        String name = CustomerName.of(customer);
        return sql.all(ALL + " ORDER BY made_at, digest", CustomerLinks::read).stream()
                .filter(link -> CustomerName.of(link.customer()).equals(name)).toList();
    }

    /** Ends all of a customer; returns how many there were. */
    static int erase(Sql sql, String customer) throws SQLException {
        List<CustomerLink> links = of(sql, customer);
        for (CustomerLink link : links) {
            sql.change("DELETE FROM customer_link WHERE digest = ?", link.digest());
        }
        return links.size();
    }

    private static CustomerLink read(ResultSet row) throws SQLException {
        return new CustomerLink(row.getString(1), row.getString(2), row.getString(3), row.getString(4), Leeway.readAll(row.getString(5)),
                LocalDate.parse(row.getString(6)), new CustomerLink.Made(row.getString(7), Instant.parse(row.getString(8))));
    }
}
