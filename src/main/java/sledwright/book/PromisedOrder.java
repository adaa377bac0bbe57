package sledwright.book;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import sledwright.book.KeptMachines.Group;
import sledwright.book.KeptMachines.Unit;
import sledwright.domain.Build;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.LotPiles;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.planner.allot.LotName;
import sledwright.planner.allot.Promise;
import sledwright.rules.Order;

/** An accepted order as promises: the machines of a line that are one build are one, and all of a line whose machines must be alike. */
record PromisedOrder(Promised promised, Promised.Machines machines, OrderRequest asked, LocalDate today) {

    List<Promise> promises() {
        List<Promise> promises = new ArrayList<>();
        told().forEach((name, groups) -> promises.add(promise(name, groups)));
        return promises;
    }

    /** What each promise is called -> the machines that it is about. */
    private Map<String, List<Group>> told() {
        return byPromise(machines.told());
    }

    private Map<String, List<Group>> byPromise(KeptMachines some) {
        Map<String, List<Group>> byPromise = new LinkedHashMap<>();
        some.groups().forEach(group -> byPromise.computeIfAbsent(name(group), name -> new ArrayList<>()).add(group));
        return byPromise;
    }

    private String name(Group group) {
        String line = "%s %s".formatted(promised.quote().number(), group.line());
        return line(group).uniform() ? line : "%s, build %s".formatted(line, group.number());
    }

    private OrderLine line(Group group) {
        return asked.lines().stream().filter(line -> line.name().equals(group.line())).findFirst().orElseThrow();
    }

    private Promise promise(String name, List<Group> groups) {
        Map<String, Integer> parts = new TreeMap<>();
        KeptMachines.shops(units(groups)).forEach((lot, units) -> parts.merge(lot.sku(), units, Integer::sum));
        Map<LotName, Integer> kept = KeptMachines.shops(units(byPromise(machines.now()).getOrDefault(name, List.of())));
        Map<String, Integer> own = new TreeMap<>();
        units(groups).filter(Unit::own).forEach(unit -> own.merge(unit.sku(), unit.units(), Integer::sum));
        int count = groups.stream().mapToInt(group -> group.machines().size()).sum();
        Request request = line(groups.get(0)).request().withMachines(count).withOnHand(own);
        // What houses the sleds is the whole order's.
        Request housed = request.withEquipment(request.equipment().withEnclosure(EnclosureFrom.OWN));
        int leadDays = groups.stream().mapToInt(group -> group.reached().leadDays()).max().orElse(0);
        return new Promise(name, least(groups).of(housed, promised.told().days().readyOn(leadDays), today), parts, kept, false);
    }

    private static Stream<Unit> units(List<Group> groups) {
        return groups.stream().flatMap(group -> group.machines().stream()).flatMap(List::stream);
    }

    /** Machines that are alike may differ in speed and watts: each reaches at least what the least of them does. */
    private static ToldFigures least(List<Group> groups) {
        List<NewVersion.Told> told = groups.stream().map(group -> group.reached().told()).toList();
        NewVersion.Told least = new NewVersion.Told(told.get(0).processors(), told.get(0).cores(),
                least(told, NewVersion.Told::usableGb), least(told, NewVersion.Told::bandwidthGbs),
                least(told, NewVersion.Told::throughput),
                told.stream().map(NewVersion.Told::loadW).max(Comparator.naturalOrder()).orElseThrow());
        Map<String, Double> volumes = new TreeMap<>();
        groups.forEach(group -> group.reached().volumes().forEach((name, usable) -> volumes.merge(name, usable, Math::min)));
        return new ToldFigures(least, groups.stream().mapToDouble(group -> group.reached().work()).min().orElse(0), volumes);
    }

    private static <T extends Comparable<T>> T least(List<NewVersion.Told> some, Function<NewVersion.Told, T> figure) {
        return some.stream().map(figure).min(Comparator.naturalOrder()).orElseThrow();
    }

    /** What houses the sleds stays as it is. */
    SortedMap<LotName, Integer> frames() {
        return KeptMachines.shops(machines.now().frames().stream().flatMap(frame -> frame.units().stream()));
    }

    /**
     * The machines that it has from now on.
     *
     * @param given what each promise is given; those that cannot be kept are not in it
     * @param frames whether what houses the sleds is there
     */
    KeptMachines given(Map<String, Order> given, boolean frames) {
        List<Group> groups = new ArrayList<>();
        told().forEach((name, told) -> {
            Order order = given.get(name);
            if (order != null) {
                LotPiles piles = new LotPiles(order.picks());
                Map<Build, List<List<Unit>>> dealt = new LinkedHashMap<>();
                for (Build build : order.machines()) {
                    List<Pick> picks = piles.taken(build.partCounts());
                    dealt.computeIfAbsent(build, same -> new ArrayList<>()).add(picks.stream().map(Unit::of).toList());
                }
                Group first = told.get(0);
                dealt.forEach((build, machines) -> groups.add(new Group(first.line(), first.number(), first.reached(),
                        MachineFile.of(build), machines)));
            }
        });
        return new KeptMachines(groups, frames ? seated(groups) : List.of());
    }

    /** Each bay has a machine of the same line as before, as far as there are any. */
    private List<KeptMachines.Frame> seated(List<Group> groups) {
        Map<String, List<Integer>> free = new LinkedHashMap<>();
        for (int place = 0; place < groups.size(); place++) {
            for (int machine = 0; machine < groups.get(place).machines().size(); machine++) {
                free.computeIfAbsent(name(groups.get(place)), name -> new ArrayList<>()).add(place);
            }
        }
        return machines.now().frames().stream().map(frame -> new KeptMachines.Frame(frame.enclosure(), frame.supply(),
                frame.sleds().stream().map(before -> free.getOrDefault(name(machines.now().groups().get(before)), new ArrayList<>()))
                .filter(some -> !some.isEmpty()).map(some -> some.remove(0)).toList(), frame.units())).toList();
    }
}
