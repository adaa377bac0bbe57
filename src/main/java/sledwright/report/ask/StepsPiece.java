package sledwright.report.ask;

import java.util.List;
import java.util.Map;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Catalog;
import sledwright.explain.steps.Steps;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;

/** What the next steps of each wish cost, for the place beside its field. */
public final class StepsPiece {

    /** The steps of one wish. */
    public record Wish(String key, String name, String unit, List<Choice> choices, boolean last) {
    }

    /** A figure that is possible instead, and what that changes. */
    public record Choice(String figure, String change, boolean dearer, boolean within) {
    }

    private final Wording words;
    private final boolean money;

    private StepsPiece(QuoteView view, Catalog shop) {
        words = Wording.of(shop);
        money = view.isMoney();
    }

    /** @param view of a quote that was asked for its steps */
    public static String of(QuoteView view, Catalog shop) {
        StepsPiece piece = new StepsPiece(view, shop);
        List<Wish> wishes = view.steps().map(steps -> steps.curves().stream().map(piece::wish).toList()).orElse(List.of());
        return Pages.filled("ask-steps.ftlh", Map.of("wishes", wishes));
    }

    private Wish wish(Steps.Curve curve) {
        List<Choice> choices = curve.steps().stream().filter(step -> !curve.isAsked(step)).map(this::choice).toList();
        return new Wish(curve.key(), curve.name().orElse(""), curve.unit().strip(), choices, curve.last());
    }

    private Choice choice(Steps.Step step) {
        String change = money ? words.signedMoney(step.change()) : words.money(step.price());
        return new Choice(step.upToWords(), change, step.change().signum() > 0, step.within());
    }
}
