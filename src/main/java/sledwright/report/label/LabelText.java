package sledwright.report.label;

import java.util.List;
import java.util.Optional;
import sledwright.desk.view.LabelView;
import sledwright.label.Meaning;
import sledwright.label.Reading;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;

/** Modules from labels, for people. */
public final class LabelText {

    private LabelText() {
    }

    public static String of(LabelView view, Screen screen) {
        Page page = new Page(screen);
        for (Reading reading : view.readings()) {
            if (reading != view.readings().get(0)) {
                page.gap();
            }
            page.text(Ink.HEAD, reading.from());
            if (!reading.from().equals(reading.label().toString())) {
                page.text("as the standard prints it: " + reading.label());
            }
            page.gap().table(meanings(reading.meanings()));
            if (reading.meanings().stream().anyMatch(Meaning::fromMemory)) {
                page.text("* from memory of the standard");
            }
            if (!reading.passedOver().isEmpty()) {
                page.text("ignored, since it is not a field of a label: " + String.join(" ", reading.passedOver()));
            }
            page.heading("The row of memory.csv").table(row(reading));
            page.heading("Not known").items(reading.unknown().stream().map(one -> one.what() + ": " + one.why()).toList());
        }
        return page.toString();
    }

    private static TextTable meanings(List<Meaning> meanings) {
        TextTable table = new TextTable().column("field", Fit.LEFT).column("written", Fit.LEFT).column("means", Fit.FLEXIBLE);
        meanings.forEach(meaning -> table.row(meaning.field(), meaning.written(), meaning.meaning() + (meaning.fromMemory() ? " *" : "")));
        return table;
    }

    private static TextTable row(Reading reading) {
        TextTable table = new TextTable().column("", Fit.LEFT).column("", Fit.FLEXIBLE);
        List<Optional<Object>> cells = LabelView.cells(reading);
        for (int column = 0; column < cells.size(); column++) {
            table.row(LabelView.COLUMNS.get(column), cells.get(column).map(Object::toString).orElse("(empty)"));
        }
        return table;
    }
}
