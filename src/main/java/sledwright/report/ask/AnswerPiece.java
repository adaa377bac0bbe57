package sledwright.report.ask;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.Line;
import sledwright.desk.view.MachineView;
import sledwright.desk.view.Payment;
import sledwright.desk.view.QuoteView;
import sledwright.desk.view.QuoteView.Alternative;
import sledwright.domain.Catalog;
import sledwright.explain.conflict.Relaxation;
import sledwright.explain.whynot.WhyNot;
import sledwright.report.ask.BuildFacts.Fact;
import sledwright.report.build.BuildText;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;
import sledwright.report.quote.QuoteStatus;
import sledwright.report.quote.QuoteText;
import sledwright.words.Numbers;
import sledwright.words.Sentence;
import sledwright.words.Sentences;

/** The answer to a quote: the best build and its alternatives, why, and where there is none, what conflicts and the ways out. */
public final class AnswerPiece {

    /** A line of the price. {@code part}: whether it is a part that can be asked about. */
    public record PriceRow(boolean part, String sku, String description, FromLot from, int units, String each, String total) {
    }

    /** Where units come from and when; all empty where it is no part. */
    public record FromLot(String supplier, String lot, String condition, String days) {
    }

    /** One ranked build. {@code file}: to be changed by hand. */
    public record Option(Summary summary, List<Fact> facts, List<String> why, List<PriceRow> rows, List<Fact> slots, String file) {
    }

    /**
     * What is seen of a build at first.
     *
     * @param more   the price above that of the best; empty where something else counts
     * @param judged what counts where that is money and not the price, with what is above the best; may be empty
     * @param buys   what it buys against the best; empty for the best itself
     */
    public record Summary(int rank, String price, String more, String judged, String machine, String days, String buys) {
    }

    /** A way out, as a button; the changes are what it does to the request. */
    public record Way(String words, List<Step> changes) {
    }

    /** One key that changes; {@code to} is empty where it must go. */
    public record Step(String key, String name, String from, String to) {
    }

    /** What is said of a part that was asked about. */
    public record About(String sku, String verdict, String words) {
    }

    private final QuoteView view;
    private final Wording words;

    private AnswerPiece(QuoteView view, Catalog shop) {
        this.view = view;
        words = Wording.of(shop);
    }

    public static String of(QuoteView view, Catalog shop) {
        return new AnswerPiece(view, shop).piece();
    }

    private String piece() {
        List<Alternative> ranked = view.alternatives();
        Map<String, Object> model = new HashMap<>();
        model.put("status", view.proof().status().label());
        model.put("sure", Sentences.capital(QuoteStatus.of(view)));
        model.put("doubts", doubts());
        model.put("options", ranked.stream().map(this::option).toList());
        model.put("machines", view.topic().machines());
        model.put("conflicts", each(view.explanation().conflicts(), conflict -> said(conflict.sentence())));
        model.put("lacks", each(view.explanation().lacks(), lack -> lack.what().message()));
        model.put("ways", each(view.explanation().relaxations(), this::way));
        model.put("notes", each(view.explanation().notes(), this::said));
        model.put("asked", each(view.explanation().whyNot(), this::about));
        model.put("said", spoken());
        model.put("price", ranked.stream().findFirst().flatMap(best -> best.build().price()).map(BigDecimal::toPlainString).orElse(""));
        return Pages.filled("ask-answer.ftlh", model);
    }

    private List<String> doubts() {
        List<String> doubts = new ArrayList<>(each(view.day().warnings(), this::said));
        doubts.addAll(view.complete() ? List.of() : view.reservations());
        return doubts;
    }

    private static <A, B> List<B> each(List<A> all, Function<A, B> made) {
        return all.stream().map(made).toList();
    }

    private String said(Sentence sentence) {
        return sentence.in(words.forShop());
    }

    /** What a listener hears. */
    private String spoken() {
        if (view.alternatives().isEmpty()) {
            return Sentences.capital(QuoteStatus.of(view)) + ".";
        }
        BuildView best = view.alternatives().get(0).build();
        String judged = judged(view.alternatives().get(0));
        return "%s%s: %s. %s.".formatted(price(best), judged.isEmpty() ? "" : ", " + judged, machine(best),
                Sentences.capital(QuoteStatus.of(view)));
    }

    private String price(BuildView build) {
        return build.price().map(words::money).orElse("");
    }

    private static String machine(BuildView build) {
        return "%s with %s and %s".formatted(build.bare().platform(), BuildText.processors(build), BuildText.memory(build));
    }

    private Option option(Alternative alternative) {
        BuildView build = alternative.build();
        String judged = judged(alternative);
        String more = judged.isEmpty() ? above(alternative, one -> one.build().price()) : "";
        return new Option(new Summary(alternative.rank(), price(build), more, judged, machine(build), days(build.leadDays()),
                alternative.difference().map(this::said).orElse("")),
                facts(alternative), each(alternative.reasons(), this::said), each(build.lines(), this::row), slots(build.heaviest()),
                BuildFileText.of(build));
    }

    /** By how much an amount is above that of the best; empty for the best itself. */
    private String above(Alternative alternative, Function<Alternative, Optional<BigDecimal>> amount) {
        return alternative.rank() == 1 || amount.apply(alternative).isEmpty() ? ""
                : words.signedMoney(amount.apply(alternative).get().subtract(amount.apply(view.alternatives().get(0)).orElseThrow()));
    }

    private String judged(Alternative alternative) {
        String above = above(alternative, view::judged);
        return view.judged(alternative).map(amount -> "%s %s%s".formatted(QuoteText.measured(view.objective()), words.money(amount),
                above.isEmpty() ? "" : ", " + above)).orElse("");
    }

    private static String days(int days) {
        return days == 0 ? "in stock" : "in " + Numbers.counted(days, "day");
    }

    /** What is paid and why this one is shown stand before the figures. */
    private List<Fact> facts(Alternative alternative) {
        List<Fact> facts = new ArrayList<>();
        alternative.mark().ifPresent(mark -> facts.add(new Fact("Chosen for", QuoteText.words(mark))));
        Payment pays = alternative.sale().pays();
        if (pays.isChanged()) {
            facts.add(new Fact("Customer pays", words.money(pays.net())));
        }
        pays.tax().ifPresent(tax -> facts.add(new Fact("With " + tax.name(), words.money(pays.gross()))));
        alternative.weighed().energy().ifPresent(energy -> facts.add(new Fact("Energy", words.money(energy))));
        facts.addAll(BuildFacts.of(alternative.build(), words));
        return facts;
    }

    /** What each channel holds, in board order. */
    private static List<Fact> slots(MachineView machine) {
        return machine.map().sockets().stream().flatMap(List::stream)
                .map(row -> new Fact(row.name(), row.cells().stream().map(cell -> machine.slots().getOrDefault(cell.name(),
                        !cell.fitted() ? "no processor" : cell.covered() ? "covered" : "empty"))
                        .collect(Collectors.joining(", ")))).toList();
    }

    private PriceRow row(Line line) {
        FromLot from = line.source().map(lot -> new FromLot(lot.supplier(), lot.lot(), lot.condition(), days(lot.leadDays())))
                .orElse(new FromLot("", "", "", ""));
        boolean part = line.kind() == Line.Kind.PART;
        String called = part ? line.description() : Sentences.capital(line.kind().label()) + ", " + line.description();
        return new PriceRow(part, line.sku(), called, from, line.quantity(), words.money(line.unitPrice()), words.money(line.total()));
    }

    private Way way(Relaxation relaxation) {
        return new Way(said(relaxation.sentence()), each(relaxation.changes(), change -> new Step(change.key(), change.sku().orElse(""),
                change.from(), change.to())));
    }

    private About about(WhyNot answer) {
        return new About(answer.sku(), answer.verdict().label(), said(Sentence.joined(" ", answer.sentences())));
    }
}
