package sledwright.report.restock;

import java.math.BigDecimal;
import sledwright.desk.view.PurchaseOrder;
import sledwright.desk.view.RestockView;
import sledwright.report.build.ExplanationText;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable.Fit;
import sledwright.report.text.TextTable;
import sledwright.restock.Levels;
import sledwright.restock.RestockPlan.Buy;
import sledwright.restock.RestockPlan.ClassOutlook;
import sledwright.restock.RestockPlan.CurvePoint;
import sledwright.restock.RestockPlan.Expected;
import sledwright.restock.RestockPlan.PartOutlook;
import sledwright.restock.RestockPlan;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** A restocking plan for people. */
public final class RestockText {

    private static final int MOST_DEAD = 20;

    private final RestockView view;
    private final RestockPlan plan;
    private final Page page;

    private RestockText(RestockView view, Screen screen) {
        this.view = view;
        plan = view.plan();
        page = new Page(screen);
    }

    public static String of(RestockView view, Screen screen) {
        return new RestockText(view, screen).write();
    }

    private String write() {
        page.text(Ink.HEAD, "%s: what to stock for %s"
                .formatted(plan.request().name(), Numbers.counted(plan.request().horizonMonths(), "month")));
        page.text("to spend: %s%s".formatted(RestockNotes.money(view, plan.cost()), plan.request().budget().isPresent()
                ? " of " + RestockNotes.money(view, plan.request().budget().getAsLong()) : ""));
        page.text("expected margin: %s with the plan, %s without; %s more"
                .formatted(spread(plan.earned().with()), spread(plan.earned().without()), spread(plan.earned().gain())));
        addBound();
        addBuys();
        addOrders();
        addClasses();
        addCurve();
        addWorth();
        addDead();
        addLevels();
        return page.toString();
    }

    private String spread(Expected expected) {
        return "%s +/- %s".formatted(view.amount(expected.mean()), view.amount(expected.halfWidth()));
    }

    private void addBound() {
        page.gap();
        RestockNotes.of(view).forEach((term, meaning) -> page.text(Sentence.of("%s: %s", term, meaning)));
    }

    private void addBuys() {
        page.heading("What to buy");
        if (plan.buys().isEmpty()) {
            page.text("Nothing: no purchase within the budget is expected to earn its money.");
            return;
        }
        TextTable table = new TextTable().column("part", Fit.LEFT).column("supplier", Fit.FLEXIBLE).column("units", Fit.RIGHT)
                .column("each", Fit.RIGHT)
                .column(view.currency(), Fit.RIGHT).column("why", Fit.FLEXIBLE);
        for (Buy buy : plan.buys()) {
            table.row(buy.offer().sku(), buy.offer().supplier(), buy.quantity(),
                    view.amount(buy.offer().unitCost()), view.amount(buy.cost()), buy.why());
        }
        page.table(table);
    }

    private void addOrders() {
        for (PurchaseOrder order : view.orders()) {
            page.heading(RestockTables.ORDER_TO + order.supplier());
            TextTable table = new TextTable().column("part", Fit.LEFT).column("", Fit.FLEXIBLE).column("condition", Fit.LEFT)
                    .column("units", Fit.RIGHT).column("each", Fit.RIGHT).column(view.currency(), Fit.RIGHT).column("days", Fit.RIGHT)
                    .column("note", Fit.FLEXIBLE);
            for (Buy line : order.lines()) {
                table.row(line.offer().sku(), view.description(line.offer().sku()), line.offer().condition().label(),
                        line.quantity(), view.amount(line.offer().unitCost()),
                        view.amount(line.cost()), line.offer().leadDays(), RestockNotes.remark(line));
            }
            page.table(table);
            page.text("Total: " + RestockNotes.of(order, view));
        }
    }

    private void addClasses() {
        page.heading("Orders filled");
        TextTable table = new TextTable().column("class", Fit.FLEXIBLE).column("orders", Fit.RIGHT).column("filled", Fit.RIGHT)
                .column("+/-", Fit.RIGHT)
                .column("without", Fit.RIGHT).column("pays", Fit.RIGHT).column("costs", Fit.RIGHT);
        for (ClassOutlook outlook : plan.classes()) {
            table.row(outlook.name(), RestockView.tenths(outlook.orders()), RestockView.percent(outlook.filled().with()),
                    RestockView.percent(outlook.filled().halfWidth()), RestockView.percent(outlook.filled().without()),
                    outlook.revenue().isPresent() ? view.amount(outlook.revenue().getAsLong()).toString() : "",
                    outlook.cost().isPresent() ? view.amount(outlook.cost().getAsLong()).toString() : "");
        }
        page.table(table);
        for (ClassOutlook outlook : plan.classes()) {
            if (outlook.impossible().isPresent()) {
                page.heading("%s cannot be served at any price".formatted(outlook.name()));
                ExplanationText.addConflicts(page, outlook.impossible().get());
            } else if (outlook.isUnprofitable()) {
                page.gap().text(Ink.FAIR, "%s: an order pays %s and costs at least %s, so none is filled for profit."
                        .formatted(outlook.name(), RestockNotes.money(view, outlook.revenue().getAsLong()),
                        RestockNotes.money(view, outlook.cost().getAsLong())));
            } else if (outlook.isLeftOut()) {
                page.gap().text(Ink.FAIR, "%s: none is filled. %s".formatted(outlook.name(), RestockNotes.LEFT_OUT));
            }
        }
    }

    private void addCurve() {
        page.heading("Expected margin by budget");
        TextTable table = new TextTable().column("budget", Fit.RIGHT).column("spent", Fit.RIGHT).column("margin", Fit.RIGHT)
                .column("+/-", Fit.RIGHT);
        for (CurvePoint point : plan.earned().curve()) {
            table.row(view.amount(point.budget()), view.amount(point.spent()),
                    view.amount(point.margin().mean()), view.amount(point.margin().halfWidth()));
        }
        page.table(table);
    }

    private void addWorth() {
        page.heading("Parts in use");
        if (view.wanted().isEmpty()) {
            page.text("None.");
            return;
        }
        TextTable table = new TextTable().column("part", Fit.LEFT).column("on shelf", Fit.RIGHT).column("bought", Fit.RIGHT)
                .column("used", Fit.RIGHT)
                .column("left loses", Fit.RIGHT).column("worth", Fit.RIGHT).column("one more", Fit.RIGHT).column("pay at most", Fit.RIGHT);
        for (PartOutlook part : view.wanted()) {
            table.row(part.sku(), part.units().standing(), part.units().bought(),
                    RestockView.tenths(part.units().used()), view.amount(part.value().lost()),
                    view.amount(part.value().worth()), view.amount(part.value().oneMore()), most(part));
        }
        page.table(table);
        page.text("worth: the least that a unit costs today. one more: what a further unit on the shelf would add, if orders were filled"
                + " in hindsight. pay at most: a price at which that pays, or at which some class is met as well with the part while"
                + " others cost what one more of them adds; above it none is.");
    }

    private String most(PartOutlook part) {
        return part.value().mostPrice().isPresent() ? view.amount(part.value().mostPrice().getAsLong()).toString() : "-";
    }

    private void addDead() {
        page.heading("Dead stock: parts that no expected order takes");
        TextTable table = new TextTable().column("part", Fit.LEFT).column("", Fit.FLEXIBLE).column("units", Fit.RIGHT)
                .column("worth", Fit.RIGHT)
                .column("loses", Fit.RIGHT).column("moves at", Fit.RIGHT);
        view.dead().stream().limit(MOST_DEAD)
                .forEach(part -> table.row(part.sku(), view.description(part.sku()), part.units().standing(),
                view.amount(part.value().worth()), view.amount(part.value().lost()), most(part)));
        if (view.dead().isEmpty()) {
            page.text("None.");
            return;
        }
        page.table(table);
        BigDecimal lost = view.amount(view.dead().stream().mapToDouble(part -> part.value().lost()).sum());
        page.text(("%s%s parts lose %s %s in all. moves at: the unit price at which some class is met as well with the part; -: in none,"
                + " not even as a gift.%s")
                .formatted(view.dead().size() > MOST_DEAD ? "These lose the most. " : "", view.dead().size(), lost, view.currency(),
                RestockNotes.ofExtras(view)));
    }

    private void addLevels() {
        if (view.levels().isEmpty()) {
            return;
        }
        page.heading("Reorder levels for a service of %s of lead times".formatted(RestockView.percent(plan.request().serviceLevel())));
        TextTable table = new TextTable().column("part", Fit.LEFT).column("days", Fit.RIGHT).column("a month", Fit.RIGHT)
                .column("sd", Fit.RIGHT)
                .column("reorder at", Fit.RIGHT).column("safety", Fit.RIGHT).column("lot", Fit.RIGHT).column("fill rate", Fit.RIGHT);
        for (Levels.Level level : view.levels()) {
            table.row(level.offer().sku(), level.offer().leadDays(), RestockView.tenths(level.perMonth()),
                    RestockView.tenths(level.deviation()), level.point(),
                    RestockView.tenths(level.service().safetyStock()), level.lot(),
                    RestockView.percent(level.service().fillRate()));
        }
        page.table(table);
    }
}
