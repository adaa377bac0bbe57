package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.Range;
import sledwright.planner.order.market.ScaledMoney;

/**
 * What no order goes below, by Lagrangian relaxation: at any worth of units, lines that buy from a common store and lots that sell to it
 * can each be settled by themselves. Price breaks, the number of suppliers and what they charge for delivery are taken as they are.
 * All in whole scaled units, so that nothing is lost by rounding.
 *
 * @param free whether parts cost nothing, so that only what is delivered counts
 */
record LowerBound(Market market, boolean free, Restrictions settled) {

    /**
     * The bound at some worth of units, which {@link #kept} must have been applied to.
     *
     * @param least what each line takes at least
     */
    long at(Duals duals, long[] least) {
        long bound = Arrays.stream(least).sum();
        for (Bay bay : settled.enclosures().keySet()) {
            long beyond = takes(duals, bay) - rooms(duals, bay) - duals.bay()[bay.id()] * bay.bays()
                    - (long) Math.ceil(duals.kilowatt()[bay.id()] * capacityKw(bay));
            bound += beyond * (beyond < 0 ? settled.of(bay).most() : settled.of(bay).least());
        }
        for (Map.Entry<Trait, Long> trait : duals.trait().entrySet()) {
            bound -= isRoom(trait.getKey()) ? 0 : trait.getValue() * settled.of(trait.getKey()).most();
        }
        for (Map.Entry<StockCut, Long> cut : duals.cut().entrySet()) {
            bound -= cut.getValue() * cut.getKey().most();
        }
        bound += duals.missing() * (duals.missing() > 0 ? settled.missing().least() : settled.missing().most());
        return bound - gains(duals);
    }

    /** What an enclosure with its supplies is worth. */
    long takes(Duals duals, Bay bay) {
        return duals.part()[bay.pool()][market.index().get(bay.enclosure().sku())]
                + duals.part()[bay.pool()][market.index().get(bay.supply().sku())] * bay.supply().count();
    }

    /** Whether it is about the room that an enclosure has for a line, and not about what is settled. */
    private boolean isRoom(Trait trait) {
        return trait instanceof Trait.Stands stands && isRoom(trait, stands.bay());
    }

    private boolean isRoom(Trait trait, Bay bay) {
        return trait instanceof Trait.Stands stands && stands.bay().equals(bay) && !settled.traits().containsKey(trait);
    }

    /** What the places of an enclosure are worth to the lines that could not fill it. */
    private long rooms(Duals duals, Bay bay) {
        return duals.trait().entrySet().stream().filter(trait -> isRoom(trait.getKey(), bay))
                .mapToLong(trait -> trait.getValue() * market.room(trait.getKey().line(), bay)).sum();
    }

    private static double capacityKw(Bay bay) {
        return bay.capacity() / Bay.MICRO_OF_KILO;
    }

    /** What lots and their suppliers gain at most. */
    private long gains(Duals duals) {
        long own = 0;
        long[] bySupplier = new long[market.suppliers().size()];
        for (int part = 0; part < market.parts(); part++) {
            for (OfferedLot source : market.sources(part)) {
                long worth = 0;
                for (int pool = 0; pool < source.pools().length; pool++) {
                    worth = source.pools()[pool] ? Math.max(worth, duals.part()[pool][part]) : worth;
                }
                if (settled.isClosed(source)) {
                    continue;
                }
                worth += duals.given(source);
                long gain = free ? worth * settled.of(source).most() : source.gain(worth, settled.of(source));
                if (source.supplier() < 0) {
                    own += gain;
                } else {
                    bySupplier[source.supplier()] += gain;
                }
            }
        }
        long charge = free ? 0 : market.order().deliveryCharge() * ScaledMoney.ONE;
        int left = market.order().suppliersMax().orElse(Integer.MAX_VALUE);
        List<Long> undecided = new ArrayList<>();
        for (int supplier = 0; supplier < bySupplier.length; supplier++) {
            long gain = bySupplier[supplier] - charge;
            if (settled.mustDeliver(supplier)) {
                own += gain;
                left--;
            } else if (gain > 0) {
                undecided.add(gain);
            }
        }
        List<Long> best = undecided.stream().sorted(Comparator.reverseOrder()).limit(Math.max(0, left)).toList();
        return own + best.stream().mapToLong(Long::longValue).sum();
    }

    /**
     * The same worth but for places and watts in enclosures, where it must not be more than the enclosure itself takes unless there is a
     * limit to their number; and without what machines are to have in common at least, since the line sees to that.
     */
    Duals kept(Duals duals) {
        long[] bay = duals.bay().clone();
        long[] kilowatt = duals.kilowatt().clone();
        Map<Trait, Long> traits = new LinkedHashMap<>();
        duals.trait().forEach((trait, worth) -> {
            if (worth > 0 && (settled.traits().containsKey(trait) || isRoom(trait))) {
                traits.put(trait, worth);
            }
        });
        for (Bay some : market.bays()) {
            if (settled.of(some).most() == Range.ANY.most()) {
                long takes = takes(duals, some);
                for (Map.Entry<Trait, Long> trait : traits.entrySet()) {
                    if (isRoom(trait.getKey(), some)) {
                        int room = market.room(trait.getKey().line(), some);
                        trait.setValue(Math.min(trait.getValue(), takes / room));
                        takes -= trait.getValue() * room;
                    }
                }
                bay[some.id()] = Math.min(bay[some.id()], takes / some.bays());
                kilowatt[some.id()] = Math.min(kilowatt[some.id()],
                        (long) Math.floor((takes - bay[some.id()] * some.bays()) / capacityKw(some)));
            }
        }
        Map<StockCut, Long> cuts = new LinkedHashMap<>(duals.cut());
        cuts.values().removeIf(worth -> worth <= 0);
        return new Duals(duals.part(), bay, kilowatt, traits, settled.missing().most() < Range.ANY.most() ? duals.missing() : Math.max(0,
                duals.missing()), cuts);
    }
}
