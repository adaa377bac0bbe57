package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Catalog;

/** Several who write into one book at once, doing what comes to their minds, held to a plain book afterwards. */
final class Writers {

    private static final Map<String, Integer> UNITS = Map.of("L1", 9, "L2", 7, "L3", 5, "L4", 12, "L5", 3);
    private static final int DAYS = 30;
    private static final QuoteStep[] STEPS = QuoteStep.values();

    private final Book book;
    private final Catalog shop = Shelf.lots(UNITS);
    private final Map<QuoteNumber, List<List<Map<String, Integer>>>> versions = new ConcurrentHashMap<>();
    private final Map<QuoteNumber, LocalDate> validUntil = new ConcurrentHashMap<>();
    private final Map<BookRefusal.Kind, AtomicInteger> refusals = new ConcurrentHashMap<>();
    private final AtomicInteger done = new AtomicInteger();

    Writers(Book book) {
        this.book = book;
    }

    /** How many steps were refused, by why. */
    Map<BookRefusal.Kind, AtomicInteger> refusals() {
        return refusals;
    }

    void work(int writers, int steps, long seed) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(writers);
        try {
            List<Callable<Void>> tasks = IntStream.range(0, writers).<Callable<Void>>mapToObj(one -> () -> {
                Random random = new Random(seed * 1000 + one);
                for (int step = 0; step < steps; step++) {
                    LocalDate day = Shelf.DAY.plusDays(done.getAndIncrement() * (long) DAYS / (writers * steps));
                    attempt(random, Shelf.by("writer " + one, day));
                }
                return null;
            }).toList();
            for (Future<Void> task : threads.invokeAll(tasks)) {
                task.get();
            }
        } finally {
            threads.shutdownNow();
        }
    }

    private void attempt(Random random, Signature by) {
        try {
            List<QuoteNumber> known = new ArrayList<>(validUntil.keySet());
            if (known.isEmpty() || random.nextInt(4) == 0) {
                save(random, by);
                return;
            }
            QuoteNumber number = known.get(random.nextInt(known.size()));
            switch (random.nextInt(6)) {
                case 0 -> book.hold(number, Optional.empty(), Optional.of(validUntil.get(number).minusDays(random.nextInt(3))), shop, by);
                case 1 -> book.release(number, by);
                default -> step(number, STEPS[random.nextInt(STEPS.length)], random, by);
            }
        } catch (BookRefusal refused) {
            refusals.computeIfAbsent(refused.kind(), kind -> new AtomicInteger()).incrementAndGet();
            assertThat(refused.kind() == BookRefusal.Kind.TAKEN).isEqualTo(!refused.gone().isEmpty());
        }
    }

    private void save(Random random, Signature by) {
        List<Map<String, Integer>> options = options(random);
        LocalDate until = by.today().plusDays(2 + random.nextInt(8));
        QuoteNumber number = book.save(Shelf.version(options, until), "customer " + random.nextInt(5), "", by).number();
        versions.put(number, new ArrayList<>(List.of(options)));
        validUntil.put(number, until);
    }

    private void step(QuoteNumber number, QuoteStep step, Random random, Signature by) {
        if (step != QuoteStep.REVISE) {
            Optional<Integer> choice = random.nextBoolean() ? Optional.empty() : Optional.of(1 + random.nextInt(2));
            book.step(number, step, choice, random.nextBoolean(), Optional.of(shop), "", by);
            return;
        }
        // The versions of one quote are noted one after another, as the book counts them.
        synchronized (versions.get(number)) {
            List<Map<String, Integer>> options = options(random);
            book.revise(book.find(number, by), Shelf.version(options, validUntil.get(number)), by);
            versions.get(number).add(options);
        }
    }

    private static List<Map<String, Integer>> options(Random random) {
        return List.of(lots(random), lots(random));
    }

    private static Map<String, Integer> lots(Random random) {
        Map<String, Integer> lots = new TreeMap<>();
        IntStream.rangeClosed(0, random.nextInt(3)).forEach(some -> lots.put("L" + (1 + random.nextInt(5)), 1 + random.nextInt(2)));
        return lots;
    }

    /** What the book has come to is what its history comes to in a plain book, in which nothing was ever taken twice. */
    void check() {
        LocalDate last = Shelf.DAY.plusDays(DAYS);
        Signature by = Shelf.on(last);
        PlainBook plain = new PlainBook(UNITS, versions, validUntil);
        List<HistoryEntry> history = book.history();
        assertThat(history.stream().map(HistoryEntry::entry)).containsExactlyElementsOf(
                IntStream.rangeClosed(1, history.size()).mapToObj(entry -> (long) entry).toList());
        history.forEach(plain::replay);
        assertThat(book.find(BookSearch.everything(), by).stream().collect(Collectors.toMap(SavedQuote::number, SavedQuote::state)))
                .isEqualTo(plain.states(last));
        Map<String, Integer> kept = new TreeMap<>();
        book.reserved(Optional.empty(), by).lots().forEach(one -> kept.merge(one.lot(), one.units(), Integer::sum));
        assertThat(kept).isEqualTo(plain.kept(last));
        assertThat(kept).allSatisfy((lot, units) -> assertThat(units).isLessThanOrEqualTo(UNITS.get(lot)));
    }
}
