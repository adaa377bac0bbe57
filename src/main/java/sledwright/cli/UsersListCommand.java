package sledwright.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code users list}: names and roles. */
@Command(
        name = "list",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Lists who may use the server, and in which role.")
final class UsersListCommand implements Callable<Integer> {

    @Mixin
    private UsersOptions options;

    @Override
    public Integer call() {
        PrintWriter out = new PrintWriter(options.terminal().out(), false, StandardCharsets.UTF_8);
        options.file().read().values().forEach(user -> out.print(user.name() + " " + user.role() + "\n"));
        out.flush();
        return ExitCode.DONE;
    }
}
