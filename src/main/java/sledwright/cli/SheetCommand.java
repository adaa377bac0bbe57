package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.desk.SheetQuestion;
import sledwright.desk.view.SheetAnswer;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pdf;
import sledwright.report.sheet.SheetCsv;
import sledwright.report.sheet.SheetHtml;
import sledwright.report.sheet.SheetJson;
import sledwright.report.sheet.SheetSvg;
import sledwright.report.sheet.SheetText;
import sledwright.report.sheet.SheetView;
import sledwright.report.sheet.Sheets;

/** {@code sheet FILE}: what the bench needs to put machines together. */
@Command(
        name = "sheet",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Writes the bench sheet of a build, of an alternative of a quote, of an upgrade or of every machine of an order:"
                + " parts to pick, the board, the steps, what the first start must show. Formats: text, json, csv (the pick list), html,"
                + " pdf, svg (the board). Nothing is written for a build that breaks a rule; the exit code is then 4, as it is where"
                + " machines of an order are missing.",
        footer = {
            "",
            "Examples:",
            "  sledwright sheet scenarios/build-valid.yaml",
            "  sledwright sheet scenarios/render-node.yaml --rank 2 --format pdf -o sheet.pdf",
            "  sledwright sheet scenarios/sled-in-place.yaml --format html -o sheet.html",
            "  sledwright sheet scenarios/sled-rack-order.yaml --format pdf -o sheets.pdf"})
final class SheetCommand extends ResultCommand {

    @Parameters(paramLabel = "FILE", arity = "0..1",
            description = "A file with 'kind: build', 'kind: quote', 'kind: upgrade' or 'kind: order', or the number of a quote in the"
            + " book, such as 2026-0001." + RequestInput.FILE)
    private Path file;

    @Option(names = "--rank", paramLabel = "N", description = "Of a quote, the alternative at this place of the list. Default: 1, the"
            + " best.")
    private Integer rank;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Work as if the file had this value, such as require.cores=24. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Override
    public Integer call() {
        Output output = shared().output(Format.HTML, Format.PDF, Format.SVG);
        SheetAnswer answer = answer();
        if (answer instanceof SheetAnswer.Work work) {
            SheetView view = Sheets.of(work);
            PageHead head = PageHead.of(SheetHtml.title(view), SheetHtml.subject(view), work.shop());
            output.write(Renderings.of(screen -> SheetText.of(view, screen), () -> SheetJson.of(view), () -> SheetCsv.of(view))
                    .and(Format.HTML, () -> SheetHtml.of(view, head)).andBytes(Format.PDF, () -> Pdf.of(SheetHtml.of(view, head), head))
                    .and(Format.SVG, () -> SheetSvg.of(view)));
            view.notice().filter(missing -> view.source() == SheetView.Source.ORDER).ifPresent(shared().terminal().err()::println);
            return view.source() == SheetView.Source.ORDER && view.notice().isPresent() ? ExitCode.NO_VALID_BUILD : ExitCode.DONE;
        }
        why(answer).forEach(shared().terminal().err()::println);
        return ExitCode.NO_VALID_BUILD;
    }

    private SheetAnswer answer() {
        if (RequestInput.isOfBook(file)) {
            if (rank != null || !sets.isEmpty()) {
                throw new UsageException("%s is a quote of the book; its sheet is of what was chosen of it, without --rank and --set"
                        .formatted(file));
            }
            return BookOpening.sheet(file.toString(), shared());
        }
        try (Interrupt interrupt = Interrupt.listen(shared().terminal().err())) {
            return Replies.answer(shared().desk().sheet(shared().request(file, "quote", sets),
                    new SheetQuestion(sets, rank == null ? OptionalInt.empty() : OptionalInt.of(rank)),
                    shared().watched().until(interrupt::isAsked)));
        }
    }

    /** Why there is nothing to put together. */
    private static List<String> why(SheetAnswer answer) {
        if (answer instanceof SheetAnswer.NoBuild none) {
            return List.of("%s: no sheet, because no valid build was found.\nMaybe run 'sledwright quote', which says what conflicts."
                    .formatted(none.name()));
        }
        if (answer instanceof SheetAnswer.NoMachines none) {
            return List.of(("%s: no sheet, because none of its machines was found.\n"
                    + "Maybe run 'sledwright order', which says what is lacking.").formatted(none.name()));
        }
        if (answer instanceof SheetAnswer.NoUpgrade none) {
            return List.of("%s: no sheet, because no upgrade was found.\nMaybe run 'sledwright upgrade', which says what conflicts."
                    .formatted(none.name()));
        }
        SheetAnswer.Invalid invalid = (SheetAnswer.Invalid) answer;
        List<String> why = new ArrayList<>(List.of("%s: no sheet, because the build is invalid.".formatted(invalid.name())));
        invalid.violations().forEach(broken -> why.add("- %s: %s".formatted(broken.rule(), broken.message())));
        return why;
    }
}
