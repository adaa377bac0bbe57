package sledwright.desk.view;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Build;
import sledwright.domain.Fitout;
import sledwright.domain.Request;
import sledwright.metrics.Figures;

/**
 * One machine with the figures it reaches.
 *
 * @param count   how many machines are exactly like this one
 * @param modules sku -> modules of the machine
 * @param memory  modules by capacity, the largest first: capacity in GB -> modules
 * @param slots   slot -> sku, in board order
 * @param fitout  drives, cards and extras
 */
public record MachineView(int count, SortedMap<String, Integer> modules, Map<Integer, Integer> memory, Map<String, String> slots,
                          SlotMap map, Fitout fitout, Figures figures) {

    static MachineView of(int count, Build build, Request request, Map<String, Double> factors) {
        SortedMap<String, Integer> modules = new TreeMap<>();
        SortedMap<Integer, Integer> memory = new TreeMap<>(Comparator.reverseOrder());
        Map<String, String> slots = new LinkedHashMap<>();
        build.modules().forEach((slot, module) -> {
            modules.merge(module.sku(), 1, Integer::sum);
            memory.merge(module.capacityGb(), 1, Integer::sum);
            slots.put(slot.name(), module.sku());
        });
        return new MachineView(count, Collections.unmodifiableSortedMap(modules), Collections.unmodifiableSortedMap(memory),
                Collections.unmodifiableMap(slots), SlotMap.of(build), build.fitout(), Figures.of(build, request, factors));
    }

    /** The machines of an order, alike ones together, the heaviest first. */
    static List<MachineView> all(List<Build> machines, Request request, Map<String, Double> factors) {
        Map<List<Object>, List<Build>> alike = machines.stream().collect(Collectors.groupingBy(
                MachineView::content, LinkedHashMap::new, Collectors.toList()));
        return alike.values().stream().map(group -> of(group.size(), group.get(0), request, factors))
                .sorted(Comparator.comparingDouble((MachineView view) -> view.figures().loadW()).reversed()).toList();
    }

    private static List<Object> content(Build build) {
        return List.of(build.modules().entrySet().stream()
                .collect(Collectors.toMap(entry -> entry.getKey().name(), entry -> entry.getValue().sku())), build.fitout().drives());
    }
}
