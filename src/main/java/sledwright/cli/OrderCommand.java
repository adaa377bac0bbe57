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
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.OrderView;
import sledwright.report.offer.OfferMail;
import sledwright.report.offer.OrderLetter;
import sledwright.report.offer.OrderPage;
import sledwright.report.offer.OrderWorkbook;
import sledwright.report.order.OrderJson;
import sledwright.report.order.OrderCsv;
import sledwright.report.order.OrderText;

/** {@code order FILE}: the cheapest joint fill of several lines from one stock. */
@Command(
        name = "order",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Fills several lines of machines from one stock at the least price, and says how far from it the answer can be at"
                + " most."
                + " Ctrl-C gives the best found so far; once more ends at once. The exit code is 4 when machines are missing.",
        footer = {
            "",
            "Examples:",
            "  sledwright order scenarios/branch-offices-order.yaml",
            "  sledwright order scenarios/short-order.yaml --set lines.reports.machines=4",
            "  sledwright order scenarios/sled-rack-order.yaml --format csv -o picks.csv",
            "  sledwright order scenarios/branch-offices-order.yaml --format pdf -o quote.pdf"})
final class OrderCommand extends ResultCommand {

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "Lines of machines: a file with 'kind: order', or the"
            + " number of a quote in the book, such as 2026-0001." + RequestInput.FILE)
    private Path file;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Answer as if the file had this value, such as lines.web.machines=5. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Mixin
    private Readership readership;

    @Override
    public Integer call() {
        Output output = shared().output(Format.HTML, Format.PDF, Format.XLSX, Format.EML);
        Audience audience = readership.of(shared().format());
        readership.requireCustomer(shared().format(), audience);
        if (RequestInput.isOfBook(file)) {
            return kept(output, audience);
        }
        return write(output, answer(), audience);
    }

    /** An order of the book as it was kept; of a quote for one request what the shop takes and buys for it. */
    private int kept(Output output, Audience audience) {
        if (!sets.isEmpty()) {
            throw new UsageException("%s is a quote of the book, which is printed as it was kept, without --set.".formatted(file)
                    + "\nMaybe run 'sledwright book revise %s --set KEY=VALUE'.".formatted(file));
        }
        BookOpening.Ordered ordered = BookOpening.order(file.toString(), audience, shared());
        if (ordered.answer().isPresent()) {
            return write(output, ordered.answer().get(), audience);
        }
        output.write(Renderings.asKept(shared().format(), ordered.paper().orElseThrow()));
        return ExitCode.DONE;
    }

    private int write(Output output, OrderAnswer answer, Audience audience) {
        if (readership.refuses(answer.view().day(), audience, shared().terminal())) {
            return ExitCode.NO_VALID_BUILD;
        }
        OrderView view = audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
        output.write(Renderings.of(screen -> audience == Audience.SHOP ? OrderText.of(view, screen) : OrderLetter.of(answer),
                        () -> OrderJson.of(view), () -> OrderCsv.of(view))
                .and(Format.HTML, () -> OrderPage.html(answer, audience)).andBytes(Format.PDF, () -> OrderPage.pdf(answer, audience))
                .andBytes(Format.XLSX, () -> OrderWorkbook.of(answer, audience)).andBytes(Format.EML, () -> OfferMail.of(answer)));
        return view.shortage().isEmpty() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
    }

    private OrderAnswer answer() {
        try (Interrupt interrupt = Interrupt.listen(shared().terminal().err())) {
            return Replies.answer(shared().desk().order(shared().request(file, "order", sets), sets,
                    shared().watched().until(interrupt::isAsked)));
        }
    }
}
