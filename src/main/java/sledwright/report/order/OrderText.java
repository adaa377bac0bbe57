package sledwright.report.order;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sledwright.desk.view.Line;
import sledwright.desk.view.OrderView.Delivery;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Group;
import sledwright.desk.view.OrderView.Housed;
import sledwright.desk.view.OrderView.Lack;
import sledwright.desk.view.OrderView.Later;
import sledwright.desk.view.OrderView.Picked;
import sledwright.desk.view.OrderView.Scarce;
import sledwright.desk.view.OrderView.Shortage;
import sledwright.desk.view.OrderView.Sled;
import sledwright.desk.view.OrderView;
import sledwright.metrics.Figures;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderStatus;
import sledwright.report.build.BuildText;
import sledwright.report.build.MachineCells;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable.Fit;
import sledwright.report.text.TextTable;
import sledwright.words.Advice;
import sledwright.words.Manner;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** The answer to an order, for people. */
public final class OrderText {

    private final OrderView view;
    private final Page page;
    private final Manner manner;

    private OrderText(OrderView view, Screen screen) {
        this.view = view;
        page = new Page(screen);
        manner = screen.manner();
    }

    public static String of(OrderView view, Screen screen) {
        return new OrderText(view, screen).write();
    }

    private String write() {
        page.text(Ink.HEAD, "%s: %s on %s".formatted(view.topic().request(), machines(view.topic().machines()),
                Numbers.counted(view.contents().lines().size(), "line")));
        addStatus();
        view.reservations().forEach(page::text);
        view.day().warnings().forEach(warning -> page.text(Ink.FAIR, warning));
        if (view.delivered() > 0) {
            page.text(price());
            BuildText.payment(view.sale().pays()).forEach((label, amount) -> page.line("%s: %s".formatted(label, money(amount))));
        }
        if (!view.isPriceAlone() && view.proof().best().isPresent()) {
            page.text(counted());
        }
        if (view.proof().status() == OrderStatus.SHORT && view.delivered() > 0) {
            page.text(ofAsMuch());
        }
        addLines();
        view.shortage().ifPresent(this::addShortage);
        view.contents().lines().forEach(this::addLine);
        addEnclosures();
        addPicks();
        addScarce();
        return page.toString();
    }

    private void addStatus() {
        switch (view.proof().status()) {
            case PROVED -> page.text(Ink.GOOD, "proved: no order of all these machines %s".formatted(view.isPriceAlone() ? "costs less"
                    : "comes to less"));
            case BEST_FOUND -> page.text(Ink.FAIR, view.proof().ended() == OrderOutcome.End.KEPT ? "the machines as they are kept"
                    : "best found, not proved: %s".formatted(view.proof().bound()
                    .map(bound -> "no order of all these machines %s less than %s%s"
                    .formatted(view.isPriceAlone() ? "costs" : "comes to", money(bound), view.proof().gapPercent()
                            .map(gap -> ", %s %% below".formatted(gap)).orElse("")))
                    .orElse("how much cheaper an order could be is not known") + ended()));
            case SHORT -> page.text(Ink.BAD, "short: %s of %s can be delivered%s; %s".formatted(view.delivered() == 0 ? "none"
                    : view.delivered(), machines(view.topic().machines()), view.delivered() == 0 ? " so far as was found" : "", most()));
            case IMPOSSIBLE -> page.text(Ink.BAD, "impossible: not one of the machines can be delivered");
        }
    }

    private String most() {
        String by = view.contents().lines().stream().mapToInt(line -> line.line().priority()).distinct().count() > 1
                ? ", counted by priority" : "";
        return view.shortage().map(Shortage::most).orElse(false) ? "proved: no order delivers more" + by
                : "not proved that no order delivers more" + by + ended();
    }

    /** Whether anything that delivers as much as a short order could cost less. */
    private String ofAsMuch() {
        if (view.proof().bound().isEmpty()) {
            return "how much cheaper an order that delivers as much could be is not known" + ended();
        }
        return view.proof().ended() == OrderOutcome.End.PROVED
                ? "proved: no order that delivers as much %s".formatted(view.isPriceAlone() ? "costs less" : "comes to less")
                : "no order that delivers as much %s less than %s%s".formatted(view.isPriceAlone() ? "costs" : "comes to",
                        money(view.proof().bound().get()), ended());
    }

    private String ended() {
        if (!view.reservations().isEmpty()) {
            return "";
        }
        return view.proof().ended() == OrderOutcome.End.TIME ? ". The time was over. " + Advice.MORE_TIME.in(manner)
                : ". The search ended before the time was over, since it has nothing left to try";
    }

    private static String machines(int count) {
        return Numbers.counted(count, "machine");
    }

    private String money(BigDecimal amount) {
        return amount + " " + view.topic().currency();
    }

    private String price() {
        List<String> shares = new ArrayList<>(BuildText.shares(view.cost().parts(), view.cost().labour(), view.cost().licence()));
        if (view.cost().delivery().signum() != 0) {
            shares.add("delivery %s%s".formatted(view.cost().delivery(), view.contents().suppliers().isEmpty() ? ""
                    : " by " + Numbers.counted(view.deliveries(), "supplier")));
        }
        return "price%s: %s (%s)".formatted(view.shortage().isPresent() ? " of what is delivered"
                : "", money(view.cost().total()), String.join(" + ", shares));
    }

    private String counted() {
        String charge = view.cost().charge().signum() == 0 ? ""
                : ", with %s for further part numbers of memory module in a machine".formatted(view.cost().charge());
        String worth = view.cost().worth().signum() == 0 ? ""
                : ", less %s that the surplus of best-value lines is worth".formatted(view.cost().worth());
        return "what is brought down: %s (the price%s%s)".formatted(money(view.proof().best().orElseThrow()), charge, worth);
    }

    private void addLines() {
        page.heading("Lines");
        boolean missing = view.shortage().isPresent();
        boolean priorities = view.contents().lines().stream().mapToInt(line -> line.line().priority()).distinct().count() > 1;
        TextTable table = new TextTable().column("line", Fit.FLEXIBLE).column("machines", Fit.RIGHT);
        if (missing) {
            table.column("delivered", Fit.RIGHT).column("missing", Fit.RIGHT);
        }
        if (priorities) {
            table.column("priority", Fit.RIGHT);
        }
        table.column("builds", Fit.RIGHT).column("days", Fit.RIGHT).column(view.topic().currency(), Fit.RIGHT);
        for (Filled line : view.contents().lines()) {
            List<String> cells = new ArrayList<>(List.of(line.line().name(), String.valueOf(line.line().machines())));
            if (missing) {
                cells.addAll(List.of(String.valueOf(line.delivered()), String.valueOf(line.missing())));
            }
            if (priorities) {
                cells.add(String.valueOf(line.line().priority()));
            }
            cells.addAll(List.of(String.valueOf(line.builds().size()),
                    String.valueOf(line.builds().stream().mapToInt(group -> group.build().leadDays()).max().orElse(0)), line.price()
                    .toString()));
            table.row(cells);
        }
        page.table(table);
    }

    private void addShortage(Shortage shortage) {
        for (Filled line : view.contents().lines()) {
            line.why().ifPresent(why -> {
                page.heading("Why not one machine of %s can be built".formatted(line.line().name()));
                why.conflicts().forEach(conflict -> page.item("- ", conflict.sentence()));
                why.relaxations().forEach(relaxation -> page.item("- ", Sentence.of("A way out: %s", relaxation.sentence())));
                page.items(why.notes());
            });
        }
        if (!shortage.causes().isEmpty()) {
            page.heading("What is in the way");
            shortage.causes().forEach(cause -> page.item("- ", cause.message()));
        }
        if (!shortage.lacks().isEmpty()) {
            page.heading("Units to add to the stock so that all can be delivered");
            TextTable table = new TextTable().column("part", Fit.LEFT).column("", Fit.FLEXIBLE).column("units", Fit.RIGHT)
                    .column("for", Fit.FLEXIBLE);
            shortage.lacks().forEach(lack -> table.row(lack.sku(), lack.description(), lack.units(), users(lack)));
            page.table(table);
        }
        shortage.later().ifPresent(this::addLater);
        if (!shortage.looked()) {
            page.gap().text(Sentence.of("The time was over before all was found out about what is lacking. %s", Advice.MORE_TIME));
        } else if (shortage.later().isEmpty() && view.contents().lines().stream().allMatch(line -> line.why().isEmpty())) {
            page.gap().text("No order of all these machines was found with parts that come later, either.");
        }
    }

    private String users(Lack lack) {
        List<String> users = new ArrayList<>();
        lack.byLine().forEach((line, units) -> users.add(lack.byLine().size() == 1 && units == lack.units() ? line
                : "%s %s".formatted(line, units)));
        int housed = lack.units() - lack.byLine().values().stream().mapToInt(Integer::intValue).sum();
        if (housed > 0) {
            users.add("enclosures" + (users.isEmpty() ? "" : " " + housed));
        }
        return String.join(", ", users);
    }

    private void addLater(Later later) {
        page.heading("The whole order, later")
                .text("Where the lines wait %s, all %s can be delivered for %s. What arrives after the day that its line allows:"
                        .formatted(Numbers.counted(later.leadDays(), "day"), machines(view.topic().machines()), money(later.price())));
        page.table(BuildText.lines(later.purchases(), view.topic().currency()));
    }

    private void addLine(Filled line) {
        for (Group group : line.builds()) {
            page.heading("%s%s: %s".formatted(line.line().name(), line.builds().size() == 1 ? "" : ", build " + group.number(),
                    machines(group.build().count())));
            page.text("%s, %s".formatted(BuildText.machine(group.build()), BuildText.memory(group.build())));
            page.text(figures(group));
            addSlots(group);
            for (Picked picked : group.picked()) {
                addPicked(line, group, picked);
            }
        }
    }

    private String figures(Group group) {
        Figures figures = group.build().figures();
        String usable = figures.usableGb() == figures.memoryGb() ? "" : ", %s GB of it usable".formatted(Numbers.plain(figures.usableGb()));
        String wall = figures.wallW().isPresent() ? " (%s W from the wall)".formatted(BuildText.wall(figures)) : "";
        return "Each: %s cores, throughput %s; %s GB%s at %s MT/s (set by %s), %s GB/s, %s; %s W%s. All: %s"
                .formatted(figures.cores(), BuildText.throughput(figures), figures.memoryGb(), usable, figures.speed().mts(),
                figures.speed().setBy().label(), Numbers.plain(figures.bandwidthGbs()),
                Numbers.counted(figures.spareSlots(), "slot left", "slots left"), Numbers.plain(figures.loadW()), wall,
                money(group.build().price().orElseThrow()));
    }

    /** Which module goes where, in words that fit a line: the slot map is the bench's. */
    private void addSlots(Group group) {
        Map<String, List<String>> slots = new LinkedHashMap<>();
        group.build().heaviest().slots().forEach((slot, sku) -> slots.computeIfAbsent(sku, some -> new ArrayList<>()).add(slot));
        slots.forEach((sku, names) -> page.item("- ", "%s in %s".formatted(sku, String.join(", ", names))));
        MachineCells.places(group.build().heaviest().fitout()).forEach(place -> page.item("- ", place));
    }

    private void addPicked(Filled line, Group group, Picked picked) {
        String which = picked.machines() == 1 ? "machine %s".formatted(picked.first())
                : "each of machines %s to %s".formatted(picked.first(), picked.last());
        page.text("To pick for %s:".formatted(line.line().machines() == 1 ? "the machine" : which));
        TextTable table = new TextTable().column("", Fit.LEFT).column("", Fit.LEFT).column("", Fit.FLEXIBLE).column("", Fit.FLEXIBLE)
                .column("", Fit.RIGHT);
        for (Line part : picked.lines()) {
            table.row("  " + part.quantity() + " x", part.sku(), "lot " + part.source().orElseThrow().lot(),
                    part.source().orElseThrow().supplier(), part.unitPrice());
        }
        page.table(table);
    }

    private void addEnclosures() {
        for (Housed housed : view.contents().enclosures()) {
            page.heading("Enclosure %s: %s (%s), fed by %s x %s"
                    .formatted(housed.number(), housed.filled().enclosure().sku(), housed.filled().enclosure().name(),
                    housed.filled().supply().count(), housed.filled().supply().sku()));
            page.text("%s of %s, %s W of load. Enclosure and supplies: %s"
                    .formatted(housed.sleds().size(), Numbers.counted(housed.filled().enclosure().bays(), "bay filled", "bays filled"),
                    Numbers.plain(housed.loadW()), money(housed.price())));
            Map<String, List<Sled>> byLine = housed.sleds().stream()
                    .collect(Collectors.groupingBy(Sled::line, LinkedHashMap::new, Collectors.toList()));
            byLine.forEach((line, sleds) -> page.item("- ", "%s: %s".formatted(line, sleds.stream()
                    .map(sled -> "machine %s in bay %s".formatted(sled.machine(), sled.bay())).collect(Collectors.joining(", ")))));
        }
    }

    private void addPicks() {
        if (view.contents().picks().isEmpty()) {
            return;
        }
        page.heading("Parts to pick, by lot")
                .table(BuildText.lines(view.contents().picks(), view.topic().currency(), "parts", "", view.cost().parts()));
        if (view.contents().suppliers().isEmpty()) {
            return;
        }
        TextTable suppliers = new TextTable().column("supplier", Fit.FLEXIBLE).column("lots", Fit.RIGHT).column("units", Fit.RIGHT)
                .column("days", Fit.RIGHT)
                .column(view.topic().currency(), Fit.RIGHT);
        boolean charged = view.cost().delivery().signum() != 0;
        if (charged) {
            suppliers.column("delivery", Fit.RIGHT);
        }
        for (Delivery delivery : view.contents().suppliers()) {
            suppliers.row(delivery.own() ? delivery.supplier() + ", own shelf"
                    : delivery.supplier(), delivery.lots(), delivery.units(),
                    delivery.leadDays(), delivery.parts(), charged ? delivery.charge().toString() : "");
        }
        page.heading(view.contents().suppliers().stream().anyMatch(Delivery::own) ? "Who delivers, and the shop's own shelf"
                : "Who delivers")
                .table(suppliers);
    }

    private void addScarce() {
        if (!view.contents().scarce().isEmpty()) {
            page.heading("What is scarce, by the bound's linear relaxation");
            for (Scarce scarce : view.contents().scarce()) {
                page.item("- ", "One more %s would save about %s.".formatted(scarce.sku(), money(scarce.saves())));
            }
        }
    }
}
