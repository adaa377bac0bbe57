package sledwright.web.users;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.book.store.OwnersFile;
import sledwright.input.CsvReader;
import sledwright.input.CsvTable;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Place;
import sledwright.input.Reason;
import sledwright.input.Source;
import sledwright.report.text.Csv;

/** A table of users, {@code name,role,password}, that its owner alone can read. */
public final class UsersFile {

    private static final List<String> COLUMNS = List.of("name", "role", "password");

    private final Path file;

    public UsersFile(Path file) {
        this.file = file;
    }

    public Path path() {
        return file;
    }

    public boolean exists() {
        return Files.exists(file);
    }

    /**
     * Name -> user, in the order of the file.
     *
     * @throws FaultsException with everything that is wrong in it
     */
    public Map<String, User> read() {
        Faults faults = new Faults();
        Map<String, User> users = read(faults);
        faults.throwIfAny();
        return users;
    }

    private Map<String, User> read(Faults faults) {
        Map<String, User> users = new LinkedHashMap<>();
        requireOwners(faults);
        CsvTable table = CsvReader.read(Source.of(file), new CsvReader.Columns(COLUMNS, List.of()), faults);
        for (CsvTable.Row row : table.rows()) {
            user(row, faults).ifPresent(user -> {
                if (users.putIfAbsent(user.name(), user) != null) {
                    faults.add(row.place(), "name \"%s\" stands twice".formatted(user.name()), user.name());
                }
            });
        }
        return users;
    }

    private void requireOwners(Faults faults) {
        try {
            if (exists() && !OwnersFile.isClosed(file)) {
                faults.add(Place.of(file.toString()), "can be read by others than its owner, and holds passwords, though hashed; maybe run"
                        + " chmod 600 on it");
            }
        } catch (IOException unreadable) {
            faults.add(Place.of(file.toString()), "cannot be read (%s)".formatted(Reason.of(unreadable)));
        }
    }

    private static Optional<User> user(CsvTable.Row row, Faults faults) {
        Optional<String> name = row.required("name").filter(field -> {
            if (!User.isName(field.text())) {
                field.fault(User.RIGHT_NAME, faults);
            }
            return User.isName(field.text());
        }).map(field -> field.text());
        Optional<Role> role = row.required("role").flatMap(field -> field.word(Role::named, Role.words(), faults));
        Optional<String> hash = row.required("password").filter(field -> {
            if (!PasswordHash.isHash(field.text())) {
                faults.add(row.place(), "password is no hash as 'sledwright users' writes it; maybe set it anew with 'sledwright users"
                        + " password'");
            }
            return PasswordHash.isHash(field.text());
        }).map(field -> field.text());
        return name.isPresent() && role.isPresent() && hash.isPresent() ? Optional.of(new User(name.get(), role.get(), hash.get()))
                : Optional.empty();
    }

    /** All of it anew: beside its place first, so that nobody reads half of it. */
    public void write(Map<String, User> users) {
        Path fresh = file.resolveSibling(".%s.%s.new".formatted(file.getFileName(), ProcessHandle.current().pid()));
        List<List<Object>> rows = users.values().stream()
                .map(user -> List.<Object>of(user.name(), user.role().toString(), user.hash())).toList();
        try {
            OwnersFile.createFolder(file);
            Files.deleteIfExists(fresh);
            OwnersFile.create(fresh);
            Files.write(fresh, Csv.write(COLUMNS, rows).getBytes(StandardCharsets.UTF_8));
            Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException failed) {
            throw new FaultsException(List.of(new Fault(Place.of(file.toString()), "cannot be written (%s)".formatted(Reason.of(failed)))));
        }
    }
}
