package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.desk.view.Audience;
import sledwright.desk.view.ForCustomers;
import sledwright.desk.view.UpgradeAnswer;
import sledwright.desk.view.UpgradeView;
import sledwright.report.offer.UpgradeLetter;
import sledwright.report.upgrade.UpgradeCsv;
import sledwright.report.upgrade.UpgradeJson;
import sledwright.report.upgrade.UpgradeText;

/** {@code upgrade FILE}: the least to spend so that machines which stand reach a target. */
@Command(
        name = "upgrade",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Finds the least to spend so that a machine which stands already reaches a target: what to buy, what to pull, what to"
                + " move, in the order of the work, and whether buying whole is cheaper.",
        footer = {
            "",
            "Examples:",
            "  sledwright upgrade scenarios/sled-in-place.yaml",
            "  sledwright upgrade scenarios/sled-in-place.yaml --set trade_in=0",
            "  sledwright upgrade scenarios/sled-in-place.yaml --format json"})
final class UpgradeCommand extends ResultCommand {

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "A machine and a target: a file with 'kind: upgrade'."
            + RequestInput.FILE)
    private Path file;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Answer as if the file had this value, such as require.cores=24. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Mixin
    private Readership readership;

    @Override
    public Integer call() {
        Output output = shared().output();
        Audience audience = readership.of(shared().format());
        UpgradeAnswer answer = Replies.answer(shared().desk().upgrade(shared().request(file, "upgrade", sets), sets,
                shared().terms()));
        if (readership.refuses(answer.view().day(), audience, shared().terminal())) {
            return ExitCode.NO_VALID_BUILD;
        }
        UpgradeView view = audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
        output.write(Renderings.of(screen -> audience == Audience.SHOP ? UpgradeText.of(view, screen)
                : UpgradeLetter.of(view, answer.job()),
                () -> UpgradeJson.of(view), () -> UpgradeCsv.of(view)));
        return view.upgrade().isPresent() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
    }
}
