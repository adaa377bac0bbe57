package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.metrics.Figures;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.WorkDone;
import sledwright.rules.Order;

/**
 * What an order of machines of one kind consists of, costs and reaches.
 *
 * @param price     all machines, in units of the currency; empty where stock does not hold the parts
 * @param bare      what all its machines have alike
 * @param machines  one entry for each different population, the heaviest first; at least one
 * @param leadDays  days until the last part arrives
 */
public record BuildView(Optional<BigDecimal> price, BareMachine bare, List<MachineView> machines, int leadDays, List<Line> lines) {

    /**
     * @param priced whether the order's picks hold every part of it
     */
    public static BuildView of(Order order, boolean priced) {
        return of(order, priced ? Optional.of(order.catalog().amount(order.price().total())) : Optional.empty(), Lines.of(order));
    }

    /**
     * @param price all machines, whatever the order's picks come to
     * @param lines add up to it
     */
    static BuildView of(Order order, Optional<BigDecimal> price, List<Line> lines) {
        Catalog catalog = order.catalog();
        Build build = PowerDraw.heaviest(order.machines());
        return new BuildView(price, BareMachine.of(build),
                MachineView.all(order.machines(), order.request(), catalog.throughputFactors()), leadDays(order.picks()), lines);
    }

    /**
     * Machines of an order that are alike in every part.
     *
     * @param picks what they take together
     * @param price all of them
     * @param lines add up to it
     */
    static BuildView of(Build build, int machines, Request request, Catalog catalog, List<Pick> picks, BigDecimal price, List<Line> lines) {
        return new BuildView(Optional.of(price), BareMachine.of(build),
                List.of(MachineView.of(machines, build, request, catalog.throughputFactors())), leadDays(picks), lines);
    }

    private static int leadDays(List<Pick> picks) {
        return picks.stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0);
    }

    /** Whether its work is something else than its throughput. */
    public boolean doesWork() {
        return figures().workHeldBy() != WorkDone.Held.NOTHING || figures().work() != figures().throughput();
    }

    /** The heaviest machine. */
    public MachineView heaviest() {
        return machines.get(0);
    }

    /** What each machine reaches. */
    public Figures figures() {
        return Figures.ofEach(machines.stream().map(MachineView::figures).toList());
    }

    /** All machines together. */
    public int count() {
        return machines.stream().mapToInt(MachineView::count).sum();
    }
}
