package sledwright.oracle;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeSet;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Energy;
import sledwright.domain.Extra;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Slot;
import sledwright.domain.Supply;
import sledwright.domain.Workload;

/** The figures of one machine, computed the long way from the text of the rules. */
record NaiveFigures(int processors, int cores, double baseGhz, double allCoreGhz, double usableGb, int mts,
                    double bandwidthGbs, double throughput, double loadW, int spareSlots, double work) {

    static NaiveFigures of(Build build, Request request, Map<String, Double> factors) {
        MemoryModule[][][] memory = SlotView.memory(build);
        int mts = Integer.MAX_VALUE;
        int cores = 0;
        double throughput = 0;
        double loadW = build.platform().power().baseW();
        double base = Double.MAX_VALUE;
        double allCore = Double.MAX_VALUE;
        for (Processor processor : build.processors()) {
            mts = Math.min(mts, processor.memoryMts());
            cores += processor.cores();
            throughput += throughput(processor, factors);
            loadW += processor.tdpW();
            base = Math.min(base, processor.baseGhz());
            allCore = Math.min(allCore, processor.allCoreGhz());
        }
        for (MemoryModule module : build.modules().values()) {
            mts = Math.min(mts, module.speedMts());
            loadW += module.powerW();
        }
        for (Drive drive : build.fitout().drives()) {
            loadW += drive.powerW();
        }
        for (Card card : build.fitout().cards().values()) {
            loadW += card.shape().powerW();
        }
        for (Map.Entry<Extra, Integer> extra : build.fitout().extras().entrySet()) {
            loadW += extra.getValue() * extra.getKey().powerW();
        }
        for (MemoryModule[][] socket : memory) {
            mts = Math.min(mts, tableMts(build.platform().memory(), socket));
        }
        boolean none = build.processors().isEmpty();
        if (none || build.modules().isEmpty()) {
            mts = 0;
        }
        double bandwidth = 0;
        double usable = 0;
        for (MemoryModule[][] socket : memory) {
            bandwidth += bandwidthGbs(mts, capacities(socket));
            usable += usableGb(build.platform().memory(), request.require().mode(), socket);
        }
        return new NaiveFigures(build.processors().size(), cores, none ? 0 : base, none ? 0 : allCore, rounded(usable), mts,
                rounded(bandwidth), rounded(throughput), rounded(loadW), spareSlots(build),
                rounded(work(request.require().work().workload(), throughput, cores, bandwidth)));
    }

    /** Amdahl's law and the roofline, as the text has them. */
    static double work(Workload workload, double throughput, int cores, double bandwidthGbs) {
        if (cores == 0) {
            return 0;
        }
        double p = workload.parallel();
        double speedUp = 1 / ((1 - p) + p / cores);
        double ofCores = throughput * speedUp / cores;
        return workload.gbPerUnit() == 0 ? ofCores : Math.min(ofCores, bandwidthGbs / workload.gbPerUnit());
    }

    double gbPerCore() {
        return cores == 0 ? 0 : rounded(usableGb / cores);
    }

    double gbsPerCore() {
        return cores == 0 ? 0 : rounded(bandwidthGbs / cores);
    }

    static double throughput(Processor processor, Map<String, Double> factors) {
        return processor.throughput().isPresent() ? processor.throughput().getAsDouble()
                : processor.cores() * processor.allCoreGhz() * factors.getOrDefault(processor.generation(), 0.0);
    }

    /** The lowest table speed over a socket's channels; entries that do not exist are left out. */
    static int tableMts(MemorySupport memory, MemoryModule[][] socket) {
        int lowest = Integer.MAX_VALUE;
        for (MemoryModule[] channel : socket) {
            for (MemoryModule module : channel) {
                if (module != null) {
                    lowest = Math.min(lowest, Reading.tableMts(memory, module, SlotView.count(channel)).orElse(Integer.MAX_VALUE));
                }
            }
        }
        return lowest;
    }

    static int[] capacities(MemoryModule[][] socket) {
        int[] capacities = new int[socket.length];
        for (int c = 0; c < socket.length; c++) {
            capacities[c] = SlotView.gb(socket[c]);
        }
        return capacities;
    }

    /** The interleave model region by region: what is swept, over the time that the regions take. */
    static double bandwidthGbs(int mts, int... channelsGb) {
        double swept = 0;
        double time = 0;
        int below = 0;
        TreeSet<Integer> levels = new TreeSet<>();
        for (int gb : channelsGb) {
            if (gb > 0) {
                levels.add(gb);
            }
        }
        for (int level : levels) {
            int width = 0;
            for (int gb : channelsGb) {
                width += gb >= level ? 1 : 0;
            }
            double region = (double) (level - below) * width;
            swept += region;
            time += region / (width * (mts * 8 / 1000.0));
            below = level;
        }
        return swept == 0 || mts == 0 ? 0 : swept / time;
    }

    static double usableGb(MemorySupport memory, MemoryMode mode, MemoryModule[][] socket) {
        double total = SlotView.gb(socket);
        if (mode == MemoryMode.MIRRORED) {
            return total * memory.modes().mirroredFraction().orElse(0);
        }
        if (mode == MemoryMode.RANK_SPARING) {
            for (MemoryModule[] channel : socket) {
                double largest = 0;
                for (MemoryModule module : channel) {
                    largest = module == null ? largest : Math.max(largest, (double) module.capacityGb() / module.ranks());
                }
                total -= largest;
            }
        }
        return total;
    }

    private static int spareSlots(Build build) {
        int spare = 0;
        for (Slot slot : build.platform().board().slots()) {
            boolean fitted = slot.socket() < build.processors().size();
            if (fitted && !build.modules().containsKey(slot) && !build.cooling().covers().contains(slot.name())) {
                spare++;
            }
        }
        return spare;
    }

    /** Watts from the wall, the efficiency read off the straight line between the table's points. */
    static OptionalDouble wallW(double loadW, Supply supply, Limits limits) {
        boolean low = limits.mainsV().isPresent() && limits.mainsV().getAsDouble() < 180;
        double rated = low ? supply.lowLineWatts() : supply.watts();
        if (rated <= 0 || supply.efficiency().isEmpty()) {
            return OptionalDouble.empty();
        }
        double share = 100 * loadW / (supply.count() * rated);
        List<Integer> points = List.copyOf(supply.efficiency().keySet());
        double percent = supply.efficiency().get(points.get(0));
        for (int i = 0; i < points.size(); i++) {
            double here = supply.efficiency().get(points.get(i));
            if (share >= points.get(i)) {
                percent = here;
                if (i + 1 < points.size()) {
                    double next = supply.efficiency().get(points.get(i + 1));
                    percent = here + (next - here) * Math.min(1, (share - points.get(i)) / (points.get(i + 1) - points.get(i)));
                }
            }
        }
        return OptionalDouble.of(100 * loadW / percent);
    }

    /** Minor units for what all machines take from the wall at their mean load, year by year and hour by hour. */
    static long energyCost(Request request, double loadW, Supply supply) {
        return request.energy().map(energy -> energyCost(request, loadW, supply, energy)).orElse(0L);
    }

    static long energyCost(Request request, double loadW, Supply supply, Energy energy) {
        double mean = loadW * energy.duty();
        double watts = supply == null ? mean : wallW(mean, supply, request.limit()).orElse(mean);
        return Math.round(request.machines() * energy.years() * 365 * 24 * (watts / 1000) * energy.pricePerKwh());
    }

    static double rounded(double figure) {
        return millionths(figure) / 1e6;
    }

    static long millionths(double figure) {
        return Math.round(figure * 1e6);
    }
}
