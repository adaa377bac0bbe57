package sledwright.web.door;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.web.users.Role;

/**
 * What each role may do, address by address. What stands nowhere is the owner's alone, and counts as a change unless it only reads.
 */
public final class Rights {

    private static final Set<String> READING = Set.of("GET", "HEAD");

    /** What is done at an address. */
    enum Kind {
        /** Shows something. */
        READS,
        /** Sends something to have it answered; nothing is kept of it. */
        ASKS,
        /** Changes what is kept. */
        CHANGES,
        /** For everybody, logged in or not. */
        OPEN
    }

    /**
     * One row.
     *
     * @param path  a star stands for one step, two at the end for all that follows
     * @param roles none: everybody, for whom it is open
     */
    public record Right(Kind kind, String path, Set<Role> roles) {

        private static Right of(Kind kind, String path, Role... roles) {
            EnumSet<Role> all = EnumSet.of(Role.OWNER);
            all.addAll(Arrays.asList(roles));
            return new Right(kind, path, all);
        }

        private static Right open(String path) {
            return new Right(Kind.OPEN, path, EnumSet.allOf(Role.class));
        }

        boolean isOpen() {
            return kind == Kind.OPEN;
        }

        boolean changes() {
            return kind == Kind.CHANGES;
        }

        boolean allows(Role role) {
            return roles.contains(role);
        }

        private boolean isAbout(String method, String asked) {
            return isReading(kind, method) && (path.endsWith("**") ? asked.startsWith(path.substring(0, path.length() - 2))
                    : asked.matches(path.replace("*", "[^/]+")));
        }

        private static boolean isReading(Kind kind, String method) {
            return kind == Kind.OPEN || (kind == Kind.READS) == READING.contains(method);
        }
    }

    private static final Role[] ALL = Role.values();
    private static final Role[] ASKING = {Role.SALES, Role.PURCHASING};

    /** The first that is about an address counts. */
    public static final List<Right> TABLE = Stream.of(
            Stream.of("/login", "/assets/**", "/api/health", "/api/login", "/for/**").map(Right::open),
            Stream.of("/logout", "/api/logout").map(path -> Right.of(Kind.CHANGES, path, ALL)),
            Stream.of("/work", "/board", "/catalogue", "/api/me", "/api/openapi.json").map(path -> Right.of(Kind.READS, path, ALL)),
            Stream.of("/api/book/*/sheet").map(path -> Right.of(Kind.READS, path, ALL)),
            Stream.of("/", "/book", "/asked", "/promises", "/api/book", "/api/book/**").map(path -> Right.of(Kind.READS, path, ASKING)),
            Stream.of("/api/book/allocate", "/page/allocate").map(path -> Right.of(Kind.ASKS, path, ASKING)),
            Stream.of(Right.of(Kind.CHANGES, "/api/book/allocate/apply", Role.PURCHASING)),
            Stream.of("/api/book/*/pick", "/api/book/*/deliver").map(path -> Right.of(Kind.CHANGES, path, Role.SALES, Role.BENCH)),
            Stream.of("/api/book", "/api/book/**").map(path -> Right.of(Kind.CHANGES, path, Role.SALES)),
            Stream.of(Right.of(Kind.READS, "/api/links", Role.SALES), Right.of(Kind.CHANGES, "/api/links", Role.SALES),
                    Right.of(Kind.CHANGES, "/api/links/*/end", Role.SALES)),
            Stream.of("/api/check", "/page/work", "/page/board", "/page/hand", "/page/sheet", "/page/load")
                    .map(path -> Right.of(Kind.ASKS, path, ALL)),
            Stream.of("/api/quote", "/api/compare", "/api/order", "/api/upgrade", "/api/mail", "/page/answer", "/page/steps",
                    "/page/chart", "/page/offer").map(path -> Right.of(Kind.ASKS, path, ASKING)),
            Stream.of(Right.of(Kind.READS, "/stock", Role.PURCHASING)),
            Stream.of("/api/restock", "/page/plan", "/page/demand", "/page/import").map(path -> Right.of(Kind.ASKS, path, Role.PURCHASING)),
            Stream.of(Right.of(Kind.CHANGES, "/page/import/apply", Role.PURCHASING)))
            .flatMap(some -> some).toList();

    private static final Right OWNERS_READING = Right.of(Kind.READS, "**");
    private static final Right OWNERS_CHANGING = Right.of(Kind.CHANGES, "**");

    private Rights() {
    }

    static Right of(String method, String path) {
        return TABLE.stream().filter(right -> right.isAbout(method, path)).findFirst()
                .orElse(READING.contains(method) ? OWNERS_READING : OWNERS_CHANGING);
    }
}
