package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import sledwright.desk.view.Audience;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.ForCustomers;
import sledwright.desk.view.Lines;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Group;
import sledwright.desk.view.OrderView.Housed;
import sledwright.desk.view.OrderView.Later;
import sledwright.desk.view.OrderView.Shortage;
import sledwright.desk.view.OrderView.Sled;
import sledwright.domain.Catalog;
import sledwright.domain.OrderLine;
import sledwright.planner.order.OrderStatus;
import sledwright.report.offer.OfferPage.Fact;
import sledwright.report.offer.OfferPage.PriceList;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pages;
import sledwright.report.page.Pdf;
import sledwright.report.page.Wording;

/** Writes the answer to an order as a document. */
public final class OrderPage {

    /** What stands at a glance: machines of one build, an enclosure, delivery. Every text is finished. */
    public record Row(String name, String what, String machines, String here, String price) {
    }

    /**
     * A line of the order.
     *
     * @param missing what is to be said of machines that are not delivered; may be empty
     */
    public record LinePart(String title, String asked, List<String> missing, List<BuildPart> builds) {
    }

    /** Machines of one build, and what they cost together; the title is empty where the line has one build. */
    public record BuildPart(String title, List<Fact> facts, PriceList prices) {
    }

    /** An enclosure, and which machine sits where in it. */
    public record EnclosurePart(String title, List<String> sleds, PriceList prices) {
    }

    /** What one supplier delivers, for the shop. */
    public record DeliveryRow(String supplier, String lots, String units, String days, String parts, String charge) {
    }

    private final OrderAnswer answer;
    private final OrderView view;
    private final Audience audience;
    private final Catalog shop;
    private final Wording words;
    private final PriceLists lists;

    OrderPage(OrderAnswer answer, Audience audience) {
        this.answer = answer;
        this.audience = audience;
        view = audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
        shop = answer.job().catalog();
        words = Wording.of(shop);
        lists = new PriceLists(words);
    }

    public static String html(OrderAnswer answer, Audience audience) {
        return new OrderPage(answer, audience).html();
    }

    public static byte[] pdf(OrderAnswer answer, Audience audience) {
        OrderPage page = new OrderPage(answer, audience);
        return Pdf.of(page.html(), page.head());
    }

    private PageHead head() {
        return PageHead.of(words.say("order.title" + (audience == Audience.SHOP ? ".internal" : ""), named().whole()),
                words.say("order.subject"), shop, words);
    }

    private String html() {
        Map<String, Object> model = new Opening(shop, words, answer.job().customer(), view.day())
                .model("order.heading", named(), view.delivered() > 0, view.topic().machines());
        model.put("asked", asked());
        model.put("lead", lead());
        model.put("short", missing());
        model.put("rows", rows());
        model.put("sums", sums());
        model.put("lines", lines());
        model.put("enclosures", enclosures());
        if (audience == Audience.SHOP) {
            model.put("internal", InternalPart.of(view, shop, words));
            model.put("deliveries", deliveries());
        }
        return Pages.html("order.ftlh", head(), model);
    }

    Named named() {
        return new Named(words, view.topic().request(), answer.number());
    }

    String asked() {
        return words.say("order.asked", words.counted(view.topic().machines(), "machines"),
                words.counted(view.contents().lines().size(), "order.lines"));
    }

    List<OfferPage.Sum> sums() {
        return lists.sums(view.sale().pays(), lists.total(view.delivered()));
    }

    List<String> terms() {
        return new TermsWords(words, shop, view.day()).all();
    }

    List<LinePart> lines() {
        return view.contents().lines().stream().map(this::line).toList();
    }

    List<EnclosurePart> enclosures() {
        return view.contents().enclosures().stream().map(this::enclosure).toList();
    }

    String lead() {
        return view.proof().status() == OrderStatus.PROVED && view.isPriceAlone() ? words.say("order.lead.cheapest")
                : view.proof().status() == OrderStatus.BEST_FOUND ? words.say("order.lead.open") : "";
    }

    /** What cannot be delivered, and whether waiting helps. */
    List<String> missing() {
        if (view.shortage().isEmpty()) {
            return List.of();
        }
        List<String> said = new ArrayList<>();
        List<String> lacking = view.contents().lines().stream().filter(line -> line.missing() > 0)
                .map(line -> words.say("order.short.line", words.figure(line.missing()), line.line().name())).toList();
        boolean most = isMost();
        if (view.delivered() > 0) {
            said.add(words.say("order.short", words.figure(view.delivered()), words.counted(view.topic().machines(), "machines"),
                    words.list(lacking)));
        }
        if (view.delivered() == 0 || !most) {
            said.add(words.say(!most ? "order.short.open" : "order.short.none"));
        }
        view.shortage().get().causes().forEach(cause -> said.add(cause.message()));
        view.shortage().get().later().ifPresent(later -> said.add(words.say("order.short.later",
                words.day(view.day().in(later.leadDays())), PriceSums.net(words.money(paid(later)), shop, words))));
        return said;
    }

    /** Whether it is proved that no more machines can be delivered. */
    private boolean isMost() {
        return view.proof().status() == OrderStatus.IMPOSSIBLE || view.shortage().map(Shortage::most).orElse(true);
    }

    /** What is paid for a whole order that waits: it has all machines, so that an agreed price counts as well. */
    private BigDecimal paid(Later later) {
        return shop.amount(answer.job().discount().net(later.price().unscaledValue().longValueExact()));
    }

    List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        for (Filled line : view.contents().lines()) {
            for (Group group : line.builds()) {
                BuildView build = group.build();
                rows.add(new Row(named(line, group), words.say("order.what", build.bare().name(), build.bare().processors(),
                        build.bare().processorSku().orElseThrow(), SideBySide.modules(build, words)), words.figure(build.count()),
                        words.day(view.day().in(build.leadDays())), words.money(build.price().orElseThrow())));
            }
        }
        for (Housed housed : view.contents().enclosures()) {
            int days = housed.lines().stream().flatMap(line -> line.source().stream()).mapToInt(source -> source.leadDays()).max()
                    .orElse(0);
            rows.add(new Row(words.say("order.enclosure", housed.number(), housed.filled().enclosure().sku()), fed(housed), "",
                    words.day(view.day().in(days)), words.money(housed.price())));
        }
        if (view.cost().delivery().signum() != 0) {
            rows.add(new Row(words.say("order.delivery"), "", "", "", words.money(view.cost().delivery())));
        }
        return rows;
    }

    private String fed(Housed housed) {
        return words.say("order.enclosure.fed", housed.filled().enclosure().name(), housed.filled().supply().count(),
                housed.filled().supply().sku());
    }

    private String named(Filled line, Group group) {
        return line.builds().size() == 1 ? line.line().name() : words.say("order.build", line.line().name(), group.number());
    }

    private LinePart line(Filled line) {
        OrderLine asked = answer.job().order().lines().stream().filter(one -> one.name().equals(line.line().name())).findFirst()
                .orElseThrow();
        List<String> missing = line.delivered() > 0 ? List.of() : why(line);
        return new LinePart(line.line().name(), new AskedWords(words, shop).sentence(asked.request()), missing,
                line.builds().stream().map(group -> build(line, group, asked)).toList());
    }

    /** That none of a line can be delivered, or was found so far, and why, as far as it is known. */
    private List<String> why(Filled line) {
        List<String> said = new ArrayList<>(List.of(words.say(isMost() || line.why().isPresent() ? "order.none" : "order.none.open")));
        line.why().ifPresent(why -> {
            why.conflicts().forEach(conflict -> said.add(conflict.sentence().in(words)));
            why.relaxations().forEach(way -> said.add(way.sentence().in(words)));
            if (!why.relaxations().isEmpty()) {
                said.add(PriceSums.ways("order.ways.each", shop, answer.job().discount(), words));
            }
        });
        return said;
    }

    private BuildPart build(Filled line, Group group, OrderLine asked) {
        BuildView build = group.build();
        BigDecimal price = build.price().orElseThrow();
        return new BuildPart(line.builds().size() == 1 ? "" : named(line, group),
                new MachineFacts(words, view.day()).of(build, asked.request()),
                new PriceList(lists.lines(OfferLine.of(build.lines(), part -> Lines.place(part, shop))),
                        List.of(new OfferPage.Sum(PriceSums.net(lists.total(build.count()), shop, words), words.money(price), true))));
    }

    private EnclosurePart enclosure(Housed housed) {
        Map<String, List<Sled>> byLine = housed.sleds().stream()
                .collect(Collectors.groupingBy(Sled::line, LinkedHashMap::new, Collectors.toList()));
        List<String> sleds = new ArrayList<>();
        byLine.forEach((line, some) -> sleds.add(words.say("order.sleds", line, some.stream()
                .map(sled -> words.say("order.sled", words.figure(sled.machine()), sled.bay())).collect(Collectors.joining(", ")))));
        return new EnclosurePart(words.say("order.enclosure", housed.number(), fed(housed)), sleds,
                new PriceList(lists.lines(OfferLine.of(housed.lines(), part -> Lines.place(part, shop))),
                        List.of(new OfferPage.Sum(PriceSums.net(words.say("sum.total"), shop, words), words.money(housed.price()), true))));
    }

    private List<DeliveryRow> deliveries() {
        return view.contents().suppliers().stream().map(delivery -> new DeliveryRow(delivery.own() ? delivery.supplier() + ", own shelf"
                : delivery.supplier(), words.figure(delivery.lots()), words.figure(delivery.units()), words.figure(delivery.leadDays()),
                words.money(delivery.parts()), Optional.of(delivery.charge()).filter(charge -> charge.signum() != 0).map(words::money)
                .orElse(""))).toList();
    }
}
