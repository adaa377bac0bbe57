package sledwright.report.intake;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.catalog.intake.Change;
import sledwright.catalog.intake.Change.Edit;
import sledwright.catalog.intake.Change.Kind;
import sledwright.desk.view.ImportView;
import sledwright.input.Fault;
import sledwright.report.page.Pages;

/** What an import changes, for the page: row by row, as it stood and as it would stand. */
public final class ImportPiece {

    /** Rows of a kind that are shown; what is beyond is counted. */
    private static final int MOST_ROWS = 300;

    private static final Map<Kind, String> TITLES = Map.of(Kind.ADDED, "Added", Kind.CHANGED, "Changed",
            Kind.SOLD_OUT, "Sold out, for the list leaves them out", Kind.REMOVED, "Price breaks that go, for the list leaves them out");

    /** Rows to which the same happens. */
    public record Group(String title, int rows, List<Row> shown, int more) {
    }

    /** One row of the table. */
    public record Row(String key, List<Cell> cells) {
    }

    /** One column that changes; what is empty stood or stands nowhere. */
    public record Cell(String column, String before, String after) {
    }

    private ImportPiece() {
    }

    /** @param seen names these changes: who applies them says it again */
    public static String of(ImportView view, String seen) {
        List<Group> groups = new ArrayList<>();
        for (Kind kind : Arrays.asList(Kind.ADDED, Kind.CHANGED, Kind.SOLD_OUT, Kind.REMOVED)) {
            List<Change> changes = view.made().changes().stream().filter(change -> change.kind() == kind).toList();
            if (!changes.isEmpty()) {
                groups.add(new Group(TITLES.get(kind), changes.size(),
                        changes.stream().limit(MOST_ROWS).map(change -> row(change, view)).toList(),
                        Math.max(0, changes.size() - MOST_ROWS)));
            }
        }
        return Pages.filled("import-answer.ftlh", Map.of("view", Map.of("list", view.list(), "table", view.made().table().file(),
                "unchanged", view.made().unchanged(), "refusedRows", view.refusedRows(), "written", view.written(),
                "kept", view.kept().map(kept -> Path.of(kept).getFileName().toString()).orElse("")), "groups", groups,
                "refused", view.made().refused().stream().map(Fault::toString).toList(),
                "warnings", view.warnings().stream().map(Fault::toString).toList(),
                "seen", Optional.of(seen).filter(same -> !view.made().changes().isEmpty()).orElse("")));
    }

    private static Row row(Change change, ImportView view) {
        return new Row(String.join(", ", change.key()), change.edits().stream()
                .filter(edit -> !view.made().table().key().contains(edit.column()))
                .map(edit -> cell(edit, change.kind())).toList());
    }

    private static Cell cell(Edit edit, Kind kind) {
        return new Cell(edit.column(), kind == Kind.ADDED ? "" : edit.before(), kind == Kind.REMOVED ? "" : edit.after());
    }
}
