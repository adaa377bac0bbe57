package sledwright.report.intake;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.catalog.intake.Change;
import sledwright.catalog.intake.Change.Edit;
import sledwright.catalog.intake.Change.Kind;
import sledwright.desk.view.ImportView;
import sledwright.input.Fault;
import sledwright.report.text.Json;

/** An import as JSON. */
public record ImportJson(@JsonUnwrapped Head head, @JsonUnwrapped Counts counts, List<ChangeJson> changes, List<RowFault> notTaken,
                         List<RowFault> warnings) {

    /** @param kept the file as it was; null where it was not kept */
    public record Head(String list, String file, String table, boolean written, String kept) {
    }

    /** Rows. */
    public record Counts(long added, long changed, long soldOut, long removed, int unchanged) {

        private static Counts of(ImportView view) {
            return new Counts(view.count(Kind.ADDED), view.count(Kind.CHANGED), view.count(Kind.SOLD_OUT), view.count(Kind.REMOVED),
                    view.made().unchanged());
        }
    }

    /** One row that changes; {@code line} is null where no line of the list says so. */
    public record ChangeJson(String change, Integer line, Map<String, String> key, List<Edit> edits) {

        private static ChangeJson of(Change change, ImportView view) {
            Map<String, String> key = new LinkedHashMap<>();
            for (int i = 0; i < change.key().size(); i++) {
                key.put(view.made().table().key().get(i), change.key().get(i));
            }
            return new ChangeJson(change.kind().label(), change.place().line() == 0 ? null : change.place().line(), key, change.edits());
        }
    }

    /** What is wrong or odd about a row of the list. */
    public record RowFault(String file, int line, String message) {

        private static List<RowFault> all(List<Fault> faults) {
            return faults.stream().map(fault -> new RowFault(fault.file(), fault.line(), fault.message())).toList();
        }
    }

    public static String of(ImportView view) {
        return Json.of(new ImportJson(new Head(view.list(), view.file(), view.made().table().label(), view.written(),
                view.kept().orElse(null)),
                Counts.of(view), view.made().changes().stream().map(change -> ChangeJson.of(change, view)).toList(),
                RowFault.all(view.made().refused()), RowFault.all(view.warnings())));
    }
}
