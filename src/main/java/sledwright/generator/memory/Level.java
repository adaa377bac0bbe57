package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.generator.shape.GroupKind;
import sledwright.rules.memory.RankLimit;

/**
 * The modules of one type that run at a speed or faster on a platform, in groups that the rules cannot distinguish.
 *
 * @param mts       the speed that the platform's table and every module reach, MT/s
 * @param width     device width of all modules where the platform does not mix them; else 0
 * @param groups    group -> its modules
 * @param entangled sets of groups that share kinds, because alike modules show the controller different ranks; each with more than
 *                  one group. All other groups stand by themselves
 * @param modules   of all groups
 * @param extremes  of their figures
 */
public record Level(ModuleType type, int width, int mts, Map<GroupKind, List<MemoryModule>> groups, List<List<GroupKind>> entangled,
                    List<MemoryModule> modules, Extremes extremes) {

    /**
     * What no module goes beyond.
     *
     * @param mostGb     capacity of a module
     * @param leastWPerGb power of a module for each GB that it holds
     */
    public record Extremes(int mostGb, double leastWPerGb) {

        private static Extremes of(List<MemoryModule> modules) {
            int mostGb = 0;
            double leastWPerGb = modules.isEmpty() ? 0 : Double.POSITIVE_INFINITY;
            for (MemoryModule module : modules) {
                mostGb = Math.max(mostGb, module.capacityGb());
                leastWPerGb = Math.min(leastWPerGb, module.powerW() / module.capacityGb());
            }
            return new Extremes(mostGb, leastWPerGb);
        }
    }

    public Level(ModuleType type, int width, int mts, Map<GroupKind, List<MemoryModule>> groups, List<List<GroupKind>> entangled) {
        this(type, width, mts, groups, entangled, groups.values().stream().flatMap(List::stream).toList());
    }

    private Level(ModuleType type, int width, int mts, Map<GroupKind, List<MemoryModule>> groups, List<List<GroupKind>> entangled,
            List<MemoryModule> modules) {
        this(type, width, mts, groups, entangled, modules, Extremes.of(modules));
    }

    /**
     * The levels of a type, fastest first. A level that takes no module, rank count or channel filling beyond those of a
     * faster one is left out: what it could hold runs faster.
     *
     * @param modules those of the platform's generation and this type and width
     */
    static List<Level> of(MemorySupport memory, ModuleType type, int width, List<MemoryModule> modules, boolean sparing) {
        TreeSet<Integer> speeds = new TreeSet<>();
        modules.forEach(module -> speeds.add(module.speedMts()));
        memory.speeds().stream().filter(entry -> entry.type() == type).forEach(entry -> speeds.addAll(entry.mts()));
        Map<Integer, Integer> ranks = indistinguishableRanks(memory, type, modules);
        boolean mayShareKinds = showUnlikeRanks(modules, ranks);
        List<Level> levels = new ArrayList<>();
        for (int mts : speeds.descendingSet()) {
            Map<GroupKind, List<MemoryModule>> groups = new TreeMap<>();
            for (MemoryModule module : modules) {
                int perChannel = perChannel(memory, module, mts);
                if (module.speedMts() >= mts && perChannel != 0) {
                    groups.computeIfAbsent(new GroupKind(module.capacityGb(), ranks.get(module.logicalRanks()),
                            sparing ? module.ranks() : 0, perChannel), group -> new ArrayList<>()).add(module);
                }
            }
            boolean adds = levels.isEmpty() ? !groups.isEmpty() : !groups.equals(levels.get(levels.size() - 1).groups);
            if (adds) {
                levels.add(new Level(type, width, mts, groups, mayShareKinds ? entangled(groups) : List.of()));
            }
        }
        return levels;
    }

    private static int perChannel(MemorySupport memory, MemoryModule module, int mts) {
        int bits = 0;
        for (int filled = 1; filled <= memory.slotsPerChannel(); filled++) {
            if (memory.speedMts(module.type(), module.ranks(), filled).orElse(0) >= mts) {
                bits |= 1 << filled - 1;
            }
        }
        return bits;
    }

    /** For each count of logical ranks the least count that no channel filling can distinguish from it by the rank limit. */
    private static Map<Integer, Integer> indistinguishableRanks(MemorySupport memory, ModuleType type, List<MemoryModule> modules) {
        TreeSet<Integer> counts = new TreeSet<>();
        modules.forEach(module -> counts.add(module.logicalRanks()));
        boolean[] reachable = new boolean[1 + memory.slotsPerChannel() * (counts.isEmpty() ? 1 : counts.last())];
        reachable[0] = true;
        for (int others = 1; others < memory.slotsPerChannel(); others++) {
            boolean[] before = reachable.clone();
            for (int sum = 0; sum < before.length; sum++) {
                if (before[sum]) {
                    for (int count : counts) {
                        mark(reachable, sum + count);
                    }
                }
            }
        }
        Map<Integer, Integer> least = new HashMap<>();
        for (int count : counts) {
            for (int other : counts.headSet(count, true)) {
                if (alike(reachable, memory.rankLimit(type), other, count)) {
                    least.put(count, other);
                    break;
                }
            }
        }
        return least;
    }

    private static void mark(boolean[] reachable, int sum) {
        if (sum < reachable.length) {
            reachable[sum] = true;
        }
    }

    private static boolean alike(boolean[] reachable, int limit, int one, int other) {
        for (int sum = 0; sum < reachable.length; sum++) {
            if (reachable[sum] && RankLimit.allows(limit, sum + one) != RankLimit.allows(limit, sum + other)) {
                return false;
            }
        }
        return true;
    }

    /** Whether modules of one kind show ranks that can be distinguished: only then do groups share kinds. */
    private static boolean showUnlikeRanks(List<MemoryModule> modules, Map<Integer, Integer> ranks) {
        Map<MemoryModule.Kind, Integer> shown = new HashMap<>();
        for (MemoryModule module : modules) {
            Integer own = ranks.get(module.logicalRanks());
            if (!own.equals(shown.getOrDefault(module.kind(), own))) {
                return true;
            }
            shown.put(module.kind(), own);
        }
        return false;
    }

    private static List<List<GroupKind>> entangled(Map<GroupKind, List<MemoryModule>> groups) {
        Map<GroupKind, Set<MemoryModule.Kind>> kinds = new HashMap<>();
        groups.forEach((group, modules) -> kinds.put(group, modules.stream().map(MemoryModule::kind).collect(Collectors.toSet())));
        List<List<GroupKind>> sets = new ArrayList<>();
        for (GroupKind group : groups.keySet()) {
            List<GroupKind> joined = new ArrayList<>(List.of(group));
            sets.removeIf(set -> {
                boolean shares = set.stream().anyMatch(other -> !Collections.disjoint(kinds.get(other), kinds.get(group)));
                if (shares) {
                    joined.addAll(set);
                }
                return shares;
            });
            sets.add(joined);
        }
        sets.removeIf(set -> set.size() == 1);
        return sets;
    }

    /** Whether groups of the level hold any of some part numbers. */
    boolean holdsAny(List<GroupKind> set, Set<String> skus) {
        return set.stream().flatMap(group -> groups.get(group).stream()).anyMatch(module -> skus.contains(module.sku()));
    }
}
