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
    private final Catalog offered;
    private final Search search;
    private final String run;
    private final Map<List<Object>, Best> bests = new ConcurrentHashMap<>();
    private long told = System.nanoTime();

    /** Reads the catalogue, once for all. */
    Review(Database database, Path catalog, Signature by, Terms terms) {
        this.database = database;
        this.by = by;
        this.terms = terms;
        Reserved reserved = database.read(sql -> Holdings.reserved(sql, by.today(), Optional.empty()));
        offered = reserved.less(CatalogReader.read(catalog).withToday(by.today()));
        search = new Search(offered);
        run = by.today() + " " + CatalogDigest.of(catalog);
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

    /** All that is needed of a quote at once; nothing is searched meanwhile. */
    private record Subject(SavedQuote quote, Asked asked, List<NewVersion.Taken> picks, boolean held, long price) {
    }

    private ReviewRows.Row row(QuoteNumber number) {
        Subject subject = database.read(sql -> {
            SavedQuote quote = Quotes.find(sql, number, by.today()).orElseThrow();
            return new Subject(quote, Quotes.asked(sql, number, quote.offered().version()).orElseThrow(),
                    Holdings.picks(sql, quote, quote.offered().chosen()),
                    quote.days().heldUntil().isPresent() && Holdings.holds(sql, quote, quote.offered().chosen(), by.today()),
                    Quotes.price(sql, number, quote.offered().version(), 1).orElse(-1L));
        });
        int version = subject.quote().offered().version();
        if (subject.held()) {
            return new ReviewRows.Row(number, version, Reviewed.Outcome.HELD, Optional.empty(), "");
        }
        String gone = subject.picks().stream().filter(pick -> left(pick) < pick.units()).map(pick -> "%s of lot %s: %s wanted, %s left"
                .formatted(pick.sku(), pick.lot(), pick.units(), left(pick))).collect(Collectors.joining("\n"));
        try {
            Best best = best(subject.asked());
            if (!best.known() || best.price().isEmpty()) {
                Reviewed.Outcome without = best.known() ? Reviewed.Outcome.IMPOSSIBLE : Reviewed.Outcome.UNDECIDED;
                return new ReviewRows.Row(number, version, without, Optional.empty(), gone);
            }
            long price = best.price().get();
            Reviewed.Outcome outcome = price == subject.price() ? Reviewed.Outcome.SAME
                    : price > subject.price() && subject.price() >= 0 ? Reviewed.Outcome.DEARER : Reviewed.Outcome.CHEAPER;
            return new ReviewRows.Row(number, version, outcome, Optional.of(price), gone);
        } catch (FaultsException unreadable) {
            return new ReviewRows.Row(number, version, Reviewed.Outcome.UNREADABLE, Optional.empty(), gone);
        }
    }

    /**
     * What the best costs today.
     *
     * @param known whether that, or that there is none, is proved; of a whole order it is enough that it can be had
     * @param price minor units; empty: there is none, or none is known
     */
    private record Best(boolean known, Optional<Long> price) {
    }

    /** Customers who asked the same are answered the same. */
    private Best best(Asked asked) {
        return bests.computeIfAbsent(List.of(ByteBuffer.wrap(asked.request()), asked.sets()), same -> {
            Job job = asked.job("request", offered);
            Deadline deadline = Deadline.in(terms.time()).or(terms.cancelled());
            if (job instanceof Job.Order order) {
                return whole(new OrderPlanner(offered, search, terms.seed()).plan(order.order(), deadline, progress -> { }));
            }
            Findings found = search.run(best(((Job.Quote) job).request()), deadline);
            return new Best(found.status() != Status.BEST_FOUND, found.ranked().stream().findFirst().map(best -> best.price().total()));
        });
    }

    private static Request best(Request asked) {
        return asked.withAlternatives(1, asked.list().step());
    }

    /** An order of which machines are missing is not offered. */
    private static Best whole(OrderOutcome outcome) {
        boolean whole = outcome.missing() == 0;
        return new Best(whole || outcome.shortages().most(), whole ? Optional.of(outcome.price().total()) : Optional.empty());
    }

    private int left(NewVersion.Taken pick) {
        return offered.lots(pick.sku()).stream().filter(lot -> lot.lot().equals(pick.lot())).mapToInt(Lot::available).sum();
    }

    private List<Reviewed> all() {
        return database.read(sql -> {
            Map<QuoteNumber, SavedQuote> quotes = Quotes.find(sql, BookSearch.everything(), by.today()).stream()
                    .collect(Collectors.toMap(SavedQuote::number, Function.identity()));
            return ReviewRows.all(sql, run).stream().map(row -> new Reviewed(quotes.get(row.number()), row.outcome(),
                    row.price().map(price -> amount(price, quotes.get(row.number()))),
                    row.detail().isEmpty() ? List.of() : row.detail().lines().toList())).toList();
        });
    }

    private static BigDecimal amount(long minor, SavedQuote quote) {
        return Quotes.amount(minor, quote.offered().currency());
    }
}
