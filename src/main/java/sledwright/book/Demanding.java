package sledwright.book;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import sledwright.book.PastDemand.AskedClass;
import sledwright.book.PastDemand.Course;
import sledwright.book.PastDemand.Lost;
import sledwright.book.PastDemand.MonthByMonth;
import sledwright.book.store.Sql;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Catalog;
import sledwright.domain.DeliverBy;
import sledwright.domain.Request;
import sledwright.input.FaultsException;
import sledwright.request.Job;

/** Makes classes of what was asked for: months count back from today, so that none is cut short. */
final class Demanding {

    private final Catalog shop;
    private final LocalDate today;
    private final int months;
    private final Map<List<Object>, List<Request>> read = new HashMap<>();

    Demanding(Path catalog, LocalDate today, int months) {
        shop = CatalogReader.read(catalog).withToday(today);
        this.today = today;
        this.months = months;
    }

    /** A quote with what it answers. */
    record Row(SavedQuote quote, Asked asked, Optional<BigDecimal> wouldPay) {

        Course course() {
            return switch (quote.state()) {
                case ACCEPTED, PICKED, DELIVERED -> Course.BOUGHT;
                case DECLINED, WITHDRAWN, EXPIRED -> Course.LOST;
                default -> Course.OPEN;
            };
        }

        /** What a machine is asked to be paid; empty where that was in another currency. */
        Optional<BigDecimal> each(String currency) {
            return quote.offered().pays().filter(price -> quote.offered().currency().equals(currency)).map(price ->
                    price.divide(BigDecimal.valueOf(quote.offered().machines()), price.scale(), RoundingMode.HALF_UP));
        }
    }

    /**
     * A request of a quote: its own, or that of a line where it is an order.
     *
     * @param alone whether the quote is about nothing else
     */
    private record Wanted(Row row, Request request, boolean alone) {

        boolean isOffered() {
            return row.quote().offered().price().isPresent();
        }

        /** What a machine of it was offered for; of an order's lines that is not known. */
        Optional<BigDecimal> each(String currency) {
            return alone ? row.each(currency) : Optional.empty();
        }
    }

    /** Quotes of those months. */
    static List<Row> rows(Sql sql, LocalDate today, int months) throws SQLException {
        BookSearch search = new BookSearch(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.of(first(today, months)), Optional.of(today));
        Map<String, Long> wouldPay = new HashMap<>();
        sql.all("SELECT number, would_pay FROM quote WHERE would_pay IS NOT NULL", row -> wouldPay.put(row.getString(1), row.getLong(2)));
        List<Row> rows = new ArrayList<>();
        for (SavedQuote quote : Quotes.find(sql, search, today)) {
            rows.add(new Row(quote, Quotes.asked(sql, quote.number(), quote.offered().version()).orElseThrow(),
                    Optional.ofNullable(wouldPay.get(quote.number().toString()))
                    .map(minor -> Quotes.amount(minor, quote.offered().currency()))));
        }
        return rows;
    }

    static LocalDate first(LocalDate today, int months) {
        return today.minusMonths(months).plusDays(1);
    }

    PastDemand of(List<Row> rows) {
        Map<Likeness, List<Wanted>> alike = new LinkedHashMap<>();
        List<QuoteNumber> unread = new ArrayList<>();
        for (Row row : rows) {
            List<Request> requests = requests(row.asked());
            if (requests.isEmpty()) {
                unread.add(row.quote().number());
            }
            for (Request request : requests) {
                Likeness likeness = Likeness.of(request);
                Likeness known = alike.keySet().stream().filter(likeness::isLike).findFirst().orElse(likeness);
                alike.computeIfAbsent(known, fresh -> new ArrayList<>()).add(new Wanted(row, request, requests.size() == 1));
            }
        }
        Set<String> names = new HashSet<>();
        List<AskedClass> classes = new ArrayList<>();
        Map<QuoteNumber, Optional<BigDecimal>> accepted = new HashMap<>();
        alike.values().stream().sorted(Comparator.comparingInt((List<Wanted> some) -> some.size()).reversed()).forEach(some -> {
            AskedClass made = asked(some, names);
            classes.add(made);
            some.stream().filter(one -> one.each(currency()).isPresent()).forEach(one ->
                    accepted.put(one.row().quote().number(), made.accepted()));
        });
        List<Lost> lost = rows.stream().filter(row -> row.course() == Course.LOST)
                .map(row -> lost(row, accepted.getOrDefault(row.quote().number(), Optional.empty())))
                .sorted(Comparator.comparing(one -> one.quote().number())).toList();
        return new PastDemand(classes, lost, unread, first(today, months), today, months, currency());
    }

    private String currency() {
        return shop.currency().getCurrencyCode();
    }

    /** What is asked for, line by line of an order; none: it cannot be read. */
    private List<Request> requests(Asked asked) {
        return read.computeIfAbsent(List.of(ByteBuffer.wrap(asked.request()), asked.sets()), same -> {
            try {
                Job job = asked.job("request", shop);
                return job instanceof Job.Order order ? order.order().lines().stream().map(line -> line.request().withName(line.name()))
                        .toList() : List.of(((Job.Quote) job).request());
            } catch (FaultsException wrong) {
                return List.of();
            }
        });
    }

    private AskedClass asked(List<Wanted> wanted, Set<String> names) {
        Map<Request, Integer> times = new LinkedHashMap<>();
        wanted.forEach(one -> times.merge(one.request(), 1, Integer::sum));
        // Of equals the first that was asked.
        int most = Collections.max(times.values());
        Request request = times.entrySet().stream().filter(one -> one.getValue() == most).findFirst().orElseThrow().getKey();
        Row first = wanted.stream().filter(one -> one.request().equals(request)).findFirst().orElseThrow().row();
        String name = names.add(request.name()) ? request.name() : "%s like %s".formatted(request.name(), first.quote().number());
        names.add(name);
        List<Row> rows = wanted.stream().map(Wanted::row).toList();
        List<Row> offered = wanted.stream().filter(Wanted::isOffered).map(Wanted::row).toList();
        return new AskedClass(name, request, lead(request, first), new MonthByMonth(byMonth(rows),
                byMonth(rows.stream().filter(row -> row.course() == Course.BOUGHT).toList()),
                byMonth(rows.stream().filter(row -> row.quote().offered().price().isEmpty()).toList())),
                (int) offered.stream().filter(row -> row.course() == Course.LOST).count(),
                (int) offered.stream().filter(row -> row.course() == Course.OPEN).count(),
                middle(wanted.stream().filter(one -> one.row().course() == Course.BOUGHT).flatMap(one -> one.each(currency()).stream())
                .sorted().toList()));
    }

    /** A last day of delivery is one customer's; the days until then are what all of them wait. */
    private static Optional<Integer> lead(Request request, Row first) {
        Optional<Integer> by = request.limit().by().map(DeliverBy::day).map(day -> (int) Math.max(0,
                ChronoUnit.DAYS.between(first.quote().days().madeOn(), day)));
        return IntStream.concat(by.stream().mapToInt(days -> days), request.limit().leadDays().stream()).boxed()
                .min(Comparator.naturalOrder());
    }

    private List<Integer> byMonth(List<Row> rows) {
        return IntStream.range(0, months).mapToObj(month -> {
            LocalDate from = first(today, months - month);
            LocalDate until = today.minusMonths(months - month - 1L);
            return (int) rows.stream().filter(row -> !row.quote().days().madeOn().isBefore(from)
                    && !row.quote().days().madeOn().isAfter(until)).count();
        }).toList();
    }

    private static Optional<BigDecimal> middle(List<BigDecimal> sorted) {
        return sorted.isEmpty() ? Optional.empty() : Optional.of(sorted.get(sorted.size() / 2));
    }

    private static Lost lost(Row row, Optional<BigDecimal> accepted) {
        SavedQuote quote = row.quote();
        String reason = quote.state() == QuoteState.EXPIRED ? "expired" : quote.reason().strip();
        return new Lost(quote, reason, quote.offered().pays(), row.wouldPay(),
                accepted.map(each -> each.multiply(BigDecimal.valueOf(quote.offered().machines()))));
    }
}
