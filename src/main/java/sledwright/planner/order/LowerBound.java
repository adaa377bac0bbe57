package sledwright.planner.order;

import java.util.Comparator;
import java.util.List;
import java.util.stream.LongStream;

/**
 * What no order goes below, by Lagrangian relaxation: at any worth of units, lines that buy from a common store and lots that sell to it
 * can each be settled by themselves. Price breaks, the number of suppliers and what they charge for delivery are taken as they are.
 * All in whole scaled units, so that nothing is lost by rounding.
 */
final class LowerBound {

    private final Market market;
    private final long[] penalty;
    private final boolean free;

    LowerBound(Market market, long[] penalty, boolean free) {
        this.market = market;
        this.penalty = penalty;
        this.free = free;
    }

    /**
     * The bound at some worth of units, which {@link #kept} must have been applied to.
     *
     * @param one for each line what one machine takes at least
     * @param all for each uniform line what all its machines together take at least
     */
    long at(Prices prices, long[] one, long[] all) {
        long bound = 0;
        for (int line = 0; line < one.length; line++) {
            int machines = market.line(line).machines();
            long each = Math.min(one[line], penalty[line]);
            bound += market.line(line).uniform() ? Math.min(all[line], (machines - 1) * each + penalty[line]) : machines * each;
        }
        return bound - gains(prices);
    }

    /** What lots and their suppliers gain at most. */
    private long gains(Prices prices) {
        long own = 0;
        long[] bySupplier = new long[market.suppliers().size()];
        for (int part = 0; part < market.parts(); part++) {
            for (Source source : market.sources(part)) {
                long worth = 0;
                for (int pool = 0; pool < source.pools().length; pool++) {
                    worth = source.pools()[pool] ? Math.max(worth, prices.part()[pool][part]) : worth;
                }
                long gain = free ? worth * source.most() : source.gain(worth);
                if (source.supplier() < 0) {
                    own += gain;
                } else {
                    bySupplier[source.supplier()] += gain;
                }
            }
        }
        long charge = free ? 0 : market.order().deliveryCharge() * Scale.ONE;
        List<Long> best = LongStream.of(bySupplier).map(gain -> gain - charge).filter(gain -> gain > 0).boxed()
                .sorted(Comparator.reverseOrder()).limit(market.order().suppliersMax().orElse(Integer.MAX_VALUE)).toList();
        return own + best.stream().mapToLong(Long::longValue).sum();
    }

    /** The same worth but for places and watts in enclosures, where it must not be more than the enclosure itself takes. */
    Prices kept(Prices prices) {
        long[] bay = prices.bay().clone();
        long[] watt = prices.watt().clone();
        for (Bay some : market.bays()) {
            long takes = prices.part()[some.pool()][market.index().get(some.enclosure().sku())]
                    + prices.part()[some.pool()][market.index().get(some.supply().sku())] * some.supply().count();
            double capacityW = some.capacity() / (double) Bay.MICRO;
            bay[some.id()] = Math.min(bay[some.id()], takes / some.bays());
            watt[some.id()] = Math.min(watt[some.id()], (long) Math.floor((takes - bay[some.id()] * some.bays()) / capacityW));
        }
        return new Prices(prices.part(), bay, watt);
    }
}
