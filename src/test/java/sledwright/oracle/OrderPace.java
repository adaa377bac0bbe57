package sledwright.oracle;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.oracle.EveryMachine.Machine;

/** An order filled by the outside solver from machines that it is given and others that are cheapest at prices a little off the catalogue's. */
public final class OrderPace {

    /** Machines of each line that are looked for at other prices. */
    private static final int DRAWN = 25;

    private static final double OFF = 0.3;

    private final Catalog catalog;
    private final OrderRequest order;
    private final Duration limit;
    private final List<Map<List<Object>, Machine>> machines = new ArrayList<>();

    /** @param limit most time of the solver, beside that of looking for machines */
    public OrderPace(Catalog catalog, OrderRequest order, Duration limit) {
        this.catalog = catalog;
        this.order = order;
        this.limit = limit;
        order.lines().forEach(line -> machines.add(new LinkedHashMap<>()));
        draw();
    }

    private void draw() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < DRAWN; i++) {
            Search search = new Search(catalog.withLots(off(random)));
            for (int line = 0; line < order.lines().size(); line++) {
                Request one = order.lines().get(line).request().withMachines(1).withAlternatives(1, 0).withOnHand(order.onHand());
                int asked = line;
                search.run(one, Deadline.never()).ranked().forEach(found -> add(asked, found.machines().get(0)));
            }
        }
    }

    private Map<String, List<Lot>> off(SplittableRandom random) {
        Map<String, List<Lot>> off = new HashMap<>();
        catalog.lots().forEach((sku, lots) -> {
            double times = 1 + OFF * (2 * random.nextDouble() - 1);
            off.put(sku, lots.stream().map(lot -> lot.with(lot.available(), lot.breaks().stream()
                    .map(step -> new PriceBreak(step.minQuantity(), Math.round(times * step.unitPrice()), step.unitCost())).toList())).toList());
        });
        return off;
    }

    /** Lets the solver choose these machines, too. */
    public void add(List<List<Build>> builds) {
        for (int line = 0; line < builds.size(); line++) {
            int asked = line;
            builds.get(line).forEach(build -> add(asked, build));
        }
    }

    private void add(int line, Build build) {
        OrderLine asked = order.lines().get(line);
        Machine machine = EveryMachine.machine(catalog, asked.request(), build, asked.uniform() ? sameness(build) : List.of());
        machines.get(line).putIfAbsent(List.of(machine.sameness(), machine.parts()), machine);
    }

    /** What the machines of a uniform line share. */
    private static List<Object> sameness(Build build) {
        List<Object> sameness = new ArrayList<>(List.of(build.platform().sku(), build.processors(), build.cooling().sku(), build.supply()));
        build.modules().forEach((slot, module) -> sameness.addAll(List.of(slot.name(), module.kind())));
        return sameness;
    }

    /** The least cost that the solver finds, minor units; NaN where it finds no whole order. */
    public double cheapest() {
        CpSatOrder.Answer answer = cheapest(CpSatOrder.Effort.seconds(limit));
        return answer.value() == null ? Double.NaN : answer.value() / (double) CpSatOrder.SCALE;
    }

    CpSatOrder.Answer cheapest(CpSatOrder.Effort effort) {
        return CpSatOrder.cheapest(new RandomOrder(0, catalog, order), machines.stream().map(some -> List.copyOf(some.values())).toList(), effort);
    }
}
