package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.desk.Desk;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.view.Audience;
import sledwright.desk.view.ForCustomers;
import sledwright.desk.view.QuoteAnswer;
import sledwright.desk.view.QuoteView;
import sledwright.report.offer.Offer;
import sledwright.report.offer.OfferLetter;
import sledwright.report.offer.OfferMail;
import sledwright.report.offer.OfferPage;
import sledwright.report.quote.QuoteCsv;
import sledwright.report.quote.QuoteJson;
import sledwright.report.quote.QuoteText;

/** {@code quote FILE}: ranked builds for one request. */
@Command(
        name = "quote",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Ranks the valid builds for a request: the best first, then what more money or less of something buys.",
        footer = {
            "",
            "Examples:",
            "  sledwright quote scenarios/render-node.yaml",
            "  sledwright quote scenarios/render-node.yaml --set require.cores=40",
            "  sledwright quote scenarios/sled-upgrade.yaml --why-not NV4R32-24-24",
            "  sledwright quote scenarios/render-node.yaml --steps",
            "  sledwright quote scenarios/render-farm.yaml --format json --output farm.json",
            "  sledwright quote scenarios/render-farm.yaml --format pdf --output farm.pdf",
            "  sledwright quote scenarios/render-farm.yaml --format eml --output farm.eml"})
final class QuoteCommand extends ResultCommand {

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "A request: a file with 'kind: quote', or the number of"
            + " a quote in the book, such as 2026-0001, which is printed as it was kept." + RequestInput.FILE)
    private Path file;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Answer as if the file had this value, such as require.cores=24. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Option(names = "--why-not", paramLabel = "SKU", description = "Say why this part is not in the best build. Repeatable.")
    private List<String> whyNot = new ArrayList<>();

    @Option(names = "--steps", description = "Show what more or less of each requirement and what each wish costs, and at which"
            + " prices of its parts the best build stays the best.")
    private boolean steps;

    @Option(names = "--batch", paramLabel = "FILE",
            description = "Answer every line of FILE, each a request as JSON, from the catalogue of --catalog: one line of JSON for each"
                    + " on standard output, in their order. -: standard input.")
    private Path batch;

    @Option(names = "--skip", paramLabel = "N", defaultValue = "0",
            description = "With --batch: pass over the first N lines, as where a batch was broken off. Default: ${DEFAULT-VALUE}.")
    private int skip;

    @Mixin
    private Readership readership;

    @Override
    public Integer call() {
        return batch == null ? one() : all();
    }

    /** Every line of a file; what is wrong with one is its answer, and the run reports it at its end. */
    private int all() {
        if (file != null || skip < 0) {
            throw new UsageException(skip < 0 ? "--skip must be at least 0."
                    : "name one file, not %s and --batch %s".formatted(file, batch));
        }
        shared().requireNoResult("--batch writes JSON to standard output; leave --format and --output out.");
        Audience audience = readership.of(Format.JSON);
        requireFitting(audience);
        Desk desk = shared().keptDesk();
        QuoteQuestion question = new QuoteQuestion(sets, whyNot, steps);
        int faulty = new Batch(shared().terminal(), request -> desk.quote(request, question, shared().terms())
                .map(answer -> {
                    readership.refusal(answer.view().day(), audience).ifPresent(refusal -> {
                        throw new UsageException(refusal);
                    });
                    return QuoteJson.of(seenBy(audience, answer));
                })).run(batch, skip);
        return faulty == 0 ? ExitCode.DONE : ExitCode.INPUT_FAULT;
    }

    private static QuoteView seenBy(Audience audience, QuoteAnswer answer) {
        return audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
    }

    private int one() {
        if (skip != 0) {
            throw new UsageException("--skip passes over lines of a --batch; name one, or leave it out.");
        }
        Output output = shared().output(Format.HTML, Format.PDF, Format.EML);
        Audience audience = readership.of(shared().format());
        requireFitting(audience);
        if (RequestInput.isOfBook(file)) {
            return kept(output, audience);
        }
        QuoteAnswer answer = Replies.answer(shared().desk().quote(shared().request(file, "quote", sets),
                new QuoteQuestion(sets, whyNot, steps), shared().terms()));
        if (readership.refuses(answer.view().day(), audience, shared().terminal())) {
            return ExitCode.NO_VALID_BUILD;
        }
        QuoteView view = seenBy(audience, answer);
        output.write(Renderings.of(screen -> audience == Audience.SHOP ? QuoteText.of(view, screen)
                : OfferLetter.of(Offer.of(answer)), () -> QuoteJson.of(view), () -> QuoteCsv.of(view))
                .and(Format.HTML, () -> OfferPage.html(Offer.of(answer), audience))
                .andBytes(Format.PDF, () -> OfferPage.pdf(Offer.of(answer), audience))
                .andBytes(Format.EML, () -> OfferMail.of(Offer.of(answer))));
        return view.alternatives().isEmpty() ? ExitCode.NO_VALID_BUILD : ExitCode.DONE;
    }

    /** A quote of the book, as it was kept. */
    private int kept(Output output, Audience audience) {
        if (!sets.isEmpty() || !whyNot.isEmpty() || steps) {
            throw new UsageException("%s is a quote of the book, which is printed as it was kept, without --set, --why-not and --steps."
                    .formatted(file) + "\nMaybe run 'sledwright book revise %s --set KEY=VALUE'.".formatted(file));
        }
        output.write(Renderings.asKept(shared().format(), BookOpening.paper(file.toString(), audience, shared())));
        return ExitCode.DONE;
    }

    /** What the shop asks itself is not answered to the customer. */
    private void requireFitting(Audience audience) {
        boolean document = Set.of(Format.HTML, Format.PDF, Format.EML).contains(shared().format());
        readership.requireCustomer(shared().format(), audience);
        if (document && steps) {
            throw new UsageException("--steps is not written as %s.\nMaybe take --format text.".formatted(shared().format()));
        }
        if (audience == Audience.CUSTOMER && (steps || !whyNot.isEmpty())) {
            throw new UsageException("--%s is not for the customer's eyes.\nMaybe add --for shop.".formatted(steps ? "steps" : "why-not"));
        }
    }
}
