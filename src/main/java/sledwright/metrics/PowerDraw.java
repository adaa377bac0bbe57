package sledwright.metrics;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import sledwright.domain.Build;
import sledwright.domain.Limits;
import sledwright.domain.MemoryModule;
import sledwright.domain.Processor;
import sledwright.domain.Supply;

/** The watts of a machine: its load, and what it takes from the wall. */
public final class PowerDraw {

    private PowerDraw() {
    }

    /** Load in watts: the platform's base, every processor's TDP, and the watts of every module, drive, card and extra. */
    public static double loadW(Build build) {
        double processors = build.processors().stream().mapToDouble(Processor::tdpW).sum();
        double modules = build.modules().values().stream().mapToDouble(MemoryModule::powerW).sum();
        return Quantity.rounded(build.platform().power().baseW() + processors + modules + build.fitout().powerW());
    }

    /** Of several machines the one of the greatest load; of equals the first. */
    public static Build heaviest(List<Build> machines) {
        return machines.stream().min(Comparator.comparingDouble(machine -> -loadW(machine))).orElseThrow();
    }

    /** Watts that the supplies deliver with the redundant ones failed, at the site's mains. */
    public static double deliverableW(Supply supply, Limits limits) {
        return (supply.count() - supply.redundant()) * supply.ratedW(limits);
    }

    /** Watts from the wall: the load over the supply's efficiency at its share; empty where the efficiency is not known. */
    public static OptionalDouble wallW(double loadW, Supply supply, Limits limits) {
        double rated = supply.ratedW(limits);
        if (rated <= 0 || supply.efficiency().isEmpty()) {
            return OptionalDouble.empty();
        }
        double sharePercent = 100 * loadW / supply.count() / rated;
        return OptionalDouble.of(loadW / (efficiencyPercent(supply.efficiency(), sharePercent) / 100));
    }

    /** Efficiency at a share of load, both in percent, linear between the points of the table and level beyond its ends. */
    public static double efficiencyPercent(NavigableMap<Integer, Double> table, double sharePercent) {
        Map.Entry<Integer, Double> below = table.floorEntry((int) Math.floor(sharePercent));
        Map.Entry<Integer, Double> above = table.ceilingEntry((int) Math.ceil(sharePercent));
        if (below == null) {
            return above.getValue();
        }
        if (above == null || above.getKey().equals(below.getKey())) {
            return below.getValue();
        }
        double along = (sharePercent - below.getKey()) / (above.getKey() - below.getKey());
        return below.getValue() + along * (above.getValue() - below.getValue());
    }
}
