package sledwright.explain.conflict;

import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Platform;
import sledwright.domain.Supply;
import sledwright.explain.ask.Changes;
import sledwright.explain.ask.Extreme;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.Quantity;
import sledwright.rules.Order;
import sledwright.rules.cooling.InletLimit;
import sledwright.rules.power.PowerSupply;
import sledwright.rules.stock.AcceptedCondition;
import sledwright.rules.stock.Budget;
import sledwright.rules.stock.LeadTime;
import sledwright.rules.target.PowerLimit;
import sledwright.words.Numbers;

/** The limits of a request as demands. */
final class LimitDemands {

    private LimitDemands() {
    }

    /**
     * All machines together.
     *
     * @param most minor units
     */
    record Price(Catalog catalog, long most) implements Demand {

        @Override
        public String key() {
            return "limit.price";
        }

        @Override
        public String rule() {
            return Budget.ID;
        }

        @Override
        public String asked() {
            return catalog.amount(most).toPlainString();
        }

        @Override
        public String words() {
            return "a price of at most %s %s".formatted(asked(), catalog.currency());
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.with(terms.request().limit().withPrice(OptionalLong.empty()));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            long price = oracle.cheapest(terms).orElseThrow().price().total();
            String amount = catalog.amount(price).toPlainString();
            return new Concession(terms.with(terms.request().limit().withPrice(OptionalLong.of(price))), amount,
                    "the cheapest build costs %s %s".formatted(amount, catalog.currency()),
                    "raise the price from %s to %s %s".formatted(asked(), amount, catalog.currency()));
        }
    }

    /** The load of one machine. */
    record Load(double mostW) implements Demand {

        private static final double MILLIONTH = 1e-6;

        @Override
        public String key() {
            return "limit.power_w";
        }

        @Override
        public String rule() {
            return PowerLimit.ID;
        }

        @Override
        public String asked() {
            return Numbers.exact(mostW);
        }

        @Override
        public String words() {
            return "a load of at most %s W".formatted(Numbers.ceiling(mostW));
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return within(terms, OptionalDouble.empty());
        }

        private static WhatIf within(WhatIf terms, OptionalDouble watts) {
            return terms.with(Changes.powerW(terms.request().limit(), watts));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            double leastW = -Extreme.greatest(-loadW(oracle.cheapest(terms).orElseThrow()), -mostW, MILLIONTH, negative ->
                    oracle.cheapest(within(terms, OptionalDouble.of(-negative))).map(order -> OptionalDouble.of(-loadW(order)))
                            .orElse(OptionalDouble.empty()));
            String watts = Numbers.ceiling(leastW);
            return new Concession(within(terms, OptionalDouble.of(leastW)), Numbers.exact(leastW),
                    "the least load is %s W".formatted(watts),
                    "allow a load of %s W instead of %s W".formatted(watts, Numbers.ceiling(mostW)));
        }

        private static double loadW(Order order) {
            return PowerDraw.loadW(PowerDraw.heaviest(order.machines()));
        }
    }

    /** Days until the last part arrives. */
    record Delivery(int mostDays) implements Demand {

        @Override
        public String key() {
            return "limit.lead_days";
        }

        @Override
        public String rule() {
            return LeadTime.ID;
        }

        @Override
        public String asked() {
            return String.valueOf(mostDays);
        }

        @Override
        public String words() {
            return "delivery within " + Numbers.counted(mostDays, "day");
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return within(terms, OptionalInt.empty());
        }

        private static WhatIf within(WhatIf terms, OptionalInt days) {
            return terms.with(terms.request().limit().withLeadDays(days));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            List<Integer> later = oracle.catalog().lots().values().stream().flatMap(List::stream).map(Lot::leadDays)
                    .filter(days -> days > mostDays).distinct().sorted().toList();
            int days = Extreme.first(later, some -> oracle.cheapest(within(terms, OptionalInt.of(some))).map(order -> some)).orElseThrow();
            return new Concession(within(terms, OptionalInt.of(days)), String.valueOf(days),
                    "the last part arrives in %s at the earliest".formatted(Numbers.counted(days, "day")),
                    "wait %s instead of %d".formatted(Numbers.counted(days, "day"), mostDays));
        }
    }

    /** The site's inlet air. */
    record Inlet(double siteC) implements Demand {

        @Override
        public String key() {
            return "limit.inlet_c";
        }

        @Override
        public String rule() {
            return InletLimit.ID;
        }

        @Override
        public String asked() {
            return Numbers.exact(siteC);
        }

        @Override
        public String words() {
            return "inlet air of %s C".formatted(Numbers.plain(siteC));
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return at(terms, OptionalDouble.empty());
        }

        private static WhatIf at(WhatIf terms, OptionalDouble inletC) {
            return terms.with(Changes.inletC(terms.request().limit(), inletC));
        }

        /** A build that can be had without a stated inlet has a row that serves it, and none that is as warm as the site. */
        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            double altitudeM = terms.request().limit().altitudeM();
            List<Double> cooler = oracle.catalog().platforms().stream().flatMap(platform -> platform.thermal().inlet().stream()
                            .map(row -> Quantity.rounded(row.maxInletC() - platform.thermal().correctedInletC(0, altitudeM))))
                    .filter(inletC -> inletC < siteC).distinct().sorted(Comparator.reverseOrder()).toList();
            double warmest = Extreme.first(cooler, some -> oracle.cheapest(at(terms, OptionalDouble.of(some))).map(order -> some))
                    .orElseThrow();
            return new Concession(at(terms, OptionalDouble.of(warmest)), Numbers.exact(warmest),
                    "the inlet air may be at most %s C".formatted(Numbers.floor(warmest)),
                    "cool the inlet air from %s to %s C".formatted(Numbers.plain(siteC), Numbers.floor(warmest)));
        }
    }

    /** The height at which the site's inlet air is thin. */
    record Altitude(double siteM) implements Demand {

        @Override
        public String key() {
            return "limit.altitude_m";
        }

        @Override
        public String rule() {
            return InletLimit.ID;
        }

        @Override
        public String asked() {
            return Numbers.exact(siteM);
        }

        @Override
        public String words() {
            return "a site at %s m".formatted(Numbers.plain(siteM));
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return at(terms, 0);
        }

        private static WhatIf at(WhatIf terms, double altitudeM) {
            return terms.with(Changes.altitudeM(terms.request().limit(), altitudeM));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            List<Double> lower = terms.request().limit().inletC().stream().boxed().flatMap(inletC -> oracle.catalog().platforms().stream()
                            .map(Platform::thermal).filter(thermal -> Double.isFinite(thermal.metresPerKelvin()))
                            .flatMap(thermal -> thermal.inlet().stream().filter(row -> row.maxInletC() >= inletC)
                                    .map(row -> Quantity.rounded(thermal.altitudeFromM()
                                    + (row.maxInletC() - inletC) * thermal.metresPerKelvin()))))
                    .filter(altitudeM -> altitudeM < siteM).distinct().sorted(Comparator.reverseOrder()).toList();
            double highest = Extreme.first(lower, some -> oracle.cheapest(at(terms, some)).map(order -> some)).orElseThrow();
            return new Concession(at(terms, highest), Numbers.exact(highest),
                    "the site may be at most %s m high".formatted(Numbers.floor(highest)),
                    "take a site at %s m instead of %s m".formatted(Numbers.floor(highest), Numbers.plain(siteM)));
        }
    }

    /** Low-line mains. */
    record Mains(double siteV) implements Demand {

        @Override
        public String key() {
            return "limit.mains_v";
        }

        @Override
        public String rule() {
            return PowerSupply.ID;
        }

        @Override
        public String asked() {
            return Numbers.exact(siteV);
        }

        @Override
        public String words() {
            return "mains of %s V".formatted(Numbers.plain(siteV));
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.with(Changes.mainsV(terms.request().limit(), OptionalDouble.empty()));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            String volts = Numbers.plain(Supply.LOW_LINE_BELOW_V);
            return new Concession(terms.with(Changes.mainsV(terms.request().limit(), OptionalDouble.of(Supply.LOW_LINE_BELOW_V))), volts,
                    "a build needs mains of %s V or more".formatted(volts),
                    "feed it from mains of %s V or more instead of %s V".formatted(volts, Numbers.plain(siteV)));
        }
    }

    /** Accepted conditions, not all. */
    record Conditions(Set<Condition> accepted) implements Demand {

        @Override
        public String key() {
            return "limit.conditions";
        }

        @Override
        public String rule() {
            return AcceptedCondition.ID;
        }

        @Override
        public String asked() {
            return list(accepted);
        }

        private static String list(Set<Condition> conditions) {
            return conditions.stream().sorted().map(Condition::label).collect(Collectors.joining(", ", "[", "]"));
        }

        @Override
        public String words() {
            return accepted.stream().sorted().map(Condition::label).collect(Collectors.joining(" or ")) + " parts alone";
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.with(Changes.conditions(terms.request().limit(), Set.of()));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            Set<Condition> refused = EnumSet.complementOf(EnumSet.copyOf(accepted));
            Set<Condition> more = refused.stream().map(EnumSet::of)
                    .filter(one -> price(oracle, terms, one) < Long.MAX_VALUE)
                    .min(Comparator.comparingLong(one -> price(oracle, terms, one))).<Set<Condition>>map(one -> one).orElse(refused);
            String words = more.stream().sorted().map(Condition::label).collect(Collectors.joining(" and "));
            return new Concession(accepting(terms, more), list(together(more)), "a build needs %s parts".formatted(words),
                    "accept %s parts, too".formatted(words));
        }

        private long price(Oracle oracle, WhatIf terms, Set<Condition> more) {
            return oracle.cheapest(accepting(terms, more)).map(order -> order.price().total()).orElse(Long.MAX_VALUE);
        }

        private WhatIf accepting(WhatIf terms, Set<Condition> more) {
            return terms.with(Changes.conditions(terms.request().limit(), together(more)));
        }

        private Set<Condition> together(Set<Condition> more) {
            Set<Condition> all = EnumSet.copyOf(accepted);
            all.addAll(more);
            return all;
        }
    }

    /** Every limit of a request that could be otherwise, the price apart. */
    static List<Demand> of(Limits limits) {
        return Arrays.<Optional<Demand>>asList(
                limits.powerW().isPresent() ? Optional.of(new Load(limits.powerW().getAsDouble())) : Optional.empty(),
                limits.leadDays().isPresent() ? Optional.of(new Delivery(limits.leadDays().getAsInt())) : Optional.empty(),
                limits.inletC().isPresent() ? Optional.of(new Inlet(limits.inletC().getAsDouble())) : Optional.empty(),
                limits.inletC().isPresent() && limits.altitudeM() > 0 ? Optional.of(new Altitude(limits.altitudeM())) : Optional.empty(),
                limits.lowLine() ? Optional.of(new Mains(limits.mainsV().getAsDouble())) : Optional.empty(),
                limits.conditions().isEmpty() || limits.conditions().size() == Condition.values().length ? Optional.empty()
                        : Optional.of(new Conditions(limits.conditions()))).stream().flatMap(Optional::stream).toList();
    }
}
