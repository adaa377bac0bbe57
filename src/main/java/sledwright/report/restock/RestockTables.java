package sledwright.report.restock;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import sledwright.desk.view.PurchaseOrder;
import sledwright.desk.view.RestockView;
import sledwright.restock.Levels;
import sledwright.restock.RestockPlan;
import sledwright.restock.RestockPlan.ClassOutlook;

/** The tables of a restocking plan, for every format that has room for all of it. */
final class RestockTables {

    /** What a column holds. */
    enum Holds {
        WORDS, COUNT, MEAN, SHARE, MONEY
    }

    record Column(String header, Holds holds) {
    }

    /**
     * A table.
     *
     * @param note what is to be said of it
     * @param rows cells in the order of the columns: text or numbers; an empty text is an empty cell
     */
    record Content(String id, String name, String note, List<Column> columns, List<List<Object>> rows) {
    }

    /** How the identifier and the name of a purchase order's table begin. */
    static final String ORDER = "order-";
    static final String ORDER_TO = "Purchase order to ";

    private final RestockView view;
    private final RestockPlan plan;

    private RestockTables(RestockView view) {
        this.view = view;
        plan = view.plan();
    }

    static List<Content> of(RestockView view) {
        RestockTables tables = new RestockTables(view);
        List<Content> all = new ArrayList<>(List.of(tables.buys()));
        for (PurchaseOrder order : view.orders()) {
            all.add(tables.order(order, all.size()));
        }
        all.addAll(List.of(tables.classes(), tables.curve(), tables.parts(), tables.dead()));
        if (!view.levels().isEmpty()) {
            all.add(tables.levels());
        }
        return all;
    }

    private static Column words(String header) {
        return new Column(header, Holds.WORDS);
    }

    private static Column count(String header) {
        return new Column(header, Holds.COUNT);
    }

    private static Column mean(String header) {
        return new Column(header, Holds.MEAN);
    }

    private static Column share(String header) {
        return new Column(header, Holds.SHARE);
    }

    private Column money(String header) {
        return new Column(header + ", " + view.currency(), Holds.MONEY);
    }

    private static BigDecimal rounded(double figure, int digits) {
        return BigDecimal.valueOf(figure).setScale(digits, RoundingMode.HALF_UP);
    }

    private Object amount(OptionalLong minor) {
        return minor.isPresent() ? view.amount(minor.getAsLong()) : "";
    }

    private Content buys() {
        List<List<Object>> rows = plan.buys().stream().map(buy -> List.<Object>of(buy.offer().sku(), view.description(buy.offer().sku()),
                buy.offer().supplier(), buy.offer().condition().label(), buy.quantity(), view.amount(buy.offer().unitCost()),
                view.amount(buy.cost()), buy.offer().leadDays(), buy.why())).toList();
        return new Content("buy", "What to buy", rows.isEmpty()
                ? "Nothing: no purchase within the budget is expected to earn its money." : "",
                List.of(words("Part"), words("Description"), words("Supplier"), words("Condition"), count("Units"), money("Each"),
                money("Cost"), count("Days"), words("Why")), rows);
    }

    private Content order(PurchaseOrder order, int number) {
        List<List<Object>> rows = new ArrayList<>();
        for (RestockPlan.Buy line : order.lines()) {
            rows.add(List.of(line.offer().sku(), view.description(line.offer().sku()), line.offer().condition().label(),
                    line.quantity(),
                    view.amount(line.offer().unitCost()), view.amount(line.cost()), line.offer().leadDays(), RestockNotes.remark(line)));
        }
        rows.add(List.of("Total", "", "", order.units(), "", view.amount(order.total()), order.days(), ""));
        return new Content(ORDER + number, ORDER_TO + order.supplier(), RestockNotes.of(order, view),
                List.of(words("Part"), words("Description"), words("Condition"), count("Units"), money("Each"), money("Cost"),
                        count("Days"), words("Note")), rows);
    }

    private Content classes() {
        return new Content("classes", "Orders filled",
                "Shares of the orders that come; the deviation is half the 95 % confidence interval.",
                List.of(words("Class"), mean("Orders"), share("Filled, %"), share("Deviation, %"), share("Without the plan, %"),
                money("An order pays"), money("It costs"), words("Remark")),
                plan.classes().stream()
                .map(outlook -> List.<Object>of(outlook.name(), rounded(outlook.orders(), 1), rounded(100 * outlook.filled().with(), 1),
                        rounded(100 * outlook.filled().halfWidth(), 1), rounded(100 * outlook.filled().without(), 1),
                        amount(outlook.revenue()), amount(outlook.cost()), remark(outlook))).toList());
    }

    private static String remark(ClassOutlook outlook) {
        if (outlook.impossible().isPresent()) {
            return "Cannot be served at any price. " + String.join(" ", outlook.impossible().get().conflicts().stream()
                    .map(conflict -> conflict.message()).toList());
        }
        return outlook.isUnprofitable() ? "Costs at least what it pays, so none is filled for profit."
                : outlook.isLeftOut() ? RestockNotes.LEFT_OUT : "";
    }

    private Content curve() {
        return new Content("curve", "Expected margin by budget", "Each plan is tried on the same courses of events.",
                List.of(money("Budget"), money("Spent"), money("Margin"), money("Deviation")),
                plan.earned().curve().stream().map(point -> List.<Object>of(view.amount(point.budget()), view.amount(point.spent()),
                        view.amount(point.margin().mean()), view.amount(point.margin().halfWidth()))).toList());
    }

    private Content parts() {
        return new Content("parts", "Parts in use",
                "One more: what a further unit on the shelf would add, if orders were filled in hindsight. Pay at most:"
                + " a price at which that pays, or at which some class is met as well with the part while others cost what one more of"
                + " them adds; above it"
                + " none is.", List.of(words("Part"), words("Description"), count("On the shelf"), count("Bought"), mean("Used"),
                mean("Left"), money("Left loses"), money("Worth today"), money("One more"), money("Pay at most")),
                view.wanted().stream().map(part -> row(part.sku(), part.units(), part.value())).toList());
    }

    private List<Object> row(String sku, RestockPlan.Units units, RestockPlan.Value value) {
        return List.of(sku, view.description(sku), units.standing(), units.bought(), rounded(units.used(), 1), rounded(units.left(), 1),
                view.amount(value.lost()), view.amount(value.worth()), view.amount(value.oneMore()), amount(value.mostPrice()));
    }

    private Content dead() {
        return new Content("dead", "Dead stock",
                "Parts that no expected order takes. Moves at: the unit price at which some class is met as well with"
                + " the part; empty: in none, not even as a gift." + RestockNotes.ofExtras(view),
                List.of(words("Part"), words("Description"), count("Units"), money("Worth today"), money("Loses"), money("Moves at")),
                view.dead().stream()
                .map(part -> List.<Object>of(part.sku(), view.description(part.sku()), part.units().standing(),
                        view.amount(part.value().worth()), view.amount(part.value().lost()), amount(part.value().mostPrice()))).toList());
    }

    private Content levels() {
        List<List<Object>> rows = new ArrayList<>();
        for (Levels.Level level : view.levels()) {
            rows.add(List.of(level.offer().sku(), level.offer().supplier(), level.offer().leadDays(), rounded(level.perMonth(), 1),
                    rounded(level.deviation(), 1),
                    level.point(), rounded(level.service().safetyStock(), 1), level.lot(), rounded(100 * level.service().cycleService(), 1),
                    rounded(100 * level.service().fillRate(), 1)));
        }
        return new Content("levels", "Reorder levels", "Buy again when no more units than this are left.",
                List.of(words("Part"), words("Supplier"), count("Days"), mean("A month"), mean("Standard deviation"), count("Reorder at"),
                        mean("Safety stock"), count("Lot"), share("Lead times that suffice, %"), share("Fill rate, %")), rows);
    }
}
