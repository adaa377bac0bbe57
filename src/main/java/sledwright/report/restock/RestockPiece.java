package sledwright.report.restock;

import java.util.Map;
import sledwright.desk.view.RestockView;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.restock.RestockPlan;

/** A restocking plan as a piece of the page on which it was asked for. */
public final class RestockPiece {

    private RestockPiece() {
    }

    public static String of(RestockView view) {
        RestockPage page = new RestockPage(view);
        RestockPlan plan = view.plan();
        return Pages.filled("plan-answer.ftlh", Map.of("name", plan.request().name(),
                "months", Wording.of(view.shop()).figure(plan.request().horizonMonths()),
                "cost", page.money(plan.cost()),
                "budget", plan.request().budget().isPresent() ? page.money(plan.request().budget().getAsLong()) : "",
                "with", page.spread(plan.earned().with()), "without", page.spread(plan.earned().without()),
                "gain", page.spread(plan.earned().gain()), "sections", page.sections(), "notes", page.notes()));
    }
}
