package sledwright.planner.order;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sledwright.domain.Board;
import sledwright.domain.Catalog;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.OrderLine;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Worth;
import sledwright.metrics.Bandwidth;
import sledwright.metrics.Throughput;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.processor.SocketMatch;

/**
 * What a machine that is not delivered counts, so much that none is left out to save money: first as many machines as can be, then the
 * least
 * price. It follows from the dearest that there is of every part, so that nothing has to be searched for it.
 */
final class Penalties {

    /** At most this many times the price of the dearest machine, or figures would be too far apart for the linear program. */
    private static final int MOST_TIMES = 100;

    private static final long MOST = 400_000_000_000_000_000L;

    private final Market market;
    private final Catalog catalog;
    private final Map<List<Object>, Extremes> known = new HashMap<>();
    private final long[] byLine;
    private final long each;
    private final boolean certain;

    Penalties(Market market) {
        this.market = market;
        catalog = market.catalog();
        byLine = new long[market.lines().size()];
        double dearest = 1;
        double all = market.order().deliveryCharge() * (double) ScaledMoney.ONE * market.suppliers().size();
        double charges = all;
        double weight = 0;
        for (int line = 0; line < byLine.length; line++) {
            OrderLine asked = market.line(line);
            double machine = dearest(asked, market.poolOf(line));
            dearest = Math.max(dearest, machine);
            all += machine * asked.machines();
            weight += (double) asked.priority() * asked.machines();
        }
        double wanted = 2 * all + 2;
        each = (long) Math.max(1, Math.min(Math.min(wanted, MOST_TIMES * dearest + 2 * charges), MOST / weight));
        certain = each >= Math.floor(wanted);
        for (int line = 0; line < byLine.length; line++) {
            byLine[line] = each * market.line(line).priority();
        }
    }

    /** By line, for one machine; scaled. */
    long[] byLine() {
        return byLine;
    }

    /** What a machine of a line of priority 1 counts, scaled. */
    long each() {
        return each;
    }

    /** Whether such a machine outweighs all that an order may cost, so that of two orders the one that delivers more costs less. */
    boolean isCertain() {
        return certain;
    }

    /** Whether any order that lacks a machine costs no less than so much, scaled. */
    boolean outweigh(long cost) {
        return certain || market.lines().stream().allMatch(line -> line.request().objective() == Objective.CHEAPEST)
                && cost <= Arrays.stream(byLine).min().orElse(0);
    }

    /**
     * The dearest machine on a platform, and the best.
     *
     * @param price of its parts and of what it stands in, scaled
     */
    private record Extremes(double price, int sockets, int slots, int cores, double gb, double gbs, double throughput) {
    }

    /** More than any machine of a line costs, and than its surplus is worth; scaled. */
    private double dearest(OrderLine line, int pool) {
        Request request = line.request();
        return catalog.platforms().stream().filter(platform -> request.platforms().isEmpty() || request.platforms()
                .contains(platform.sku()))
                .map(platform -> known.computeIfAbsent(List.of(platform.sku(), pool), key -> extremes(platform, pool)))
                .mapToDouble(most -> most.price + ScaledMoney.ONE * (beside(most, request.licence()) + worth(most, request))).max()
                        .orElse(0);
    }

    private double beside(Extremes most, Licence licence) {
        Labour labour = catalog.labour();
        return labour.perMachine() + (double) labour.perModule() * most.slots + (double) licence.perCore() * most.cores
                + (double) licence.perProcessor() * most.sockets
                + (double) market.order().modulePartCharge() * most.slots;
    }

    private static double worth(Extremes most, Request request) {
        Worth worth = request.worth();
        return request.objective() != Objective.BEST_VALUE ? 0
                : worth.core() * most.cores + worth.gb() * most.gb + worth.gbs() * most.gbs 
                        // No machine does more work than it has throughput.
                        + (worth.throughput() + worth.work()) * most.throughput;
    }

    private Extremes extremes(Platform platform, int pool) {
        Board board = platform.board();
        int sockets = board.sockets();
        int slots = sockets * board.channels() * board.slotsPerChannel();
        List<Processor> processors = catalog.processors().stream().filter(processor -> SocketMatch.allows(platform, processor)).toList();
        List<MemoryModule> modules = catalog.modules().stream().filter(module -> MemoryGeneration.allows(platform.memory(), module))
                .toList();
        double price = price(platform.sku(), pool) + sockets * (price(processors, pool) + price(platform.cooling(), pool))
                + slots * price(modules, pool)
                + platform.power().supplies().stream().mapToDouble(supply -> supply.count() * price(supply.sku(), pool)).max().orElse(0)
                + housing(platform) + equipment(pool);
        return new Extremes(price, sockets, slots, sockets * processors.stream().mapToInt(Processor::cores).max().orElse(0),
                slots * modules.stream().mapToDouble(MemoryModule::capacityGb).max().orElse(0),
                sockets * board.channels() * Bandwidth.ofChannelGbs(processors.stream().mapToInt(Processor::memoryMts).max().orElse(0)),
                sockets * processors.stream().mapToDouble(processor -> Throughput.of(processor, catalog.throughputFactors()).value())
                        .max().orElse(0));
    }

    /** The dearest enclosure that takes a platform, for one sled alone. */
    private double housing(Platform platform) {
        return market.bays().stream().filter(bay -> bay.enclosure().takes(platform))
                .mapToDouble(bay -> price(bay.enclosure().sku(), bay.pool()) + bay.supply().count() * price(bay.supply().sku(),
                        bay.pool())).max().orElse(0);
    }

    /** Everything of the other kinds that a machine could hold. */
    private double equipment(int pool) {
        return Stream.of(catalog.drives(), catalog.cards(), catalog.extras()).flatMap(List::stream)
                .mapToDouble(part -> market.mostInMachine(market.index().get(part.sku())) * price(part.sku(), pool)).sum();
    }

    private double price(List<? extends Part> parts, int pool) {
        return parts.stream().mapToDouble(part -> price(part.sku(), pool)).max().orElse(0);
    }

    /** The dearest unit of a part. */
    private double price(String sku, int pool) {
        return market.sources(market.index().get(sku)).stream().filter(source -> source.pools()[pool]).flatMap(source -> source.steps()
                .stream())
                .mapToDouble(OfferedLot.Step::price).max().orElse(0);
    }
}
