package sledwright.report.ask;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.ForCustomers;
import sledwright.desk.view.Line;
import sledwright.desk.view.Payment;
import sledwright.desk.view.QuoteView;
import sledwright.desk.view.QuoteView.Alternative;
import sledwright.domain.Catalog;
import sledwright.metrics.Figures;
import sledwright.report.offer.QuoteLead;
import sledwright.report.offer.SideBySide;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;

/** The answer to a quote as a customer sees it by a link: what can be had for which price and when, side by side. */
public final class CustomerPiece {

    /** A part of a machine. {@code condition}: in words; may be empty. */
    public record Part(String description, String condition, int units) {
    }

    /** One figure of every offer, in the order of the offers. */
    public record Row(String label, List<String> values) {
    }

    /** One offer. {@code tax}: the price with tax, in a sentence; may be empty. */
    public record Offer(int rank, String price, String tax, String machine, String there, List<Part> parts) {
    }

    private final QuoteView view;
    private final Wording words;

    private CustomerPiece(QuoteView view, Catalog shop) {
        this.view = view;
        words = Wording.of(shop);
    }

    /** @param whole what the shop sees; what is the shop's alone goes before anything is written */
    public static String of(QuoteView whole, Catalog shop) {
        return new CustomerPiece(ForCustomers.of(whole), shop).piece();
    }

    private String piece() {
        Map<String, Object> model = new HashMap<>();
        model.put("sure", QuoteLead.of(view, view.topic().machines(), words));
        model.put("offers", view.alternatives().stream().map(this::offer).toList());
        model.put("rows", rows());
        model.put("about", about());
        model.put("title", words.counted(view.alternatives().size(), "link.get"));
        model.put("conflicts", view.explanation().conflicts().stream().map(conflict -> conflict.sentence().in(words)).toList());
        model.put("say", words.texts());
        return Pages.filled("customer-answer.ftlh", model);
    }

    /** What is said of the first offer beside its price. */
    private String about() {
        if (view.alternatives().isEmpty()) {
            return "";
        }
        Offer first = offer(view.alternatives().get(0));
        List<String> said = new ArrayList<>(List.of(words.say("link.there", first.machine(), first.there())));
        if (view.topic().machines() > 1) {
            said.add(words.say("link.machines", words.figure(view.topic().machines())));
        }
        if (!first.tax().isEmpty()) {
            said.add(first.tax());
        }
        view.day().validUntil().ifPresent(day -> said.add(words.say("link.valid", words.day(day))));
        return String.join(" ", said);
    }

    private Offer offer(Alternative one) {
        BuildView build = one.build();
        Payment pays = one.sale().pays();
        String tax = pays.tax().map(due -> words.say("link.taxed", words.money(pays.gross()), due.name())).orElse("");
        return new Offer(one.rank(), words.money(pays.net()), tax, machine(build), words.day(view.day().in(build.leadDays())),
                build.lines().stream().filter(line -> line.kind() == Line.Kind.PART)
                        .map(line -> new Part(line.description(), condition(line), line.quantity())).toList());
    }

    private String condition(Line line) {
        return line.source().map(source -> words.say("condition." + source.condition())).orElse("");
    }

    private String machine(BuildView build) {
        return words.say("order.what", build.bare().name(), build.bare().processors(), build.bare().processorSku().orElseThrow(),
                SideBySide.memory(build, words));
    }

    private List<Row> rows() {
        return List.of(row("cores", one -> words.figure(one.cores())),
                row("memory-capacity", one -> words.figure(one.usableGb()) + " GB"),
                row("bandwidth", one -> words.figure(one.bandwidthGbs()) + " GB/s"),
                row("throughput", one -> words.figure(one.throughput())), row("load", one -> words.figure(one.loadW()) + " W"));
    }

    private Row row(String label, Function<Figures, String> value) {
        return new Row(words.say("figure." + label), view.alternatives().stream().map(one -> value.apply(one.build().figures())).toList());
    }
}
