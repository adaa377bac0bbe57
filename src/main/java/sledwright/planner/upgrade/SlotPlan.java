package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.domain.Slot;

/**
 * Chooses among the arrangements of a machine's modules that are the same to every rule the one in which most of them stay where
 * they stand.
 *
 * <p>Channels that hold equally many modules may exchange all that they hold, on every socket alike; mirrored channels go in pairs.
 * And in a slot any module does that is alike to the one planned there.
 */
final class SlotPlan {

    /** How many ways to exchange channels are tried. */
    private static final int MOST_TRIED = 200_000;

    /** What a slot takes. */
    private record Place(MemoryModule.Kind kind, int logicalRanks) {

        static Place of(MemoryModule module) {
            return module == null ? null : new Place(module.kind(), module.logicalRanks());
        }
    }

    private final Build found;
    private final Build installed;
    private final int width;
    private final int blocks;
    private final List<String> skus;
    private final int[] counts;
    private final List<List<Place>> contents = new ArrayList<>();
    private final List<List<Place>> kinds;
    private final int[][] may;
    private final int[][][] gains;
    private final int[] left;
    private final int[] chosen;
    private int[] best;
    private int bestKept = -1;
    private int tried;

    private SlotPlan(Build found, Build installed, boolean mirrored) {
        this.found = found;
        this.installed = installed;
        width = mirrored ? 2 : 1;
        blocks = found.platform().board().channels() / width;
        Map<String, Integer> units = new LinkedHashMap<>();
        found.modules().values().forEach(module -> units.merge(module.sku(), 1, Integer::sum));
        skus = List.copyOf(units.keySet());
        counts = units.values().stream().mapToInt(Integer::intValue).toArray();
        for (int block = 0; block < blocks; block++) {
            contents.add(slots(block).stream().map(slot -> Place.of(found.modules().get(slot))).toList());
        }
        kinds = contents.stream().distinct().toList();
        left = kinds.stream().mapToInt(kind -> (int) contents.stream().filter(kind::equals).count()).toArray();
        may = new int[blocks][];
        gains = new int[blocks][kinds.size()][];
        for (int block = 0; block < blocks; block++) {
            List<Boolean> filled = filled(contents.get(block));
            int own = kinds.indexOf(contents.get(block));
            List<Integer> choices = new ArrayList<>(List.of(own));
            for (int kind = 0; kind < kinds.size(); kind++) {
                if (kind != own && filled(kinds.get(kind)).equals(filled)) {
                    choices.add(kind);
                }
            }
            may[block] = choices.stream().mapToInt(Integer::intValue).toArray();
            for (int kind : may[block]) {
                gains[block][kind] = gain(block, kinds.get(kind));
            }
        }
        chosen = new int[blocks];
    }

    /**
     * The machine with its modules where most of them stay.
     *
     * @param found     valid; on the installed machine's board
     * @param installed what stands now
     * @param mirrored  whether channels mirror each other in pairs
     */
    static Build of(Build found, Build installed, boolean mirrored) {
        SlotPlan plan = new SlotPlan(found, installed, mirrored);
        plan.choose(0, new int[plan.skus.size()]);
        return plan.build();
    }

    private static List<Boolean> filled(List<Place> content) {
        return content.stream().map(place -> place != null).toList();
    }

    /** The slots of a block of channels, on every fitted socket. */
    private List<Slot> slots(int block) {
        Board board = found.platform().board();
        List<Slot> slots = new ArrayList<>();
        for (int socket = 0; socket < found.processors().size(); socket++) {
            for (int channel = block * width; channel < (block + 1) * width; channel++) {
                for (int position = 0; position < board.slotsPerChannel(); position++) {
                    slots.add(board.slot(socket, channel, position));
                }
            }
        }
        return slots;
    }

    /** For each sku how many of its modules stand in the block already where the content wants one alike. */
    private int[] gain(int block, List<Place> content) {
        int[] gain = new int[skus.size()];
        List<Slot> slots = slots(block);
        for (int i = 0; i < content.size(); i++) {
            MemoryModule standing = installed.modules().get(slots.get(i));
            if (standing != null && skus.contains(standing.sku()) && Place.of(standing).equals(content.get(i))) {
                gain[skus.indexOf(standing.sku())]++;
            }
        }
        return gain;
    }

    private void choose(int block, int[] standing) {
        if (block == blocks) {
            tried++;
            int kept = kept(standing);
            if (kept > bestKept) {
                bestKept = kept;
                best = chosen.clone();
            }
            return;
        }
        for (int kind : may[block]) {
            if (left[kind] > 0 && (tried < MOST_TRIED || best == null)) {
                left[kind]--;
                chosen[block] = kind;
                int[] more = standing.clone();
                Arrays.setAll(more, sku -> standing[sku] + gains[block][kind][sku]);
                choose(block + 1, more);
                left[kind]++;
            }
        }
    }

    private int kept(int[] standing) {
        int kept = 0;
        for (int sku = 0; sku < standing.length; sku++) {
            kept += Math.min(standing[sku], counts[sku]);
        }
        return kept;
    }

    private Build build() {
        Map<Slot, Place> plan = new TreeMap<>();
        for (int block = 0; block < blocks; block++) {
            List<Slot> slots = slots(block);
            List<Place> content = kinds.get(best[block]);
            for (int i = 0; i < content.size(); i++) {
                if (content.get(i) != null) {
                    plan.put(slots.get(i), content.get(i));
                }
            }
        }
        Map<String, List<MemoryModule>> units = new LinkedHashMap<>();
        found.modules().values().forEach(module -> units.computeIfAbsent(module.sku(), sku -> new ArrayList<>()).add(module));
        SortedMap<Slot, MemoryModule> modules = new TreeMap<>();
        plan.forEach((slot, place) -> {
            MemoryModule standing = installed.modules().get(slot);
            if (standing != null && place.equals(Place.of(standing)) && !units.getOrDefault(standing.sku(), List.of()).isEmpty()) {
                modules.put(slot, units.get(standing.sku()).remove(0));
            }
        });
        Map<Place, List<MemoryModule>> rest = new HashMap<>();
        units.values().forEach(some -> some.forEach(module -> rest.computeIfAbsent(Place.of(module), place -> new ArrayList<>())
                .add(module)));
        plan.forEach((slot, place) -> {
            if (!modules.containsKey(slot)) {
                modules.put(slot, rest.get(place).remove(0));
            }
        });
        return new Build(found.platform(), found.processors(), found.cooling(), found.supply(), modules, found.fitout());
    }
}
