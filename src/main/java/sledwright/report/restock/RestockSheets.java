package sledwright.report.restock;

import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.RestockView;
import sledwright.report.restock.RestockTables.Content;
import sledwright.report.workbook.WorkbookSheet;
import sledwright.report.workbook.Workbooks;
import sledwright.restock.RestockPlan;
import sledwright.words.Manner;

/** A restocking plan as a workbook: its main figures, a sheet for each table, and one that says what was assumed. */
public final class RestockSheets {

    private RestockSheets() {
    }

    public static byte[] of(RestockView view) {
        int digits = Math.max(0, view.shop().currency().getDefaultFractionDigits());
        List<WorkbookSheet> sheets = new ArrayList<>(List.of(headline(view, digits)));
        for (Content content : RestockTables.of(view)) {
            sheets.add(new WorkbookSheet(tab(content), content.columns().stream().map(column -> switch (column.holds()) {
                case MONEY -> WorkbookSheet.Column.amounts(column.header(), digits);
                case MEAN, SHARE -> WorkbookSheet.Column.amounts(column.header(), 1);
                case WORDS, COUNT -> WorkbookSheet.Column.of(column.header());
            }).toList(), content.rows()));
        }
        List<List<Object>> about = new ArrayList<>();
        RestockNotes.of(view).forEach((term, meaning) -> about.add(List.of(term, meaning.in(Manner.PLAIN))));
        RestockTables.of(view).stream().filter(content -> !content.note().isEmpty())
                .forEach(content -> about.add(List.of(content.name(), content.note())));
        sheets.add(new WorkbookSheet("About", List.of(WorkbookSheet.Column.of("What"), WorkbookSheet.Column.of("Says")), about));
        return Workbooks.of(view.plan().request().name() + ": what to stock", view.shop().pricedOn(), sheets);
    }

    /** A name that every spreadsheet takes; that of an order begins with its number, so that no two are alike. */
    private static String tab(Content content) {
        if (!content.id().startsWith(RestockTables.ORDER)) {
            return content.name();
        }
        return WorkbookSheet.nameOf("Order %s %s".formatted(content.id().substring(RestockTables.ORDER.length()),
                content.name().substring(RestockTables.ORDER_TO.length())));
    }

    /** What stands at the head of the other formats. */
    private static WorkbookSheet headline(RestockView view, int digits) {
        RestockPlan plan = view.plan();
        List<List<Object>> rows = new ArrayList<>();
        rows.add(List.of("To spend", view.amount(plan.cost()), ""));
        if (plan.request().budget().isPresent()) {
            rows.add(List.of("Budget", view.amount(plan.request().budget().getAsLong()), ""));
        }
        rows.add(row("Expected margin with the plan", plan.earned().with(), view));
        rows.add(row("Expected margin if nothing is bought", plan.earned().without(), view));
        rows.add(row("Gain", plan.earned().gain(), view));
        return new WorkbookSheet("Plan", List.of(WorkbookSheet.Column.of("Figure"),
                WorkbookSheet.Column.amounts(view.currency(), digits),
                WorkbookSheet.Column.amounts("Deviation, " + view.currency(), digits)), rows);
    }

    private static List<Object> row(String name, RestockPlan.Expected expected, RestockView view) {
        return List.of(name, view.amount(expected.mean()), view.amount(expected.halfWidth()));
    }
}
