package sledwright.desk;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogSource;
import sledwright.desk.view.CheckView;
import sledwright.desk.view.CompareAnswer;
import sledwright.desk.view.LabelAnswer;
import sledwright.desk.view.LabelView;
import sledwright.desk.view.OfferAnswer;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.OtherLimits;
import sledwright.desk.view.QuoteAnswer;
import sledwright.desk.view.RestockView;
import sledwright.desk.view.SheetAnswer;
import sledwright.desk.view.UpgradeAnswer;
import sledwright.domain.Catalog;
import sledwright.generator.Search;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Located;
import sledwright.input.Source;
import sledwright.label.LabelLines;
import sledwright.label.Reading;
import sledwright.label.SpdReader;
import sledwright.planner.Judge;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.restock.Levels;
import sledwright.restock.RestockPlan;
import sledwright.restock.Restocker;

/**
 * The one place where questions are answered; {@code sets} are keys to answer with in place of the request's own, as {@code path=value}.
 */
public final class Desk {

    private final Optional<CatalogSource> given;
    /** What is known of the catalogue that was given; empty where each question reads its own. */
    private final Optional<Search> known;
    private final Supplier<LocalDate> clock;

    /** Leaves of a catalogue what may be offered. */
    private final UnaryOperator<Catalog> stock;

    /** The catalogue as of the last day on which it was asked, with what was worked out of it. */
    private volatile Dated dated;

    private record Dated(Catalog found, Catalog today) {
    }

    private Desk(Optional<CatalogSource> given, Optional<Search> known, Supplier<LocalDate> clock, UnaryOperator<Catalog> stock) {
        this.given = given;
        this.known = known;
        this.clock = clock;
        this.stock = stock;
    }

    /** A desk at which every request names the catalogue that it is answered from. */
    public static Desk open() {
        return new Desk(Optional.empty(), Optional.empty(), LocalDate::now, UnaryOperator.identity());
    }

    /** A desk that answers from one folder, whatever requests name; the folder is read for each question. */
    public static Desk at(Path folder) {
        return new Desk(Optional.of(CatalogSource.of(folder)), Optional.empty(), LocalDate::now, UnaryOperator.identity());
    }

    /** A desk that answers from one catalogue, whatever requests name, and keeps what it learns of it. */
    public static Desk of(Catalog catalog) {
        return new Desk(Optional.of(CatalogSource.of(catalog)), Optional.of(new Search(catalog)), LocalDate::now, UnaryOperator.identity());
    }

    /** The same desk with another clock, which gives the day of each answer. */
    public Desk by(Supplier<LocalDate> other) {
        return new Desk(given, known, other, stock);
    }

    /** The same desk where not all that a catalogue has may be offered. */
    public Desk offering(UnaryOperator<Catalog> allowed) {
        return new Desk(given, Optional.empty(), clock, allowed);
    }

    /** A desk that answers from one folder as it is now, whatever requests name, and keeps what it learns of it. */
    public static Reply<Desk> keeping(Path folder) {
        return sound(() -> of(CatalogReader.read(folder)));
    }

    /** Uses a second core, where there is one, for what the first question will need; for a process that is about to ask it. */
    public static void prepare() {
        Judge.prepare();
    }

    /** Ranked builds for a request of kind {@code quote}, with what explains them. */
    public Reply<QuoteAnswer> quote(Source source, QuoteQuestion asked, Terms terms) {
        return read(source, asked.sets(), Kind.QUOTE, Job.Quote.class).then(job -> Quoting.answer(job, search(job), asked, terms));
    }

    /** What a shop may offer and keep: the answer to a request of kind {@code quote} or {@code order}. */
    public Reply<OfferAnswer> offer(Source source, List<String> sets, Terms terms) {
        return read(source, sets, EnumSet.of(Kind.QUOTE, Kind.ORDER)).then(job -> {
            if (job instanceof Job.Order order) {
                return new Reply.Answered<>(Ordering.answer(order, search(job), terms));
            }
            return Quoting.answer((Job.Quote) job, search(job), new QuoteQuestion(sets, List.of(), false), terms)
                    .map(OfferAnswer.class::cast);
        });
    }

    /** What the cheapest build of a quote that this desk has answered costs with another time to wait or further conditions. */
    public OtherLimits otherLimits(QuoteAnswer answer, Terms terms) {
        return Limiting.of(answer, search(answer.job()), terms);
    }

    /** Whether a build breaks rules, and which. */
    public Reply<CheckView> check(Source source, List<String> sets) {
        return read(source, sets, Kind.BUILD, Job.Judge.class).map(job -> new Checking(job).view());
    }

    /** What money buys, for a request of kind {@code quote}. */
    public Reply<CompareAnswer> compare(Source source, CompareQuestion asked, Terms terms) {
        return read(source, asked.sets(), Kind.QUOTE, Job.Quote.class).then(job -> Comparing.answer(job, search(job), asked, terms));
    }

    /** Lines of machines filled from one stock; the listener receives {@link Progress.Found}. */
    public Reply<OrderAnswer> order(Source source, List<String> sets, Terms terms) {
        long came = System.nanoTime();
        // Orders may have thousands of lines, which take their time to read.
        return read(source, sets, Kind.ORDER, Job.Order.class)
                .map(job -> Ordering.answer(job, search(job), terms.after(Duration.ofNanos(System.nanoTime() - came))));
    }

    /** The least to spend so that machines which stand reach a target. */
    public Reply<UpgradeAnswer> upgrade(Source source, List<String> sets, Terms terms) {
        return read(source, sets, Kind.UPGRADE, Job.Upgrade.class)
                .map(job -> new UpgradeAnswer(new Upgrading(job, terms).view(), job));
    }

    /** What to put together of a build, a quote, an upgrade or an order, of which the listener receives {@link Progress.Found}. */
    public Reply<SheetAnswer> sheet(Source source, SheetQuestion asked, Terms terms) {
        if (asked.rank().isPresent() && asked.rank().getAsInt() < 1) {
            return new Reply.Misasked<>(new Misasking("rank", String.valueOf(asked.rank().getAsInt()), ": the list begins with 1.",
                    Optional.empty()));
        }
        return read(source, asked.sets(), EnumSet.of(Kind.BUILD, Kind.QUOTE, Kind.UPGRADE, Kind.ORDER))
                .then(job -> SheetMaking.answer(job, search(job), asked, terms));
    }

    /** What to buy for expected orders; the listener receives {@link Progress.Doing}. */
    public Reply<RestockView> restock(Source source, RestockQuestion asked, Terms terms) {
        return read(source, asked.sets(), Kind.RESTOCK, Job.Restock.class).map(job -> {
            RestockPlan plan = Restocker.plan(job.catalog(), job.plan(), terms.seed(), terms.deadline(),
                    words -> terms.listener().accept(new Progress.Doing(words)));
            return new RestockView(plan, job.catalog(), terms.seed(), asked.levels() ? Levels.of(plan) : List.of());
        });
    }

    /** Modules from their labels or SPDs. */
    public static Reply<LabelAnswer> label(LabelQuestion asked) {
        Faults faults = new Faults();
        List<Located<String>> labels = new ArrayList<>(LabelLines.ofArguments(asked.texts()));
        asked.files().forEach(file -> labels.addAll(LabelLines.ofFile(file, faults)));
        List<Reading> readings = new ArrayList<>(LabelLines.read(labels, faults));
        asked.spds().forEach(file -> SpdReader.read(file, faults).ifPresent(readings::add));
        boolean skips = asked.skipFaulty() && !readings.isEmpty();
        return faults.size() > 0 && !skips ? new Reply.Faulty<>(faults.all())
                : new Reply.Answered<>(new LabelAnswer(LabelView.of(readings), faults.all()));
    }

    private <J extends Job> Reply<J> read(Source source, List<String> sets, Kind kind, Class<J> type) {
        return read(source, sets, Set.of(kind)).map(type::cast);
    }

    private Reply<Job> read(Source source, List<String> sets, Set<Kind> kinds) {
        return sound(() -> RequestReader.read(source, sets, given, kinds, found -> stock.apply(today(found))));
    }

    private Catalog today(Catalog found) {
        LocalDate day = clock.get();
        Dated before = dated;
        if (before != null && before.found == found && before.today.today().equals(day)) {
            return before.today;
        }
        Catalog today = found.withToday(day);
        if (known.isPresent()) {
            dated = new Dated(found, today);
        }
        return today;
    }

    private Search search(Job job) {
        return known.orElseGet(() -> new Search(job.catalog()));
    }

    /** What was read; what is wrong in it becomes a value. */
    static <T> Reply<T> sound(Supplier<T> read) {
        try {
            return new Reply.Answered<>(read.get());
        } catch (FaultsException wrong) {
            return new Reply.Faulty<>(wrong.faults());
        }
    }
}
