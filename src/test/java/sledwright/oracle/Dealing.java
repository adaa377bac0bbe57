package sledwright.oracle;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToIntFunction;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;

/** Deals modules of several part numbers to machines that each take a given number of each kind, in every way. */
final class Dealing {

    private final List<MemoryModule> parts;
    private final int[] ofKind;
    private final int[] perMachine;
    private final Set<Integer> wanted = new HashSet<>();
    private final boolean wantedMissing;
    private final List<int[]> socket;
    private final int sockets;
    private final ToIntFunction<ModuleType> rankLimit;
    private double best;

    /**
     * @param ofKind     the kind of each part
     * @param perMachine units of each kind in a machine
     * @param wanted     modules that every machine must hold
     * @param socket     kinds by channel and slot, -1 for none; empty where it doesn't matter which alike part stands where
     */
    Dealing(List<MemoryModule> parts, int[] ofKind, int[] perMachine, Set<String> wanted, List<int[]> socket, int sockets,
            ToIntFunction<ModuleType> rankLimit) {
        this.parts = parts;
        this.ofKind = ofKind;
        this.perMachine = perMachine;
        this.socket = socket;
        this.sockets = sockets;
        this.rankLimit = rankLimit;
        List<String> skus = parts.stream().map(MemoryModule::sku).toList();
        wanted.forEach(sku -> this.wanted.add(skus.indexOf(sku)));
        wantedMissing = !skus.containsAll(wanted);
    }

    /** The least watts of the heaviest machine's modules; {@link Double#MAX_VALUE} where no dealing is valid. */
    double leastHeaviest(int[] counts, int machines) {
        best = Double.MAX_VALUE;
        if (!wantedMissing) {
            hand(counts.clone(), machines, 0, perMachine.clone(), new int[counts.length], 0, 0);
        }
        return best;
    }

    /** Gives one machine its share part by part, then the next. */
    private void hand(int[] left, int machines, int part, int[] need, int[] hand, double watts, double heaviest) {
        if (Math.max(watts, heaviest) >= best) {
            return;
        }
        if (part == left.length) {
            if (isServed(need, hand) && seated(hand)) {
                double now = Math.max(watts, heaviest);
                if (machines == 1) {
                    best = now;
                } else {
                    hand(left, machines - 1, 0, perMachine.clone(), new int[left.length], 0, now);
                }
            }
            return;
        }
        int kind = ofKind[part];
        boolean lastOfKind = part + 1 == left.length || ofKind[part + 1] != kind;
        for (int taken = lastOfKind ? need[kind] : 0; taken <= Math.min(left[part], need[kind]); taken++) {
            left[part] -= taken;
            need[kind] -= taken;
            hand[part] = taken;
            hand(left, machines, part + 1, need, hand, watts + taken * parts.get(part).powerW(), heaviest);
            left[part] += taken;
            need[kind] += taken;
            hand[part] = 0;
        }
    }

    private boolean isServed(int[] need, int[] hand) {
        for (int units : need) {
            if (units != 0) {
                return false;
            }
        }
        for (int index : wanted) {
            if (hand[index] == 0) {
                return false;
            }
        }
        return true;
    }

    /** Whether the machine's modules can be set into its slots so that no channel shows more ranks than its limit. */
    private boolean seated(int[] hand) {
        List<int[]> channels = new ArrayList<>();
        for (int s = 0; s < sockets; s++) {
            channels.addAll(socket);
        }
        return seated(channels, 0, 0, 0, hand.clone());
    }

    private boolean seated(List<int[]> channels, int channel, int slot, int ranks, int[] left) {
        if (channel == channels.size()) {
            return true;
        }
        int[] kinds = channels.get(channel);
        if (slot == kinds.length) {
            return seated(channels, channel + 1, 0, 0, left);
        }
        if (kinds[slot] < 0) {
            return seated(channels, channel, slot + 1, ranks, left);
        }
        Set<Integer> tried = new HashSet<>();
        for (int p = 0; p < left.length; p++) {
            MemoryModule module = parts.get(p);
            if (ofKind[p] == kinds[slot] && left[p] > 0 && ranks + module.logicalRanks() <= rankLimit.applyAsInt(module.type())
                    && tried.add(module.logicalRanks())) {
                left[p]--;
                boolean seated = seated(channels, channel, slot + 1, ranks + module.logicalRanks(), left);
                left[p]++;
                if (seated) {
                    return true;
                }
            }
        }
        return false;
    }
}
