package sledwright.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code users STEP}: who may use the server. */
@Command(
        name = "users",
        addMethodSubcommands = false,
        sortOptions = false,
        synopsisSubcommandLabel = "STEP",
        description = "Keeps the file of those who may use the server: names, roles and hashed passwords. Its owner alone can read it.",
        footer = {
            "",
            "Examples:",
            "  sledwright users add anna --role sales --users users.csv",
            "  sledwright users password anna --users users.csv",
            "  sledwright users remove anna --users users.csv",
            "  sledwright users list --users users.csv",
            "",
            "A password is asked for, or read from standard input; never put one among the arguments, where others can read it.",
            "'sledwright users STEP --help' shows the options of a step."})
final class UsersCommand implements Runnable {

    @Spec
    private CommandSpec command;

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "Show this help.")
    private boolean help;

    /**
     * The command with those below it.
     *
     * @param asked whether it is the one that is asked for; otherwise nothing below it is looked at
     */
    static CommandLine line(IFactory factory, boolean asked) {
        CommandLine line = new CommandLine(new UsersCommand(), factory);
        return !asked ? line : line.addSubcommand(new UsersAddCommand()).addSubcommand(new UsersPasswordCommand())
                .addSubcommand(new UsersRemoveCommand()).addSubcommand(new UsersListCommand());
    }

    @Override
    public void run() {
        throw new ParameterException(command.commandLine(), "a step is missing; it is one of "
                + String.join(", ", command.subcommands().keySet()));
    }
}
