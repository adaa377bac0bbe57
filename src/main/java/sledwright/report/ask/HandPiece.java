package sledwright.report.ask;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CheckView;
import sledwright.domain.Catalog;
import sledwright.report.build.BuildText;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** A build that somebody puts together by hand: its board, every rule that it breaks, and what it costs beside the build it came from. */
public final class HandPiece {

    /** A broken rule. */
    public record Breach(String rule, String where, String words) {
    }

    /**
     * What the build was before it was changed.
     *
     * @param name  such as {@code the proved build}
     * @param price in units of the currency
     */
    public record Origin(String name, BigDecimal price) {
    }

    private final CheckView view;
    private final Catalog shop;
    private final Wording words;

    private HandPiece(CheckView view, Catalog shop) {
        this.view = view;
        this.shop = shop;
        words = Wording.of(shop);
    }

    /**
     * @param tree   the file of the build as JSON
     * @param origin empty: it is itself what it was, or that had no price
     */
    public static String of(CheckView view, Catalog shop, String tree, Optional<Origin> origin) {
        return new HandPiece(view, shop).piece(tree, origin);
    }

    private String piece(String tree, Optional<Origin> origin) {
        BuildView build = view.build();
        HandBoard board = new HandBoard(view, shop, words);
        HandChoices choices = new HandChoices(build, shop, words);
        List<Breach> breaches = view.violations().stream().map(this::breach).toList();
        Map<String, Object> model = new HashMap<>();
        model.put("tree", tree);
        model.put("amount", build.price().map(BigDecimal::toPlainString).orElse(""));
        model.put("price", price(build));
        model.put("sure", sure(breaches.size()));
        model.put("gist", "%s with %s and %s".formatted(build.bare().name(), BuildText.processors(build), BuildText.memory(build)));
        model.put("machines", build.count());
        model.put("beside", beside(build, origin));
        model.put("breaches", breaches);
        model.put("said", said(build, origin, breaches));
        model.put("platform", build.bare().platform());
        model.put("sockets", board.sockets());
        model.put("bays", board.bays());
        model.put("cards", board.cards());
        model.put("fill", build.heaviest().map().fillSide());
        model.put("shelves", choices.shelves());
        model.put("fields", choices.fields());
        model.put("volumes", choices.volumes());
        model.put("extras", choices.extras());
        model.put("more", choices.otherExtras());
        model.put("facts", BuildFacts.of(build, words));
        return Pages.filled("hand-answer.ftlh", model);
    }

    private Breach breach(Violation violation) {
        return new Breach(violation.rule(), violation.where(), violation.sentence().in(words.forShop()));
    }

    private String price(BuildView build) {
        return build.price().map(words::money).orElse("no price");
    }

    private static String sure(int broken) {
        return broken == 0 ? "Every rule holds" : Numbers.counted(broken, "breach of a rule", "breaches of rules");
    }

    /** What the build costs beside what it was; empty where there is nothing to compare. */
    private String beside(BuildView build, Optional<Origin> origin) {
        if (origin.isEmpty()) {
            return "";
        }
        String costs = "%s costs %s".formatted(origin.get().name(), words.money(origin.get().price()));
        return build.price().map(price -> price.subtract(origin.get().price()))
                .map(more -> more.signum() == 0 ? costs + ", too" : "%s, this one %s".formatted(costs, words.signedMoney(more)))
                .orElse(costs);
    }

    /** What a listener hears. */
    private String said(BuildView build, Optional<Origin> origin, List<Breach> breaches) {
        String beside = beside(build, origin);
        String broken = breaches.stream().map(breach -> " " + breach.words()).collect(Collectors.joining());
        return "%s: %s%s.%s".formatted(sure(breaches.size()), build.price().isPresent() ? price(build) : "stock does not hold all parts",
                beside.isEmpty() ? "" : "; " + beside, broken);
    }
}
