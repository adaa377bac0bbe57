package sledwright.book;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.KeptAs;
import sledwright.desk.view.OfferAnswer;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.QuoteAnswer;
import sledwright.domain.Catalog;
import sledwright.domain.Part;
import sledwright.domain.Pick;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.planner.Judged;
import sledwright.planner.order.OrderOutcome;
import sledwright.rules.Order;
import sledwright.words.Numbers;

/**
 * An answer as it goes into the book.
 *
 * @param asked   what it answers
 * @param catalog what it is answered from
 * @param options the ranked builds, the best first; empty where there is nothing to offer
 * @param words   what it can be found by
 * @param papers  its documents, packed, by what they are called, such as {@code html.customer}
 */
record NewVersion(Asked asked, Head head, From catalog, List<Choice> options, List<String> words, Map<String, byte[]> papers) {

    /**
     * What it is of, and how it stands.
     *
     * @param name       what the customer calls the request
     * @param machines   for how many of them
     * @param status     how sure the answer is
     * @param validUntil the last day on which it holds; empty where the shop names none
     */
    record Head(String name, int machines, String status, Optional<LocalDate> validUntil) {
    }

    /** A catalogue: the digest of its files, the day of its prices, and their currency. */
    record From(String digest, LocalDate pricedOn, String currency) {
    }

    /**
     * One of the builds that a quote offers.
     *
     * @param price minor units, for all machines
     * @param told  what each machine reaches
     * @param picks what it takes from the shop's lots, each lot once
     */
    record Choice(int place, long price, String platform, Optional<String> processor, Told told, int leadDays, List<Taken> picks) {
    }

    /** Figures of a machine as the customer read them. */
    record Told(int processors, int cores, BigDecimal usableGb, BigDecimal bandwidthGbs, BigDecimal throughput, BigDecimal loadW) {

        static Told of(Figures figures) {
            return new Told(figures.processors(), figures.cores(), Numbers.decimal(figures.usableGb()),
                    Numbers.decimal(figures.bandwidthGbs()), Numbers.decimal(figures.throughput()), Numbers.decimal(figures.loadW()));
        }
    }

    /** Units of one lot; the price is that of one, in minor units. */
    record Taken(String sku, String lot, String supplier, int units, long unitPrice) {
    }

    /** An answer with its papers, which bear the number under which it is kept. */
    static NewVersion of(Answered answered, Papers papers, KeptAs number) {
        Map<String, byte[]> all = new LinkedHashMap<>(papers.of(answered.answer().keptAs(number)));
        if (answered.answer() instanceof OrderAnswer order) {
            all.put(KeptMachines.PAPER, KeptMachines.of(order.outcome()).json());
        }
        return of(answered, all);
    }

    private static NewVersion of(Answered answered, Map<String, byte[]> papers) {
        OfferAnswer answer = answered.answer();
        Catalog catalog = answer.shop();
        List<Choice> options = answer instanceof OrderAnswer order ? choices(order) : choices((QuoteAnswer) answer);
        From from = new From(answered.digest(), catalog.pricedOn(), catalog.currency().getCurrencyCode());
        return new NewVersion(answered.asked(), new Head(answer.name(), answer.machines(), answer.status(), answer.day().validUntil()),
                from, options, words(answer, options, catalog), packed(papers));
    }

    private static List<Choice> choices(QuoteAnswer answer) {
        List<Choice> options = new ArrayList<>();
        for (Judged judged : answer.outcome().ranked()) {
            options.add(choice(options.size() + 1, judged.order()));
        }
        return List.copyOf(options);
    }

    /** An order is offered whole or not at all; its figures are those of all its machines together. */
    private static List<Choice> choices(OrderAnswer answer) {
        if (answer.price().isEmpty()) {
            return List.of();
        }
        OrderOutcome outcome = answer.outcome();
        List<OrderOutcome.Fill> fills = outcome.lines().stream().flatMap(line -> line.fills().stream()).toList();
        Told told = new Told(fills.stream().mapToInt(fill -> fill.machines() * fill.figures().processors()).sum(),
                fills.stream().mapToInt(fill -> fill.machines() * fill.figures().cores()).sum(), sum(fills, Figures::usableGb),
                sum(fills, Figures::bandwidthGbs), sum(fills, Figures::throughput), sum(fills, Figures::loadW));
        String platforms = fills.stream().map(fill -> fill.build().platform().sku()).distinct().sorted().collect(Collectors.joining(" "));
        String processors = fills.stream().flatMap(fill -> fill.build().processors().stream()).map(Part::sku).distinct().sorted()
                .collect(Collectors.joining(" "));
        int leadDays = outcome.picks().stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0);
        return List.of(new Choice(1, outcome.price().total(), platforms, Optional.of(processors), told, leadDays, picks(outcome.picks())));
    }

    private static BigDecimal sum(List<OrderOutcome.Fill> fills, ToDoubleFunction<Figures> figure) {
        return Numbers.decimal(Quantity.rounded(fills.stream()
                .mapToDouble(fill -> fill.machines() * figure.applyAsDouble(fill.figures())).sum()));
    }

    /** Packed before anybody waits for the book. */
    static Map<String, byte[]> packed(Map<String, byte[]> papers) {
        return papers.entrySet().stream().collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, paper -> Packed.of(paper.getValue())));
    }

    private static Choice choice(int place, Order order) {
        BuildView view = BuildView.of(order, true);
        return new Choice(place, order.price().total(), view.bare().platform(), view.bare().processorSku(), Told.of(order.figures()),
                view.leadDays(), picks(order.picks()));
    }

    /** The customer's own parts are nobody else's to promise. */
    private static List<Taken> picks(List<Pick> picks) {
        Map<List<String>, Taken> byLot = new LinkedHashMap<>();
        for (Pick pick : picks) {
            if (!pick.lot().onHand()) {
                byLot.merge(List.of(pick.sku(), pick.lot().lot()),
                        new Taken(pick.sku(), pick.lot().lot(), pick.lot().supplier(), pick.quantity(), pick.unitPrice()),
                        (one, more) -> new Taken(one.sku, one.lot, one.supplier, one.units + more.units, one.unitPrice));
            }
        }
        return List.copyOf(byLot.values());
    }

    private static List<String> words(OfferAnswer answer, List<Choice> options, Catalog catalog) {
        Map<String, String> parts = new TreeMap<>();
        options.stream().flatMap(option -> option.picks().stream()).forEach(pick ->
                parts.put(pick.sku(), catalog.part(pick.sku()).map(Part::description).orElse("")));
        Stream<String> said = Stream.concat(Stream.of(answer.name()), answer.customer().stream());
        return Stream.concat(said, parts.entrySet().stream().map(part -> part.getKey() + " " + part.getValue()))
                .map(word -> word.toLowerCase(Locale.ROOT)).collect(Collectors.toList());
    }
}
