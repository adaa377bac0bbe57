package sledwright.oracle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToLongBiFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.Platform;
import sledwright.domain.Request;

/**
 * Every population of a platform under a kit. One socket is filled slot by slot with kinds of alike modules, and the others
 * like it; then every choice of part numbers is made.
 */
final class Populations {

    /** A valid population of one socket by kinds, one for each that the figures can tell apart. */
    private record Layout(int[] units, int[] channelsGb, int tableMts, double usableGb, List<int[]> channels) {
    }

    private final Platform platform;
    private final int fitted;
    private final Request request;
    private final Set<String> ignored;
    private final Set<String> held;
    private final ToLongBiFunction<String, Integer> price;
    private final boolean[][][] covered;
    private final Set<String> wanted = new HashSet<>();
    private final List<List<MemoryModule>> kinds = new ArrayList<>();
    private final List<MemoryModule> parts = new ArrayList<>();
    private final Map<List<Object>, Layout> layouts = new LinkedHashMap<>();
    private final Map<List<Object>, Population> found = new LinkedHashMap<>();

    private Populations(Platform platform, CoolingKit kit, int fitted, Request request, Set<String> ignored, Set<String> held,
                        ToLongBiFunction<String, Integer> price) {
        this.platform = platform;
        this.fitted = fitted;
        this.request = request;
        this.ignored = ignored;
        this.held = held;
        this.price = price;
        covered = SlotView.covered(platform, kit);
    }

    /** @param held parts, of which those that are modules must be in some machine */
    static List<Population> of(Platform platform, CoolingKit kit, int fitted, Catalog catalog, Request request, Set<String> ignored,
                               Set<String> held, ToLongBiFunction<String, Integer> price) {
        Set<String> modules = catalog.modules().stream().map(MemoryModule::sku).filter(held::contains).collect(Collectors.toSet());
        Populations all = new Populations(platform, kit, fitted, request, ignored, modules, price);
        all.sort(catalog);
        all.fill(all.channelChoices(), 0, new int[platform.memory().channels()][]);
        int spare = (int) platform.board().slots().stream().filter(slot -> slot.socket() < fitted && !kit.covers().contains(slot.name())).count();
        all.layouts.values().forEach(layout -> all.choose(layout, 0, 0, new int[all.parts.size()], 0, spare));
        return List.copyOf(all.found.values());
    }

    /** Puts the parts into kinds. */
    private void sort(Catalog catalog) {
        for (MemoryModule module : catalog.modules()) {
            boolean wrong = !module.generation().equals(platform.memory().generation()) && !ignored.contains("memory-generation")
                    || request.forbid().contains(module.sku()) && !ignored.contains("forbidden-part");
            if (!wrong && most(module) > 0) {
                List<MemoryModule> kind = kinds.stream().filter(known -> SlotView.alike(known.get(0), module)).findFirst().orElseGet(() -> {
                    kinds.add(new ArrayList<>());
                    return kinds.get(kinds.size() - 1);
                });
                kind.add(module);
            }
        }
        kinds.forEach(parts::addAll);
        if (!ignored.contains("required-part")) {
            catalog.modules().stream().map(MemoryModule::sku).filter(request.use()::contains).forEach(wanted::add);
        }
    }

    private int most(MemoryModule module) {
        int most = fitted * request.machines() * platform.memory().channels() * platform.memory().slotsPerChannel();
        while (most > 0 && price.applyAsLong(module.sku(), most) >= ExhaustiveDraw.NONE) {
            most--;
        }
        return most;
    }

    /** For each channel every content that breaks no rule of its own: the kind of each slot from its number up, -1 for none. */
    private List<List<int[]>> channelChoices() {
        List<List<int[]>> choices = new ArrayList<>();
        for (int c = 0; c < platform.memory().channels(); c++) {
            List<int[]> fits = new ArrayList<>();
            contents(c, new int[platform.memory().slotsPerChannel()], 0, fits);
            choices.add(fits);
        }
        return choices;
    }

    private void contents(int channel, int[] kindOf, int from, List<int[]> fits) {
        if (from < kindOf.length) {
            for (int kind = -1; kind < kinds.size(); kind++) {
                kindOf[from] = kind;
                contents(channel, kindOf, from + 1, fits);
            }
            return;
        }
        // The fewest ranks that any part of the kind shows; which part stands where is looked at when parts are chosen.
        int[] ranks = Arrays.stream(kindOf).map(kind -> kind < 0 ? 0
                : kinds.get(kind).stream().mapToInt(MemoryModule::logicalRanks).min().orElseThrow()).toArray();
        for (int socket = 0; socket < fitted; socket++) {
            if (!ignored.containsAll(Reading.channel(platform.memory(), request.require().mode(), covered[socket][channel], slots(kindOf), ranks))) {
                return;
            }
        }
        fits.add(kindOf.clone());
    }

    private MemoryModule[] slots(int[] kindOf) {
        return Arrays.stream(kindOf).mapToObj(kind -> kind < 0 ? null : kinds.get(kind).get(0)).toArray(MemoryModule[]::new);
    }

    private void fill(List<List<int[]>> choices, int channel, int[][] kindOf) {
        if (channel < kindOf.length) {
            for (int[] choice : choices.get(channel)) {
                kindOf[channel] = choice;
                MemoryModule[][] soFar = Arrays.stream(kindOf, 0, channel + 1).map(this::slots).toArray(MemoryModule[][]::new);
                if (ignored.containsAll(Reading.mix(platform.memory(), SlotView.modules(soFar)))) {
                    fill(choices, channel + 1, kindOf);
                }
            }
            return;
        }
        MemoryModule[][] socket = Arrays.stream(kindOf).map(this::slots).toArray(MemoryModule[][]::new);
        MemoryMode mode = request.require().mode();
        for (int s = 0; s < fitted; s++) {
            Set<String> broken = Reading.acrossChannels(platform.memory(), mode, covered[s], socket);
            if (!ignored.containsAll(broken) || broken.contains("memory-present")) {
                return;
            }
        }
        if (!ignored.containsAll(Reading.balance(request.require().populated(), List.<MemoryModule[][]>of(socket)))) {
            return;
        }
        int[] units = new int[kinds.size()];
        for (int[] content : kindOf) {
            for (int kind : content) {
                if (kind >= 0) {
                    units[kind]++;
                }
            }
        }
        int[] channelsGb = NaiveFigures.capacities(socket);
        Arrays.sort(channelsGb);
        int tableMts = NaiveFigures.tableMts(platform.memory(), socket);
        double usable = NaiveFigures.usableGb(platform.memory(), mode, socket);
        boolean ranksDiffer = kinds.stream().anyMatch(kind -> kind.stream().mapToInt(MemoryModule::logicalRanks).distinct().count() > 1);
        List<int[]> channels = ranksDiffer ? Arrays.stream(kindOf).map(int[]::clone).toList() : List.of();
        List<Object> key = List.of(boxed(units), boxed(channelsGb), tableMts, usable,
                channels.stream().map(Populations::boxed).map(Object::toString).sorted().toList());
        layouts.putIfAbsent(key, new Layout(units, channelsGb, tableMts, usable, channels));
    }

    private static List<Integer> boxed(int[] numbers) {
        return Arrays.stream(numbers).boxed().toList();
    }

    /** Splits the units of each kind over its parts in every way. */
    private void choose(Layout layout, int kind, int part, int[] counts, long total, int spare) {
        if (kind == kinds.size()) {
            if (held.stream().allMatch(sku -> IntStream.range(0, counts.length).anyMatch(p -> counts[p] > 0 && parts.get(p).sku().equals(sku)))) {
                deal(layout, counts, total, spare);
            }
            return;
        }
        List<MemoryModule> choices = kinds.get(kind);
        int first = kinds.subList(0, kind).stream().mapToInt(List::size).sum();
        int left = layout.units[kind] * fitted * request.machines();
        for (int p = 0; p < part; p++) {
            left -= counts[first + p];
        }
        if (part == choices.size()) {
            if (left == 0) {
                choose(layout, kind + 1, 0, counts, total, spare);
            }
            return;
        }
        for (int taken = 0; taken <= left; taken++) {
            long more = price.applyAsLong(choices.get(part).sku(), taken);
            if (more < ExhaustiveDraw.NONE) {
                counts[first + part] = taken;
                choose(layout, kind, part + 1, counts, total + more, spare);
            }
        }
        counts[first + part] = 0;
    }

    private void deal(Layout layout, int[] counts, long total, int spare) {
        if (!ignored.containsAll(Reading.partNumbers(request.require().populated(), Arrays.stream(counts).filter(units -> units > 0).count()))) {
            return;
        }
        int mts = layout.tableMts;
        StringBuilder what = new StringBuilder();
        for (int p = 0; p < counts.length; p++) {
            if (counts[p] > 0) {
                mts = Math.min(mts, parts.get(p).speedMts());
                what.append(' ').append(counts[p]).append('x').append(parts.get(p).sku());
            }
        }
        int[] ofKind = new int[counts.length];
        int part = 0;
        for (int kind = 0; kind < kinds.size(); kind++) {
            for (int i = 0; i < kinds.get(kind).size(); i++) {
                ofKind[part++] = kind;
            }
        }
        int[] perMachine = Arrays.stream(layout.units).map(units -> units * fitted).toArray();
        int rankLimit = ignored.contains("rank-limit") ? Integer.MAX_VALUE : Integer.MIN_VALUE;
        Dealing dealing = new Dealing(parts, ofKind, perMachine, wanted, layout.channels, fitted,
                rankLimit > 0 ? type -> rankLimit : type -> platform.memory().maxLogicalRanks().getOrDefault(type, Integer.MAX_VALUE));
        double heaviest = dealing.leastHeaviest(counts, request.machines());
        if (heaviest < Double.MAX_VALUE) {
            int modules = Arrays.stream(perMachine).sum();
            Population population = new Population(total, modules, mts, layout.channelsGb, fitted * layout.usableGb, heaviest,
                    spare - modules, kinds.get(firstUsed(layout)).get(0).type(), Arrays.toString(layout.channelsGb) + what);
            found.putIfAbsent(List.of(total, modules, mts, boxed(layout.channelsGb), layout.usableGb, heaviest, population.type()), population);
        }
    }

    private static int firstUsed(Layout layout) {
        int kind = 0;
        while (layout.units[kind] == 0) {
            kind++;
        }
        return kind;
    }
}
