package sledwright.book.store;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/**
 * Where a book is.
 *
 * @param address of a database that several desks share; empty: it is a file
 */
public record BookPlace(Optional<Path> file, Optional<String> address) {

    private static final String SHARED = "jdbc:postgresql:";
    private static final String JDBC = "jdbc:";

    /** A file of that name. */
    public static BookPlace of(Path file) {
        return new BookPlace(Optional.of(file), Optional.empty());
    }

    /** As a user names it; empty where nothing of the kind is known. */
    public static Optional<BookPlace> named(String named) {
        if (named.startsWith(SHARED)) {
            return Optional.of(new BookPlace(Optional.empty(), Optional.of(named)));
        }
        return named.isBlank() || named.startsWith(JDBC) ? Optional.empty() : Optional.of(of(Path.of(named)));
    }

    /** Where it is when nobody says so: among the user's own data. */
    public static BookPlace usual(Map<String, String> environment) {
        String data = environment.getOrDefault("XDG_DATA_HOME", "");
        // As the standard for such folders has it, one that is not absolute counts for nothing.
        Path folder = !data.isEmpty() && Path.of(data).isAbsolute() ? Path.of(data)
                : Path.of(environment.getOrDefault("HOME", System.getProperty("user.home")), ".local", "share");
        return of(folder.resolve("sledwright").resolve("sledwright-book.db"));
    }

    /** As messages call it: without what an address says of its user. */
    @Override
    public String toString() {
        return file.map(Path::toString).orElseGet(() -> address.orElseThrow().replaceFirst("\\?.*", "").replaceFirst("//[^/]*@", "//"));
    }
}
