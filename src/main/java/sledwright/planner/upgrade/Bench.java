package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import sledwright.domain.Build;
import sledwright.domain.Processor;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;

/**
 * What hands do, in their order, to make one machine of another: what leaves comes out first, modules before the heat sinks and
 * processors between them; modules change their slots while all heat sinks that move are off; then everything goes in from the board up,
 * drives and supplies from outside last, the drives' cables between them.
 */
final class Bench {

    /** Where extras go. */
    static final String MACHINE = "machine";

    private final Build before;
    private final Build after;
    private final List<BenchStep> sinksOff = new ArrayList<>();
    private final List<BenchStep> sinksOn = new ArrayList<>();

    private Bench(Build before, Build after) {
        this.before = before;
        this.after = after;
        changeHeatSinks();
    }

    /** The steps; none when nothing changes. */
    static List<BenchStep> steps(Build before, Build after) {
        return new Bench(before, after).steps();
    }

    /** Whether volumes have other levels or other numbers of hot spares; where their drives come, go and move, steps say so. */
    static boolean remakes(Build before, Build after) {
        return !kinds(before).equals(kinds(after));
    }

    private static List<List<Object>> kinds(Build build) {
        return build.fitout().volumes().stream()
                .map(volume -> List.<Object>of(volume.name(), volume.level(), volume.drives().size(), volume.hotSpares().size())).toList();
    }

    private List<BenchStep> steps() {
        Shifts supplies = Shifts.of(Part.SUPPLY, supplies(before), supplies(after));
        Shifts processors = Shifts.of(Part.PROCESSOR, processors(before), processors(after));
        Shifts modules = Shifts.of(Part.MODULE, modules(before), modules(after));
        Shifts cards = Shifts.of(Part.CARD, cards(before), cards(after));
        Shifts drives = DriveMoves.between(before.fitout().seats(), after.fitout().seats());
        List<BenchStep> steps = new ArrayList<>();
        steps.addAll(supplies.out());
        steps.addAll(drives.out());
        steps.addAll(drives.move());
        steps.addAll(cards.out());
        steps.addAll(extras(before, after,
                extra -> new BenchStep(Action.TAKE_OUT, Part.EXTRA, extra, Optional.of(MACHINE), Optional.empty())));
        steps.addAll(modules.out());
        steps.addAll(sinksOff);
        steps.addAll(processors.out());
        steps.addAll(processors.move());
        steps.addAll(modules.move());
        steps.addAll(processors.in());
        steps.addAll(sinksOn);
        steps.addAll(modules.in());
        steps.addAll(extras(after, before,
                extra -> new BenchStep(Action.PUT_IN, Part.EXTRA, extra, Optional.empty(), Optional.of(MACHINE))));
        steps.addAll(cards.move());
        steps.addAll(cards.in());
        steps.addAll(drives.in());
        steps.addAll(new Cabling(before.fitout(), after.fitout()).steps());
        steps.addAll(supplies.in());
        return steps;
    }

    /** A heat sink comes off where it or the processor below changes; it goes back on as long as its kind is wanted. */
    private void changeHeatSinks() {
        Map<String, String> processorsBefore = processors(before);
        Map<String, String> processorsAfter = processors(after);
        Map<String, Integer> wanted = new HashMap<>();
        List<String> bare = new ArrayList<>();
        processorsAfter.forEach((socket, processor) -> {
            boolean stays = processor.equals(processorsBefore.get(socket)) && before.cooling().equals(after.cooling());
            if (!stays) {
                bare.add(socket);
                wanted.merge(after.cooling().sku(), 1, Integer::sum);
            }
        });
        processorsBefore.forEach((socket, processor) -> {
            boolean stays = processor.equals(processorsAfter.get(socket)) && before.cooling().equals(after.cooling());
            if (!stays) {
                boolean again = wanted.merge(before.cooling().sku(), -1, Integer::sum) >= 0;
                sinksOff.add(new BenchStep(again ? Action.LAY_ASIDE : Action.TAKE_OUT, Part.HEAT_SINK, before.cooling().sku(),
                        Optional.of(socket), Optional.empty()));
            }
        });
        bare.forEach(socket ->
                sinksOn.add(new BenchStep(Action.PUT_IN, Part.HEAT_SINK, after.cooling().sku(), Optional.empty(), Optional.of(socket))));
    }

    private static Map<String, String> processors(Build build) {
        Map<String, String> sockets = new LinkedHashMap<>();
        List<Processor> fitted = build.processors();
        for (int socket = 0; socket < fitted.size(); socket++) {
            sockets.put("socket " + (socket + 1), fitted.get(socket).sku());
        }
        return sockets;
    }

    private static Map<String, String> supplies(Build build) {
        Map<String, String> bays = new LinkedHashMap<>();
        build.supply().ifPresent(supply -> {
            for (int bay = 1; bay <= supply.count(); bay++) {
                bays.put("supply " + bay, supply.sku());
            }
        });
        return bays;
    }

    private static Map<String, String> cards(Build build) {
        Map<String, String> slots = new LinkedHashMap<>();
        build.fitout().cards().forEach((slot, card) -> slots.put(slot, card.sku()));
        return slots;
    }

    /** A step for each unit that one machine has and the other has not. */
    private static List<BenchStep> extras(Build has, Build other, Function<String, BenchStep> step) {
        return has.fitout().extrasBySku().entrySet().stream().flatMap(extra -> Collections.nCopies(
                Math.max(0, extra.getValue() - other.fitout().units(extra.getKey())), step.apply(extra.getKey())).stream()).toList();
    }

    private static Map<String, String> modules(Build build) {
        Map<String, String> slots = new LinkedHashMap<>();
        new TreeMap<>(build.modules()).forEach((slot, module) -> slots.put(slot.name(), module.sku()));
        return slots;
    }
}
