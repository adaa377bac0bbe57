package sledwright.report;

import sledwright.explain.Explanation;

/** The parts of a text that say why nothing can be had, and what would do. */
final class ExplanationText {

    private ExplanationText() {
    }

    static void addConflicts(Page page, Explanation explanation) {
        if (!explanation.conflicts().isEmpty()) {
            page.heading("What conflicts, whatever else gives way");
            explanation.conflicts().forEach(conflict -> page.item("- ", conflict.message()));
        }
        if (!explanation.relaxations().isEmpty()) {
            page.heading("What would do, all else as asked");
            explanation.relaxations().forEach(relaxation -> page.item("- ", relaxation.message()));
        }
        if (!explanation.notes().isEmpty()) {
            page.gap();
            explanation.notes().forEach(page::text);
        }
    }
}
