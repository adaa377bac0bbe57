package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.Range;
import sledwright.planner.order.market.ScaledMoney;

/** Where a mix is in fractions that no order can be, and the two ways out of it. */
public record Branching(Market market) {

    private static final double WHOLE = 1e-5;

    /** A set of orders is not split into more. */
    private static final int MOST_WAYS = 40;

    /** Splits of a kind among which one is chosen. */
    private static final int MOST_TRIED = 10;

    /** Of so many suppliers all teams are looked at. */
    private static final int MOST_IN_TEAMS = 12;

    /** Charges are little where all of them together are less than one of so many parts of the gap. */
    private static final int CHARGES_IN_GAP = 4;

    /** What a trait of machines is about. */
    private enum About { PLACE, FRAME, MEMORY }

    /**
     * A number that no order has and the mix does: it is at least so much more, or so much less.
     *
     * @param more takes what is settled to what is settled besides when it is more
     * @param less and when it is less
     */
    public record Split(UnaryOperator<Restrictions> more, UnaryOperator<Restrictions> less) {

        /** On a whole number. */
        static Split at(double value, Function<Restrictions, Range> range, BiFunction<Restrictions, Range, Restrictions> with) {
            int floor = (int) Math.floor(value);
            return new Split(settled -> with.apply(settled, range.apply(settled).from(floor + 1)),
                    settled -> with.apply(settled, range.apply(settled).upTo(floor)));
        }

        /** Both ways, where there are. */
        List<Restrictions> of(Restrictions settled) {
            return Stream.of(more, less).map(way -> way.apply(settled))
                    .filter(way -> !way.isContradictory() && !way.equals(settled)).toList();
        }
    }

    /**
     * Restrictions that between them allow every order that these allow, but not the mix; several such, of which one is to be chosen; none
     * where there are none.
     */
    public List<List<Restrictions>> ways(Restrictions settled, RestrictedMaster.Mix mix) {
        List<List<Restrictions>> ways = Stream.of(onOrder(settled, mix), onFrames(settled, mix),
                onTraits(settled, mix, trait -> about(trait) == About.MEMORY))
                .flatMap(splits -> splits.stream().map(split -> split.of(settled)).filter(some -> !some.isEmpty()).limit(MOST_TRIED))
                .toList();
        return ways.isEmpty() ? Stream.of(onExcess(settled, mix)).filter(some -> !some.isEmpty()).toList() : ways;
    }

    /**
     * Those that say most, and say it at once: who delivers, what the one build of a line is, and of which part number its modules are.
     *
     * @param gap what is between the set's bound and the best order, scaled: charges that are little beside it come after builds
     */
    public List<Restrictions> first(Restrictions settled, RestrictedMaster.Mix mix, long gap) {
        long charges = market.order().deliveryCharge() * ScaledMoney.ONE * market.suppliers().size();
        boolean buildsFirst = market.order().suppliersMax().isEmpty() && charges < gap / CHARGES_IN_GAP;
        List<Restrictions> ways = buildsFirst ? onBuilds(settled, mix) : onSuppliers(settled, mix);
        if (ways.isEmpty()) {
            ways = buildsFirst ? onSuppliers(settled, mix) : onBuilds(settled, mix);
        }
        return ways.isEmpty() ? onModuleParts(settled, mix) : ways;
    }

    /** What the machines of a line of one build are but for their memory, where the mix has several. */
    private List<Restrictions> onBuilds(Restrictions settled, RestrictedMaster.Mix mix) {
        return onTraits(settled, mix, trait -> market.line(trait.line()).isTogether() && about(trait) == About.FRAME).stream()
                .map(split -> split.of(settled)).filter(ways -> !ways.isEmpty()).findFirst().orElse(List.of());
    }

    /** Who delivers, where the mix has that in fractions: the one who is most of all there does, or does not. */
    private List<Restrictions> onSuppliers(Restrictions settled, RestrictedMaster.Mix mix) {
        boolean fractions = mix.suppliers().values().stream().anyMatch(share -> !isWhole(share));
        List<Restrictions> teams = fractions && settled.suppliers().isEmpty() ? teams(settled) : List.of();
        return !teams.isEmpty() ? teams
                : mix.suppliers().entrySet().stream().filter(entry -> !isWhole(entry.getValue())).max(Map.Entry.comparingByValue())
                .map(most -> Stream.of(delivering(settled, most.getKey()), settled.with(most.getKey(), false))
                        .filter(way -> !way.isContradictory()).toList()).orElse(List.of());
    }

    /** All ways to leave out as many suppliers as must be; none where these are too many. */
    private List<Restrictions> teams(Restrictions settled) {
        int all = market.suppliers().size();
        if (market.order().suppliersMax().orElse(all) >= all || all > MOST_IN_TEAMS) {
            return List.of();
        }
        List<Restrictions> teams = new ArrayList<>();
        for (int team = 0; team < 1 << all; team++) {
            if (Integer.bitCount(team) == market.order().suppliersMax().getAsInt()) {
                Restrictions with = settled;
                for (int supplier = 0; supplier < all; supplier++) {
                    with = (team >> supplier & 1) == 1 ? with : with.with(supplier, false);
                }
                teams.add(with);
            }
        }
        return teams.size() > MOST_WAYS ? List.of() : teams;
    }

    /** With a supplier; once there are as many as may be, the others do not deliver. */
    private Restrictions delivering(Restrictions settled, int supplier) {
        Restrictions with = settled.with(supplier, true);
        if (with.mustDeliver() >= market.order().suppliersMax().orElse(Integer.MAX_VALUE)) {
            for (int other = 0; other < market.suppliers().size(); other++) {
                with = with.mustDeliver(other) ? with : with.with(other, false);
            }
        }
        return with;
    }

    /** What the whole order has: enclosures, suppliers, units of lots; of each first where most is at stake. */
    public List<Split> onOrder(Restrictions settled, RestrictedMaster.Mix mix) {
        List<Split> splits = new ArrayList<>();
        if (!isWhole(mix.missing()) && settled.missing().contains(mix.missing())) {
            splits.add(Split.at(mix.missing(), Restrictions::missing, Restrictions::withMissing));
        }
        fractions(mix.enclosures()).forEach(bay -> splits.add(Split.at(mix.enclosures().get(bay), all -> all.of(bay), (all,
                range) -> all.with(bay, range))));
        fractions(mix.suppliers()).forEach(supplier -> splits.add(new Split(all -> delivering(all, supplier), all -> all.with(supplier,
                false))));
        undercuts(settled, mix).forEach(lot -> splits.add(
                Split.at(lot.least - 0.5, all -> all.of(lot.lot), (all, range) -> all.with(lot.lot, range))));
        return splits;
    }

    /** What machines of a line have in common but for their memory. */
    public List<Split> onFrames(Restrictions settled, RestrictedMaster.Mix mix) {
        List<Split> splits = new ArrayList<>(onTraits(settled, mix, trait -> about(trait) == About.PLACE));
        splits.addAll(onTraits(settled, mix, trait -> about(trait) == About.FRAME));
        return splits;
    }

    private List<Split> onTraits(Restrictions settled, RestrictedMaster.Mix mix, Predicate<Trait> asked) {
        Map<Trait, Double> traits = traits(settled, mix);
        return fractions(traits).stream().filter(trait -> asked.test(trait) && settled.of(trait).contains(traits.get(trait)))
                .map(trait -> Split.at(traits.get(trait), all -> all.of(trait), (all, range) -> all.with(trait, range))).toList();
    }

    /**
     * Lines that want one part number of module and have several in the mix: they take that of which they have most machines and no
     * other, or it is not this one.
     */
    private List<Restrictions> onModuleParts(Restrictions settled, RestrictedMaster.Mix mix) {
        for (int line = 0; line < market.lines().size(); line++) {
            Map<Integer, Double> machines = new TreeMap<>();
            if (market.line(line).request().require().populated().onePart()) {
                int of = line;
                mix.columns().forEach((column, times) -> Arrays.stream(column.parts())
                        .filter(part -> column.line() == of && times > WHOLE && market.isModule(part))
                        .forEach(part -> machines.merge(part, times * column.machines(), Double::sum)));
            }
            if (machines.size() > 1) {
                int most = machines.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
                Set<Integer> others = IntStream.range(0, market.parts()).filter(part -> part != most && market.isModule(part)).boxed()
                        .collect(Collectors.toSet());
                return List.of(settled.withBarred(line, others), settled.withBarred(line, Set.of(most)));
            }
        }
        return List.of();
    }

    /** What has a number that is not whole, the one closest to the middle first. */
    private static <T> List<T> fractions(Map<T, Double> values) {
        return values.entrySet().stream().filter(entry -> !isWhole(entry.getValue()))
                .sorted(Comparator.comparingDouble(entry -> Math.abs(entry.getValue() - Math.floor(entry.getValue()) - 0.5)))
                .map(Map.Entry::getKey).toList();
    }

    /**
     * A lot that the mix takes for cheaper than its units are.
     *
     * @param least from this many units on it costs otherwise than with fewer
     * @param units that it gives in the mix
     */
    private record Undercut(OfferedLot lot, int least, double units) {

        private double atStake() {
            long[] prices = lot.steps().stream().mapToLong(OfferedLot.Step::price).sorted().toArray();
            return units * (prices[prices.length - 1] - prices[0]);
        }
    }

    /** Those by which the mix can save most first. */
    private static List<Undercut> undercuts(Restrictions settled, RestrictedMaster.Mix mix) {
        List<Undercut> found = new ArrayList<>();
        mix.drawn().forEach((lot, units) -> {
            int parting = units > WHOLE ? Envelope.of(lot, settled.of(lot)).parting(lot, units) : 0;
            if (parting > settled.of(lot).least() && parting <= settled.of(lot).most()) {
                found.add(new Undercut(lot, parting, units));
            }
        });
        found.sort(Comparator.comparingDouble(Undercut::atStake).reversed());
        return found;
    }

    /** How many machines have what any of them has; those of a uniform line count as one. */
    private Map<Trait, Double> traits(Restrictions settled, RestrictedMaster.Mix mix) {
        Map<Trait, Double> traits = new LinkedHashMap<>();
        for (Column column : mix.columns().keySet()) {
            for (int i = 0; i < column.parts().length; i++) {
                traits.put(takes(settled, mix, column.line(), column.parts()[i], column.units()[i]), 0.0);
            }
            // A part of a uniform line's machines may stand elsewhere.
            if (column.bay() != null && !market.line(column.line()).isTogether()) {
                traits.put(new Trait.Stands(column.line(), column.bay()), 0.0);
            }
        }
        mix.columns().forEach((column, times) -> traits.replaceAll((trait, sum) -> trait.isOf(column) ? sum + times : sum));
        return traits;
    }

    /**
     * At least so many units; where machines were kept from taking a few more, they now take one less, and again one less, so it is as few
     * as no other machine of the mix has.
     */
    private static Trait takes(Restrictions settled, RestrictedMaster.Mix mix, int line, int part, int units) {
        Trait more = new Trait.Takes(line, part, units + 1);
        boolean isEvaded = settled.traits().entrySet().stream()
                .anyMatch(one -> one.getKey().implies(more) && one.getValue().most() < Range.ANY.most());
        IntStream fewer = mix.columns().keySet().stream().filter(column -> column.line() == line).mapToInt(column -> column.unitsOf(part))
                .filter(some -> some < units);
        return new Trait.Takes(line, part, isEvaded ? fewer.max().orElse(0) + 1 : units);
    }

    /**
     * Lots that must give more units of a part than the mix takes: some machine takes more of it, the first one, or the second but not the
     * first...
     */
    private List<Restrictions> onExcess(Restrictions settled, RestrictedMaster.Mix mix) {
        Map<Integer, Integer> must = new TreeMap<>();
        settled.drawn().forEach((lot, range) -> must.merge(lot.part(), range.least(), Integer::sum));
        for (Map.Entry<Integer, Integer> lots : must.entrySet()) {
            int part = lots.getKey();
            double taken = mix.columns().entrySet().stream().mapToDouble(entry -> entry.getValue() * entry.getKey().unitsOf(part)).sum();
            if (taken < lots.getValue() - WHOLE && !market.isOfEnclosures(part)) {
                return more(settled, mix, part);
            }
        }
        return List.of();
    }

    private List<Restrictions> more(Restrictions settled, RestrictedMaster.Mix mix, int part) {
        List<Restrictions> ways = new ArrayList<>();
        Restrictions others = settled;
        for (int line = 0; line < market.lines().size(); line++) {
            int machines = market.line(line).machines();
            boolean together = market.line(line).isTogether();
            int most = Math.min(market.mostInMachine(part) * (together ? machines : 1), market.available(part, market.poolOf(line)));
            for (int units = 1; units <= most && ways.size() <= MOST_WAYS; units++) {
                Trait trait = new Trait.Takes(line, part, units);
                int now = (int) Math.round(mix.columns().entrySet().stream().filter(entry -> trait.isOf(entry.getKey()))
                        .mapToDouble(Map.Entry::getValue).sum());
                if (now < Math.min(together ? 1 : machines, settled.of(trait).most())) {
                    ways.add(others.with(trait, settled.of(trait).from(now + 1)));
                    others = others.with(trait, settled.of(trait).upTo(now));
                }
            }
        }
        return ways.size() > MOST_WAYS ? List.of() : ways;
    }

    private About about(Trait trait) {
        if (trait instanceof Trait.Takes takes) {
            return market.catalog().module(market.sku(takes.part())).isPresent() ? About.MEMORY : About.FRAME;
        }
        return About.PLACE;
    }

    private static boolean isWhole(double value) {
        return Math.abs(value - Math.round(value)) < WHOLE;
    }
}
