package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Map;
import sledwright.desk.view.Audience;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.TooMany;
import sledwright.desk.view.ForCustomers;
import sledwright.explain.Difference;
import sledwright.explain.Explanation;
import sledwright.report.offer.Offer.Option;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pages;
import sledwright.report.page.Pdf;
import sledwright.report.page.Wording;

/** Writes an offer as a document. */
public final class OfferPage {

    /** A figure under its label. */
    public record Fact(String label, String value) {
    }

    /** A line of a price list; every text is finished. */
    public record PriceLine(String sku, String name, String condition, String quantity, String each, String total) {
    }

    /** A sum under a price list. */
    public record Sum(String label, String amount, boolean last) {
    }

    /** What the first option costs, line by line. */
    public record PriceList(List<PriceLine> lines, List<Sum> sums) {
    }

    /** What an option buys against the first; {@code other} says what the two lists leave. */
    public record Gain(String title, List<String> better, List<String> worse, String other) {
    }

    private final Offer offer;
    private final Audience audience;
    private final Wording words;
    private final Explanation explanation;

    OfferPage(Offer offer, Audience audience) {
        this.offer = offer;
        this.audience = audience;
        words = Wording.of(offer.shop());
        explanation = audience == Audience.SHOP ? offer.answer().explanation() : ForCustomers.of(offer.answer().explanation());
    }

    public static String html(Offer offer, Audience audience) {
        return new OfferPage(offer, audience).html();
    }

    public static byte[] pdf(Offer offer, Audience audience) {
        OfferPage page = new OfferPage(offer, audience);
        return Pdf.of(page.html(), page.head());
    }

    private PageHead head() {
        boolean none = offer.options().isEmpty();
        String title = words.say((none ? "quote.request.title" : "quote.title") + (audience == Audience.SHOP ? ".internal" : ""),
                offer.named(words).whole());
        return PageHead.of(title, words.say(none ? "quote.request.subject" : "quote.subject"), offer.shop(), words);
    }

    private String html() {
        boolean offering = !offer.options().isEmpty();
        Map<String, Object> model = new Opening(offer.shop(), words, offer.customer(), offer.answer().day())
                .model(offering ? "quote.heading" : "quote.request.heading", offer.named(words), offering, offer.request().machines());
        model.put("asked", asked());
        if (!offering) {
            model.put("refusal", lead());
            model.put("conflicts", conflicts());
            model.put("ways", ways());
            model.put("many", many());
            model.put("each", eachWay());
        } else {
            model.put("lead", lead());
            model.put("what", what(offer.options().get(0).alternative().build()));
            model.put("prices", prices(offer.options().get(0)));
            model.put("matrix", offer.options().size() == 1 || audience == Audience.SHOP ? List.of() : PartsMatrix.of(offer, words));
            model.put("tables", SideBySide.of(offer, words, audience));
            model.put("gains", gains());
            model.put("points", offer.answer().hasPoints());
            model.put("reading", reading());
            offer.answer().outlook().moreWork().ifPresent(more -> model.put("more", new MoreWorkWords(words).of(more)));
        }
        if (audience == Audience.SHOP) {
            model.put("internal", InternalPart.of(offer, words));
        }
        return Pages.html("quote.ftlh", head(), model);
    }

    /** What the customer asked for. */
    String asked() {
        AskedWords asked = new AskedWords(words, offer.shop());
        return offer.options().isEmpty() ? asked.whole(offer.request()) : asked.sentence(offer.request());
    }

    /** What the first option is the best of, or that there is none. */
    String lead() {
        return QuoteLead.of(offer.answer(), offer.request().machines(), words);
    }

    List<Fact> what(BuildView build) {
        return new MachineFacts(words, offer.answer().day()).of(build, offer.request());
    }

    PriceList prices(Option option) {
        PriceLists lists = new PriceLists(words);
        return new PriceList(lists.lines(option.lines()), lists.sums(option.pays(), lists.total(offer.request().machines())));
    }

    /** A price point: what it is chosen for, what it costs, and what that is and brings more than the one before. */
    private Gain point(Option option) {
        BuildView build = option.alternative().build();
        String mark = option.alternative().mark().map(chosen -> words.say("mark." + chosen)).orElse("");
        String price = option.pays().tax().map(tax -> words.say("price.before", words.money(option.pays().net()), tax.name()))
                .orElseGet(() -> words.money(option.pays().net()));
        String title = words.say("point.title", SideBySide.head(option, words), mark, price);
        String made = words.say("point.made", build.bare().processors(), build.bare().processorSku().orElse(""),
                SideBySide.modules(build, words));
        if (option.difference().isEmpty()) {
            return new Gain(title, List.of(), List.of(), made);
        }
        Difference difference = option.difference().get();
        return new Gain(title, difference.better().stream().map(this::change).toList(),
                difference.worse().stream().map(this::change).toList(),
                words.say(difference.extra() < 0 ? "point.less" : "point.more", made,
                words.money(offer.shop().amount(Math.abs(difference.extra())))));
    }

    /** Of price points all, otherwise what each further option buys. */
    List<Gain> gains() {
        return offer.answer().hasPoints() ? offer.options().stream().map(this::point).toList()
                : offer.options().stream().skip(1).map(this::gain).toList();
    }

    private Gain gain(Option option) {
        Difference difference = option.difference().orElseThrow();
        BigDecimal extra = offer.shop().amount(Math.abs(difference.extra()));
        String head = SideBySide.head(option, words);
        String title = difference.extra() == 0 ? words.say("gain.same", head)
                : words.say(difference.extra() > 0 ? "gain.more" : "gain.less", head, words.money(extra));
        return new Gain(title, difference.better().stream().map(this::change).toList(),
                difference.worse().stream().map(this::change).toList(), difference.changes().isEmpty() ? words.say("gain.nothing") : "");
    }

    private String change(Difference.Change change) {
        Difference.Figure figure = change.figure();
        String key = "change." + figure.name();
        String one = figure == Difference.Figure.CORES && change.by() == 1 ? ".one" : "";
        String said = words.say(key + (change.more() ? ".more" : ".less") + one, words.figure(change.by()) + figure.unit(),
                words.figure(change.reached()) + figure.unit());
        return change.each().isEmpty() ? said
                : words.say(key + ".each", said, words.money(offer.shop().amount(change.each().getAsLong())));
    }

    private List<String> reading() {
        List<String> notes = new ArrayList<>();
        if (offer.request().machines() > 1) {
            notes.add(words.say("reading.many", words.figure(offer.request().machines())));
        }
        notes.add(words.say("reading.figures"));
        if (offer.options().stream().anyMatch(option -> option.alternative().build().figures().throughputEstimated())) {
            notes.add(words.say("reading.about"));
        }
        notes.add(words.say("reading.load"));
        loss().ifPresent(notes::add);
        return notes;
    }

    /** Whose electricity lacks what is lost on the way to it, so that it looks a little too good beside others. */
    Optional<String> loss() {
        List<Option> without = offer.request().energy().isEmpty() ? List.of() : offer.options().stream()
                .filter(option -> option.alternative().build().figures().wallW().isEmpty()).toList();
        return without.isEmpty() ? Optional.empty() : Optional.of(without.size() == offer.options().size() ? words.say("reading.loss")
                : words.say("reading.loss.of", words.list(without.stream().map(option -> SideBySide.head(option, words)).toList())));
    }

    /** How what would be possible is to be read. */
    String eachWay() {
        return PriceSums.ways("quote.ways.each", offer.shop(), offer.granted(), words);
    }

    List<String> conflicts() {
        return explanation.conflicts().stream().map(conflict -> conflict.sentence().in(words)).distinct().toList();
    }

    /** How many machines there can be, alike and mixed, where they are too many; empty otherwise. */
    List<String> many() {
        return offer.answer().outlook().tooMany().map(this::many).orElse(List.of());
    }

    private List<String> many(TooMany some) {
        List<String> said = new ArrayList<>(List.of(words.say("many.alike", some.alike(), some.asked(), beforeTax(some.alikePrice()))));
        some.mixed().ifPresent(order -> said.add(words.say(order.machines() < some.asked() ? "many.mixed" : "many.all", order.machines(),
                some.asked(), beforeTax(order.price()), order.builds()) + (order.within() ? "" : " " + words.say("many.above"))
                + (order.proved() ? "" : " " + words.say("many.open"))));
        return said;
    }

    private String beforeTax(BigDecimal price) {
        return PriceSums.net(words.money(price), offer.shop(), words);
    }

    List<String> ways() {
        return explanation.relaxations().stream().map(way -> way.sentence().in(words)).toList();
    }
}
