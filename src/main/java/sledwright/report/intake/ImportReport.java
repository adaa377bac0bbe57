package sledwright.report.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import sledwright.catalog.intake.Change;
import sledwright.catalog.intake.Change.Edit;
import sledwright.catalog.intake.Change.Kind;
import sledwright.desk.view.ImportView;
import sledwright.report.text.Csv;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;

/** An import in text and CSV. */
public final class ImportReport {

    private ImportReport() {
    }

    public static String text(ImportView view, Screen screen) {
        Page page = new Page(screen);
        page.text(Ink.HEAD, "%s into %s".formatted(view.list(), view.file()));
        page.text("rows: %s added, %s changed, %s unchanged, %s not taken%s".formatted(view.count(Kind.ADDED), view.count(Kind.CHANGED),
                view.made().unchanged(), view.refusedRows(), leftOut(view)));
        changes(page, "Added", view, Kind.ADDED);
        changes(page, "Changed", view, Kind.CHANGED);
        changes(page, "Sold out, for the list leaves them out", view, Kind.SOLD_OUT);
        changes(page, "Price breaks that go, for the list leaves them out", view, Kind.REMOVED);
        if (!view.made().refused().isEmpty()) {
            page.heading("Not taken");
            view.made().refused().forEach(fault -> page.item("- ", fault.toString()));
        }
        if (!view.warnings().isEmpty()) {
            page.heading("Warnings");
            view.warnings().forEach(warning -> page.item("- ", warning.toString()));
        }
        page.gap();
        if (view.written()) {
            page.text(Ink.GOOD, "written" + view.kept().map(kept -> "; the file as it was is kept as " + kept).orElse(""));
        } else if (view.made().changes().isEmpty()) {
            page.text("nothing to write");
        } else {
            page.text(Ink.FAIR, view.made().refused().isEmpty() ? "nothing was written yet; --apply writes it"
                    : "nothing was written; put the rows right, or take the others with --apply --skip-faulty");
        }
        return page.toString();
    }

    private static String leftOut(ImportView view) {
        long soldOut = view.count(Kind.SOLD_OUT);
        long removed = view.count(Kind.REMOVED);
        return (soldOut == 0 ? "" : ", %s sold out".formatted(soldOut)) + (removed == 0 ? "" : ", %s removed".formatted(removed));
    }

    private static void changes(Page page, String heading, ImportView view, Kind kind) {
        List<Change> changes = view.made().changes().stream().filter(change -> change.kind() == kind).toList();
        if (changes.isEmpty()) {
            return;
        }
        page.heading(heading);
        for (Change change : changes) {
            page.item("- ", String.join(", ", change.key()) + ": "
                    + change.edits().stream().filter(edit -> !view.made().table().key().contains(edit.column()))
                    .map(edit -> words(edit, kind)).collect(Collectors.joining("; ")));
        }
    }

    private static String words(Edit edit, Kind kind) {
        return kind == Kind.ADDED ? edit.column() + " " + edit.after() : kind == Kind.REMOVED ? edit.column() + " " + edit.before()
                : "%s %s -> %s".formatted(edit.column(), edit.before().isEmpty() ? "(empty)" : edit.before(), edit.after());
    }

    /** One row for each cell that changes, then one for each reason why a row was not taken. */
    public static String csv(ImportView view) {
        List<List<Object>> rows = new ArrayList<>();
        for (Change change : view.made().changes()) {
            for (Edit edit : change.edits()) {
                rows.add(List.of(change.kind().label(), change.place().line() == 0 ? "" : change.place().line(),
                        String.join(", ", change.key()), edit.column(), edit.before(),
                        edit.after(), ""));
            }
        }
        view.made().refused().forEach(fault -> rows.add(List.of("not taken", fault.line(), "", "", "", "", fault.message())));
        view.warnings().forEach(warning -> rows.add(List.of("warning", warning.line(), "", "", "", "", warning.message())));
        return Csv.write(List.of("change", "line", "key", "column", "before", "after", "message"), rows);
    }
}
