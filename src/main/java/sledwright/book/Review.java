package sledwright.book;

import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.book.store.Database;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Progress;
import sledwright.desk.Terms;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.input.FaultsException;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderPlanner;
import sledwright.planner.order.OrderStatus;
import sledwright.request.Job;

/**
 * All open quotes against today's catalogue, on all cores. What has been worked out is in the book, so that a review that was broken off
 * goes on where it was, and several processes can share one.
 */
public final class Review {

    private static final int AT_ONCE = 16;
    private static final long EVERY_NS = 2_000_000_000L;

    private final Database database;
    private final Signature by;
    private final Terms terms;
    private final Catalog shop;
    private final Stock offered;
    private final String run;
    private final Map<List<Object>, Best> bests = new ConcurrentHashMap<>();
    private long told = System.nanoTime();

    /** Reads the catalogue, once for all. */
    Review(Database database, Path catalog, Signature by, Terms terms) {
        this.database = database;
        this.by = by;
        this.terms = terms;
        shop = CatalogReader.read(catalog).withToday(by.today());
        offered = stock(database.read(sql -> Holdings.reserved(sql, by.today(), Optional.empty())));
        run = by.today() + " " + CatalogDigest.of(catalog);
    }

    /** What there is to answer from. */
    private record Stock(Catalog offered, Search search) {

        int left(NewVersion.Taken pick) {
            return offered.lots(pick.sku()).stream().filter(lot -> lot.lot().equals(pick.lot())).mapToInt(Lot::available).sum();
        }
    }

    private Stock stock(Reserved reserved) {
        Catalog less = reserved.less(shop);
        return new Stock(less, new Search(less));
    }

    /** @param again whether what was worked out today is forgotten first */
    List<Reviewed> make(boolean again) {
        database.write(sql -> {
            ReviewRows.begin(sql, run, again, by.today());
            return null;
        });
        int cores = Runtime.getRuntime().availableProcessors();
        ExecutorService threads = Executors.newFixedThreadPool(cores);
        try {
            List<Future<?>> workers = new ArrayList<>();
            for (int core = 0; core < cores; core++) {
                workers.add(threads.submit(this::work));
            }
            for (Future<?> worker : workers) {
                worker.get();
            }
        } catch (ExecutionException failed) {
            throw failed.getCause() instanceof RuntimeException told ? told : new IllegalStateException(failed.getCause());
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        } finally {
            threads.shutdownNow();
        }
        return all();
    }

    private void work() {
        while (!terms.cancelled().getAsBoolean()) {
            List<QuoteNumber> taken = database.write(sql -> ReviewRows.take(sql, run, AT_ONCE, System.currentTimeMillis()));
            if (taken.isEmpty()) {
                return;
            }
            List<ReviewRows.Row> rows = new ArrayList<>();
            taken.forEach(number -> rows.add(row(number)));
            ReviewRows.Progress progress = database.write(sql -> {
                ReviewRows.put(sql, run, rows);
                return ReviewRows.progress(sql, run);
            });
            tell(progress);
        }
    }

    private synchronized void tell(ReviewRows.Progress progress) {
        if (System.nanoTime() - told < EVERY_NS) {
            return;
        }
        told = System.nanoTime();
        terms.listener().accept(new Progress.Doing("%s of %s quotes".formatted(progress.done(), progress.all())));
    }

    /**
     * All that is needed of a quote at once; nothing is searched meanwhile.
     *
     * @param others what others keep, where it keeps units for what it no longer is, such as its version before; empty otherwise
     */
    private record Subject(SavedQuote quote, Asked asked, List<NewVersion.Taken> picks, boolean held, Optional<Reserved> others,
                           long price) {
    }

    private ReviewRows.Row row(QuoteNumber number) {
        Subject subject = database.read(sql -> {
            SavedQuote quote = Quotes.find(sql, number, by.today()).orElseThrow();
            boolean keeps = quote.days().heldUntil().isPresent();
            boolean held = keeps && Holdings.holds(sql, quote, quote.offered().chosen(), by.today());
            Optional<Reserved> others = keeps && !held ? Optional.of(Holdings.reserved(sql, by.today(), Optional.of(number)))
                    : Optional.empty();
            return new Subject(quote, Quotes.asked(sql, number, quote.offered().version()).orElseThrow(),
                    Holdings.picks(sql, quote, quote.offered().chosen()), held, others,
                    Quotes.price(sql, number, quote.offered().version(), 1).orElse(-1L));
        });
        int version = subject.quote().offered().version();
        if (subject.held()) {
            return new ReviewRows.Row(number, version, Reviewed.Outcome.HELD, Optional.empty(), Optional.empty(), "");
        }
        // What it keeps itself is not gone.
        Stock stock = subject.others().map(this::stock).orElse(offered);
        String gone = subject.picks().stream().filter(pick -> stock.left(pick) < pick.units())
                .map(pick -> "%s of lot %s: %s wanted, %s left".formatted(pick.sku(), pick.lot(), pick.units(), stock.left(pick)))
                .collect(Collectors.joining("\n"));
        if (!subject.quote().offered().currency().equals(shop.currency().getCurrencyCode())) {
            return new ReviewRows.Row(number, version, Reviewed.Outcome.UNREADABLE, Optional.empty(), Optional.empty(), gone);
        }
        try {
            // Customers who asked the same are answered the same.
            Best best = stock == offered ? bests.computeIfAbsent(List.of(ByteBuffer.wrap(subject.asked().request()),
                    subject.asked().sets()), same -> best(subject.asked(), offered)) : best(subject.asked(), stock);
            return new ReviewRows.Row(number, version, best.beside(subject.price()), best.price(), best.least(), gone);
        } catch (FaultsException unreadable) {
            return new ReviewRows.Row(number, version, Reviewed.Outcome.UNREADABLE, Optional.empty(), Optional.empty(), gone);
        }
    }

    /**
     * What the best costs today.
     *
     * @param known whether that there is none is proved
     * @param price minor units; empty: there is none, or none is known
     * @param least minor units that are proved to be the least, the price itself where it is; empty: nothing is known of it
     */
    record Best(boolean known, Optional<Long> price, Optional<Long> least) {

        /** @param before minor units; negative: it cost nothing, for there was no build */
        Reviewed.Outcome beside(long before) {
            if (price.isEmpty()) {
                return known ? Reviewed.Outcome.IMPOSSIBLE : Reviewed.Outcome.UNDECIDED;
            }
            if (price.get() == before) {
                return Reviewed.Outcome.SAME;
            }
            if (price.get() < before || before < 0) {
                return Reviewed.Outcome.CHEAPER;
            }
            // That it can still be had for what was said is not ruled out before the bound is beyond it.
            return least.filter(most -> most > before).isPresent() ? Reviewed.Outcome.DEARER : Reviewed.Outcome.UNDECIDED;
        }
    }

    private Best best(Asked asked, Stock stock) {
        Job job = asked.job("request", stock.offered());
        Deadline deadline = Deadline.in(terms.time()).or(terms.cancelled());
        if (job instanceof Job.Order order) {
            return whole(new OrderPlanner(stock.offered(), stock.search(), terms.seed()).plan(order.order(), deadline, progress -> { }));
        }
        Findings found = stock.search().run(best(((Job.Quote) job).request()), deadline);
        boolean known = found.status() != Status.BEST_FOUND;
        Optional<Long> price = found.ranked().stream().findFirst().map(best -> best.price().total()).filter(best -> known);
        return new Best(known, price, price);
    }

    private static Request best(Request asked) {
        return asked.withAlternatives(1, asked.list().step());
    }

    /** An order of which machines are missing is not offered. */
    private static Best whole(OrderOutcome outcome) {
        if (outcome.missing() > 0) {
            return new Best(outcome.shortages().most(), Optional.empty(), Optional.empty());
        }
        long price = outcome.price().total();
        boolean proved = outcome.status() == OrderStatus.PROVED;
        // A figure with worth in it says nothing of the price alone.
        boolean bounded = outcome.best() == price && !Double.isNaN(outcome.bound());
        return new Best(true, Optional.of(price),
                proved ? Optional.of(price) : bounded ? Optional.of((long) Math.ceil(outcome.bound())) : Optional.empty());
    }

    private List<Reviewed> all() {
        return database.read(sql -> {
            Map<QuoteNumber, SavedQuote> quotes = Quotes.find(sql, BookSearch.everything(), by.today()).stream()
                    .collect(Collectors.toMap(SavedQuote::number, Function.identity()));
            return ReviewRows.all(sql, run).stream().map(row -> new Reviewed(quotes.get(row.number()), row.outcome(),
                    row.price().map(price -> amount(price, quotes.get(row.number()))),
                    row.least().map(least -> amount(least, quotes.get(row.number()))),
                    row.detail().isEmpty() ? List.of() : row.detail().lines().toList())).toList();
        });
    }

    private static BigDecimal amount(long minor, SavedQuote quote) {
        return Quotes.amount(minor, quote.offered().currency());
    }
}
