package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Pick;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.metrics.Figures;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.WorkDone;
import sledwright.rules.Order;

/**
 * What an order of machines of one kind consists of, costs and reaches.
 *
 * @param price     all machines, in units of the currency; empty where stock does not hold the parts
 * @param platform  its part number
 * @param processor empty where none is fitted
 * @param cooling   empty where no processor is fitted
 * @param supply    empty where the enclosure feeds the machine
 * @param supplies  supplies of that kind in one machine
 * @param machines  one entry for each different population, the heaviest first; at least one
 * @param leadDays  days until the last part arrives
 */
public record BuildView(Optional<BigDecimal> price, String platform, String platformName, Optional<Processor> processor,
                        int processors, Optional<String> cooling, Optional<String> supply, int supplies,
                        List<MachineView> machines, int leadDays, List<Line> lines) {

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
        return new BuildView(price, build.platform().sku(), build.platform().name(), build.processors().stream().findFirst(),
                build.processors().size(), build.processors().isEmpty() ? Optional.empty() : Optional.of(build.cooling().sku()),
                build.supply().map(Supply::sku), build.supply().map(Supply::count).orElse(0),
                MachineView.all(order.machines(), order.request(), catalog.throughputFactors()),
                order.picks().stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0), lines);
    }

    /**
     * Machines of an order that are alike in every part.
     *
     * @param picks what they take together
     * @param price all of them
     * @param lines add up to it
     */
    static BuildView of(Build build, int machines, Request request, Catalog catalog, List<Pick> picks, BigDecimal price, List<Line> lines) {
        return new BuildView(Optional.of(price), build.platform().sku(), build.platform().name(), Optional.of(build.processor()),
                build.processors().size(), Optional.of(build.cooling().sku()), build.supply().map(Supply::sku),
                build.supply().map(Supply::count).orElse(0), List.of(MachineView.of(machines, build, request, catalog.throughputFactors())),
                picks.stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0), lines);
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

    /** The fitted processors' part number; empty where none is fitted. */
    public Optional<String> processorSku() {
        return processor.map(Processor::sku);
    }
}
