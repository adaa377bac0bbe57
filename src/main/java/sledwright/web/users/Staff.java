package sledwright.web.users;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.input.Place;

/**
 * The users as their file has them now. A session lasts only while its user stands there as at login: whoever is taken out, gets another
 * role or another password is logged out.
 */
public final class Staff {

    private final UsersFile file;
    private final Consumer<String> log;
    private volatile Map<String, User> users;
    private String seen;

    /**
     * @param log hears when the file has faults later on
     * @throws FaultsException when it has some now
     */
    public Staff(UsersFile file, Consumer<String> log) {
        this.file = file;
        this.log = log;
        seen = looks();
        users = readAny();
    }

    private Map<String, User> readAny() {
        Map<String, User> read = file.read();
        if (read.isEmpty()) {
            throw new FaultsException(List.of(new Fault(Place.of(file.path().toString()),
                    "has no user; maybe add one with 'sledwright users add'")));
        }
        return read;
    }

    /** Looks whether the file has changed; asked for again and again. Where it has faults, the users of before stay. */
    public synchronized void look() {
        String now = looks();
        if (now.equals(seen)) {
            return;
        }
        seen = now;
        try {
            users = readAny();
        } catch (FaultsException faulty) {
            faulty.faults().forEach(fault -> log.accept("users stay as they were before: " + fault));
        }
    }

    private String looks() {
        try {
            BasicFileAttributes as = Files.readAttributes(file.path(), BasicFileAttributes.class);
            return as.size() + " " + as.lastModifiedTime().toInstant() + " " + as.fileKey();
        } catch (IOException gone) {
            return "gone";
        }
    }

    /** The user of that name and password. How long a refusal takes does not say whether there is such a user. */
    public Optional<User> named(String name, String password) {
        Map<String, User> now = users;
        Optional<User> known = Optional.ofNullable(now.get(name));
        boolean right = PasswordHash.matches(password, known.orElseGet(() -> now.values().iterator().next()).hash());
        return right ? known : Optional.empty();
    }

    /** Whether a user is still as it was. */
    boolean knows(User user) {
        return user.equals(users.get(user.name()));
    }

    /** The session of that name, if its user is still the same. */
    public Optional<Session> session(Sessions sessions, String name) {
        return sessions.use(name).filter(session -> {
            boolean known = knows(session.user());
            if (!known) {
                sessions.end(name);
            }
            return known;
        });
    }
}
