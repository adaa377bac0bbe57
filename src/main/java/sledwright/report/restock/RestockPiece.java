package sledwright.report.restock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sledwright.desk.view.RestockView;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.restock.RestockPlan;
import sledwright.restock.RestockPlan.Expected;

/** A restocking plan as a piece of the page on which it was asked for. */
public final class RestockPiece {

    private RestockPiece() {
    }

    public static String of(RestockView view) {
        Wording words = Wording.of(view.shop());
        RestockPlan plan = view.plan();
        List<RestockPage.Note> notes = new ArrayList<>();
        RestockNotes.of(view).forEach((term, meaning) -> notes.add(new RestockPage.Note(term, meaning)));
        return Pages.filled("plan-answer.ftlh", Map.of("name", plan.request().name(),
                "months", words.figure(plan.request().horizonMonths()),
                "cost", words.money(view.amount(plan.cost())),
                "budget", plan.request().budget().isPresent() ? words.money(view.amount(plan.request().budget().getAsLong())) : "",
                "with", spread(plan.earned().with(), view, words), "without", spread(plan.earned().without(), view, words),
                "gain", spread(plan.earned().gain(), view, words), "sections", RestockPage.sections(view), "notes", notes));
    }

    private static String spread(Expected expected, RestockView view, Wording words) {
        return "%s \u00b1 %s".formatted(words.money(view.amount(expected.mean())), words.money(view.amount(expected.halfWidth())));
    }
}
