package sledwright.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import sledwright.desk.Desk;
import sledwright.desk.Terms;
import sledwright.input.Source;

/** The options of every command. */
final class SharedOptions {

    /** Behind a command's own options, also where these are declared in a class below. */
    private static final int LAST = 2;

    private final Terminal terminal;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Option(names = "--format", order = LAST, paramLabel = "FORMAT", defaultValue = "text", converter = Word.OfFormat.class,
            description = "Write the result as text, json or csv, or as another format that the command names. Default: ${DEFAULT-VALUE}.")
    private Format format;

    @Option(names = {"-o", "--output"}, order = LAST, paramLabel = "FILE",
            description = "Write the result to FILE instead of standard output. A run that fails leaves an old FILE as it is.")
    private Path output;

    @Option(names = "--catalog", order = LAST, paramLabel = "DIR",
            description = "Take parts, prices and stock from this folder, whatever the file names.")
    private Path catalog;

    @Option(names = "--book", order = LAST, paramLabel = "PLACE",
            description = "The book of quotes: a file, or the address of a database that several desks share. What it keeps for others"
                    + " is not offered. Only 'sledwright book' has one where none is named.")
    private String book;

    @Option(names = "--seed", order = LAST, paramLabel = "N", defaultValue = "0",
            description = "Where chance decides, decide as before with the same N. Default: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(names = "--time-limit", order = LAST, paramLabel = "SECONDS", defaultValue = "30", converter = Seconds.class,
            description = "Give the best found within this time, in seconds. Default: ${DEFAULT-VALUE}.")
    private Duration timeLimit;

    @Option(names = "--today", order = LAST, paramLabel = "DAY", converter = Word.OfDay.class,
            description = "Answer as on this day, such as 2026-11-18: dates of delivery, how long an offer holds, how old prices are."
                    + " Default: today.")
    private LocalDate today;

    @Option(names = "--colour", order = LAST, paramLabel = "WHEN", defaultValue = "auto", converter = Word.OfColour.class,
            description = "Colour text auto, always or never. auto: on a terminal, unless NO_COLOR is set. Default: ${DEFAULT-VALUE}.")
    private Colour colour;

    // Read from the bare arguments, since it must count where they cannot be parsed, too.
    @Option(names = "--verbose", order = LAST, description = "Show where in the program a failure happened.")
    private boolean verbose;

    @Option(names = {"-h", "--help"}, order = LAST, usageHelp = true, description = "Show this help.")
    private boolean help;

    SharedOptions(Terminal terminal) {
        this.terminal = terminal;
    }

    /** What the run is connected to. */
    Terminal terminal() {
        return terminal;
    }

    /** Where the result goes, found able to take it before any work is done; {@code beside} are formats that not all commands write. */
    Output output(Format... beside) {
        return outputWhereTextIs(Format.TEXT, beside);
    }

    /** The same of a command whose text is at the same time of another format. */
    Output outputWhereTextIs(Format text, Format... beside) {
        Set<Format> written = Format.commonAnd(beside);
        if (output != null && !isFormatNamed()) {
            Output.requireEnding(output, text, written);
        }
        return Output.open(terminal, format, written, Optional.ofNullable(output), colour);
    }

    /** What the result is written as. */
    Format format() {
        return format;
    }

    /** The catalogue's folder where the option names one. */
    Optional<Path> catalog() {
        return Optional.ofNullable(catalog);
    }

    /** @throws UsageException when the form or the place of a result is named; as JSON it may be said to be */
    void requireNoResult(String otherwise) {
        if (output != null || isFormatNamed() && format != Format.JSON) {
            throw new UsageException(otherwise);
        }
    }

    private boolean isFormatNamed() {
        return command.commandLine().getParseResult().hasMatchedOption("--format");
    }

    /** Where the question is asked: at the catalogue that the option names, else at that of the request. */
    Desk desk() {
        Desk desk = (catalog == null ? Desk.open() : Desk.at(catalog)).by(clock());
        return book == null ? desk : desk.offering(BookOpening.stock(book, day()));
    }

    /** The book as it was named. */
    Optional<String> book() {
        return Optional.ofNullable(book);
    }

    /** Where many questions are asked: at the catalogue that the option names, which is read once. */
    Desk keptDesk() {
        Desk desk = Replies.answer(Desk.keeping(folder(null, "--catalog"))).by(clock());
        return book == null ? desk : desk.offering(BookOpening.stock(book, day()));
    }

    /** The day that counts as today, where the option names one. */
    Optional<LocalDate> today() {
        return Optional.ofNullable(today);
    }

    /** The day that counts as today. */
    LocalDate day() {
        return clock().get();
    }

    private Supplier<LocalDate> clock() {
        return today == null ? terminal.clock() : () -> today;
    }

    /** On what terms it is answered. */
    Terms terms() {
        return Terms.within(timeLimit).withSeed(seed);
    }

    /** The same, and a person who waits is shown the progress. */
    Terms watched() {
        return terms().heardBy(new ProgressLine(terminal.err()));
    }

    /** What is asked about; {@code file} is null where none is named. */
    Source request(Path file, String kind, List<String> sets) {
        return RequestInput.of(file, kind, sets, Optional.ofNullable(catalog), terminal)
                .orElseThrow(() -> new ParameterException(command.commandLine(),
                "FILE is missing; name a file with 'kind: %s', pipe one in and write -, or say all with --catalog and --set"
                .formatted(kind)));
    }

    /** The catalogue's folder, which is named once: as the command has it, or by the option. */
    Path folder(Path named, String as) {
        if ((named == null) == (catalog == null)) {
            throw new UsageException(named == null ? "name the catalogue's folder, such as catalogs/heronfold-yard"
                    : "name one folder, not %s%s and --catalog %s".formatted(as.startsWith("--") ? as + " " : "", named, catalog));
        }
        return named == null ? catalog : named;
    }
}
