package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import sledwright.desk.view.Line;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Group;
import sledwright.desk.view.OrderView.Housed;
import sledwright.desk.view.OrderView.Picked;
import sledwright.domain.Catalog;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.report.sheet.SheetView.Berth;
import sledwright.report.sheet.SheetView.Fetch;
import sledwright.report.sheet.SheetView.Frame;
import sledwright.report.sheet.SheetView.Pick;
import sledwright.report.sheet.SheetView.Seat;
import sledwright.report.sheet.SheetView.Share;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Source;
import sledwright.report.sheet.SheetView.Which;
import sledwright.report.sheet.SheetView.WholeOrder;
import sledwright.words.Numbers;

/** Makes the sheets of an order: one for each machine, with its own lots and its bay, and before them what is fetched, lot by lot. */
final class OrderSheets {

    /** A lot of a part. */
    private record Shelf(String sku, String lot, String supplier) {

        static Shelf of(Line line) {
            return new Shelf(line.sku(), line.source().orElseThrow().lot(), line.source().orElseThrow().supplier());
        }
    }

    private final OrderAnswer answer;
    private final OrderView view;
    private final Catalog catalog;
    private final Map<Seat, Berth> berths = new LinkedHashMap<>();
    private final Map<Shelf, List<Share>> shares = new LinkedHashMap<>();

    OrderSheets(OrderAnswer answer, Catalog catalog) {
        this.answer = answer;
        this.catalog = catalog;
        view = answer.view();
        view.contents().enclosures().forEach(housed -> housed.sleds().forEach(sled -> berths.put(new Seat(0, sled.line(), sled.machine()),
                new Berth(housed.number(), housed.filled().enclosure().sku(), sled.bay()))));
    }

    SheetView view() {
        List<Sheet> sheets = new ArrayList<>();
        for (int line = 0; line < view.contents().lines().size(); line++) {
            add(view.contents().lines().get(line), answer.outcome().lines().get(line), sheets);
        }
        for (Housed housed : view.contents().enclosures()) {
            housed.lines().forEach(part -> share(part, new Share(Optional.empty(), housed.number(), housed.number(), part.quantity())));
        }
        List<Fetch> lots = view.contents().picks().stream()
                .map(part -> new Fetch(pick(part), shares.getOrDefault(Shelf.of(part), List.of()))).toList();
        return new SheetView(view.topic().request(), Source.ORDER, OptionalInt.empty(), sheets,
                Optional.of(new WholeOrder(lots, view.contents().enclosures().stream().map(OrderSheets::frame).toList())), missing());
    }

    private Optional<String> missing() {
        int missing = view.topic().machines() - view.delivered();
        return missing == 0 ? Optional.empty() : Optional.of("%s of this order cannot be delivered; these sheets are of the other %s."
                .formatted(Numbers.counted(missing, "machine"), view.delivered()));
    }

    private void add(Filled line, LineFill fill, List<Sheet> sheets) {
        for (Group group : line.builds()) {
            for (Picked picked : group.picked()) {
                picked.lines().forEach(part -> share(part, new Share(Optional.of(line.line().name()), picked.first(), picked.last(),
                        part.quantity())));
                for (int machine = picked.first(); machine <= picked.last(); machine++) {
                    Which which = new Which(line.line().name(), machine, line.delivered(),
                            Optional.ofNullable(berths.get(new Seat(0, line.line().name(), machine))));
                    sheets.add(new Sheets(fill.line().request(), catalog, picked.lines())
                            .fresh(fill.fills().get(group.number() - 1).build(), 1, Optional.empty(), Optional.of(which)));
                }
            }
        }
    }

    private void share(Line part, Share share) {
        shares.computeIfAbsent(Shelf.of(part), lot -> new ArrayList<>()).add(share);
    }

    private static Pick pick(Line part) {
        Shelf shelf = Shelf.of(part);
        return new Pick(part.sku(), part.description(), shelf.lot(), shelf.supplier(), part.quantity());
    }

    private static Frame frame(Housed housed) {
        return new Frame(housed.number(), housed.filled().enclosure().sku(), housed.filled().enclosure().name(),
                housed.filled().supply().sku(), housed.filled().supply().count(),
                housed.sleds().stream().map(sled -> new Seat(sled.bay(), sled.line(), sled.machine())).toList());
    }
}
