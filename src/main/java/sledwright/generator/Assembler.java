package sledwright.generator;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Fitout;
import sledwright.domain.MemoryModule;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.domain.Slot;
import sledwright.generator.draw.Deal;
import sledwright.generator.draw.Draw;
import sledwright.generator.draw.KindDraws;
import sledwright.generator.draw.Shelf;
import sledwright.generator.fitout.Outfitter;
import sledwright.generator.memory.MemoryPoint;
import sledwright.generator.shape.Arrangement;
import sledwright.generator.shape.GroupKind;
import sledwright.generator.shape.Layouts;
import sledwright.generator.shape.ShapeKey;
import sledwright.metrics.CheapestDraw;
import sledwright.metrics.PowerDraw;
import sledwright.rules.Order;
import sledwright.rules.memory.RankOrder;

/** Turns a candidate into machines with a module in every slot, and the lots that their parts come from. */
final class Assembler {

    private final Catalog catalog;
    private final Request request;
    private final Shelf shelf;
    private final Map<ShapeKey, Layouts> layouts = new HashMap<>();

    Assembler(Catalog catalog, Request request, Shelf shelf) {
        this.catalog = catalog;
        this.request = request;
        this.shelf = shelf;
    }

    /** The order of a candidate, the heaviest machine first. */
    Order assemble(Combination candidate) {
        List<Pick> picks = new ArrayList<>(framePicks(candidate.frame()));
        List<Draw.Share> shares = candidate.point().draw().shares();
        Map<List<MemoryModule>, Integer> drawn = new LinkedHashMap<>();
        shares.forEach(share -> drawn.merge(share.modules(), share.units(), Integer::sum));
        Map<List<MemoryModule>, Deque<MemoryModule>> units = new HashMap<>();
        drawn.forEach((modules, count) -> {
            List<Pick> taken = CheapestDraw.picks(KindDraws.lots(shelf, modules), count);
            picks.addAll(taken);
            Deque<MemoryModule> queue = new ArrayDeque<>();
            taken.forEach(pick -> queue.addAll(Collections.nCopies(pick.quantity(), catalog.module(pick.sku()).orElseThrow())));
            units.put(modules, queue);
        });
        List<Fitout> fitouts = new Outfitter(catalog, shelf, request.machines()).fitouts(candidate.frame().completion(), picks);
        Order order = Order.of(machines(candidate, shares, units, fitouts), picks, request, catalog);
        if (order.price().total() != candidate.price()) {
            throw new IllegalStateException("the search priced a build at %s, its picks come to %s"
                    .formatted(candidate.price(), order.price().total()));
        }
        return order;
    }

    private List<Pick> framePicks(Frame frame) {
        int machines = request.machines();
        Map<String, Integer> parts = new LinkedHashMap<>();
        parts.put(frame.platform().sku(), machines);
        parts.put(frame.processor().sku(), machines * frame.processors());
        parts.put(frame.parts().cooling().sku(), machines * frame.processors());
        frame.supply().ifPresent(supply -> parts.put(supply.sku(), machines * supply.count()));
        List<Pick> picks = new ArrayList<>();
        parts.forEach((sku, count) -> picks.addAll(CheapestDraw.picks(shelf.lots(sku), count)));
        return picks;
    }

    private List<Build> machines(Combination candidate, List<Draw.Share> shares,
                                 Map<List<MemoryModule>, Deque<MemoryModule>> units, List<Fitout> fitouts) {
        List<Map.Entry<Slot, Draw.Alike>> plan = plan(candidate);
        List<int[]> dealt = Deal.deal(shares, request.machines());
        Map<List<Object>, Build> same = new HashMap<>();
        List<Map<Slot, MemoryModule>> memories = new ArrayList<>();
        for (int machine = 0; machine < request.machines(); machine++) {
            Map<Draw.Alike, Deque<MemoryModule>> hand = new HashMap<>();
            for (int i = 0; i < shares.size(); i++) {
                for (int unit = 0; unit < dealt.get(i)[machine]; unit++) {
                    hand.computeIfAbsent(shares.get(i).alike(), alike -> new ArrayDeque<>())
                            .add(units.get(shares.get(i).modules()).remove());
                }
            }
            Map<Slot, MemoryModule> modules = new TreeMap<>();
            plan.forEach(entry -> modules.put(entry.getKey(), hand.get(entry.getValue()).remove()));
            memories.add(modules);
        }
        // The heaviest drives go to the machine of the lightest memory.
        memories.sort(Comparator.comparingDouble(Assembler::watts));
        List<Build> machines = new ArrayList<>();
        for (int machine = 0; machine < memories.size(); machine++) {
            Frame frame = candidate.frame();
            Map<Slot, MemoryModule> modules = memories.get(machine);
            Fitout fitout = fitouts.get(machine);
            machines.add(same.computeIfAbsent(List.of(modules.values().stream().map(MemoryModule::sku).toList(), fitout.drives()), parts ->
                    Build.of(frame.platform(), frame.processor(), frame.processors(), frame.parts().cooling(), frame.supply(),
                            modules).with(fitout)));
        }
        // Of many machines few differ.
        Map<Build, Double> loads = new IdentityHashMap<>();
        same.values().forEach(build -> loads.put(build, PowerDraw.loadW(build)));
        machines.sort(Comparator.comparing(loads::get).reversed());
        return machines;
    }

    private static double watts(Map<Slot, MemoryModule> modules) {
        return modules.values().stream().mapToDouble(MemoryModule::powerW).sum();
    }

    /** What each slot of a machine takes. */
    private List<Map.Entry<Slot, Draw.Alike>> plan(Combination candidate) {
        MemoryPoint point = candidate.point();
        ShapeKey key = point.filling().socket().key();
        List<Deque<Draw.Alike>> kinds = kindsByGroup(candidate, key);
        Board board = candidate.frame().platform().board();
        int width = key.multiple();
        List<int[]> columns = Arrangement.of(point.filling().socket(), layouts.computeIfAbsent(key, ShapeKey::layouts));
        List<Map.Entry<Slot, Draw.Alike>> plan = new ArrayList<>();
        for (int column = 0; column < columns.size(); column++) {
            List<Draw.Alike> stack = new ArrayList<>();
            for (int group = 0; group < kinds.size(); group++) {
                for (int i = 0; i < columns.get(column)[group]; i++) {
                    stack.add(kinds.get(group).remove());
                }
            }
            stack.sort(Comparator.comparing(Draw.Alike::kind, RankOrder.FILL_ORDER));
            for (int socket = 0; socket < candidate.frame().processors(); socket++) {
                for (int channel = column * width; channel < (column + 1) * width; channel++) {
                    for (int position = 0; position < stack.size(); position++) {
                        plan.add(Map.entry(board.slot(socket, channel, position), stack.get(position)));
                    }
                }
            }
        }
        return plan;
    }

    /** For each group of the shapes, what each module that a socket (or half of it) holds. */
    private List<Deque<Draw.Alike>> kindsByGroup(Combination candidate, ShapeKey key) {
        int unitsPerModule = request.machines() * candidate.frame().processors() * key.multiple();
        Map<Draw.Alike, Integer> units = new LinkedHashMap<>();
        candidate.point().draw().shares().forEach(share -> units.merge(share.alike(), share.units(), Integer::sum));
        List<Deque<Draw.Alike>> kinds = new ArrayList<>();
        for (GroupKind group : key.groups()) {
            Deque<Draw.Alike> queue = new ArrayDeque<>();
            units.forEach((alike, count) -> {
                if (alike.group().equals(group)) {
                    queue.addAll(Collections.nCopies(count / unitsPerModule, alike));
                }
            });
            kinds.add(queue);
        }
        return kinds;
    }
}
