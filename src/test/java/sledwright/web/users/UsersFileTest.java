package sledwright.web.users;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import sledwright.input.FaultsException;

@DisabledOnOs(OS.WINDOWS)
class UsersFileTest {

    private static final String HASH = "$argon2id$v=19$m=1024,t=1,p=1$c29tc2FsdHNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHApl8ArZWb2GRPPc";

    @TempDir
    private Path folder;

    private UsersFile file(String text) throws IOException {
        Path file = folder.resolve("users.csv");
        Files.deleteIfExists(file);
        Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        Files.writeString(file, text);
        return new UsersFile(file);
    }

    @Test
    void whatIsWrittenIsReadAgainAndIsItsOwnersAlone() throws IOException {
        Map<String, User> users = new LinkedHashMap<>();
        users.put("bert", new User("bert", Role.BENCH, HASH));
        users.put("anna", new User("anna", Role.OWNER, HASH));
        UsersFile file = new UsersFile(folder.resolve("new folder/users.csv"));
        file.write(users);
        file.write(users);
        assertThat(new ArrayList<>(file.read().values())).isEqualTo(List.copyOf(users.values()));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file.path()))).isEqualTo("rw-------");
        assertThat(Files.list(file.path().getParent())).containsExactly(file.path());
    }

    @Test
    void everythingThatIsWrongIsSaidButNoHash() throws IOException {
        UsersFile file = file("name,role,password\nAnna,sales,\"" + HASH + "\"\nbert,boss,\"" + HASH + "\"\ncarl,bench,secret\ncarl,bench,\"" + HASH + "\"\ncarl,bench,\"" + HASH + "\"\n");
        assertThatThrownBy(file::read).isInstanceOf(FaultsException.class).hasMessageContainingAll(
                "users.csv:2: name \"Anna\": must be 1 to 40 of the letters a to z", "users.csv:3: role \"boss\": must be one of sales, purchasing, bench, owner",
                "users.csv:4: password is no hash as 'sledwright users' writes it; maybe set it anew with 'sledwright users password'", "users.csv:6: name \"carl\" stands twice")
                .satisfies(thrown -> assertThat(thrown.getMessage()).doesNotContain("secret", "argon2"));
    }

    @Test
    void aFileThatOthersCanReadIsRefused() throws IOException {
        UsersFile file = file("name,role,password\nanna,sales,\"" + HASH + "\"\n");
        assertThat(file.read()).hasSize(1);
        Files.setPosixFilePermissions(file.path(), PosixFilePermissions.fromString("rw-r-----"));
        assertThatThrownBy(file::read).hasMessageContaining("can be read by others than its owner, and holds passwords, though hashed; maybe run chmod 600 on it");
    }

    @Test
    void whereNobodyMayWriteIsSaid() throws IOException {
        Path taken = Files.writeString(folder.resolve("taken"), "");
        assertThatThrownBy(() -> new UsersFile(taken.resolve("users.csv")).write(Map.of())).isInstanceOf(FaultsException.class).hasMessageContaining("cannot be written (");
    }

    @Test
    void aFileWithoutUsersLetsNobodyIn() throws IOException {
        UsersFile file = file("name,role,password\n");
        assertThatThrownBy(() -> new Staff(file, line -> { })).hasMessageContaining("has no user; maybe add one with 'sledwright users add'");
    }

    @Test
    void whoIsChangedInTheFileIsLoggedOutAndFaultsLeaveAllAsItWas() throws IOException {
        List<String> log = new ArrayList<>();
        UsersFile file = file("name,role,password\nanna,sales,\"" + HASH + "\"\nbert,bench,\"" + HASH + "\"\n");
        Staff staff = new Staff(file, log::add);
        Sessions sessions = new Sessions(() -> 0);
        String anna = sessions.begin(file.read().get("anna"));
        String bert = sessions.begin(file.read().get("bert"));
        file("name,role,password\nanna,boss,\"" + HASH + "\"\n");
        staff.look();
        assertThat(log).singleElement().asString().startsWith("users stay as they were before: ").contains("role \"boss\"");
        assertThat(staff.session(sessions, anna)).isPresent();
        file("name,role,password\nanna,owner,\"" + HASH + "\"\nbert,bench,\"" + HASH + "\"\n");
        staff.look();
        assertThat(staff.session(sessions, anna)).as("another role").isEmpty();
        assertThat(staff.session(sessions, bert)).isPresent();
        assertThat(sessions.size()).isEqualTo(1);
    }
}
