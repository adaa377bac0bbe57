package sledwright.cli;

import java.io.PrintWriter;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import sledwright.book.BookRefusal;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.input.Visible;

/** Turns whatever ended a run early into messages and an exit code. */
final class Boundary {

    private static final Pattern TYPE = Pattern.compile("(?<said>.*: )'(?<given>.*)' is not an? (?<type>int|long|double|boolean)",
            Pattern.DOTALL);
    private static final Pattern WHOLE = Pattern.compile("[-+]?[0-9]+");

    private final PrintWriter err;
    private final boolean verbose;

    /**
     * @param verbose whether to show where a run ended, even for what a user can put right
     */
    Boundary(PrintWriter err, boolean verbose) {
        this.err = err;
        this.verbose = verbose;
    }

    /** Arguments that the command line does not know. */
    int usage(ParameterException wrong) {
        CommandLine command = wrong.getCommandLine();
        String name = command.getCommandSpec().qualifiedName();
        err.println(name + ": " + Visible.lines(plain(wrong.getMessage())));
        UnmatchedArgumentException.printSuggestions(wrong, err);
        err.println("Try '" + name + " --help'.");
        return ExitCode.USAGE;
    }

    /** What the parser says of a value, without the types of the program. */
    private static String plain(String message) {
        Matcher type = TYPE.matcher(message);
        if (!type.matches()) {
            return message;
        }
        String given = type.group("given");
        return type.group("said") + switch (type.group("type")) {
            case "boolean" -> "it takes no value, and '%s' is given".formatted(given);
            case "int", "long" -> "'%s' is %s".formatted(given, WHOLE.matcher(given).matches() ? "out of range" : "not a whole number");
            default -> "'%s' is not a number".formatted(given);
        };
    }

    /** A run that ended in an exception or error. */
    int failure(Throwable failed) {
        if (failed instanceof FaultsException input) {
            for (Fault fault : input.faults()) {
                err.println(Visible.of(fault.toString()));
            }
            return traced(failed, ExitCode.INPUT_FAULT);
        }
        if (failed instanceof UsageException usage) {
            err.println("sledwright: " + Visible.lines(usage.getMessage()));
            return traced(failed, ExitCode.USAGE);
        }
        if (failed instanceof BookRefusal refusal) {
            err.println("sledwright: " + Visible.lines(refusal.getMessage()));
            return traced(failed, refusal.kind() == BookRefusal.Kind.TAKEN || refusal.kind() == BookRefusal.Kind.STALE
                    ? ExitCode.NO_VALID_BUILD : ExitCode.USAGE);
        }
        if (failed instanceof StandardOutput.ReaderGoneException) {
            return ExitCode.READER_GONE;
        }
        if (failed instanceof OutOfMemoryError) {
            err.println("sledwright: the memory that Java may use is full.\nMaybe allow more: SLEDWRIGHT_JAVA_OPTIONS=-Xmx4g");
            return traced(failed, ExitCode.DEFECT);
        }
        err.println("sledwright: this is a defect of the program: " + failed
                + (verbose ? "" : "\nMaybe run it again with --verbose and report what it shows."));
        return traced(failed, ExitCode.DEFECT);
    }

    private int traced(Throwable failed, int code) {
        if (verbose) {
            failed.printStackTrace(err);
        }
        return code;
    }
}
