package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import sledwright.domain.Availability;
import sledwright.domain.Board;
import sledwright.domain.Condition;
import sledwright.domain.CoolingKit;
import sledwright.domain.Expansion;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModes;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleMix;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Power;
import sledwright.domain.CoolingAndPower;
import sledwright.domain.Processor;
import sledwright.domain.ProcessorSupport;
import sledwright.domain.Slot;
import sledwright.domain.SpeedEntry;
import sledwright.domain.Supply;
import sledwright.domain.Thermal;

/** Random parts and stock, drawn so that every rule gets its chance to matter and builds still exist. */
final class RandomParts {

    /** Part numbers of one kind in a case that is listed in full. */
    private static final int MOST_ALIKE = 3;

    private final SplittableRandom random;
    /** For what is added to the cases as time goes by, so that the rest of each stays what it was. */
    private final SplittableRandom added;
    private final boolean large;
    /** Several machines: fewer parts and slots, since every way of dealing alike parts is tried. */
    private final boolean several;
    private final ModuleType mainType;
    /** Prices are whole multiples of this: coarse ones make ties. */
    private final long coin;
    /** Whether the first part of each kind suits the others and is on sale. */
    private final boolean mild;
    private final List<MemoryModule> modules = new ArrayList<>();
    private final List<Processor> processors = new ArrayList<>();
    private final List<Platform> platforms = new ArrayList<>();
    private final Map<String, List<Lot>> lots = new LinkedHashMap<>();

    RandomParts(SplittableRandom random, SplittableRandom added, RandomCase.Size size, int machines) {
        this.random = random;
        this.added = added;
        large = size == RandomCase.Size.SOLVABLE;
        several = machines > 1;
        mainType = chance(0.7) ? ModuleType.RDIMM : pick(ModuleType.LRDIMM, ModuleType.LRDIMM, ModuleType.UDIMM, ModuleType.THREE_DS);
        mild = chance(0.95);
        coin = chance(0.25) ? 500 : 1;
        makeModules();
        makeProcessors();
        int count = chance(0.5) ? 1 : between(2, 3);
        for (int i = 1; i <= count; i++) {
            platforms.add(platform(i));
        }
    }

    Labour labour() {
        return chance(0.3) ? new Labour(0, 0) : new Labour(between(0, 20) * 100, between(0, 5) * 50);
    }

    Map<String, Double> factors() {
        return chance(0.1) ? Map.of("Kestrel 1", 1.5) : Map.of("Kestrel 1", 1.5, "Kestrel 2", 2.0);
    }

    List<Platform> platforms() {
        return platforms;
    }

    List<Processor> processors() {
        return processors;
    }

    List<MemoryModule> modules() {
        return modules;
    }

    Map<String, List<Lot>> lots() {
        return lots;
    }

    private void makeModules() {
        int count = large ? between(10, 20) : between(2, several ? 5 : 8);
        int kinds = large ? between(4, 9) : between(1, several ? 3 : 4);
        List<MemoryModule.Kind> drawn = new ArrayList<>();
        for (int i = 0; i < kinds; i++) {
            ModuleType type = mild && i == 0 || chance(0.85) ? mainType : pick(ModuleType.values());
            int ranks = type == ModuleType.LRDIMM || type == ModuleType.THREE_DS ? pick(2, 4, 4, 8) : pick(1, 1, 2, 2, 4);
            drawn.add(new MemoryModule.Kind(type, pick(4, 8, 8, 16, 16, 32), ranks, pick(4, 4, 8)));
        }
        boolean unequalWatts = chance(0.5);
        for (int i = 1; i <= count; i++) {
            MemoryModule.Kind kind = drawn.get(i == 1 ? 0 : random.nextInt(kinds));
            if (!large && modules.stream().filter(known -> known.kind().equals(kind)).count() >= MOST_ALIKE) {
                continue;
            }
            // Alike modules may show the controller different rank counts: the rules leave logical ranks out of "alike".
            int logical = kind.type() == ModuleType.LRDIMM ? Math.max(1, kind.ranks() / (chance(0.6) ? 4 : 2))
                    : kind.type() == ModuleType.THREE_DS && chance(0.6) ? Math.max(1, kind.ranks() / 2) : kind.ranks();
            double watts = unequalWatts ? between(4, 14) / 2.0 : 2 + kind.ranks() * 0.75;
            MemoryModule module = new MemoryModule("M" + i, kind.toString(), mild && i == 1 || chance(0.95) ? "DDR4" : "DDR3", kind,
                    logical, new MemoryModule.Rating(pick(1866, 2133, 2133, 2400, 2400, 2666), 1.2, watts));
            modules.add(module);
            long price = 300 + kind.capacityGb() * between(40, 110) + (long) (module.speedMts() * random.nextDouble() / 4);
            offer(module.sku(), price, large ? 24 : several ? 9 : 10, stocked(i));
        }
    }

    private void makeProcessors() {
        int count = large ? between(2, 5) : between(1, 5);
        for (int i = 1; i <= count; i++) {
            boolean easy = mild && i == 1;
            int cores = pick(2, 4, 6, 8, 10, 12);
            double base = between(14, 30) / 10.0;
            double allCore = base + between(0, 6) / 10.0;
            OptionalDouble throughput = chance(0.3) ? OptionalDouble.empty() : OptionalDouble.of(Math.round(cores * allCore * between(12, 22)) / 10.0);
            processors.add(new Processor("C" + i, "random processor",
                    new Processor.Fit(easy || chance(0.94) ? "LK3" : "LK4", easy ? "Kestrel 2" : pick("Kestrel 1", "Kestrel 2", "Kestrel 2")),
                    new Processor.CoreFigures(cores, cores * 2, base, allCore, easy ? pick(65, 85, 105) : pick(65, 85, 85, 105, 120, 150)),
                    new Processor.MemoryReach(pick(1866, 2133, 2400, 2400, 2666), chance(0.65) ? OptionalInt.empty() : OptionalInt.of(pick(16, 32, 48, 64, 128))),
                    easy || chance(0.75) ? 2 : 1, throughput));
            offer("C" + i, cores * between(500, 1500), large ? 3 : 8, stocked(i));
        }
    }

    private Platform platform(int number) {
        int channels = large ? between(4, 6) : between(1, several ? 3 : 4);
        int slots = large ? between(2, 3) : channels * (several ? 2 : 1) >= 4 ? between(1, 2) : between(1, 3);
        List<Integer> counts = pick(List.of(1), List.of(1), List.of(2), List.of(1, 2), List.of(1, 2));
        int sockets = counts.get(counts.size() - 1);
        Board board = new Board(sockets, channels, slots, "outermost", chance(0.8) ? List.of() : ownNames(sockets * channels * slots));
        Set<String> generations = pick(Set.of("Kestrel 1", "Kestrel 2"), Set.of("Kestrel 1", "Kestrel 2"), Set.of("Kestrel 2"));
        ProcessorSupport support = new ProcessorSupport("LK3", generations, counts, pick(105, 150, 150, 150, 165), Collections.max(counts));
        String sku = "P" + number;
        offer(sku, between(5000, 15000), 5, stocked(number));
        return new Platform(sku, "random platform", support, memory(channels, slots), board,
                new CoolingAndPower(kits(number, board), thermal(), power(number)), Expansion.NONE);
    }

    private static List<String> ownNames(int size) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            names.add("DIMM " + (size - i));
        }
        return names;
    }

    private MemorySupport memory(int channels, int slots) {
        Map<ModuleType, Integer> rankLimits = new HashMap<>();
        List<SpeedEntry> speeds = new ArrayList<>();
        for (ModuleType type : ModuleType.values()) {
            if (type == mainType || chance(0.4)) {
                if (chance(0.7)) {
                    rankLimits.put(type, pick(2, 3, 4, 6, 8, 8));
                }
                if (chance(0.4)) {
                    speeds.add(new SpeedEntry(type, Set.of(), speeds(slots)));
                } else {
                    speeds.add(new SpeedEntry(type, Set.of(1, 2), speeds(slots)));
                    if (chance(0.8)) {
                        speeds.add(new SpeedEntry(type, chance(0.5) ? Set.of(4, 8) : Set.of(), speeds(slots)));
                    }
                    if (chance(0.2)) {
                        speeds.add(0, new SpeedEntry(type, Set.of(), speeds(slots)));
                    }
                }
            }
        }
        Set<Integer> counts = new HashSet<>();
        if (chance(0.2)) {
            for (int i = 0; i < 4; i++) {
                counts.add(between(1, channels * slots));
            }
        }
        OptionalDouble mirrored = chance(0.6) ? OptionalDouble.of(chance(0.7) ? 0.5 : 0.45) : OptionalDouble.empty();
        return new MemorySupport("DDR4", channels, slots, rankLimits, speeds, new ModuleMix(between(1, 3), chance(0.6), counts),
                new MemoryModes(mirrored, chance(0.6)));
    }

    /** Falling speeds, rarely rising, by modules on the channel; rarely too short for the channel's slots. */
    private List<Integer> speeds(int slots) {
        List<Integer> speeds = new ArrayList<>();
        int mts = pick(2133, 2400, 2400, 2666);
        int length = chance(0.75) ? slots : between(1, slots);
        for (int i = 0; i < length; i++) {
            speeds.add(mts);
            mts = chance(0.1) ? mts + 133 : chance(0.4) ? mts : mts - pick(133, 267, 533);
        }
        return speeds;
    }

    private List<CoolingKit> kits(int number, Board board) {
        List<CoolingKit> kits = new ArrayList<>();
        int count = between(1, 3);
        for (int i = 1; i <= count; i++) {
            // A kit may serve several platforms and cover other slots on each.
            String sku = chance(0.2) ? "H0" : "H" + number + i;
            if (kits.stream().noneMatch(kit -> kit.sku().equals(sku))) {
                kits.add(new CoolingKit(sku, "random heat sink", i == 1 ? pick(105, 120, 150, 150) : pick(85, 120, 150, 150), covers(board)));
                if (!lots.containsKey(sku)) {
                    offer(sku, between(500, 3000), 8, between(1, 2));
                }
            }
        }
        return kits;
    }

    private List<String> covers(Board board) {
        if (chance(0.5)) {
            return List.of();
        }
        List<String> covers = new ArrayList<>();
        int count = between(1, 2);
        for (int i = 0; i < count; i++) {
            int channel = chance(0.4) ? board.channels() - 1 : random.nextInt(board.channels());
            int position = chance(0.7) ? board.slotsPerChannel() - 1 : random.nextInt(board.slotsPerChannel());
            boolean oneSocket = chance(0.3);
            for (int socket = oneSocket ? random.nextInt(board.sockets()) : 0; socket < board.sockets(); socket++) {
                Slot slot = board.slot(socket, channel, position);
                if (!covers.contains(slot.name())) {
                    covers.add(slot.name());
                }
                if (oneSocket) {
                    break;
                }
            }
        }
        return covers;
    }

    private Thermal thermal() {
        List<Thermal.InletRow> rows = new ArrayList<>();
        if (chance(0.5)) {
            if (chance(0.5)) {
                rows.add(new Thermal.InletRow(85, 35, Set.of()));
            }
            if (chance(0.4)) {
                rows.add(new Thermal.InletRow(105, 33, Set.of(ModuleType.LRDIMM, ModuleType.THREE_DS)));
            }
            rows.add(new Thermal.InletRow(pick(120, 150, 150), chance(0.2) ? 36 : 30, Set.of()));
            ownRows(rows);
        }
        return new Thermal(pick(0, 900, 950), pick(125, 175, 300), rows);
    }

    /** Rows of a type's own, beside the last row for all or instead of it. */
    private void ownRows(List<Thermal.InletRow> rows) {
        Thermal.InletRow last = rows.get(rows.size() - 1);
        if (added.nextDouble() < 0.1) {
            rows.set(rows.size() - 1, new Thermal.InletRow(last.maxTdpW(), last.maxInletC(), Set.of(mainType)));
        } else if (added.nextDouble() < 0.3) {
            rows.add(new Thermal.InletRow(last.maxTdpW(), 26, Set.of(mainType)));
        }
    }

    private Power power(int number) {
        List<Supply> supplies = new ArrayList<>();
        int count = chance(0.4) ? 0 : between(1, 3);
        for (int i = 1; i <= count; i++) {
            int units = between(1, 2);
            int redundant = units == 2 && chance(0.6) ? 1 : 0;
            // The same supply may be offered once or twice: one sku, two options.
            String sku = i == 2 && chance(0.4) ? "S" + number + "1" : "S" + number + i;
            double watts = pick(180, 230, 350, 500, 500, 750);
            NavigableMap<Integer, Double> efficiency = new TreeMap<>();
            if (chance(0.8)) {
                efficiency.putAll(chance(0.5) ? Map.of(20, 87.0, 50, 90.0, 100, 87.0) : Map.of(10, 90.0, 20, 92.0, 50, 94.0, 100, 90.0));
            }
            if (supplies.stream().noneMatch(other -> other.sku().equals(sku) && other.count() == units)) {
                supplies.add(new Supply(sku, "random supply", units, redundant, watts, chance(0.7) ? watts * 0.75 : 0, efficiency));
                if (!lots.containsKey(sku)) {
                    offer(sku, between(1000, 4000), 8, between(1, 3));
                }
            }
        }
        return new Power(between(40, 90), chance(0.8) ? OptionalDouble.empty() : OptionalDouble.of(between(15, 45) * 10), supplies);
    }

    /** How many lots the part of that number has. */
    private int stocked(int number) {
        return !(mild && number == 1) && chance(0.05) ? 0 : between(1, 3);
    }

    private void offer(String sku, long price, int most, int count) {
        List<Lot> list = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            long unit = Math.max(1, price * between(70, 130) / 100);
            int available = chance(0.03) ? 0 : between(chance(0.5) ? 1 : most / 2, most);
            list.add(new Lot(sku, "L" + i, "random supplier", pick(Condition.NEW, Condition.REFURBISHED, Condition.USED, Condition.USED),
                    new Availability(available, pick(0, 0, 2, 5)), breaks(unit, available), false));
        }
        lots.put(sku, list);
    }

    private List<Lot.PriceBreak> breaks(long unit, int available) {
        List<Lot.PriceBreak> breaks = new ArrayList<>();
        int from = chance(0.85) ? 1 : between(2, 3);
        int count = chance(0.5) ? 1 : between(2, 3);
        long price = unit;
        for (int i = 0; i < count; i++) {
            long coins = Math.max(1, Math.round((double) price / coin));
            breaks.add(new Lot.PriceBreak(from, coins * coin, OptionalLong.empty()));
            from += between(1, Math.max(1, available / 2));
            // Now and then more units cost more each.
            price = price * (chance(0.2) ? between(101, 130) : between(70, 99)) / 100;
        }
        return breaks;
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private int between(int least, int most) {
        return random.nextInt(least, most + 1);
    }

    @SafeVarargs
    private <T> T pick(T... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
