package sledwright.report.sheet;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import sledwright.desk.view.Line;
import sledwright.report.sheet.SheetView.Pick;

/**
 * Shares the lots of an order out to its kinds of machine, in the order of the order's lines. Units of one part are alike, so any share is
 * right that gives each kind what it takes.
 */
final class PickList {

    /** Where a part comes from that one machine gives up and another takes. */
    static final String OTHER_MACHINE = "another machine";

    private static final class Source {

        private final Line line;
        private int left;

        Source(Line line) {
            this.line = line;
            left = line.quantity();
        }
    }

    private final Map<String, Deque<Source>> sources = new LinkedHashMap<>();

    /** @param lines of parts that come from elsewhere than the machines themselves */
    PickList(List<Line> lines) {
        lines.forEach(line -> sources.computeIfAbsent(line.sku(), sku -> new ArrayDeque<>()).add(new Source(line)));
    }

    /**
     * Takes the parts of some machines.
     *
     * @param needed       sku -> units
     * @param description  sku -> words
     */
    List<Pick> take(Map<String, Integer> needed, UnaryOperator<String> description) {
        List<Pick> picks = new ArrayList<>();
        sources.keySet().stream().filter(needed::containsKey).forEach(sku -> picks.addAll(take(sku, needed.get(sku))));
        needed.forEach((sku, units) -> {
            int missing = units - picks.stream().filter(pick -> pick.sku().equals(sku)).mapToInt(Pick::units).sum();
            if (missing > 0) {
                picks.add(new Pick(sku, description.apply(sku), OTHER_MACHINE, "customer", missing));
            }
        });
        return picks;
    }

    private List<Pick> take(String sku, int units) {
        List<Pick> picks = new ArrayList<>();
        int wanted = units;
        for (Source source : sources.get(sku)) {
            int taken = Math.min(wanted, source.left);
            if (taken > 0) {
                Line line = source.line;
                picks.add(new Pick(sku, line.description(), line.source().orElseThrow().lot(),
                        line.source().orElseThrow().supplier(), taken));
                source.left -= taken;
                wanted -= taken;
            }
        }
        return picks;
    }
}
