package sledwright.cli;

import java.io.Console;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import sledwright.report.text.Screen;

/**
 * What a run is connected to.
 *
 * @param in          what is piped in; read only where a command asks for it
 * @param out         results
 * @param err         everything else
 * @param environment the process's variables
 * @param clock       gives the day
 * @param interactive whether a person sees {@code out}
 */
record Terminal(InputStream in, OutputStream out, PrintWriter err, Map<String, String> environment,
        Supplier<LocalDate> clock, BooleanSupplier interactive) {

    /** Whether the process's standard output is a terminal. */
    static boolean isInteractive() {
        Console console = System.console();
        if (console == null) {
            return false;
        }
        try {
            // From Java 22 on there is a console without a terminal, too.
            return (boolean) Console.class.getMethod("isTerminal").invoke(console);
        } catch (NoSuchMethodException older) {
            return true;
        } catch (ReflectiveOperationException hidden) {
            return false;
        }
    }

    /** The screen for a text on standard output. */
    Screen screen(Colour colour) {
        return new Screen(columns(), switch (colour) {
            case ALWAYS -> true;
            case NEVER -> false;
            case AUTO -> environment.getOrDefault("NO_COLOR", "").isEmpty() && !"dumb".equals(environment.get("TERM"))
                    && interactive.getAsBoolean();
        });
    }

    private int columns() {
        String columns = environment.getOrDefault("COLUMNS", "");
        return columns.matches("[0-9]{1,4}") ? Integer.parseInt(columns) : Screen.LEAST_WIDTH;
    }
}
