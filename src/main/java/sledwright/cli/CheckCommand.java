package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.desk.view.CheckView;
import sledwright.report.check.CheckText;
import sledwright.report.check.CheckCsv;
import sledwright.report.check.CheckJson;

/** {@code check FILE}: every rule that a build breaks. */
@Command(
        name = "check",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Judges a build against every rule, and prices it from stock. The exit code is 4 when it is invalid.",
        footer = {
            "",
            "Examples:",
            "  sledwright check scenarios/build-valid.yaml",
            "  sledwright check scenarios/build-broken.yaml --format json",
            "  sledwright check scenarios/build-valid.yaml --set limit.inlet_c=31"})
final class CheckCommand extends ResultCommand {

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "A build: a file with 'kind: build'." + RequestInput.FILE)
    private Path file;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Judge with this value in place of the file's, such as limit.inlet_c=30. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Override
    public Integer call() {
        Output output = shared().output();
        CheckView view = Replies.answer(shared().desk().check(shared().request(file, "build", sets), sets));
        output.write(Renderings.of(screen -> CheckText.of(view, screen), () -> CheckJson.of(view), () -> CheckCsv.of(view)));
        return view.valid() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
    }
}
