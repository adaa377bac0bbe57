package sledwright.report.build;

import sledwright.explain.Explanation;
import sledwright.report.text.Page;

/** The parts of a text that say why nothing is possible, and what would be. */
public final class ExplanationText {

    private ExplanationText() {
    }

    public static void addConflicts(Page page, Explanation explanation) {
        if (!explanation.conflicts().isEmpty()) {
            page.heading("What conflicts, whatever else gives way");
            explanation.conflicts().forEach(conflict -> page.item("- ", conflict.sentence()));
        }
        if (!explanation.lacks().isEmpty()) {
            page.heading("What the catalogue lacks");
            explanation.lacks().forEach(lack -> page.item("- ", lack.platform() + ": " + lack.what().message()));
        }
        if (!explanation.relaxations().isEmpty()) {
            page.heading("Ways out, all else as asked");
            explanation.relaxations().forEach(relaxation -> page.item("- ", relaxation.sentence()));
        }
        if (!explanation.notes().isEmpty()) {
            page.gap();
            explanation.notes().forEach(page::text);
        }
    }
}
