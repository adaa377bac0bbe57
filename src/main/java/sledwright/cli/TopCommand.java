package sledwright.cli;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
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
        return switch (this) {
            case QUOTE -> new CommandLine(new QuoteCommand(terminal));
            case CHECK -> new CommandLine(new CheckCommand(terminal));
            case CATALOG -> CatalogCommand.line(terminal);
            case LABEL -> new CommandLine(new LabelCommand(terminal));
            case UPGRADE -> new CommandLine(new UpgradeCommand(terminal));
            case COMPARE -> new CommandLine(new CompareCommand(terminal));
            case SHEET -> new CommandLine(new SheetCommand(terminal));
            case ORDER -> new CommandLine(new OrderCommand(terminal));
            case RESTOCK -> new CommandLine(new RestockCommand(terminal));
            case SERVE -> new CommandLine(new ServeCommand(terminal));
            case BOOK -> BookCommand.line(terminal, asked);
            case USERS -> UsersCommand.line(terminal, asked);
        };
    }

    private CommandSpec described() {
        CommandSpec bare = CommandSpec.create();
        bare.usageMessage().description(type.getAnnotation(Command.class).description());
        return bare;
    }
}
