package sledwright.oracle;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearArgument;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.Supply;

/** Sleds in enclosures, each enclosure by itself with its own bays and watts, as constraints of the outside solver's model. */
final class CpSatEnclosures {

    /** Takes note of units that an order needs, from lots that all pools of a set accept. */
    interface Need {
        void of(String sku, long set, LinearArgument units);
    }

    /**
     * Sleds that enclosures can't tell apart.
     *
     * @param number how many the order has
     */
    record Sleds(int pool, String platform, boolean lowLine, Set<String> forbid, long microwatts, LinearArgument number) {
    }

    private final CpModel model;
    private final Catalog catalog;
    private final Need need;

    CpSatEnclosures(CpModel model, Catalog catalog, Need need) {
        this.model = model;
        this.catalog = catalog;
        this.need = need;
    }

    /** Gives every sled a bay. */
    void house(List<Sleds> sleds, int pools, int machines) {
        Map<Sleds, LinearExprBuilder> housed = new LinkedHashMap<>();
        sleds.forEach(some -> housed.put(some, LinearExpr.newBuilder()));
        for (Enclosure enclosure : catalog.enclosures()) {
            for (Supply supply : enclosure.supplies()) {
                for (boolean lowLine : new boolean[] {false, true}) {
                    long capacity = capacity(enclosure, supply, lowLine);
                    List<Sleds> fitting = sleds.stream().filter(some -> enclosure.takes().contains(some.platform) && some.lowLine == lowLine
                            && !some.forbid.contains(enclosure.sku()) && !some.forbid.contains(supply.sku()) && some.microwatts <= capacity).toList();
                    BoolVar before = null;
                    for (int i = 0; i < machines && !fitting.isEmpty(); i++) {
                        before = enclosure(enclosure, supply, capacity, fitting, pools, housed, before);
                    }
                }
            }
        }
        housed.forEach((some, number) -> model.addEquality(number.build(), some.number));
    }

    private BoolVar enclosure(Enclosure enclosure, Supply supply, long capacity, List<Sleds> fitting, int pools, Map<Sleds, LinearExprBuilder> housed,
                              BoolVar before) {
        BoolVar used = model.newBoolVar(enclosure.sku());
        if (before != null) {
            model.addImplication(used, before);
        }
        long present = fitting.stream().mapToLong(some -> 1L << some.pool).reduce(0, (one, other) -> one | other);
        List<Long> sets = new ArrayList<>();
        List<BoolVar> chosen = new ArrayList<>();
        for (long set = 1; set < 1L << pools; set++) {
            if ((set & ~present) == 0) {
                BoolVar forSet = model.newBoolVar("for lines");
                sets.add(set);
                chosen.add(forSet);
                need.of(enclosure.sku(), set, forSet);
                need.of(supply.sku(), set, LinearExpr.term(forSet, supply.count()));
            }
        }
        model.addEquality(LinearExpr.sum(chosen.toArray(LinearArgument[]::new)), used);
        LinearExprBuilder bays = LinearExpr.newBuilder();
        LinearExprBuilder load = LinearExpr.newBuilder();
        LinearExprBuilder[] byPool = new LinearExprBuilder[pools];
        for (Sleds some : fitting) {
            IntVar here = model.newIntVar(0, enclosure.bays(), some.platform);
            bays.add(here);
            load.addTerm(here, some.microwatts);
            housed.get(some).add(here);
            byPool[some.pool] = byPool[some.pool] == null ? LinearExpr.newBuilder() : byPool[some.pool];
            byPool[some.pool].add(here);
        }
        model.addLessOrEqual(bays, LinearExpr.term(used, enclosure.bays()));
        model.addLessOrEqual(load, LinearExpr.term(used, capacity));
        for (int pool = 0; pool < pools; pool++) {
            if (byPool[pool] != null) {
                LinearExprBuilder suiting = LinearExpr.newBuilder();
                for (int i = 0; i < sets.size(); i++) {
                    if ((sets.get(i) >> pool & 1) == 1) {
                        suiting.addTerm(chosen.get(i), enclosure.bays());
                    }
                }
                model.addLessOrEqual(byPool[pool], suiting);
            }
        }
        return used;
    }

    /** Microwatts that the sleds of an enclosure may take together; negative where it can't run at all. */
    static long capacity(Enclosure enclosure, Supply supply, boolean lowLine) {
        double one = lowLine ? supply.lowLineWatts() : supply.watts();
        double delivered = one * (supply.count() - supply.redundant());
        double most = enclosure.budgetW() == 0 ? delivered : Math.min(delivered, enclosure.budgetW());
        return one == 0 ? -1 : NaiveFigures.millionths(most - enclosure.baseW());
    }
}
