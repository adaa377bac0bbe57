package sledwright.oracle;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import sledwright.domain.Build;
import sledwright.domain.CoolingKit;
import sledwright.domain.Enclosure;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemoryWish;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.SpeedEntry;
import sledwright.domain.Supply;
import sledwright.domain.Thermal;

/**
 * A second, naive reading of the rules, written from their text. It names the rules that are broken and shares no code with the
 * program's own rules and figures. A channel is an array of slots in fill order, an empty slot is null; a socket is an
 * array of channels.
 */
final class Reading {

    private Reading() {
    }

    /** The identifiers of the machine rules that a build breaks. */
    static SortedSet<String> machine(Build build, Request request, Map<String, Double> factors) {
        SortedSet<String> broken = new TreeSet<>();
        Platform platform = build.platform();
        int fitted = build.processors().size();
        MemoryModule[][][] memory = SlotView.memory(build);
        boolean[][][] covered = SlotView.covered(platform, build.cooling());
        for (Processor processor : build.processors()) {
            broken.addAll(processor(platform, processor, fitted));
            broken.addAll(cooling(build.cooling(), processor));
            broken.addAll(lastRow(platform.thermal(), processor));
            for (MemoryModule module : build.modules().values()) {
                broken.addAll(inlet(platform.thermal(), processor, module.type(), request.limit()));
            }
            if (!processor.equals(build.processors().get(0))) {
                broken.add("matched-processors");
            }
        }
        if (!platform.processors().counts().contains(fitted)) {
            broken.add("socket-count");
        }
        for (int socket = 0; socket < memory.length; socket++) {
            boolean holdsAny = SlotView.count(memory[socket]) > 0;
            if (socket >= fitted && holdsAny) {
                broken.add("slot-needs-processor");
            }
            if (socket < fitted || holdsAny) {
                broken.addAll(socket(platform.memory(), request.require().mode(), covered[socket], memory[socket]));
            }
            if (socket < fitted) {
                broken.addAll(addressed(build.processors().get(socket), SlotView.gb(memory[socket])));
                if (!SlotView.alike(memory[0], memory[socket])) {
                    broken.add("matched-sockets");
                }
            }
        }
        broken.addAll(balance(request.require().populated(), List.of(memory).subList(0, Math.min(fitted, memory.length))));
        broken.addAll(mix(platform.memory(), build.modules().values()));
        broken.addAll(mode(platform.memory(), request.require().mode()));
        NaiveFigures figures = NaiveFigures.of(build, request, factors);
        broken.addAll(power(platform, build.supply().orElse(null), request.limit(), figures.loadW()));
        broken.addAll(targets(request.require(), figures));
        broken.addAll(choice(request, build));
        broken.addAll(FitoutReading.broken(build, request));
        return broken;
    }

    /** The identifiers of the order rules that machines drawn as picked break; one pick a lot. */
    static SortedSet<String> order(List<Build> machines, List<Pick> picks, Request request, long price) {
        SortedSet<String> broken = new TreeSet<>();
        Map<String, Integer> missing = new HashMap<>();
        machines.forEach(build -> build.partCounts().forEach((sku, units) -> missing.merge(sku, units, Integer::sum)));
        machines.get(0).fitout().housed().ifPresent(housed -> {
            missing.merge(housed.enclosure().sku(), housed.count(), Integer::sum);
            missing.merge(housed.supply().sku(), housed.count() * housed.supply().count(), Integer::sum);
        });
        for (Pick pick : picks) {
            Lot lot = pick.lot();
            missing.merge(lot.sku(), -pick.quantity(), Integer::sum);
            if (pick.quantity() > lot.available() || pick.quantity() < lot.breaks().get(0).minQuantity()) {
                broken.add("in-stock");
            }
            broken.addAll(lot(lot, request.limit()));
        }
        if (missing.values().stream().anyMatch(units -> units > 0)) {
            broken.add("in-stock");
        }
        broken.addAll(partNumbers(request.require().populated(), machines.stream().flatMap(build -> build.modules().values().stream())
                .map(MemoryModule::sku).distinct().count()));
        if (request.limit().price().isPresent() && price > request.limit().price().getAsLong()) {
            broken.add("budget");
        }
        return broken;
    }

    /** Breaches by drawing on a lot at all; what the customer has is welcome as it is. */
    static Set<String> lot(Lot lot, Limits limits) {
        Set<String> broken = new HashSet<>();
        if (!lot.onHand()) {
            if (limits.leadDays().isPresent() && lot.leadDays() > limits.leadDays().getAsInt()
                    || limits.by().isPresent() && lot.leadDays() > limits.by().get().days()) {
                broken.add("lead-time");
            }
            if (!limits.conditions().isEmpty() && !limits.conditions().contains(lot.condition())) {
                broken.add("condition");
            }
        }
        return broken;
    }

    /** Breaches by a given number of processors of a part on a platform. */
    static Set<String> processor(Platform platform, Processor processor, int fitted) {
        Set<String> broken = new HashSet<>();
        if (!processor.socket().equals(platform.processors().socket())
                || !platform.processors().generations().contains(processor.generation())) {
            broken.add("socket-match");
        }
        if (!platform.processors().counts().contains(fitted) || fitted > processor.socketsMax()) {
            broken.add("socket-count");
        }
        if (processor.tdpW() > platform.processors().maxTdpW()) {
            broken.add("tdp-limit");
        }
        return broken;
    }

    static Set<String> cooling(CoolingKit kit, Processor processor) {
        return kit.maxTdpW() < processor.tdpW() ? Set.of("heat-sink-rating") : Set.of();
    }

    static Set<String> inlet(Thermal thermal, Processor processor, ModuleType type, Limits site) {
        if (thermal.inlet().isEmpty()) {
            return Set.of();
        }
        Thermal.InletRow governing = null;
        for (Thermal.InletRow row : thermal.inlet()) {
            boolean serves = processor.tdpW() <= row.maxTdpW() && (row.types().isEmpty() || row.types().contains(type));
            boolean lower = governing == null || row.maxTdpW() < governing.maxTdpW();
            boolean ownOfTheSame = !lower && row.maxTdpW() == governing.maxTdpW() && governing.types().isEmpty();
            if (serves && (lower || ownOfTheSame)) {
                governing = row;
            }
        }
        if (governing == null) {
            return Set.of("inlet-limit");
        }
        double corrected = site.inletC().orElse(Double.NEGATIVE_INFINITY);
        if (site.altitudeM() > thermal.altitudeFromM()) {
            corrected += (site.altitudeM() - thermal.altitudeFromM()) / thermal.metresPerKelvin();
        }
        return corrected > governing.maxInletC() + 1e-6 ? Set.of("inlet-limit") : Set.of();
    }

    /** Breaches by a processor hotter than the last row, whatever stands beside it. */
    private static Set<String> lastRow(Thermal thermal, Processor processor) {
        boolean hotter = !thermal.inlet().isEmpty();
        for (Thermal.InletRow row : thermal.inlet()) {
            hotter &= processor.tdpW() > row.maxTdpW();
        }
        return hotter ? Set.of("inlet-limit") : Set.of();
    }

    /** Breaches within one channel; {@code ranks} holds each slot's logical ranks. */
    static Set<String> channel(MemorySupport memory, MemoryMode mode, boolean[] covered, MemoryModule[] slots, int[] ranks) {
        Set<String> broken = new HashSet<>();
        MemoryModule before = null;
        boolean gap = false;
        int filled = 0;
        int logical = 0;
        int physical = 0;
        for (int i = 0; i < slots.length; i++) {
            MemoryModule module = slots[i];
            if (module == null) {
                gap = true;
                continue;
            }
            if (gap) {
                broken.add("slot-order");
            }
            if (covered[i]) {
                broken.add("blocked-slot");
            }
            if (!module.generation().equals(memory.generation())) {
                broken.add("memory-generation");
            }
            if (before != null && (module.ranks() > before.ranks()
                    || module.ranks() == before.ranks() && module.capacityGb() > before.capacityGb())) {
                broken.add("rank-order");
            }
            before = module;
            filled++;
            logical += ranks[i];
            physical += module.ranks();
        }
        for (MemoryModule module : slots) {
            if (module != null) {
                if (memory.speeds().stream().noneMatch(row -> row.type() == module.type())) {
                    broken.add("module-type");
                }
                if (tableMts(memory, module, filled).isEmpty()) {
                    broken.add("modules-per-channel");
                }
                Integer limit = memory.maxLogicalRanks().get(module.type());
                if (limit != null && logical > limit) {
                    broken.add("rank-limit");
                }
            }
        }
        if (mode == MemoryMode.RANK_SPARING && memory.modes().rankSparing() && filled > 0 && physical < 2) {
            broken.add("memory-mode");
        }
        return broken;
    }

    /** The platform's speed for a module where the channel holds a given number: rows that name the ranks first, then those for all. */
    static OptionalInt tableMts(MemorySupport memory, MemoryModule module, int filled) {
        SpeedEntry general = null;
        for (SpeedEntry row : memory.speeds()) {
            if (row.type() == module.type()) {
                if (row.ranks().contains(module.ranks())) {
                    return filled <= row.mts().size() ? OptionalInt.of(row.mts().get(filled - 1)) : OptionalInt.empty();
                }
                if (row.ranks().isEmpty() && general == null) {
                    general = row;
                }
            }
        }
        return general != null && filled <= general.mts().size()
                ? OptionalInt.of(general.mts().get(filled - 1)) : OptionalInt.empty();
    }

    /** Breaches within one socket, channel by channel and across its channels. */
    static Set<String> socket(MemorySupport memory, MemoryMode mode, boolean[][] covered, MemoryModule[][] channels) {
        Set<String> broken = new HashSet<>();
        for (int c = 0; c < channels.length; c++) {
            int[] ranks = new int[channels[c].length];
            for (int i = 0; i < ranks.length; i++) {
                ranks[i] = channels[c][i] == null ? 0 : channels[c][i].logicalRanks();
            }
            broken.addAll(channel(memory, mode, covered[c], channels[c], ranks));
        }
        broken.addAll(acrossChannels(memory, mode, covered, channels));
        return broken;
    }

    /** Breaches that only the channels of a socket together show. */
    static Set<String> acrossChannels(MemorySupport memory, MemoryMode mode, boolean[][] covered, MemoryModule[][] channels) {
        Set<String> broken = new HashSet<>();
        int modules = SlotView.count(channels);
        if (modules == 0) {
            broken.add("memory-present");
            return broken;
        }
        if (!memory.mix().countsPerSocket().isEmpty() && !memory.mix().countsPerSocket().contains(modules)) {
            broken.add("module-count");
        }
        for (int later = 1; later < channels.length; later++) {
            for (int earlier = 0; earlier < later; earlier++) {
                int next = SlotView.count(channels[earlier]);
                boolean room = next < channels[earlier].length && !covered[earlier][next];
                if (room && SlotView.count(channels[later]) > next) {
                    broken.add("channel-order");
                }
            }
        }
        if (mode == MemoryMode.MIRRORED && mode(memory, mode).isEmpty()) {
            for (int c = 0; c < channels.length; c += 2) {
                if (!SlotView.alike(new MemoryModule[][] {channels[c]}, new MemoryModule[][] {channels[c + 1]})) {
                    broken.add("memory-mode");
                }
            }
        }
        return broken;
    }

    /** Breaches by what a machine mixes, wherever it stands. */
    static Set<String> mix(MemorySupport memory, Collection<MemoryModule> modules) {
        Set<ModuleType> types = new HashSet<>();
        Set<Integer> widths = new HashSet<>();
        Set<Integer> capacities = new HashSet<>();
        for (MemoryModule module : modules) {
            types.add(module.type());
            widths.add(module.deviceWidth());
            capacities.add(module.capacityGb());
        }
        Set<String> broken = new HashSet<>();
        if (types.size() > 1) {
            broken.add("one-module-type");
        }
        if (!memory.mix().widths() && widths.size() > 1) {
            broken.add("device-width");
        }
        if (capacities.size() > memory.mix().maxDistinctCapacities()) {
            broken.add("distinct-capacities");
        }
        return broken;
    }

    /** Breaches by what a wish for balance says of fitted sockets. */
    static Set<String> balance(MemoryWish wish, List<MemoryModule[][]> sockets) {
        Set<Integer> capacities = new HashSet<>();
        for (MemoryModule[][] socket : sockets) {
            for (MemoryModule[] channel : socket) {
                capacities.add(SlotView.gb(channel));
            }
        }
        return wish.balanced() && capacities.size() > 1 ? Set.of("balanced-channels") : Set.of();
    }

    /** Breaches by a given number of part numbers of modules in all machines. */
    static Set<String> partNumbers(MemoryWish wish, long distinct) {
        return wish.onePart() && distinct > 1 ? Set.of("one-module-part") : Set.of();
    }

    /** Whether the platform offers the mode. */
    static Set<String> mode(MemorySupport memory, MemoryMode mode) {
        boolean offered = mode == MemoryMode.INDEPENDENT
                || mode == MemoryMode.MIRRORED && memory.modes().mirroredFraction().isPresent() && memory.channels() % 2 == 0
                || mode == MemoryMode.RANK_SPARING && memory.modes().rankSparing();
        return offered ? Set.of() : Set.of("memory-mode");
    }

    static Set<String> addressed(Processor processor, int socketGb) {
        return processor.maxMemoryGb().isPresent() && socketGb > processor.maxMemoryGb().getAsInt()
                ? Set.of("processor-memory-limit") : Set.of();
    }

    /** Breaches by a load; {@code supply} null: none is fitted. */
    static Set<String> power(Platform platform, Supply supply, Limits limits, double loadW) {
        Set<String> broken = new HashSet<>();
        if (supply == null) {
            if (!platform.power().supplies().isEmpty()) {
                broken.add("power-supply");
            }
        } else {
            boolean low = limits.mainsV().isPresent() && limits.mainsV().getAsDouble() < 180;
            double one = low ? supply.lowLineWatts() : supply.watts();
            if (one <= 0 || loadW > (supply.count() - supply.redundant()) * one + 1e-7) {
                broken.add("power-supply");
            }
        }
        if (platform.power().budgetW().isPresent() && loadW > platform.power().budgetW().getAsDouble() + 1e-7) {
            broken.add("power-budget");
        }
        if (limits.powerW().isPresent() && loadW > limits.powerW().getAsDouble() + 1e-7) {
            broken.add("power-limit");
        }
        return broken;
    }

    /** The identifiers of the rules that an enclosure and its sleds break. */
    static SortedSet<String> enclosure(FilledEnclosure filled, Limits limits, Map<String, Double> factors) {
        SortedSet<String> broken = new TreeSet<>();
        Enclosure enclosure = filled.enclosure();
        int bays = enclosure.bays();
        double watts = enclosure.baseW();
        for (Build sled : filled.sleds()) {
            bays--;
            watts += NaiveFigures.of(sled, Request.named("sled"), factors).loadW();
            if (bays < 0 || !enclosure.takes().contains(sled.platform().sku())) {
                broken.add("enclosure-bays");
            }
        }
        Supply supply = filled.supply();
        double one = limits.mainsV().isPresent() && limits.mainsV().getAsDouble() < 180 ? supply.lowLineWatts() : supply.watts();
        double delivered = 0;
        for (int running = supply.redundant(); running < supply.count(); running++) {
            delivered += one;
        }
        if (one == 0 || watts - 1e-7 > delivered || enclosure.budgetW() != 0 && watts - 1e-7 > enclosure.budgetW()) {
            broken.add("enclosure-power");
        }
        return broken;
    }

    /** Targets that the figures of one machine miss. */
    static Set<String> targets(Requirements require, NaiveFigures figures) {
        Set<String> broken = new HashSet<>();
        target(broken, "cores", figures.cores(), require.cores());
        target(broken, "base-clock", figures.baseGhz(), require.baseGhz());
        target(broken, "all-core-clock", figures.allCoreGhz(), require.allCoreGhz());
        target(broken, "memory-capacity", figures.usableGb(), require.memoryGb());
        target(broken, "bandwidth", figures.bandwidthGbs(), require.bandwidthGbs());
        target(broken, "throughput", figures.throughput(), require.throughput());
        target(broken, "work", figures.work(), require.work().least());
        target(broken, "memory-per-core", figures.gbPerCore(), require.gbPerCore());
        target(broken, "bandwidth-per-core", figures.gbsPerCore(), require.gbsPerCore());
        target(broken, "spare-slots", figures.spareSlots(), require.spareSlots());
        if (require.processors() != 0 && require.processors() != figures.processors()) {
            broken.add("processor-count");
        }
        return broken;
    }

    private static void target(Set<String> broken, String id, double figure, double least) {
        if (NaiveFigures.millionths(figure) < NaiveFigures.millionths(least)) {
            broken.add(id);
        }
    }

    private static Set<String> choice(Request request, Build build) {
        Set<String> skus = new HashSet<>(build.partCounts().keySet());
        build.fitout().housed().ifPresent(housed -> skus.addAll(Set.of(housed.enclosure().sku(), housed.supply().sku())));
        Set<String> broken = new HashSet<>();
        if (!request.platforms().isEmpty() && !request.platforms().contains(build.platform().sku())) {
            broken.add("asked-platform");
        }
        if (request.forbid().stream().anyMatch(skus::contains)) {
            broken.add("forbidden-part");
        }
        if (!skus.containsAll(request.use())) {
            broken.add("required-part");
        }
        return broken;
    }
}
