package sledwright.cli;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.CommandSpec;

/** The commands, in the order in which the help lists them. */
enum TopCommand {
    QUOTE(QuoteCommand.class),
    CHECK(CheckCommand.class),
    CATALOG(CatalogCommand.class),
    LABEL(LabelCommand.class),
    UPGRADE(UpgradeCommand.class),
    COMPARE(CompareCommand.class),
    SHEET(SheetCommand.class),
    ORDER(OrderCommand.class),
    RESTOCK(RestockCommand.class),
    SERVE(ServeCommand.class),
    BOOK(BookCommand.class),
    USERS(UsersCommand.class);

    private static final List<TopCommand> ALL = List.of(values());

    private final String word = name().toLowerCase(Locale.ROOT);
    private final Class<?> type;

    TopCommand(Class<?> type) {
        this.type = type;
    }

    /** Adds every command, with all below it. */
    static void addAll(CommandLine line, Terminal terminal) {
        ALL.forEach(command -> line.addSubcommand(command.word, command.line(terminal, true)));
    }

    /**
     * Adds what these arguments need. The options of a command are looked at one by one, through annotations, which takes its time: so
     * where a command comes first it is the only one, and where none is named, all have just what the help says of them.
     */
    static void add(CommandLine line, Terminal terminal, String... arguments) {
        Collection<String> words = Arrays.asList(arguments);
        Optional<TopCommand> first = first(arguments);
        if (first.isPresent()) {
            line.addSubcommand(first.get().word, first.get().line(terminal, true));
        } else if (ALL.stream().noneMatch(command -> words.contains(command.word))) {
            ALL.forEach(command -> line.addSubcommand(command.word, command.described()));
        } else {
            ALL.forEach(command -> line.addSubcommand(command.word, command.line(terminal, words.contains(command.word))));
        }
    }

    /** The command that comes first, if one does. */
    static Optional<TopCommand> first(String... arguments) {
        return ALL.stream().filter(command -> arguments.length > 0 && command.word.equals(arguments[0])).findFirst();
    }

    /** @param asked whether the command may be asked for; otherwise nobody waits for the many steps of some */
    private CommandLine line(Terminal terminal, boolean asked) {
        IFactory factory = new TerminalFactory(terminal);
        return switch (this) {
            case SERVE -> new CommandLine(new ServeCommand(terminal));
            case BOOK -> BookCommand.line(factory, asked);
            case USERS -> UsersCommand.line(factory, asked);
            default -> new CommandLine(type, factory);
        };
    }

    private CommandSpec described() {
        CommandSpec bare = CommandSpec.create();
        bare.usageMessage().description(type.getAnnotation(Command.class).description());
        return bare;
    }
}
