package sledwright.cli;

import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import sledwright.desk.Desk;
import sledwright.input.Field;

/** The command line of Sledwright. */
@Command(
        name = "sledwright",
        addMethodSubcommands = false,
        versionProvider = Version.class,
        synopsisSubcommandLabel = "COMMAND",
        description = "Finds, proves and explains the cheapest valid server build from a catalogue of parts, prices and stock.",
        footer = {
            "",
            "Exit codes: 0 done; 1 a defect of the program; 2 wrong arguments; 3 a fault in an input file; 4 no valid build,"
                + " the checked build is invalid, or machines of an order are missing.",
            "",
            "Examples:",
            "  sledwright quote scenarios/render-node.yaml",
            "  sledwright check scenarios/build-valid.yaml",
            "  sledwright catalog catalogs/heronfold-yard",
            "  sledwright label '16GB 2Rx4 PC4-2400T-RA1-11'",
            "  sledwright upgrade scenarios/sled-in-place.yaml",
            "  sledwright compare scenarios/cache-node.yaml",
            "  sledwright sheet scenarios/build-valid.yaml",
            "  sledwright order scenarios/branch-offices-order.yaml",
            "",
            "'sledwright COMMAND --help' shows the options of a command."})
public final class Main implements Runnable {

    @Spec
    private CommandSpec command;

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "Show this help.")
    private boolean help;

    @Option(names = {"-V", "--version"}, versionHelp = true, description = "Show the version.")
    private boolean version;

    private static final char LOST = '\uFFFD';

    private Main() {
    }

    public static void main(String[] arguments) {
        // Documents draw, but no window is ever opened, whatever display there is.
        System.setProperty("java.awt.headless", "true");
        if (TopCommand.first(arguments).filter(TopCommand.QUOTE::equals).isPresent()) {
            // Now, since later the compiler takes the second core.
            Desk.prepare();
        }
        PrintWriter err = new PrintWriter(new OutputStreamWriter(System.err, StandardCharsets.UTF_8), true);
        int code = run(new Terminal(System.in, new StandardOutput(), err, System.getenv(), LocalDate::now,
                Terminal::isInteractive), arguments);
        err.flush();
        System.exit(code);
    }

    /** Runs one command and returns its exit code; nothing escapes. */
    static int run(Terminal terminal, String... arguments) {
        Boundary boundary = new Boundary(terminal.err(), Arrays.asList(arguments).contains("--verbose"));
        try {
            requireLetters(arguments);
            CommandLine line = new CommandLine(new Main());
            TopCommand.add(line, terminal, arguments);
            return ready(line, terminal, boundary).execute(arguments);
        } catch (Throwable failed) {
            // The parser hands on exceptions alone.
            return boundary.failure(failed);
        }
    }

    /** What Java could not read of an argument, it has put the mark of lost letters for. */
    private static void requireLetters(String... arguments) {
        for (String argument : arguments) {
            if (argument.indexOf(LOST) >= 0) {
                throw new UsageException("\"%s\" has letters that are lost, for Java reads arguments as %s here.\n"
                        .formatted(Field.shown(argument), System.getProperty("sun.jnu.encoding"))
                        + "Maybe start the program by its launcher, or set LC_ALL=C.UTF-8.");
            }
        }
    }

    /** All commands with all below them. */
    static CommandLine commands(Terminal terminal, Boundary boundary) {
        CommandLine line = new CommandLine(new Main());
        TopCommand.addAll(line, terminal);
        return ready(line, terminal, boundary);
    }

    /** What is set of a command line is set of the commands that it has by then. */
    private static CommandLine ready(CommandLine line, Terminal terminal, Boundary boundary) {
        // Help stays plain: finding out what a terminal can show takes longer than showing it.
        return line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF))
                .setExpandAtFiles(false)
                .setOut(new PrintWriter(terminal.out(), true, StandardCharsets.UTF_8))
                .setErr(terminal.err())
                .setParameterExceptionHandler((wrong, given) -> boundary.usage(wrong))
                .setExecutionExceptionHandler((failed, command, parsed) -> boundary.failure(failed));
    }

    @Override
    public void run() {
        throw new ParameterException(command.commandLine(), "a command is missing; it is one of "
                + String.join(", ", command.subcommands().keySet()));
    }
}
