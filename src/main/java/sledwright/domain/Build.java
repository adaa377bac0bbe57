package sledwright.domain;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * The full list of parts of one machine, valid or not.
 *
 * @param processors the fitted processors, from the first socket on
 * @param cooling    the kit that each of them carries
 * @param supply     empty where the enclosure feeds the machine
 * @param modules    the module of every filled slot, in board order
 * @param fitout     drives, cards and extras
 */
public record Build(Platform platform, List<Processor> processors, CoolingKit cooling, Optional<Supply> supply,
                    SortedMap<Slot, MemoryModule> modules, Fitout fitout) {

    public Build {
        processors = List.copyOf(processors);
        modules = Collections.unmodifiableSortedMap(new TreeMap<>(modules));
    }

    /** A build without drives, cards and extras. */
    public Build(Platform platform, List<Processor> processors, CoolingKit cooling, Optional<Supply> supply,
            SortedMap<Slot, MemoryModule> modules) {
        this(platform, processors, cooling, supply, modules, Fitout.NONE);
    }

    /** A build whose processors are all the same part. */
    public static Build of(Platform platform, Processor processor, int processors, CoolingKit cooling,
                           Optional<Supply> supply, Map<Slot, MemoryModule> modules) {
        return new Build(platform, Collections.nCopies(processors, processor), cooling, supply, new TreeMap<>(modules));
    }

    /** The first fitted processor, which stands for all of them in a valid build. */
    public Processor processor() {
        return processors.get(0);
    }

    /** The same machine with other drives, cards and extras. */
    public Build with(Fitout other) {
        return new Build(platform, processors, cooling, supply, modules, other);
    }

    /** Whether nothing but part numbers distinguishes the machines' modules, and nothing at all the rest. */
    public boolean isAlike(Build other) {
        return platform.equals(other.platform) && processors.equals(other.processors) && cooling.equals(other.cooling)
                && supply.equals(other.supply)
                && fitout.isAlike(other.fitout)
                && modules.keySet().equals(other.modules.keySet())
                && modules.entrySet().stream()
                .allMatch(module -> module.getValue().kind().equals(other.modules.get(module.getKey()).kind()));
    }

    /** Cores of all fitted processors. */
    public int cores() {
        return processors.stream().mapToInt(Processor::cores).sum();
    }

    /** Every channel of every socket in board order, empty ones too. */
    public List<Channel> channels() {
        Board board = platform.board();
        List<SortedMap<Slot, MemoryModule>> filled = new ArrayList<>();
        for (int i = 0; i < board.sockets() * board.channels(); i++) {
            filled.add(new TreeMap<>());
        }
        modules.forEach((slot, module) -> filled.get(slot.socket() * board.channels() + slot.channel()).put(slot, module));
        return IntStream.range(0, filled.size())
                .mapToObj(i -> new Channel(i / board.channels(), i % board.channels(), filled.get(i))).toList();
    }

    /** The channels of every socket, from the first socket on. */
    public List<List<Channel>> sockets() {
        List<Channel> all = channels();
        int channels = platform.board().channels();
        return IntStream.range(0, platform.board().sockets())
                .mapToObj(socket -> all.subList(socket * channels, (socket + 1) * channels)).toList();
    }

    /** Sku -> units of every part of this machine. */
    public SortedMap<String, Integer> partCounts() {
        SortedMap<String, Integer> counts = new TreeMap<>();
        counts.merge(platform.sku(), 1, Integer::sum);
        processors.forEach(processor -> counts.merge(processor.sku(), 1, Integer::sum));
        if (!processors.isEmpty()) {
            counts.merge(cooling.sku(), processors.size(), Integer::sum);
        }
        supply.ifPresent(option -> counts.merge(option.sku(), option.count(), Integer::sum));
        modules.values().forEach(module -> counts.merge(module.sku(), 1, Integer::sum));
        fitout.partCounts().forEach((sku, units) -> counts.merge(sku, units, Integer::sum));
        return counts;
    }
}
