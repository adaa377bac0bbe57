package sledwright.oracle;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import sledwright.domain.MemoryModule;
import sledwright.domain.Processor;
import sledwright.domain.Requirements;

/**
 * The targets of a model that are not the processor's alone, and the limits of its load. A figure counts to a millionth, so half of one may lack. All
 * numbers are kept small by working them out beforehand for each speed and fullest channel: with coefficients of some hundred
 * million the solver's presolve was seen to call a model infeasible that it solved without presolve.
 */
final class CpSatTargets {

    /** Watts are counted in hundredths. */
    private static final long WATT_UNITS = 100;

    private final CpSatModel that;
    private final Requirements require;

    CpSatTargets(CpSatModel that) {
        this.that = that;
        require = that.request.require();
    }

    void add() {
        spareSlots();
        memory();
        bandwidth();
        work();
        power();
    }

    /** What a workload asks of the cores; what it asks of the memory is bandwidth. */
    private void work() {
        that.processors.forEach((processor, taken) -> {
            double ofCores = NaiveFigures.work(require.work().workload(), that.fitted * that.throughputOf(processor),
                    that.fitted * processor.cores(), Double.POSITIVE_INFINITY);
            if (ofCores < require.work().least() - 0.5e-6) {
                that.model.addEquality(taken, 0);
            }
        });
    }

    /** The least GB/s that feed the asked work. */
    private double feeding() {
        return (require.work().least() - 0.5e-6) * require.work().workload().gbPerUnit();
    }

    private void spareSlots() {
        LinearExprBuilder spare = LinearExpr.newBuilder();
        that.stands.keySet().forEach(slot -> spare.add(1).addTerm(that.filling(slot), -1));
        that.kits.forEach((kit, chosen) ->
                spare.addTerm(chosen, -that.stands.keySet().stream().filter(slot -> kit.covers().contains(slot.name())).count()));
        that.model.addGreaterOrEqual(spare.build(), require.spareSlots());
    }

    private void memory() {
        that.model.addGreaterOrEqual(that.usable(), least(require.memoryGb(), CpSatModel.MEMORY_UNITS));
        that.processors.forEach((processor, taken) -> that.model.addGreaterOrEqual(that.usable(),
                least(require.gbPerCore(), (double) CpSatModel.MEMORY_UNITS * that.fitted * processor.cores())).onlyEnforceIf(taken));
    }

    /** For each speed and fullest channel, what a socket must hold. */
    private void bandwidth() {
        if (require.bandwidthGbs() == 0 && require.gbsPerCore() == 0 && feeding() <= 0) {
            return;
        }
        Map<Integer, BoolVar> fullest = new TreeMap<>();
        for (int gb : channelCapacities()) {
            BoolVar most = that.model.newBoolVar("fullest channel of %d GB".formatted(gb));
            fullest.put(gb, most);
            for (int channel = 0; channel < that.memory.channels(); channel++) {
                that.model.addLessOrEqual(that.onChannel(0, channel, MemoryModule::capacityGb), gb).onlyEnforceIf(most);
            }
            that.speeds.forEach((mts, speed) -> {
                LinearExpr socketGb = that.onSocket(0, MemoryModule::capacityGb);
                // One GB on a socket gives this many GB/s.
                double each = that.fitted * mts * 8 / 1000.0 / gb;
                that.model.addGreaterOrEqual(socketGb, least(require.bandwidthGbs(), 1 / each)).onlyEnforceIf(new Literal[] {speed, most});
                that.model.addGreaterOrEqual(socketGb, Math.max(0, (long) Math.ceil(feeding() / each - 1e-9))).onlyEnforceIf(new Literal[] {speed, most});
                for (Map.Entry<Processor, BoolVar> processor : that.processors.entrySet()) {
                    long needed = least(require.gbsPerCore(), that.fitted * processor.getKey().cores() / each);
                    that.model.addGreaterOrEqual(socketGb, needed).onlyEnforceIf(new Literal[] {speed, most, processor.getValue()});
                }
            });
        }
        that.model.addExactlyOne(fullest.values().toArray(Literal[]::new));
    }

    private void power() {
        LinearExprBuilder load = LinearExpr.newBuilder();
        load.add(Math.round(that.platform.power().baseW() * WATT_UNITS));
        load.add(CpSatModel.sum(that.processors, processor -> Math.round(that.fitted * processor.tdpW() * WATT_UNITS)));
        for (int socket = 0; socket < that.fitted; socket++) {
            load.add(that.onSocket(socket, module -> Math.round(module.powerW() * WATT_UNITS)));
        }
        LinearExpr watts = load.build();
        that.request.limit().powerW().ifPresent(limit -> that.model.addLessOrEqual(watts, Math.round(limit * WATT_UNITS)));
        that.platform.power().budgetW().ifPresent(limit -> that.model.addLessOrEqual(watts, Math.round(limit * WATT_UNITS)));
        that.supplies.forEach((supply, chosen) -> {
            boolean low = that.request.limit().mainsV().orElse(230) < 180;
            double one = low ? supply.lowLineWatts() : supply.watts();
            if (one <= 0) {
                that.model.addEquality(chosen, 0);
            }
            that.model.addLessOrEqual(watts, (long) Math.floor((supply.count() - supply.redundant()) * one * WATT_UNITS + 1e-6)).onlyEnforceIf(chosen);
        });
    }

    /** The least whole number of units that reach a figure to half a millionth, where one of it takes a given number of units. */
    private static long least(double figure, double unitsEach) {
        return Math.max(0, (long) Math.ceil((figure - 0.5e-6) * unitsEach));
    }

    private TreeSet<Integer> channelCapacities() {
        TreeSet<Integer> sums = new TreeSet<>();
        sums.add(0);
        for (int slot = 0; slot < that.memory.slotsPerChannel(); slot++) {
            for (int sum : sums.toArray(Integer[]::new)) {
                that.modules.forEach(module -> sums.add(sum + module.capacityGb()));
            }
        }
        sums.remove(0);
        return sums;
    }
}
