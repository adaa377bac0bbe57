package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.IDefaultValueProvider;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.desk.RestockQuestion;
import sledwright.desk.view.RestockView;
import sledwright.report.restock.RestockCsv;
import sledwright.report.restock.RestockJson;
import sledwright.report.restock.RestockPage;
import sledwright.report.restock.RestockSheets;
import sledwright.report.restock.RestockText;

/** {@code restock FILE}: what to buy for expected orders. */
@Command(
        name = "restock",
        addMethodSubcommands = false,
        sortOptions = false,
        defaultValueProvider = RestockCommand.MoreTime.class,
        description = "Plans which parts to buy for the orders that are expected, within a budget, and what that is expected to earn."
                + " Writes text, json, csv, html or xlsx.",
        footer = {
            "",
            "Examples:",
            "  sledwright restock scenarios/spring-restock.yaml",
            "  sledwright restock scenarios/spring-restock.yaml --set budget=4000",
            "  sledwright restock scenarios/spring-restock.yaml --levels --format json"})
final class RestockCommand extends ResultCommand {

    /** A plan takes longer than a quote. */
    static final class MoreTime implements IDefaultValueProvider {

        @Override
        public String defaultValue(ArgSpec argument) {
            return argument instanceof OptionSpec option && option.longestName().equals("--time-limit") ? "180" : null;
        }
    }

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "A file with 'kind: restock'." + RequestInput.FILE)
    private Path file;

    @Option(names = "--set", paramLabel = "KEY=VALUE", description = "Answer as if the file had this value, such as budget=4000."
            + " Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Option(names = "--levels", description = "Show for each part that is used at how many units to buy again.")
    private boolean levels;

    @Override
    public Integer call() {
        Output output = shared().output(Format.HTML, Format.XLSX);
        RestockView view = Replies.answer(shared().desk()
                .restock(shared().request(file, "restock", sets), new RestockQuestion(sets, levels),
                shared().watched()));
        output.write(Renderings.of(screen -> RestockText.of(view, screen), () -> RestockJson.of(view), () -> RestockCsv.of(view))
                .and(Format.HTML, () -> RestockPage.of(view)).andBytes(Format.XLSX, () -> RestockSheets.of(view)));
        return ExitCode.DONE;
    }
}
