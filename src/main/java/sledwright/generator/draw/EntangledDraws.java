package sledwright.generator.draw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import sledwright.domain.MemoryModule;
import sledwright.generator.shape.GroupKind;
import sledwright.metrics.CheapestDraw;

/**
 * The worthwhile draws of groups that share kinds: alike modules that show the controller different ranks. A slot that is
 * planned for many ranks takes a module of fewer just as well, so units of the lower groups may serve in the higher ones,
 * and the groups draw on the same lots. Such groups are drawn together, for their counts together.
 */
public final class EntangledDraws {

    private final List<GroupKind> groups;
    private final KindDraws kinds;
    private final int unitsPerModule;
    private final List<List<Ranked>> kindSources = new ArrayList<>();
    private final List<Map<List<Integer>, List<Draw>>> ofKind = new ArrayList<>();
    private final Map<List<Integer>, List<Draw>> ofAll = new HashMap<>();

    /** A source and the first of the groups that its ranks suit. */
    private record Ranked(KindDraws.Source source, int lowest) {
    }

    /** @param modules for each group, in the order of ranks, its modules; none of them wanted in every machine */
    public EntangledDraws(Map<GroupKind, List<MemoryModule>> modules, KindDraws kinds, int unitsPerModule) {
        this.kinds = kinds;
        this.unitsPerModule = unitsPerModule;
        groups = modules.keySet().stream().sorted(Comparator.comparingInt(GroupKind::logicalRanks)).toList();
        Map<String, List<Ranked>> byKind = new TreeMap<>();
        for (int i = 0; i < groups.size(); i++) {
            GroupKind group = groups.get(i);
            Map<MemoryModule.Kind, List<MemoryModule>> alike = new HashMap<>();
            modules.get(group).forEach(module -> alike.computeIfAbsent(module.kind(), kind -> new ArrayList<>()).add(module));
            for (Map.Entry<MemoryModule.Kind, List<MemoryModule>> entry : alike.entrySet()) {
                for (KindDraws.Source source : kinds.sources(new Draw.Alike(group, entry.getKey()), entry.getValue())) {
                    byKind.computeIfAbsent(entry.getKey().toString(), kind -> new ArrayList<>()).add(new Ranked(source, i));
                }
            }
        }
        for (List<Ranked> sources : byKind.values()) {
            sources.sort(Comparator.comparingLong((Ranked ranked) -> ranked.source.microwatts()).reversed()
                    .thenComparingInt(Ranked::lowest));
            kindSources.add(sources);
            ofKind.add(new HashMap<>());
        }
    }

    /** The groups, by ascending ranks. */
    public List<GroupKind> groups() {
        return groups;
    }

    /** The draws of a given number of modules of each group. */
    public List<Draw> of(List<Integer> counts) {
        return ofAll.computeIfAbsent(counts, asked -> {
            List<Draw> draws = new ArrayList<>();
            share(0, asked, Draw.NOTHING, draws);
            return kinds.worthwhile(draws);
        });
    }

    /** Shares the slots of each group among the kinds from one on. */
    private void share(int kind, List<Integer> left, Draw sofar, List<Draw> draws) {
        if (kind == kindSources.size() - 1) {
            ofKind(kind, left).forEach(draw -> draws.add(sofar.plus(draw)));
            return;
        }
        forEachUpTo(left, new int[left.size()], 0, given -> {
            List<Integer> rest = IntStream.range(0, left.size()).mapToObj(i -> left.get(i) - given[i]).toList();
            for (Draw draw : ofKind(kind, Arrays.stream(given).boxed().toList())) {
                share(kind + 1, rest, sofar.plus(draw), draws);
            }
        });
    }

    private static void forEachUpTo(List<Integer> most, int[] vector, int index, Consumer<int[]> found) {
        if (index == vector.length) {
            found.accept(vector);
            return;
        }
        for (int count = 0; count <= most.get(index); count++) {
            vector[index] = count;
            forEachUpTo(most, vector, index + 1, found);
        }
        vector[index] = 0;
    }

    private List<Draw> ofKind(int kind, List<Integer> counts) {
        return ofKind.get(kind).computeIfAbsent(counts, asked -> {
            List<Ranked> sources = kindSources.get(kind);
            int[] need = asked.stream().mapToInt(count -> count * unitsPerModule).toArray();
            List<Draw> draws = new ArrayList<>();
            take(sources, 0, need, 0, new int[sources.size()][groups.size()], draws);
            return kinds.worthwhile(draws);
        });
    }

    /** Takes units of the sources from one on for the groups that still need some. */
    private void take(List<Ranked> sources, int index, int[] need, long price, int[][] taken, List<Draw> draws) {
        if (index == sources.size()) {
            if (Arrays.stream(need).allMatch(units -> units == 0)) {
                draws.add(draw(sources, taken, price));
            }
            return;
        }
        takeFor(sources, index, sources.get(index).lowest, 0, need, price, taken, draws);
    }

    private void takeFor(List<Ranked> sources, int index, int group, int sofar, int[] need, long price, int[][] taken, List<Draw> draws) {
        KindDraws.Source source = sources.get(index).source;
        if (group == groups.size()) {
            if (source.prices()[sofar] < CheapestDraw.IMPOSSIBLE) {
                take(sources, index + 1, need, price + source.prices()[sofar], taken, draws);
            }
            return;
        }
        int most = Math.min(need[group], source.most() - sofar);
        for (int units = 0; units <= most; units++) {
            taken[index][group] = units;
            need[group] -= units;
            takeFor(sources, index, group + 1, sofar + units, need, price, taken, draws);
            need[group] += units;
        }
        taken[index][group] = 0;
    }

    private Draw draw(List<Ranked> ranked, int[][] taken, long price) {
        List<KindDraws.Source> sources = ranked.stream().map(Ranked::source).toList();
        Draw all = Draw.NOTHING;
        for (int group = 0; group < groups.size(); group++) {
            Draw ofGroup = Draw.NOTHING;
            int[] units = new int[sources.size()];
            for (int i = 0; i < units.length; i++) {
                units[i] = taken[i][group];
                KindDraws.Source source = sources.get(i);
                if (units[i] > 0) {
                    Draw.Alike alike = new Draw.Alike(groups.get(group), source.alike().kind());
                    ofGroup = ofGroup.plus(Draw.of(new Draw.Share(alike, source.modules(), units[i], source.microwatts(), false), 0));
                }
            }
            all = ofGroup == Draw.NOTHING ? all : all.plus(ofGroup.with(kinds.load(sources, units)));
        }
        return all == Draw.NOTHING ? all : all.priced(price);
    }
}
