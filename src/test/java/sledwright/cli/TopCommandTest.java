package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.OutputStream;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** What a run leaves out of its commands is missed by nobody. */
class TopCommandTest {

    private final Terminal nobody = new Terminal(null, OutputStream.nullOutputStream(), new PrintWriter(OutputStream.nullOutputStream()), Map.of(),
            () -> LocalDate.EPOCH, () -> false);
    private final CommandLine whole = Main.commands(nobody, new Boundary(nobody.err(), false));

    @Test
    void everyCommandIsCalledAsItsOwnHelpSays() {
        assertThat(whole.getSubcommands()).allSatisfy((word, command) -> assertThat(command.getCommandSpec().userObject().getClass()
                .getAnnotation(CommandLine.Command.class).name()).isEqualTo(word));
    }

    @Test
    void theListOfCommandsIsThatOfAllOptions() {
        assertThat(Run.of("--help").out()).isEqualTo(whole.getUsageMessage());
    }

    static Stream<String> words() {
        return Stream.of(TopCommand.values()).map(command -> command.name().toLowerCase(Locale.ROOT));
    }

    @ParameterizedTest
    @MethodSource("words")
    void aCommandIsTheOnlyOneAndWhole(String word) {
        CommandLine line = new CommandLine(new Bare());
        TopCommand.add(line, nobody, word, "--help", "check");

        assertThat(line.getSubcommands().keySet()).isEqualTo(Set.of(word));
        CommandLine asked = line.getSubcommands().get(word);
        assertThat(asked.getCommandSpec().options()).hasSameSizeAs(whole.getSubcommands().get(word).getCommandSpec().options());
        assertThat(asked.getSubcommands().keySet()).isEqualTo(whole.getSubcommands().get(word).getSubcommands().keySet());
    }

    @Test
    void aCommandBehindAnOptionIsFound() {
        assertThat(Run.of("--help", "quote", "x").out()).isEqualTo(whole.getUsageMessage());
        assertThat(Run.of("--nothing", "users", "list")).satisfies(run -> assertThat(run.err()).contains("sledwright users list: Missing required option: '--users=FILE'"));
    }

    @Test
    void aWordThatIsNoCommandFindsTheNearest() {
        assertThat(Run.of("quot", "scenarios/render-node.yaml").err()).contains("Did you mean: sledwright quote?");
        assertThat(Run.of().err()).contains(String.join(", ", whole.getSubcommands().keySet()));
    }

    @CommandLine.Command
    private static final class Bare {
    }
}
