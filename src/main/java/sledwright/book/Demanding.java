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
import sledwright.book.store.Sql;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogSource;
import sledwright.domain.Catalog;
import sledwright.domain.DeliverBy;
import sledwright.domain.Request;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** Makes classes of what was asked for: months count back from today, so that none is cut short. */
final class Demanding {

    private final Catalog shop;
    private final LocalDate today;
    private final int months;
    private final Map<List<Object>, Optional<Request>> read = new HashMap<>();

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

        Optional<BigDecimal> each() {
            return quote.price().map(price -> price.divide(BigDecimal.valueOf(quote.machines()), price.scale(), RoundingMode.HALF_UP));
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
            rows.add(new Row(quote, Quotes.asked(sql, quote.number(), quote.version()).orElseThrow(),
                    Optional.ofNullable(wouldPay.get(quote.number().toString())).map(minor -> Quotes.amount(minor, quote.currency()))));
        }
        return rows;
    }

    static LocalDate first(LocalDate today, int months) {
        return today.minusMonths(months).plusDays(1);
    }

    PastDemand of(List<Row> rows) {
        Map<Likeness, List<Row>> alike = new LinkedHashMap<>();
        List<QuoteNumber> unread = new ArrayList<>();
        for (Row row : rows) {
            Optional<Request> request = request(row.asked());
            if (request.isEmpty()) {
                unread.add(row.quote().number());
                continue;
            }
            Likeness likeness = Likeness.of(request.get());
            Likeness known = alike.keySet().stream().filter(likeness::isLike).findFirst().orElse(likeness);
            alike.computeIfAbsent(known, fresh -> new ArrayList<>()).add(row);
        }
        Set<String> names = new HashSet<>();
        List<AskedClass> classes = new ArrayList<>();
        List<Lost> lost = new ArrayList<>();
        alike.values().stream().sorted(Comparator.comparingInt((List<Row> some) -> some.size()).reversed()).forEach(some -> {
            AskedClass made = asked(some, names);
            classes.add(made);
            some.stream().filter(row -> row.course() == Course.LOST).map(row -> lost(row, made.accepted())).forEach(lost::add);
        });
        rows.stream().filter(row -> unread.contains(row.quote().number()) && row.course() == Course.LOST)
                .map(row -> lost(row, Optional.empty())).forEach(lost::add);
        lost.sort(Comparator.comparing(one -> one.quote().number()));
        return new PastDemand(classes, lost, unread, first(today, months), today, months, shop.currency().getCurrencyCode());
    }

    private Optional<Request> request(Asked asked) {
        return read.computeIfAbsent(List.of(ByteBuffer.wrap(asked.request()), asked.sets()), same -> {
            try {
                return Optional.of(((Job.Quote) RequestReader.read(Source.named("request", asked.name(), asked.request()), asked.sets(),
                        Optional.of(CatalogSource.of(shop)), Set.of(Kind.QUOTE))).request());
            } catch (FaultsException wrong) {
                return Optional.empty();
            }
        });
    }

    private AskedClass asked(List<Row> rows, Set<String> names) {
        Map<Request, Integer> times = new LinkedHashMap<>();
        rows.forEach(row -> times.merge(request(row.asked()).orElseThrow(), 1, Integer::sum));
        // Of equals the first that was asked.
        int most = Collections.max(times.values());
        Request request = times.entrySet().stream().filter(one -> one.getValue() == most).findFirst().orElseThrow().getKey();
        Row first = rows.stream().filter(row -> request(row.asked()).orElseThrow().equals(request)).findFirst().orElseThrow();
        String name = names.add(request.name()) ? request.name() : "%s like %s".formatted(request.name(), first.quote().number());
        names.add(name);
        List<Row> offered = rows.stream().filter(row -> row.quote().price().isPresent()).toList();
        return new AskedClass(name, request, lead(request, first), byMonth(rows),
                byMonth(rows.stream().filter(row -> row.course() == Course.BOUGHT).toList()),
                byMonth(rows.stream().filter(row -> row.quote().price().isEmpty()).toList()),
                (int) offered.stream().filter(row -> row.course() == Course.LOST).count(),
                (int) offered.stream().filter(row -> row.course() == Course.OPEN).count(),
                middle(rows.stream().filter(row -> row.course() == Course.BOUGHT).flatMap(row -> row.each().stream()).sorted().toList()));
    }

    /** A last day of delivery is one customer's; the days until then are what all of them wait. */
    private static Optional<Integer> lead(Request request, Row first) {
        Optional<Integer> by = request.limit().by().map(DeliverBy::day).map(day -> (int) Math.max(0,
                ChronoUnit.DAYS.between(first.quote().madeOn(), day)));
        return IntStream.concat(by.stream().mapToInt(days -> days), request.limit().leadDays().stream()).boxed()
                .min(Comparator.naturalOrder());
    }

    private List<Integer> byMonth(List<Row> rows) {
        return IntStream.range(0, months).mapToObj(month -> {
            LocalDate from = first(today, months - month);
            LocalDate until = today.minusMonths(months - month - 1L);
            return (int) rows.stream().filter(row -> !row.quote().madeOn().isBefore(from) && !row.quote().madeOn().isAfter(until)).count();
        }).toList();
    }

    private static Optional<BigDecimal> middle(List<BigDecimal> sorted) {
        return sorted.isEmpty() ? Optional.empty() : Optional.of(sorted.get(sorted.size() / 2));
    }

    private static Lost lost(Row row, Optional<BigDecimal> accepted) {
        SavedQuote quote = row.quote();
        String reason = quote.state() == QuoteState.EXPIRED ? "expired" : quote.reason().strip();
        return new Lost(quote, reason, quote.price(), row.wouldPay(),
                accepted.map(each -> each.multiply(BigDecimal.valueOf(quote.machines()))));
    }
}
