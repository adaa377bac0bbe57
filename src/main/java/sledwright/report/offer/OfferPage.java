package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.desk.view.Audience;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.ForCustomers;
import sledwright.domain.Limits;
import sledwright.explain.Difference;
import sledwright.explain.Explanation;
import sledwright.generator.Status;
import sledwright.report.offer.Offer.Option;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pages;
import sledwright.report.page.Pdf;
import sledwright.report.page.Wording;
import sledwright.words.Sentences;

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

    private OfferPage(Offer offer, Audience audience) {
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
        String kind = offer.options().isEmpty() ? "Request" : "Quote";
        String title = "%s%s: %s".formatted(kind, audience == Audience.SHOP ? ", internal" : "", offer.answer().request());
        return PageHead.of(title, offer.options().isEmpty() ? "Why the request cannot be met as it stands"
                : "Machines, prices and terms for a request", offer.shop());
    }

    private String html() {
        Map<String, Object> model = new HashMap<>();
        model.put("shop", Map.of("name", offer.shop().name(), "address", offer.stationery().address(), "contact",
                offer.stationery().contact()));
        model.put("name", offer.answer().request());
        model.put("facts", facts());
        model.put("customer", offer.customer());
        model.put("terms", terms());
        if (offer.options().isEmpty()) {
            model.put("refusal", refusal());
            model.put("conflicts", conflicts());
            model.put("ways", ways());
            offer.stationery().taxPercent().ifPresent(percent -> model.put("taxName", offer.stationery().taxName()));
        } else {
            model.put("lead", lead());
            model.put("what", what(offer.options().get(0).alternative().build()));
            model.put("prices", prices(offer.options().get(0)));
            model.put("matrix", offer.options().size() == 1 || audience == Audience.SHOP ? List.of() : PartsMatrix.of(offer, words));
            model.put("tables", SideBySide.of(offer, words, audience));
            model.put("gains", offer.options().stream().skip(1).map(this::gain).toList());
            model.put("reading", reading());
        }
        if (audience == Audience.SHOP) {
            model.put("internal", InternalPart.of(offer, words));
        }
        return Pages.html("quote.ftlh", head(), model);
    }

    private List<Fact> facts() {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Quote", offer.answer().request()));
        facts.add(new Fact("Date", words.day(offer.answer().day().today())));
        if (!offer.options().isEmpty()) {
            offer.validUntil().ifPresent(day -> facts.add(new Fact("Valid until", words.day(day))));
        }
        facts.add(new Fact("Machines", words.figure(offer.request().machines())));
        return facts;
    }

    /** What the first option is the best of. */
    private String lead() {
        String options = offer.options().size() == 1 ? "" : " Each other option betters it in some figure.";
        if (offer.answer().status() != Status.PROVED) {
            return "Option 1 is the best that was found for your request%s; a better one may exist.%s".formatted(inTime(), options);
        }
        String machines = offer.request().machines() == 1 ? "every machine that our parts make up"
                : "every such set of machines that our parts make up";
        return "Of %s and that meets your request, option 1 %s.%s".formatted(machines, switch (offer.answer().objective()) {
            case CHEAPEST -> "has the lowest price";
            case MOST_THROUGHPUT -> "has the most throughput";
            case MOST_BANDWIDTH -> "has the most memory bandwidth";
            case MOST_MEMORY -> "has the most usable memory";
            case MOST_WORK -> "does the most work";
            case MOST_CORES -> "has the most cores";
            case BEST_VALUE -> "has the lowest price less what you said that further cores, memory and speed are worth to you";
        }, options);
    }

    private List<Fact> what(BuildView build) {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact(build.count() == 1 ? "Machine" : build.count() + " machines, each", build.platformName()));
        build.processor().ifPresent(processor ->
                facts.add(new Fact("Processors", "%s \u00d7 %s, %s cores at %s GHz (%s GHz with all at work)".formatted(
                build.processors(), processor.sku(), processor.cores(), words.figure(processor.baseGhz()),
                words.figure(processor.allCoreGhz())))));
        String usable = build.figures().usableGb() == build.figures().memoryGb() ? ""
                : ", %s GB of it usable".formatted(words.figure(build.figures().usableGb()));
        facts.add(new Fact("Memory", "%s = %s GB%s, at %s MT/s"
                .formatted(SideBySide.modules(build), words.figure(build.figures().memoryGb()), usable,
                words.figure(build.figures().speed().mts()))));
        facts.add(new Fact("Power", build.supply().map(sku -> "%s \u00d7 %s".formatted(build.supplies(), sku))
                .orElseGet(() -> EquipmentWords.enclosures(build.heaviest().fitout()).map("from "::concat).orElse("from the enclosure"))));
        facts.addAll(new EquipmentWords(words).facts(build.heaviest().fitout()));
        site().ifPresent(site -> facts.add(new Fact("Checked for", site)));
        facts.add(new Fact("Lead time", build.leadDays() == 0 ? "none: every part is here"
                : "%s: the last part is here on %s".formatted(SideBySide.days(build.leadDays()),
                words.day(offer.answer().day().in(build.leadDays())))));
        return facts;
    }

    /** Where the machine is to stand, as far as the request says. */
    private Optional<String> site() {
        Limits limit = offer.request().limit();
        List<String> site = new ArrayList<>();
        limit.inletC().ifPresent(celsius -> site.add("air of %s \u00b0C at its inlet".formatted(words.figure(celsius))));
        if (limit.altitudeM() != 0) {
            site.add("%s m above the sea".formatted(words.figure(limit.altitudeM())));
        }
        limit.mainsV().ifPresent(volts -> site.add("mains of %s V".formatted(words.figure(volts))));
        return site.isEmpty() ? Optional.empty() : Optional.of(Sentences.list(site));
    }

    private PriceList prices(Option option) {
        List<PriceLine> lines = option.lines().stream().map(line -> new PriceLine(line.goods().sku(), line.goods().shownName(),
                line.goods().shownCondition(), words.figure(line.quantity()), words.money(line.goods().unitPrice()),
                words.money(line.total()))).toList();
        List<Sum> sums = new ArrayList<>();
        String all = offer.request().machines() == 1 ? "Total"
                : "Total for %s machines".formatted(words.figure(offer.request().machines()));
        Map<String, String> amounts = PriceSums.of(option.pays(), all, words);
        amounts.forEach((label, amount) -> sums.add(new Sum(label, amount, sums.size() == amounts.size() - 1)));
        return new PriceList(lines, sums);
    }

    private Gain gain(Option option) {
        Difference difference = option.difference().orElseThrow();
        BigDecimal extra = offer.shop().amount(Math.abs(difference.extra()));
        String price = difference.extra() == 0 ? "the same price"
                : "%s %s".formatted(words.money(extra), difference.extra() > 0 ? "more" : "less");
        return new Gain("%s: %s".formatted(SideBySide.head(option), price), difference.better().stream().map(this::change).toList(),
                difference.worse().stream().map(this::change).toList(), difference.changes().isEmpty() ? "the same figures" : "");
    }

    private String change(Difference.Change change) {
        Difference.Figure figure = change.figure();
        String share = change.each().isEmpty() ? ""
                : ", %s for each further %s".formatted(words.money(offer.shop().amount(change.each().getAsLong())),
                figure.each());
        return "%s%s %s %s: %s%s%s".formatted(words.figure(change.by()), figure.unit(), change.direction(), figure.noun(change.by()),
                words.figure(change.reached()), figure.unit(), share);
    }

    private List<String> terms() {
        List<String> terms = new ArrayList<>();
        String until = offer.validUntil().map(day -> " This quote is valid until %s.".formatted(words.day(day))).orElse("");
        terms.add("Prices are those of %s, in %s.%s"
                .formatted(words.day(offer.shop().pricedOn()), offer.shop().currency().getCurrencyCode(), until));
        terms.addAll(offer.stationery().terms());
        return terms;
    }

    private List<String> reading() {
        List<String> notes = new ArrayList<>();
        if (offer.request().machines() > 1) {
            notes.add("Prices are for all %s machines, figures for each.".formatted(words.figure(offer.request().machines())));
        }
        notes.add("Memory bandwidth is the peak of all memory channels together. Throughput adds up what our list rates each processor"
                + " at: twice as much does "
                + "twice the work in the same time.");
        if (offer.options().stream().anyMatch(option -> option.alternative().build().figures().throughputEstimated())) {
            notes.add("\u201cAbout\u201d: estimated from cores, clock and the processor's generation.");
        }
        notes.add("Load is what the machine takes at full work; from the mains, what its power supplies then draw.");
        return notes;
    }

    private String inTime() {
        return offer.answer().doubts().late() ? " in the time at hand" : "";
    }

    private String refusal() {
        return offer.answer().status() == Status.IMPOSSIBLE
                ? "No machine that our parts make up meets your request as it stands."
                : "No machine was found for your request%s. It is not certain that there is none.".formatted(inTime());
    }

    private List<String> conflicts() {
        return explanation.conflicts().stream().map(conflict -> conflict.sentence().in(words)).distinct().toList();
    }

    private List<String> ways() {
        return explanation.relaxations().stream().map(way -> way.sentence().in(words)).toList();
    }
}
