package sledwright.report.restock;

import java.util.LinkedHashMap;
import java.util.Map;
import sledwright.desk.view.PurchaseOrder;
import sledwright.desk.view.RestockView;
import sledwright.domain.Extra;
import sledwright.restock.RestockPlan;
import sledwright.words.Advice;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** What is to be said of a restocking plan as a whole, in finished sentences under their headings. */
final class RestockNotes {

    /** Of a class of which no order is filled. */
    static final String LEFT_OUT = "Its parts are not there, or earn more in other orders.";

    /** Of dead extras, which no price moves. */
    static String ofExtras(RestockView view) {
        return view.dead().stream().noneMatch(part -> view.shop().part(part.sku()).orElseThrow() instanceof Extra) ? ""
                : " Extras are bought with what calls for them, whatever they cost.";
    }

    /** Of a line that takes all that there is. */
    static final String NO_MORE = "It has no more of it.";

    /** What is to be said of an order as a whole. */
    static String of(PurchaseOrder order, RestockView view) {
        return "%s for %s; the last of it arrives after %s.%s".formatted(Numbers.counted(order.units(), "unit"),
                money(view, order.total()), Numbers.counted(order.days(), "day"),
                order.own() ? " This is the shop's own shelf: nothing has to be ordered." : "");
    }

    static String remark(RestockPlan.Buy line) {
        return PurchaseOrder.takesAll(line) ? NO_MORE : "";
    }

    private RestockNotes() {
    }

    static Map<String, Sentence> of(RestockView view) {
        RestockPlan plan = view.plan();
        RestockPlan.Bound bound = plan.bound();
        Map<String, Sentence> notes = new LinkedHashMap<>();
        notes.put("Confidence", Sentence.plain(
                ("The +/- is the 95 %% confidence interval of the mean over %s courses of events that the plan was not made on (seed"
                + " %s). It counts in how far apart the plans are that the search ended at from several starts.")
                .formatted(plan.effort().courses(), view.seed())));
        notes.put("Bound", Sentence.plain((
                "On the courses it was made on, no plan within the budget earns more than %s, even if it fills orders knowing all that"
                + " come. With such"
                + " foresight whole quantities near the bound's own earn %s (%s below), and this plan %s (%s below). %s The bound is"
                + " over the %s"
                + " that the search found%s.").formatted(money(view, bound.most()), view.amount(bound.rounded()),
                RestockView.percent(bound.roundedGap()), view.amount(bound.hindsight()), RestockView.percent(bound.gap()),
                atTheCounter(bound, view),
                Numbers.counted(plan.effort().builds(), "build"), plan.effort().closed()
                ? "; at its mean shadow prices no other build earns more, but on some course one may" : "; others may add to it")));
        notes.put("At the counter", Sentence.plain("Orders are served first come, first served. Each class is offered the builds that were"
                + " chosen for it, with the plan and without it: fewer than could be made, where parts earn more in other orders."));
        if (plan.effort().late()) {
            notes.put("Time", Sentence.of("Time ran out before all was tried. %s", Advice.MORE_TIME));
        }
        return notes;
    }

    /** What the plan was chosen for. */
    private static String atTheCounter(RestockPlan.Bound bound, RestockView view) {
        double more = bound.inSample() - bound.roundedInSample();
        return view.amount(more).signum() > 0
                ? ("Orders served as they come, without foresight, earn %s there with this plan, %s more than with those quantities: for"
                        + " that it was chosen.").formatted(
                        view.amount(bound.inSample()), view.amount(more))
                : "Orders served as they come, without foresight, earn %s there with this plan.".formatted(view.amount(bound.inSample()));
    }

    static String money(RestockView view, double minor) {
        return view.amount(minor) + " " + view.currency();
    }
}
