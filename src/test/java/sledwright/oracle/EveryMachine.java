package sledwright.oracle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Slot;
import sledwright.domain.Supply;
import sledwright.domain.Worth;

/** Every valid machine of a request, by trying every part number in every slot; {@link Reading} judges. Of those that take the same parts the one of most worth. */
final class EveryMachine {

    /** The solver would choke on more. */
    static final int MOST = 800;

    /**
     * A valid machine.
     *
     * @param beside     labour and licence, minor units
     * @param worth      of what it has beyond the required figures, minor units
     * @param microwatts its load
     * @param sameness   what the machines of a uniform line share
     */
    record Machine(Build build, SortedMap<String, Integer> parts, long beside, double worth, long microwatts, int moduleParts, List<Object> sameness) {
    }

    /** Signals that a case is too large to list. */
    static final class TooManyException extends RuntimeException {
    }

    /** What a channel, or several together, hold: units of each part, and one way to seat them. */
    private record Seated(List<Integer> units, SortedMap<Slot, MemoryModule> slots) {
    }

    private record Population(List<Object> layout, SortedMap<Slot, MemoryModule> slots) {
    }

    private final Catalog catalog;
    private final Request request;
    private final boolean uniform;
    private final Map<String, Integer> stock;
    private final Map<List<Object>, Machine> found = new LinkedHashMap<>();
    private final List<MemoryModule> parts = new ArrayList<>();
    private final List<List<MemoryModule>> kinds = new ArrayList<>();

    private EveryMachine(Catalog catalog, Request request, boolean uniform, Map<String, Integer> stock) {
        this.catalog = catalog;
        this.request = request;
        this.uniform = uniform;
        this.stock = stock;
        for (MemoryModule module : catalog.modules()) {
            if (stock.getOrDefault(module.sku(), 0) > 0 && !request.forbid().contains(module.sku())) {
                parts.add(module);
            }
        }
        for (MemoryModule module : parts) {
            Optional<List<MemoryModule>> alike = kinds.stream()
                    .filter(kind -> SlotView.alike(kind.get(0), module) && kind.get(0).generation().equals(module.generation())).findFirst();
            if (alike.isPresent()) {
                alike.get().add(module);
            } else {
                kinds.add(new ArrayList<>(List.of(module)));
            }
        }
    }

    /**
     * @param stock units of each part that the order could draw for the request
     * @throws TooManyException when there are more than the solver can choose from
     */
    static List<Machine> of(Catalog catalog, Request request, boolean uniform, Map<String, Integer> stock) {
        EveryMachine all = new EveryMachine(catalog, request, uniform, stock);
        for (Platform platform : catalog.platforms()) {
            boolean asked = request.platforms().isEmpty() || request.platforms().contains(platform.sku());
            if (asked && Reading.mode(platform.memory(), request.require().mode()).isEmpty() && all.has(platform.sku(), 1)) {
                for (CoolingKit kit : platform.cooling()) {
                    for (int fitted : platform.processors().counts()) {
                        all.frames(platform, kit, fitted);
                    }
                }
            }
        }
        return List.copyOf(all.found.values());
    }

    private boolean has(String sku, int units) {
        return stock.getOrDefault(sku, 0) >= units && !request.forbid().contains(sku);
    }

    private void frames(Platform platform, CoolingKit kit, int fitted) {
        if (!has(kit.sku(), fitted)) {
            return;
        }
        List<EveryFitout.Fit> fits = EveryFitout.ofOneMachine(platform, fitted, catalog, request, stock);
        if (fits.isEmpty()) {
            return;
        }
        List<Population> populations = null;
        for (Processor processor : catalog.processors()) {
            if (Reading.processor(platform, processor, fitted).isEmpty() && Reading.cooling(kit, processor).isEmpty() && has(processor.sku(), fitted)) {
                populations = populations == null ? populations(platform, kit, fitted) : populations;
                if (platform.power().supplies().isEmpty()) {
                    machines(platform, kit, fitted, processor, Optional.empty(), populations, fits);
                }
                for (Supply supply : platform.power().supplies()) {
                    if (has(supply.sku(), supply.count())) {
                        machines(platform, kit, fitted, processor, Optional.of(supply), populations, fits);
                    }
                }
            }
        }
    }

    private void machines(Platform platform, CoolingKit kit, int fitted, Processor processor, Optional<Supply> supply, List<Population> populations,
                          List<EveryFitout.Fit> fits) {
        for (Population population : populations) {
            Build bare = Build.of(platform, processor, fitted, kit, supply, population.slots);
            for (EveryFitout.Fit fit : fits) {
                List<Object> sameness = uniform ? List.of(platform.sku(), fitted, processor.sku(), kit.sku(), supply, population.layout, fit.layout()) : List.of();
                add(bare.with(fit.fitout()), sameness);
            }
        }
    }

    private void add(Build build, List<Object> sameness) {
        SortedMap<String, Integer> units = units(build);
        if (units.entrySet().stream().allMatch(part -> stock.getOrDefault(part.getKey(), 0) >= part.getValue())
                && Reading.machine(build, request, catalog.throughputFactors()).isEmpty()) {
            Machine machine = machine(catalog, request, build, sameness);
            found.merge(List.of(sameness, units), machine, (one, other) -> one.worth >= other.worth ? one : other);
            if (found.size() > MOST) {
                throw new TooManyException();
            }
        }
    }

    /** A build as the solver sees it. */
    static Machine machine(Catalog catalog, Request request, Build build, List<Object> sameness) {
        NaiveFigures figures = NaiveFigures.of(build, request, catalog.throughputFactors());
        long beside = catalog.labour().perMachine() + catalog.labour().perModule() * build.modules().size()
                + catalog.labour().perDrive() * build.fitout().drives().size() + catalog.labour().perCard() * build.fitout().cards().size()
                + request.licence().perCore() * figures.cores() + request.licence().perProcessor() * figures.processors();
        int moduleParts = (int) build.modules().values().stream().map(MemoryModule::sku).distinct().count();
        return new Machine(build, units(build), beside, worth(request, figures), NaiveFigures.millionths(figures.loadW()), moduleParts, sameness);
    }

    /** Units of every part, counted again. */
    static SortedMap<String, Integer> units(Build build) {
        SortedMap<String, Integer> units = new TreeMap<>();
        units.merge(build.platform().sku(), 1, Integer::sum);
        for (Processor processor : build.processors()) {
            units.merge(processor.sku(), 1, Integer::sum);
            units.merge(build.cooling().sku(), 1, Integer::sum);
        }
        build.supply().ifPresent(supply -> units.merge(supply.sku(), supply.count(), Integer::sum));
        build.modules().values().forEach(module -> units.merge(module.sku(), 1, Integer::sum));
        build.fitout().drives().forEach(drive -> units.merge(drive.sku(), 1, Integer::sum));
        build.fitout().cards().values().forEach(card -> units.merge(card.sku(), 1, Integer::sum));
        build.fitout().extras().forEach((extra, count) -> units.merge(extra.sku(), count, Integer::sum));
        return units;
    }

    /** Minor units that what a machine has beyond the required figures is worth; 0 where the price alone counts. */
    static double worth(Request request, NaiveFigures figures) {
        if (request.objective() != Objective.BEST_VALUE) {
            return 0;
        }
        Worth worth = request.worth();
        Requirements least = request.require();
        return worth.core() * (figures.cores() - least.cores()) + worth.gb() * (figures.usableGb() - least.memoryGb())
                + worth.gbs() * (figures.bandwidthGbs() - least.bandwidthGbs()) + worth.throughput() * (figures.throughput() - least.throughput());
    }

    private List<Population> populations(Platform platform, CoolingKit kit, int fitted) {
        boolean[][][] covered = SlotView.covered(platform, kit);
        List<List<int[]>> choices = new ArrayList<>();
        for (int channel = 0; channel < platform.memory().channels(); channel++) {
            List<int[]> fits = new ArrayList<>();
            contents(platform, covered, fitted, channel, new int[platform.memory().slotsPerChannel()], 0, fits);
            choices.add(fits);
        }
        Map<List<Object>, int[][]> layouts = new LinkedHashMap<>();
        layouts(platform, covered, fitted, choices, 0, new int[choices.size()][], layouts);
        Map<List<Object>, Population> populations = new LinkedHashMap<>();
        Map<List<Object>, Collection<Seated>> known = new HashMap<>();
        layouts.forEach((key, layout) -> {
            for (Seated seated : seatings(platform, covered, fitted, layout, known)) {
                populations.putIfAbsent(List.of(key, seated.units), new Population(key, seated.slots));
            }
        });
        return List.copyOf(populations.values());
    }

    private void contents(Platform platform, boolean[][][] covered, int fitted, int channel, int[] kindOf, int from, List<int[]> fits) {
        if (from < kindOf.length) {
            for (int kind = -1; kind < kinds.size(); kind++) {
                kindOf[from] = kind;
                contents(platform, covered, fitted, channel, kindOf, from + 1, fits);
            }
            return;
        }
        // The fewest ranks that any part of the kind shows; which part stands where is looked at when parts are seated.
        int[] ranks = Arrays.stream(kindOf).map(kind -> kind < 0 ? 0
                : kinds.get(kind).stream().mapToInt(MemoryModule::logicalRanks).min().orElseThrow()).toArray();
        for (int socket = 0; socket < fitted; socket++) {
            if (!Reading.channel(platform.memory(), request.require().mode(), covered[socket][channel], ofKinds(kindOf), ranks).isEmpty()) {
                return;
            }
        }
        fits.add(kindOf.clone());
    }

    private MemoryModule[] ofKinds(int[] kindOf) {
        return Arrays.stream(kindOf).mapToObj(kind -> kind < 0 ? null : kinds.get(kind).get(0)).toArray(MemoryModule[]::new);
    }

    /** Every filling of a socket by kinds, one of those that neither figures nor rules nor stock can tell apart. */
    private void layouts(Platform platform, boolean[][][] covered, int fitted, List<List<int[]>> choices, int channel, int[][] kindOf,
                         Map<List<Object>, int[][]> layouts) {
        MemoryModule[][] socket = Arrays.stream(kindOf, 0, channel).map(this::ofKinds).toArray(MemoryModule[][]::new);
        if (!Reading.mix(platform.memory(), SlotView.modules(socket)).isEmpty()) {
            return;
        }
        if (channel < kindOf.length) {
            for (int[] choice : choices.get(channel)) {
                kindOf[channel] = choice;
                layouts(platform, covered, fitted, choices, channel + 1, kindOf, layouts);
            }
            return;
        }
        MemoryMode mode = request.require().mode();
        for (int s = 0; s < fitted; s++) {
            if (!Reading.acrossChannels(platform.memory(), mode, covered[s], socket).isEmpty()) {
                return;
            }
        }
        int[] units = new int[kinds.size()];
        Arrays.stream(kindOf).flatMapToInt(Arrays::stream).filter(kind -> kind >= 0).forEach(kind -> units[kind]++);
        int[] channelsGb = NaiveFigures.capacities(socket);
        Arrays.sort(channelsGb);
        boolean ranksDiffer = kinds.stream().anyMatch(kind -> kind.stream().mapToInt(MemoryModule::logicalRanks).distinct().count() > 1);
        List<Object> key = List.of(boxed(units), boxed(channelsGb), NaiveFigures.tableMts(platform.memory(), socket),
                NaiveFigures.usableGb(platform.memory(), mode, socket), ranksDiffer ? Arrays.stream(kindOf).map(EveryMachine::boxed).toList() : List.of());
        layouts.putIfAbsent(key, Arrays.stream(kindOf).map(int[]::clone).toArray(int[][]::new));
    }

    private static List<Integer> boxed(int[] numbers) {
        return Arrays.stream(numbers).boxed().toList();
    }

    /** All that part numbers can do with a layout in all fitted sockets, one seating for each number of units. */
    private Collection<Seated> seatings(Platform platform, boolean[][][] covered, int fitted, int[][] layout, Map<List<Object>, Collection<Seated>> known) {
        Collection<Seated> all = List.of(new Seated(boxed(new int[parts.size()]), new TreeMap<>()));
        for (int s = 0; s < fitted; s++) {
            for (int c = 0; c < layout.length; c++) {
                int socket = s;
                int channel = c;
                Collection<Seated> here = known.computeIfAbsent(List.of(s, c, boxed(layout[c])), key -> {
                    Map<List<Integer>, Seated> channels = new LinkedHashMap<>();
                    seat(platform, covered[socket][channel], socket, channel, layout[channel], 0, new MemoryModule[layout[channel].length], channels);
                    return channels.values();
                });
                Map<List<Integer>, Seated> joined = new LinkedHashMap<>();
                for (Seated one : all) {
                    for (Seated other : here) {
                        List<Integer> units = new ArrayList<>(one.units);
                        boolean enough = true;
                        for (int part = 0; part < units.size(); part++) {
                            units.set(part, units.get(part) + other.units.get(part));
                            enough &= units.get(part) <= stock.getOrDefault(parts.get(part).sku(), 0);
                        }
                        if (enough) {
                            joined.computeIfAbsent(units, key -> {
                                SortedMap<Slot, MemoryModule> slots = new TreeMap<>(one.slots);
                                slots.putAll(other.slots);
                                return new Seated(units, slots);
                            });
                        }
                    }
                }
                all = joined.values();
            }
        }
        return all;
    }

    private void seat(Platform platform, boolean[] covered, int socket, int channel, int[] kindOf, int from, MemoryModule[] slots,
                      Map<List<Integer>, Seated> seated) {
        if (from < kindOf.length) {
            if (kindOf[from] < 0) {
                seat(platform, covered, socket, channel, kindOf, from + 1, slots, seated);
                return;
            }
            for (MemoryModule module : kinds.get(kindOf[from])) {
                slots[from] = module;
                seat(platform, covered, socket, channel, kindOf, from + 1, slots, seated);
            }
            return;
        }
        int[] ranks = Arrays.stream(slots).mapToInt(module -> module == null ? 0 : module.logicalRanks()).toArray();
        if (Reading.channel(platform.memory(), request.require().mode(), covered, slots, ranks).isEmpty()) {
            int[] units = new int[parts.size()];
            SortedMap<Slot, MemoryModule> placed = new TreeMap<>();
            for (int i = 0; i < slots.length; i++) {
                if (slots[i] != null) {
                    units[parts.indexOf(slots[i])]++;
                    placed.put(platform.board().slot(socket, channel, i), slots[i]);
                }
            }
            seated.putIfAbsent(boxed(units), new Seated(boxed(units), placed));
        }
    }
}
