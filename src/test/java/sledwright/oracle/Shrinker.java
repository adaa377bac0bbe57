package sledwright.oracle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import sledwright.domain.Equipment;
import sledwright.domain.Expansion;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.CoolingAndPower;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Worth;

/** Makes a case smaller for as long as something remains true of it: fewer parts and lots, fewer wishes. */
final class Shrinker {

    private Shrinker() {
    }

    /** A case of which {@code stays} is still true and of no case one step smaller. */
    static RandomCase shrink(RandomCase from, Predicate<RandomCase> stays) {
        RandomCase current = from;
        boolean smaller = true;
        while (smaller) {
            smaller = false;
            for (RandomCase next : steps(current).toList()) {
                if (stays.test(next)) {
                    current = next;
                    smaller = true;
                    break;
                }
            }
        }
        return current;
    }

    private static Stream<RandomCase> steps(RandomCase that) {
        return Stream.of(withoutParts(that), withoutLots(that), requests(that.request()).map(that::with), withoutOptions(that)).flatMap(steps -> steps);
    }

    private static Stream<RandomCase> withoutParts(RandomCase that) {
        var catalog = that.catalog();
        List<RandomCase> steps = new ArrayList<>();
        without(List.copyOf(catalog.platforms())).forEach(list -> steps.add(that.with(list, catalog.processors(), catalog.modules(), that.lots())));
        without(List.copyOf(catalog.modules())).forEach(list -> steps.add(that.with(catalog.platforms(), catalog.processors(), list, that.lots())));
        without(List.copyOf(catalog.processors())).forEach(list -> steps.add(that.with(catalog.platforms(), list, catalog.modules(), that.lots())));
        return steps.stream();
    }

    private static Stream<RandomCase> withoutLots(RandomCase that) {
        List<RandomCase> steps = new ArrayList<>();
        that.lots().forEach((sku, lots) -> {
            for (List<Lot> fewer : without(lots)) {
                steps.add(withLots(that, sku, fewer));
            }
            for (Lot lot : lots) {
                for (List<Lot.PriceBreak> breaks : without(lot.breaks())) {
                    if (!breaks.isEmpty()) {
                        List<Lot> plain = new ArrayList<>(lots);
                        plain.set(lots.indexOf(lot), new Lot(sku, lot.lot(), lot.supplier(), lot.condition(), lot.stock(), breaks, false));
                        steps.add(withLots(that, sku, plain));
                    }
                }
            }
        });
        return steps.stream();
    }

    private static RandomCase withLots(RandomCase that, String sku, List<Lot> lots) {
        Map<String, List<Lot>> all = new LinkedHashMap<>(that.lots());
        all.put(sku, lots);
        return that.with(that.catalog().platforms(), that.catalog().processors(), that.catalog().modules(), all);
    }

    /** Platforms without a kit, a supply option or the rows of their inlet table. */
    private static Stream<RandomCase> withoutOptions(RandomCase that) {
        List<RandomCase> steps = new ArrayList<>();
        for (Platform platform : that.catalog().platforms()) {
            List<Platform> others = new ArrayList<>();
            without(platform.cooling()).stream().filter(kits -> !kits.isEmpty()).forEach(kits -> others.add(new Platform(platform.sku(),
                    platform.name(), platform.processors(), platform.memory(), platform.board(),
                    new CoolingAndPower(kits, platform.thermal(), platform.power()), Expansion.NONE)));
            without(platform.power().supplies()).forEach(supplies -> others.add(new Platform(platform.sku(), platform.name(),
                    platform.processors(), platform.memory(), platform.board(),
                    new CoolingAndPower(platform.cooling(), platform.thermal(),
                            new sledwright.domain.Power(platform.power().baseW(), platform.power().budgetW(), supplies)),
                    Expansion.NONE)));
            for (Platform other : others) {
                List<Platform> all = new ArrayList<>(that.catalog().platforms());
                all.replaceAll(one -> one == platform ? other : one);
                steps.add(that.with(all, that.catalog().processors(), that.catalog().modules(), that.lots()));
            }
        }
        return steps.stream();
    }

    static Stream<Request> requests(Request r) {
        List<Request> steps = new ArrayList<>();
        Requirements q = r.require();
        Stream.of(
                new Requirements(new ProcessorNeeds(0, q.cores(), q.throughput(), q.baseGhz(), q.allCoreGhz()), q.memory()),
                new Requirements(new ProcessorNeeds(q.processors(), 0, q.throughput(), q.baseGhz(), q.allCoreGhz()), q.memory()),
                new Requirements(q.processing(), new MemoryNeeds(0, q.bandwidthGbs(), q.gbPerCore(), q.gbsPerCore(), q.spareSlots(), q.mode(), q.populated())),
                new Requirements(q.processing(), new MemoryNeeds(q.memoryGb(), 0, q.gbPerCore(), q.gbsPerCore(), q.spareSlots(), q.mode(), q.populated())),
                new Requirements(new ProcessorNeeds(q.processors(), q.cores(), 0, 0, 0), q.memory()),
                new Requirements(q.processing(), new MemoryNeeds(q.memoryGb(), q.bandwidthGbs(), 0, q.gbsPerCore(), q.spareSlots(), q.mode(), q.populated())),
                new Requirements(q.processing(), new MemoryNeeds(q.memoryGb(), q.bandwidthGbs(), q.gbPerCore(), 0, q.spareSlots(), q.mode(), q.populated())),
                new Requirements(q.processing(), new MemoryNeeds(q.memoryGb(), q.bandwidthGbs(), q.gbPerCore(), q.gbsPerCore(), 0, q.mode(), q.populated())),
                new Requirements(q.processing(),
                        new MemoryNeeds(q.memoryGb(), q.bandwidthGbs(), q.gbPerCore(), q.gbsPerCore(), q.spareSlots(), MemoryMode.INDEPENDENT, q.populated())),
                q.withPopulated(q.populated().withBalanced(false)), q.withPopulated(q.populated().withOnePart(false)))
                .filter(other -> !other.equals(q)).forEach(other -> steps.add(r.withRequire(other)));
        Limits l = r.limit();
        Stream.of(
                l.withPrice(OptionalLong.empty()),
                l.withPowerW(OptionalDouble.empty()),
                l.waiting(),
                l.withInletC(OptionalDouble.empty()).withAltitudeM(0),
                l.withMainsV(OptionalDouble.empty()),
                l.withConditions(Set.of()))
                .filter(other -> !other.equals(l)).forEach(other -> steps.add(r.withLimit(other)));
        if (r.alternatives() > 1) {
            steps.add(r.withAlternatives(r.alternatives() - 1, r.step()));
        }
        if (r.machines() > 1) {
            steps.add(r.withMachines(r.machines() - 1));
        }
        if (r.objective() != Objective.CHEAPEST) {
            steps.add(r.withObjective(Objective.CHEAPEST));
        }
        for (String sku : r.forbid()) {
            steps.add(r.withForbid(less(r.forbid(), sku)));
        }
        for (String sku : r.use()) {
            steps.add(r.withUse(less(r.use(), sku)));
        }
        Stream.of(copy(r, Worth.NOTHING, r.licence(), r.onHand()), copy(r, r.worth(), Licence.NONE, r.onHand()))
                .filter(other -> !other.equals(r)).forEach(steps::add);
        for (String sku : r.onHand().keySet()) {
            Map<String, Integer> fewer = new HashMap<>(r.onHand());
            fewer.remove(sku);
            steps.add(copy(r, r.worth(), r.licence(), fewer));
        }
        return steps.stream();
    }

    private static Request copy(Request r, Worth worth, Licence licence, Map<String, Integer> onHand) {
        return new Request(r.name(), r.machines(), r.require(), r.limit(), new Goal(r.objective(), worth, licence), r.list(),
                new PartChoice(r.platforms(), r.forbid(), r.use(), onHand, Equipment.NONE));
    }

    private static Set<String> less(Set<String> all, String one) {
        Set<String> less = new HashSet<>(all);
        less.remove(one);
        return less;
    }

    /** The lists that lack one element. */
    static <T> List<List<T>> without(List<T> all) {
        List<List<T>> lists = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            List<T> fewer = new ArrayList<>(all);
            fewer.remove(i);
            lists.add(fewer);
        }
        return lists;
    }
}
