package sledwright.report.ask;

import java.math.BigDecimal;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import sledwright.desk.view.OtherLimits;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Catalog;
import sledwright.domain.Objective;
import sledwright.explain.steps.Steps;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.report.quote.QuoteText;
import sledwright.rules.memory.BalancedChannels;
import sledwright.rules.memory.OneModulePart;
import sledwright.words.Numbers;

/** What the next steps of each wish cost, for the place beside its field. */
public final class StepsPiece {

    /** The steps of one wish. {@code remark}: what stands behind them; may be empty. */
    public record Wish(String key, String name, String unit, List<Choice> choices, String remark) {
    }

    /** A figure that is possible instead, and what that changes. {@code words}: what it is called where its unit says too little. */
    public record Choice(String figure, String words, String change, boolean dearer, boolean within) {
    }

    /** The page is in English. */
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    /** Wishes that have a field of their own in which they can be given up. */
    private static final Set<String> YES_OR_NO = Set.of(BalancedChannels.KEY, OneModulePart.KEY);

    private final Wording words;
    private final boolean money;

    private StepsPiece(QuoteView view, Catalog shop) {
        words = Wording.of(shop);
        money = view.isMoney();
    }

    /**
     * @param view   of a quote that was asked for its steps
     * @param limits what other limits cost
     */
    public static String of(QuoteView view, OtherLimits limits, Catalog shop) {
        StepsPiece piece = new StepsPiece(view, shop);
        List<Wish> wishes = new ArrayList<>();
        view.outlook().steps().filter(steps -> view.isMoney() && view.objective() != Objective.CHEAPEST).ifPresent(steps -> wishes.add(
                new Wish("objective", "", "", List.of(), "Steps are in %s.".formatted(QuoteText.measured(view.objective())))));
        view.outlook().steps().ifPresent(steps -> {
            steps.curves().forEach(curve -> wishes.add(piece.wish(curve)));
            steps.wishes().stream().filter(one -> YES_OR_NO.contains(one.key())).forEach(one -> wishes.add(piece.wish(one)));
        });
        piece.limits(limits, wishes);
        return Pages.filled("ask-steps.ftlh", Map.of("wishes", wishes));
    }

    private Wish wish(Steps.Curve curve) {
        List<Choice> choices = curve.steps().stream().filter(step -> !curve.isAsked(step)).map(this::choice).toList();
        return new Wish(curve.key(), curve.name().orElse(""), curve.unit().strip(), choices, curve.last() ? "more cannot be had" : "");
    }

    private Wish wish(Steps.Dropped one) {
        String change = change(one.change(), one.price());
        return new Wish(one.key(), "", "", List.of(new Choice("false", "no", change, one.change().signum() > 0, true)), "");
    }

    private Choice choice(Steps.Step step) {
        return new Choice(step.upToWords(), "", change(step.change(), step.price()), step.change().signum() > 0, step.within());
    }

    private String change(BigDecimal change, BigDecimal price) {
        return money ? words.signedMoney(change) : words.money(price);
    }

    private void limits(OtherLimits limits, List<Wish> wishes) {
        boolean byDay = limits.key().equals("limit.by");
        if (!limits.waits().isEmpty()) {
            wishes.add(new Wish(limits.key(), "", "", limits.waits().stream().map(wait -> choice(
                    byDay ? wait.day().toString() : String.valueOf(wait.days()),
                    byDay ? DAY.format(wait.day()) : Numbers.counted(wait.days(), "day"), wait.change())).toList(), ""));
        }
        if (!limits.conditions().isEmpty()) {
            wishes.add(new Wish("limit.conditions", "", "", limits.conditions().stream().map(wider -> choice(
                    String.join(" ", wider.accepted()), wider.condition() + ", too", wider.change())).toList(), ""));
        }
    }

    private Choice choice(String value, String called, BigDecimal change) {
        return new Choice(value, called, words.signedMoney(change), change.signum() > 0, true);
    }
}
