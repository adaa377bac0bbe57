package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.desk.view.LabelView;
import sledwright.desk.Desk;
import sledwright.desk.LabelQuestion;
import sledwright.desk.view.LabelAnswer;
import sledwright.input.Source;
import sledwright.input.Visible;
import sledwright.report.label.LabelCsv;
import sledwright.report.label.LabelJson;
import sledwright.report.label.LabelText;

/** {@code label TEXT...}: rows of memory.csv from what is printed on modules, or stored in them. */
@Command(
        name = "label",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Reads labels of memory modules, or their SPDs, into rows of memory.csv, and says what each field means.",
        footer = {
            "",
            "A label has one argument, or one for each word. The csv format is memory.csv with power_w left empty, which no label states.",
            "",
            "Examples:",
            "  sledwright label '16GB 2Rx4 PC4-2400T-RA1-11' '8GB 2Rx4 PC3L-12800R-11-13-E2'",
            "  sledwright label --file labels.txt --format csv",
            "  sledwright label --spd dump.bin"})
final class LabelCommand extends ResultCommand {

    @Parameters(paramLabel = "TEXT", arity = "0..*", description = "Labels, such as '16GB 2Rx4 PC4-2400T-RA1-11'.")
    private List<String> texts = new ArrayList<>();

    @Option(names = "--file", paramLabel = "FILE", description = "Read labels from a file, one on each line. Repeatable.")
    private List<Path> files = new ArrayList<>();

    @Option(names = "--spd", paramLabel = "FILE",
            description = "Read the SPD of a DDR3 or DDR4 module from its bytes or a hexadecimal dump of them. Repeatable.")
    private List<Path> spds = new ArrayList<>();

    @Option(names = "--skip-faulty", description = "Take the other labels and files when some cannot be read.")
    private boolean skipFaulty;

    @Override
    public Integer call() {
        if (texts.isEmpty() && files.isEmpty() && spds.isEmpty()) {
            throw new UsageException("name a label, such as '16GB 2Rx4 PC4-2400T-RA1-11', or a file with --file or --spd");
        }
        Output output = shared().output();
        LabelAnswer answer = Replies.answer(Desk.label(new LabelQuestion(texts, files.stream().map(Source::of).toList(),
                spds.stream().map(Source::of).toList(), skipFaulty)));
        answer.skipped().forEach(fault -> shared().terminal().err().println("sledwright: skipped: " + Visible.of(fault.toString())));
        LabelView view = answer.view();
        output.write(Renderings.of(screen -> LabelText.of(view, screen), () -> LabelJson.of(view), () -> csv(view)));
        return ExitCode.DONE;
    }

    private String csv(LabelView view) {
        shared().terminal().err().println("sledwright: left empty in each row: power_w, which no label states; a catalogue needs it");
        view.passedOver().forEach((from, words) -> shared().terminal().err()
                .printf("sledwright: ignored in %s: %s%n", from, String.join(" ", words)));
        view.gaps().forEach((sku, columns) -> shared().terminal().err()
                .printf("sledwright: left empty in the row of %s: %s%n", sku, String.join(", ", columns)));
        return LabelCsv.of(view);
    }
}
