package sledwright.web.api;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import sledwright.book.Answered;
import sledwright.book.Answering;
import sledwright.book.AskingAgain;
import sledwright.book.Asked;
import sledwright.book.Book;
import sledwright.book.BookSearch;
import sledwright.book.QuoteNumber;
import sledwright.book.QuoteState;
import sledwright.book.QuoteStep;
import sledwright.book.QuotedMachines;
import sledwright.book.Reserving;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.desk.Terms;
import sledwright.desk.view.Audience;
import sledwright.desk.view.SheetAnswer;
import sledwright.input.Figure;
import sledwright.input.Source;
import sledwright.report.book.BookJson;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pdf;
import sledwright.report.papers.OfferPapers;
import sledwright.report.sheet.SheetCsv;
import sledwright.report.sheet.SheetHtml;
import sledwright.report.sheet.SheetJson;
import sledwright.report.sheet.SheetSvg;
import sledwright.report.sheet.SheetText;
import sledwright.report.sheet.SheetView;
import sledwright.report.sheet.Sheets;
import sledwright.report.text.Json;
import sledwright.report.text.Screen;
import sledwright.web.http.RefusedException;
import sledwright.web.shop.OpenShop;
import sledwright.web.users.Secrets;

/** What is done in the book, as the commands do it. */
final class BookDesk {

    private static final int SECONDS = 30;

    /** A request as it was handed in, and what was set beside it. */
    private record Handed(String request, List<String> sets) {
    }

    private final OpenShop shop;
    private final DoneOnce<String> saved = new DoneOnce<>();

    BookDesk(OpenShop shop) {
        this.shop = shop;
    }

    /** A new quote, with its number; the same one to whoever asks the same by the same name again. */
    String save(String type, byte[] body, QueryOptions options, String who) {
        Source source = RequestBody.of(type, body);
        Optional<String> once = options.text("once").filter(name -> !name.isBlank());
        return once.isEmpty() ? kept(source, options, who)
                : saved.of(List.of(who, options.all(), Secrets.digest(new String(body, StandardCharsets.UTF_8))),
                () -> kept(source, options, who));
    }

    private String kept(Source source, QueryOptions options, String who) {
        String customer = options.text("customer").filter(name -> !name.isBlank())
                .orElseThrow(() -> RefusedException.of(400, "customer", "", "is missing: who asks"));
        Signature by = signature(options, who);
        Book book = shop.shelf().book();
        Answered answered = DeskReplies.of(Answering.answer(source, options.texts("set"), Optional.of(shop.folder()),
                book.stock(Optional.empty(), by), terms(options)));
        return BookJson.of(book.save(answered, OfferPapers::of, customer, options.text("note").orElse(""), by));
    }

    String list(QueryOptions options) {
        Optional<QuoteState> state = options.text("state").map(word -> QuoteState.named(word).orElseThrow(() ->
                RefusedException.of(400, "state", word, "must be one of " + String.join(", ", QuoteState.labels()))));
        BookSearch search = new BookSearch(options.text("customer"), state, options.text("words"), options.text("part"),
                options.day("since"), options.day("until"));
        return BookJson.of(shop.shelf().ifThere().map(book -> book.find(search, signature(options, ""))).orElse(List.of()));
    }

    /** A paper as it was saved. */
    byte[] paper(QuoteNumber number, String format, QueryOptions options) {
        Audience usual = List.of("html", "pdf", "xlsx", "eml").contains(format) ? Audience.CUSTOMER : Audience.SHOP;
        Audience audience = Inquiry.audience(options, usual);
        Book book = shop.shelf().book();
        SavedQuote quote = book.find(number, signature(options, ""));
        return book.paper(quote, whole("version", options).orElse(quote.offered().version()), OfferPapers.name(format, audience));
    }

    /** The bench sheets of its machines. */
    byte[] sheet(QuoteNumber number, String format, QueryOptions options) {
        SheetAnswer.Work work = QuotedMachines.of(shop.shelf().book(), number, Optional.of(shop.folder()), signature(options, ""),
                terms(options));
        SheetView view = Sheets.of(work);
        PageHead head = PageHead.of(SheetHtml.title(view), SheetHtml.subject(view), work.shop());
        return switch (format) {
            case "text" -> bytes(SheetText.of(view, Screen.PAGE));
            case "csv" -> bytes(SheetCsv.of(view));
            case "html" -> bytes(SheetHtml.of(view, head));
            case "pdf" -> Pdf.of(SheetHtml.of(view, head), head);
            case "svg" -> bytes(SheetSvg.of(view));
            default -> bytes(SheetJson.of(view));
        };
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** A quote with all that was done with it. */
    String history(QuoteNumber number, QueryOptions options) {
        Book book = shop.shelf().book();
        Signature by = signature(options, "");
        return BookJson.history(book.find(number, by), book.history(number, by));
    }

    /** What its last version answers: the request as it was handed in, and what was set beside it. */
    String request(QuoteNumber number, QueryOptions options) {
        Book book = shop.shelf().book();
        Asked asked = book.asked(book.find(number, signature(options, "")));
        return Json.of(new Handed(new String(asked.request(), StandardCharsets.UTF_8), asked.sets()));
    }

    /** @param step one of {@link BookKeys#STEPS} */
    SavedQuote step(QuoteNumber number, String step, QueryOptions options, String who) {
        Book book = shop.shelf().book();
        Signature now = signature(options, who);
        Signature by = whole("version", options).map(now::withSeen).orElse(now);
        Reserving reserving = new Reserving(book, Optional.of(shop.folder()), terms(options));
        return switch (step) {
            case "hold" -> reserving.hold(number, whole("option", options), options.day("until"), by);
            case "release" -> book.release(number, by);
            case "revise" -> revise(book, number, options, by);
            case "copy" -> copy(book, number, options, by);
            case "decline" -> book.decline(number, Optional.empty(),
                    options.text("would-pay").filter(given -> !given.isBlank()).map(BookDesk::amount), reason(options), by);
            default -> reserving.step(number, QuoteStep.valueOf(step.toUpperCase(java.util.Locale.ROOT)), whole("option", options),
                    options.flag("hold"), options.flag("stale-prices"), reason(options), by);
        };
    }

    private static String reason(QueryOptions options) {
        return options.text("reason").orElse("");
    }

    private static BigDecimal amount(String given) {
        return Figure.amount(given.strip()).orElseThrow(() -> RefusedException.of(400, "would-pay", given, Figure.NO_AMOUNT));
    }

    private SavedQuote revise(Book book, QuoteNumber number, QueryOptions options, Signature by) {
        SavedQuote old = book.find(number, by);
        Answered answered = again(book, old, Optional.of(number), options, by);
        return book.revise(old, answered, OfferPapers::of, by);
    }

    private SavedQuote copy(Book book, QuoteNumber number, QueryOptions options, Signature by) {
        SavedQuote old = book.find(number, by);
        Answered answered = again(book, old, Optional.empty(), options, by);
        return book.copy(old, answered, OfferPapers::of, options.text("customer").orElse(old.customer()), by);
    }

    private Answered again(Book book, SavedQuote old, Optional<QuoteNumber> but, QueryOptions options, Signature by) {
        return DeskReplies.of(new AskingAgain(book, Optional.of(shop.folder()), terms(options)).of(old, options.texts("set"), but, by));
    }

    private static Terms terms(QueryOptions options) {
        return Terms.within(options.time(SECONDS));
    }

    /** Who does something, and when: now, or at the beginning of the day that is said to be today. */
    static Signature signature(QueryOptions options, String who) {
        String name = !who.isEmpty() ? who
                : options.text("by").filter(given -> !given.isBlank()).orElse(System.getProperty("user.name", ""));
        Instant at = options.today().map(day -> day.atStartOfDay().toInstant(ZoneOffset.UTC)).orElseGet(Instant::now);
        return new Signature(name.isBlank() ? "unknown" : name.strip(), at, options.today().orElseGet(LocalDate::now));
    }

    private static Optional<Integer> whole(String key, QueryOptions options) {
        return options.text(key).map(text -> {
            if (!text.matches("[0-9]{1,6}")) {
                throw RefusedException.of(400, key, text, "must be a number");
            }
            return Integer.valueOf(text);
        });
    }
}
