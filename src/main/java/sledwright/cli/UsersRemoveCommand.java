package sledwright.cli;

import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import sledwright.web.users.User;

/** {@code users remove NAME}: one less. */
@Command(
        name = "remove",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Takes somebody out of the file. Whoever is logged in under that name is logged out.")
final class UsersRemoveCommand implements Callable<Integer> {

    @Parameters(paramLabel = "NAME", description = "Whom.")
    private String name;

    @Mixin
    private UsersOptions options;

    @Override
    public Integer call() {
        Map<String, User> users = options.users();
        users.remove(options.user(users, name).name());
        options.file().write(users);
        return ExitCode.DONE;
    }
}
