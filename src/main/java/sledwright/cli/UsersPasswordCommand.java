package sledwright.cli;

import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import sledwright.web.users.PasswordHash;
import sledwright.web.users.User;

/** {@code users password NAME}: another password. */
@Command(
        name = "password",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Gives somebody another password, which is asked for, or is the first line of standard input. Whoever is logged in"
                + " under that name is logged out.")
final class UsersPasswordCommand implements Callable<Integer> {

    @Parameters(paramLabel = "NAME", description = "Whose.")
    private String name;

    @Mixin
    private UsersOptions options;

    @Override
    public Integer call() {
        Map<String, User> users = options.users();
        User before = options.user(users, name);
        users.put(name, new User(name, before.role(), PasswordHash.of(options.password())));
        options.file().write(users);
        return ExitCode.DONE;
    }
}
