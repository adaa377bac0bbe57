package sledwright.report.order;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.desk.view.Line;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Group;
import sledwright.desk.view.OrderView.Housed;
import sledwright.desk.view.OrderView.Picked;
import sledwright.desk.view.OrderView.Sled;
import sledwright.desk.view.Payment;
import sledwright.domain.Fitout;
import sledwright.report.text.Csv;
import sledwright.words.Numbers;

/** The pick list of an order by machine and lot, and what else it pays for: the totals add up to what is paid before tax. */
public final class OrderCsv {

    private static final List<String> HEADER = List.of("request", "status", "currency", "kind", "line", "machine", "build", "enclosure",
            "bay", "sku",
            "description", "lot", "supplier", "condition", "lead_days", "slots", "unit_cost", "quantity", "unit_price", "total");

    private final OrderView view;
    private final Map<String, Map<Integer, Place>> places = new LinkedHashMap<>();
    private final List<List<Object>> rows = new ArrayList<>();

    /** Where a sled stands. */
    private record Place(int enclosure, int bay) {
    }

    private OrderCsv(OrderView view) {
        this.view = view;
        for (Housed housed : view.contents().enclosures()) {
            for (Sled sled : housed.sleds()) {
                places.computeIfAbsent(sled.line(), line -> new LinkedHashMap<>())
                        .put(sled.machine(), new Place(housed.number(), sled.bay()));
            }
        }
    }

    /**
     * One row for each lot that a machine or an enclosure takes units from, for labour and licence of each build, for each delivery,
     * and for what is taken off.
     */
    public static String of(OrderView view) {
        OrderCsv csv = new OrderCsv(view);
        view.contents().lines().forEach(csv::addLine);
        view.contents().enclosures().forEach(housed -> housed.lines().forEach(line -> csv.add(line, "", "", "", housed.number(), "", "")));
        if (view.cost().delivery().signum() != 0) {
            if (view.contents().suppliers().isEmpty()) {
                csv.addCharge("delivery", "", "", view.cost().delivery());
            }
            view.contents().suppliers().stream().filter(delivery -> !delivery.own())
                    .forEach(delivery -> csv.addCharge("delivery", "", delivery.supplier(), delivery.charge()));
        }
        Payment pays = view.sale().pays();
        if (pays.isChanged()) {
            csv.addCharge("discount", pays.percent().map(percent -> Numbers.rate(percent) + " %").orElse("agreed price"), "",
                    pays.change());
        }
        return Csv.write(HEADER, csv.rows);
    }

    private void addCharge(String kind, String description, String supplier, BigDecimal amount) {
        rows.add(List.of(view.topic().request(), view.proof().status().label(), view.topic().currency(), kind, "", "", "", "", "",
                kind, description, "", supplier, "", "", "", "", 1, amount, amount));
    }

    private void addLine(Filled line) {
        for (Group group : line.builds()) {
            for (Picked picked : group.picked()) {
                for (int machine = picked.first(); machine <= picked.last(); machine++) {
                    addMachine(line, group, picked, machine);
                }
            }
            group.build().lines().stream().filter(paid -> paid.kind() != Line.Kind.PART || group.picked().isEmpty())
                    .forEach(paid -> add(paid, line.line().name(), "", group.number(), "", "", ""));
        }
    }

    private void addMachine(Filled line, Group group, Picked picked, int machine) {
        Optional<Place> place = Optional.ofNullable(places.getOrDefault(line.line().name(), Map.of()).get(machine));
        Map<String, List<String>> slots = new LinkedHashMap<>();
        group.build().heaviest().slots().forEach((slot, sku) -> slots.computeIfAbsent(sku, some -> new ArrayList<>()).add(slot));
        Fitout fitout = group.build().heaviest().fitout();
        fitout.seats().forEach(seat -> slots.computeIfAbsent(seat.drive().sku(), some -> new ArrayList<>()).add(seat.bay()));
        fitout.cards().forEach((slot, card) -> slots.computeIfAbsent(card.sku(), some -> new ArrayList<>()).add(slot));
        for (Line part : picked.lines()) {
            // Units of one module are alike wherever they come from: the first lot's go into the first slots, and so with drives and bays.
            List<String> open = slots.getOrDefault(part.sku(), List.of());
            String into = open.isEmpty() ? "" : String.join("; ", open.subList(0, part.quantity()));
            if (!open.isEmpty()) {
                slots.put(part.sku(), open.subList(part.quantity(), open.size()));
            }
            add(part, line.line().name(), machine, group.number(), place.<Object>map(Place::enclosure).orElse(""),
                    place.<Object>map(Place::bay).orElse(""), into);
        }
    }

    private void add(Line paid, String line, Object machine, Object build, Object enclosure, Object bay, String slots) {
        rows.add(List.of(view.topic().request(), view.proof().status().label(), view.topic().currency(), paid.kind().label(), line, machine,
                build, enclosure, bay, paid.sku(), paid.description(), paid.source().map(Line.Source::lot).orElse(""), paid.source()
                .map(Line.Source::supplier).orElse(""), paid.source().map(Line.Source::condition).orElse(""),
                Csv.cell(paid.source().map(Line.Source::leadDays)), slots, Csv.cell(paid.source().flatMap(Line.Source::unitCost)),
                paid.quantity(), paid.unitPrice(), paid.total()));
    }
}
