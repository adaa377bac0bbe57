package sledwright.explain.conflict;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.DeliverBy;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Supply;
import sledwright.domain.TaxedPrice;
import sledwright.explain.ask.Extreme;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.metrics.PowerDraw;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.words.Day;
import sledwright.words.Measure;
import sledwright.words.Numbers;
import sledwright.words.Sentence;
import sledwright.words.Sum;

/** The limits of a request and its site. */
final class LimitDemands {

    static final String MAINS = "limit.mains_v";
    private static final String PRICE = "limit.price";
    private static final String PRICE_WITH_TAX = "limit.price_with_tax";
    private static final double MILLIONTH = 1e-6;
    private static final String OR = "%s or %s";
    private static final String AND = "%s and %s";

    private LimitDemands() {
    }

    /** Every limit that could be otherwise, the price apart. */
    static Stream<Demand> of(Limits limits) {
        return Stream.of(loadAndDelivery(limits), limits.inletC().stream().mapToObj(LimitDemands::inlet),
                Stream.of(limits.altitudeM()).filter(siteM -> siteM > 0).map(LimitDemands::altitude),
                limits.mainsV().stream().filter(siteV -> limits.lowLine()).mapToObj(LimitDemands::mains), conditions(limits))
                .flatMap(demands -> demands);
    }

    /** Those that a customer sets and no site. */
    static Stream<Demand> wished(Limits limits) {
        return Stream.concat(loadAndDelivery(limits), conditions(limits));
    }

    private static Stream<Demand> loadAndDelivery(Limits limits) {
        return Stream.of(limits.powerW().stream().mapToObj(LimitDemands::load), limits.leadDays().stream().mapToObj(LimitDemands::delivery),
                limits.by().stream().map(LimitDemands::by)).flatMap(demands -> demands);
    }

    private static Stream<Demand> conditions(Limits limits) {
        return Stream.of(limits.conditions()).filter(accepted -> !accepted.isEmpty() && accepted.size() < Condition.values().length)
                .map(LimitDemands::conditions);
    }

    /** All machines together, without tax and with it. */
    static Stream<Demand> price(Limits limits, Catalog catalog) {
        OptionalLong plain = limits.taxed().map(TaxedPrice::beside).orElse(limits.price());
        return Stream.concat(plain.stream().mapToObj(most -> price(most, catalog)),
                limits.taxed().stream().map(most -> price(most, catalog)));
    }

    /** Whether it is what all machines may cost. */
    static boolean isPrice(Demand demand) {
        return demand.isOf(PRICE) || demand.isOf(PRICE_WITH_TAX);
    }

    private static Demand price(long most, Catalog catalog) {
        Sum asked = sum(most, catalog);
        return Demand.of(PRICE, asked.amount().toPlainString(), Sentence.of("a price of at most %s", asked),
                terms -> at(terms, OptionalLong.empty()), (terms, oracle) -> {
                    Order found = oracle.cheapest(terms).orElseThrow();
                    long price = found.price().total();
                    Sum cheapest = sum(price, catalog);
                    return new Concession(at(terms, OptionalLong.of(price)), cheapest.amount().toPlainString(),
                            isOneOfSeveral(found, terms) ? Sentence.of("one machine alone costs %s", cheapest)
                            : Sentence.of("the cheapest build costs %s", cheapest),
                            Sentence.of("raise the price from %s to %s", asked, cheapest));
                });
    }

    /** Whether the number of machines has given way, too. */
    private static boolean isOneOfSeveral(Order found, WhatIf terms) {
        return found.machines().size() == 1 && terms.request().machines() > 1;
    }

    private static Demand price(TaxedPrice most, Catalog catalog) {
        Sum asked = sum(most.most(), catalog);
        return Demand.of(PRICE_WITH_TAX, asked.amount().toPlainString(),
                Sentence.of("a price with %s of at most %s", most.taxName(), asked), LimitDemands::untaxed, (terms, oracle) -> {
                    Order found = oracle.cheapest(terms).orElseThrow();
                    long gross = most.gross(found.price().total());
                    Limits limit = terms.request().limit();
                    Sum cheapest = sum(gross, catalog);
                    return new Concession(terms.with(limit.withTaxed(most.withMost(gross).withBeside(limit.price()))),
                            cheapest.amount().toPlainString(),
                            isOneOfSeveral(found, terms) ? Sentence.of("one machine alone costs %s with %s", cheapest, most.taxName())
                            : Sentence.of("the cheapest build costs %s with %s", cheapest, most.taxName()),
                            Sentence.of("raise the price with %s from %s to %s", most.taxName(), asked, cheapest));
                });
    }

    /** The terms without what all machines may cost with tax; what they may cost without it stays. */
    private static WhatIf untaxed(WhatIf terms) {
        Limits limit = terms.request().limit();
        return terms.with(limit.withPrice(limit.taxed().map(TaxedPrice::beside).orElse(limit.price())));
    }

    private static Sum sum(long minor, Catalog catalog) {
        return new Sum(catalog.amount(minor), catalog.currency().getCurrencyCode());
    }

    private static WhatIf at(WhatIf terms, OptionalLong price) {
        Limits limit = terms.request().limit();
        return terms.with(limit.taxed().map(most -> limit.withTaxed(most.withBeside(price))).orElseGet(() -> limit.withPrice(price)));
    }

    /** The load of one machine. */
    private static Demand load(double mostW) {
        BiFunction<WhatIf, OptionalDouble, WhatIf> within = (terms, watts) -> terms.with(terms.request().limit().withPowerW(watts));
        return Demand.of("limit.power_w", Numbers.exact(mostW), Sentence.of("a load of at most %s W", Numbers.ceiling(mostW)),
                terms -> within.apply(terms, OptionalDouble.empty()), (terms, oracle) -> {
                    double leastW = -Extreme.greatest(-loadW(oracle.cheapest(terms).orElseThrow()), -mostW, MILLIONTH,
                            negative -> oracle.cheapest(within.apply(terms, OptionalDouble.of(-negative)))
                                    .map(order -> OptionalDouble.of(-loadW(order))).orElse(OptionalDouble.empty()));
                    Measure watts = Numbers.ceiling(leastW);
                    return new Concession(within.apply(terms, OptionalDouble.of(leastW)), Numbers.exact(leastW),
                            Sentence.of("the least load is %s W", watts),
                            Sentence.of("allow a load of %s W instead of %s W", watts, Numbers.ceiling(mostW)));
                });
    }

    private static double loadW(Order order) {
        return PowerDraw.loadW(PowerDraw.heaviest(order.machines()));
    }

    /** Days until the last part arrives. */
    private static Demand delivery(int mostDays) {
        BiFunction<WhatIf, OptionalInt, WhatIf> within = (terms, days) -> terms.with(terms.request().limit().withLeadDays(days));
        return Demand.of("limit.lead_days", String.valueOf(mostDays), Sentence.of("delivery within %s", daysOf(mostDays)),
                terms -> within.apply(terms, OptionalInt.empty()), (terms, oracle) -> {
                    int days = later(mostDays, oracle, some -> within.apply(terms, OptionalInt.of(some)));
                    return new Concession(within.apply(terms, OptionalInt.of(days)), String.valueOf(days),
                            Sentence.of("the last part arrives in %s at the earliest", daysOf(days)),
                            Sentence.of("wait %s instead of %s", daysOf(days), mostDays));
                });
    }

    private static Sentence daysOf(int count) {
        return Sentence.of(count == 1 ? "%s day" : "%s days", count);
    }

    /** The last day of delivery. */
    private static Demand by(DeliverBy asked) {
        BiFunction<WhatIf, Integer, WhatIf> within = (terms, days) -> terms.with(terms.request().limit()
                .withBy(Optional.of(new DeliverBy(asked.arrival(days), days))));
        return Demand.of("limit.by", asked.day().toString(), Sentence.of("delivery by %s", new Day(asked.day())),
                terms -> terms.with(terms.request().limit().withBy(Optional.empty())), (terms, oracle) -> {
                    int days = later(asked.days(), oracle, some -> within.apply(terms, some));
                    return new Concession(within.apply(terms, days), asked.arrival(days).toString(),
                            Sentence.of("the last part arrives on %s at the earliest", new Day(asked.arrival(days))),
                            Sentence.of("wait until %s instead of %s", new Day(asked.arrival(days)), new Day(asked.day())));
                });
    }

    /** The least number of days above {@code mostDays} at which something is possible. */
    private static int later(int mostDays, Oracle oracle, IntFunction<WhatIf> within) {
        List<Integer> later = Stream.concat(Stream.of(0), oracle.catalog().lots().values().stream().flatMap(List::stream)
                .map(Lot::leadDays)).filter(days -> days > mostDays).distinct().sorted().toList();
        return Extreme.first(later, some -> oracle.isPossible(within.apply(some)) ? Optional.of(some) : Optional.empty()).orElseThrow();
    }

    private static Demand inlet(double siteC) {
        BiFunction<WhatIf, OptionalDouble, WhatIf> at = (terms, inletC) -> terms.with(terms.request().limit().withInletC(inletC));
        return site("limit.inlet_c", siteC, "inlet air of %s C", (terms, inletC) -> at.apply(terms, OptionalDouble.of(inletC)),
                terms -> at.apply(terms, OptionalDouble.empty()),
                "the inlet air may be at most %s C", "cool the inlet air from %2$s to %1$s C");
    }

    private static Demand altitude(double siteM) {
        BiFunction<WhatIf, Double, WhatIf> at = (terms, altitudeM) -> terms.with(terms.request().limit().withAltitudeM(altitudeM));
        return site("limit.altitude_m", siteM, "a site at %s m", at, terms -> at.apply(terms, 0.0),
                "the site may be at most %s m high", "take a site at %s m instead of %s m");
    }

    /** A figure of the site that is the easier the less it is. */
    private static Demand site(String key, double figure, String words, BiFunction<WhatIf, Double, WhatIf> at,
                               UnaryOperator<WhatIf> without, String reach, String advice) {
        return Demand.of(key, Numbers.exact(figure), Sentence.of(words, Numbers.plain(figure)), without, (terms, oracle) -> {
            List<Double> less = Rulebook.answeringTo(key).stream()
                    .flatMap(rule -> rule.turningPoints(key, terms.request().limit(), oracle.catalog()))
                    .filter(some -> some < figure).distinct().sorted(Comparator.reverseOrder()).toList();
            double most = Extreme.first(less, some -> oracle.isPossible(at.apply(terms, some)) ? Optional.of(some) : Optional.empty())
                    .orElseThrow();
            return new Concession(at.apply(terms, most), Numbers.exact(most), Sentence.of(reach, Numbers.floor(most)),
                    Sentence.of(advice, Numbers.floor(most), Numbers.plain(figure)));
        });
    }

    /** Low-line mains. */
    private static Demand mains(double siteV) {
        BiFunction<WhatIf, OptionalDouble, WhatIf> on = (terms, mainsV) -> terms.with(terms.request().limit().withMainsV(mainsV));
        Measure volts = Numbers.plain(Supply.LOW_LINE_BELOW_V);
        return Demand.of(MAINS, Numbers.exact(siteV), Sentence.of("mains of %s V", Numbers.plain(siteV)),
                terms -> on.apply(terms, OptionalDouble.empty()),
                (terms, oracle) -> new Concession(on.apply(terms, OptionalDouble.of(Supply.LOW_LINE_BELOW_V)), volts.toString(),
                        Sentence.of("a build needs mains of %s V or more", volts),
                        Sentence.of("feed it from mains of %s V or more instead of %s V", volts, Numbers.plain(siteV))));
    }

    /** Accepted conditions, not all. */
    private static Demand conditions(Set<Condition> accepted) {
        return Demand.of("limit.conditions", list(accepted), Sentence.of("%s parts alone", labels(accepted, OR)),
                terms -> accepting(terms, Set.of()), (terms, oracle) -> {
                    Set<Condition> refused = EnumSet.complementOf(EnumSet.copyOf(accepted));
                    Set<Condition> more = refused.stream().<Set<Condition>>map(EnumSet::of)
                            .filter(one -> price(oracle, accepting(terms, Condition.together(accepted, one))) < Long.MAX_VALUE)
                            .min(Comparator.comparingLong(one -> price(oracle, accepting(terms, Condition.together(accepted, one)))))
                            .orElse(refused);
                    return new Concession(accepting(terms, Condition.together(accepted, more)), list(Condition.together(accepted, more)),
                            Sentence.of("a build needs %s parts", labels(more, AND)),
                            Sentence.of("accept %s parts, too", labels(more, AND)));
                });
    }

    private static WhatIf accepting(WhatIf terms, Set<Condition> conditions) {
        return terms.with(terms.request().limit().withConditions(conditions));
    }

    private static long price(Oracle oracle, WhatIf terms) {
        return oracle.cheapest(terms).map(order -> order.price().total()).orElse(Long.MAX_VALUE);
    }

    private static String list(Set<Condition> conditions) {
        return conditions.stream().sorted().map(Condition::label).collect(Collectors.joining(", ", "[", "]"));
    }

    /** One, or two with a word between them: more are never left out and never asked for. */
    private static Sentence labels(Set<Condition> conditions, String two) {
        List<Sentence> labels = conditions.stream().sorted().map(condition -> Sentence.plain(condition.label())).toList();
        return labels.size() == 1 ? labels.get(0) : Sentence.of(two, labels.toArray());
    }
}
