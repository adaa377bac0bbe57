package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import sun.misc.Signal;
import sledwright.samples.Folders;
import sledwright.web.Wire;
import sledwright.web.users.PasswordHash;
import sledwright.web.users.User;
import sledwright.web.users.UsersFile;

class UsersCommandTest {

    @TempDir
    private Path folder;

    private Run run(String in, String... arguments) {
        String[] all = new String[arguments.length + 3];
        System.arraycopy(arguments, 0, all, 1, arguments.length);
        all[0] = "users";
        all[all.length - 2] = "--users";
        all[all.length - 1] = file().toString();
        return Run.piped(in, all);
    }

    private Path file() {
        return folder.resolve("users.csv");
    }

    private void assertDone(Run run) {
        assertThat(run).isEqualTo(new Run(ExitCode.DONE, "", ""));
    }

    @Test
    void usersComeChangeAndGo() {
        assertDone(run("a password of anna\r\nand more", "add", "anna", "--role", "sales"));
        assertDone(run("a password of bert", "add", "bert", "--role", "owner"));
        assertThat(run("", "list").out()).isEqualTo("anna sales\nbert owner\n");
        Map<String, User> before = new UsersFile(file()).read();
        assertThat(PasswordHash.matches("a password of anna", before.get("anna").hash())).isTrue();
        assertDone(run("another of anna's\n", "password", "anna"));
        Map<String, User> after = new UsersFile(file()).read();
        assertThat(PasswordHash.matches("another of anna's", after.get("anna").hash())).isTrue();
        assertThat(after.get("bert")).isEqualTo(before.get("bert"));
        assertDone(run("", "remove", "anna"));
        assertThat(run("", "list").out()).isEqualTo("bert owner\n");
    }

    @Test
    void whatIsWrongIsSaidAndNothingIsWritten() throws IOException {
        assertThat(run("x", "add", "anna", "--role", "boss").err()).contains("'boss' must be one of sales, purchasing, bench, owner");
        assertThat(run("x", "add", "anna", "--role", "sales").err()).isEqualTo("sledwright: a password must have from 12 to 256 characters\n");
        assertThat(run(" ".repeat(12), "add", "anna", "--role", "sales").err()).isEqualTo("sledwright: a password must not be of blanks alone\n");
        assertThat(run("x".repeat(257), "add", "anna", "--role", "sales").err()).contains("a password must have from 12 to 256 characters");
        assertThat(run("a password of anna", "add", "An na", "--role", "sales").err())
                .contains("the name 'An na' must be 1 to 40 of the letters a to z, digits, dots, hyphens and underscores, and begin with a letter or digit");
        assertThatThrownBy(() -> UsersOptions.agreed("one".toCharArray(), "other".toCharArray())).hasMessage("the two passwords differ");
        assertThat(UsersOptions.agreed("one".toCharArray(), "one".toCharArray())).isEqualTo("one");
        assertThat(file()).doesNotExist();
        assertThat(run("", "list").err()).contains("users.csv: there is no such file");
        assertThat(run("", "remove", "carl").err()).contains("users.csv has no user 'carl'; it has none");
        assertDone(run("a password of anna", "add", "anna", "--role", "sales"));
        byte[] before = Files.readAllBytes(file());
        assertThat(run("a password of anna", "add", "anna", "--role", "owner").err()).contains("users.csv has a user 'anna' already.\nMaybe give another password with 'users password', or remove it first.");
        assertThat(run("", "password", "carl").err()).contains("users.csv has no user 'carl'; it has anna");
        assertThat(run("short", "password", "anna").code()).isEqualTo(ExitCode.USAGE);
        assertThat(Files.readAllBytes(file())).isEqualTo(before);
        assertThat(Run.of("users").err()).contains("a step is missing; it is one of add, password, remove, list");
        assertThat(new String(before, StandardCharsets.UTF_8)).doesNotContain("a password of anna");
    }

    @Test
    void aPasswordThatIsNoTextIsRefused() {
        Run run = Run.piped(new byte[] {(byte) 0xff, (byte) 0xfe, '\n'}, "users", "add", "anna", "--role", "sales", "--users", file().toString());
        assertThat(run.err()).isEqualTo("sledwright: the password on standard input cannot be read; it must be UTF-8\n");
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void passwordsThatComeUnencryptedAreWarnedOf() throws Exception {
        assertDone(run("a password of anna", "add", "anna", "--role", "sales"));
        PipedInputStream seen = new PipedInputStream();
        PipedOutputStream out = new PipedOutputStream(seen);
        CompletableFuture<Run> serving = CompletableFuture.supplyAsync(() -> Run.into(out, Map.of(), false, "serve", "--catalog", Folders.SHOP.toString(), "--port", "0",
                "--host", "127.0.0.2", "--users", file().toString()));
        String ready = new BufferedReader(new InputStreamReader(seen, StandardCharsets.UTF_8)).readLine();
        assertThat(ready).startsWith("ready http://127.0.0.2:");
        URI address = URI.create(ready.substring("ready ".length()));
        assertThat(Wire.get(address, "/api/health").status()).isEqualTo(200);
        assertThat(Wire.get(address, "/", "Accept: text/html").head()).startsWith("HTTP/1.1 303").contains("Location: /login");
        Signal.raise(new Signal("INT"));
        assertThat(serving.get(10, TimeUnit.SECONDS).err())
                .contains("passwords come unencrypted over the network; maybe put a server with TLS before this one, and say --public https://...");
    }

    @Test
    void everyAddressOfTheMachineNeedsANameByWhichBrowsersReachIt() {
        assertDone(run("a password of anna", "add", "anna", "--role", "sales"));
        Run everywhere = Run.of("serve", "--catalog", "catalogs/heronfold-yard", "--host", "0.0.0.0", "--users", file().toString());
        assertThat(everywhere.code()).isEqualTo(ExitCode.USAGE);
        assertThat(everywhere.err()).contains("--host 0.0.0.0 is every address of this machine, and none of them is a name of the server.\nMaybe say with --public by which address browsers reach it.");
    }
}
