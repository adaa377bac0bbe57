package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.desk.view.Lines;
import sledwright.desk.view.Payment;
import sledwright.desk.view.UpgradeView;
import sledwright.desk.view.UpgradeView.Bought;
import sledwright.desk.view.UpgradeView.Done;
import sledwright.desk.view.UpgradeView.Reach;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.generator.Status;
import sledwright.report.offer.OfferPage.PriceLine;
import sledwright.report.offer.OfferPage.PriceList;
import sledwright.report.page.Wording;
import sledwright.report.text.Letter;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.request.Job;

/**
 * What machines that stand need, as a plain letter to the customer, ready to be pasted into a mail. What is done to them is the bench's
 * matter.
 */
public final class UpgradeLetter {

    private final UpgradeView view;
    private final Job.Upgrade job;
    private final Catalog shop;
    private final Wording words;
    private final LetterParts parts;
    private final Letter letter;

    private UpgradeLetter(UpgradeView view, Job.Upgrade job) {
        this.view = view;
        this.job = job;
        shop = job.catalog();
        words = Wording.of(shop);
        parts = new LetterParts(words, shop);
        letter = parts.begin(List.of());
    }

    /** @param view as a customer may see it */
    public static String of(UpgradeView view, Job.Upgrade job) {
        return new UpgradeLetter(view, job).write();
    }

    private String write() {
        letter.paragraph(new AskedWords(words, shop).ofStanding(job.request())).paragraph(lead());
        if (!view.standing().figures().isEmpty()) {
            letter.table(figures());
        }
        view.upgrade().filter(Done::changes).ifPresent(this::add);
        whole().ifPresent(letter::paragraph);
        view.whole().filter(Bought::isCheaper).ifPresent(this::add);
        if (view.proof().status() == Status.IMPOSSIBLE) {
            refuse();
        }
        boolean offered = view.upgrade().filter(Done::changes).isPresent() || view.whole().filter(Bought::isCheaper).isPresent();
        return parts.end(letter, offered ? new TermsWords(words, shop, view.day()).all() : List.of(), view.topic().request());
    }

    private String lead() {
        String key = view.upgrade().isEmpty() ? view.proof().status() == Status.IMPOSSIBLE ? "upgrade.lead.impossible"
                : "upgrade.lead.nothing"
                : !view.upgrade().get().changes() ? "upgrade.lead.asis"
                : view.proof().status() == Status.PROVED ? "upgrade.lead.least" : "upgrade.lead.open";
        return words.say(key);
    }

    private TextTable figures() {
        TextTable table = new TextTable().column(words.say("sides.figure"), Fit.FLEXIBLE).column(words.say("sides.asked"), Fit.RIGHT)
                .column(words.say("upgrade.now"), Fit.RIGHT);
        if (view.upgrade().isPresent()) {
            table.column(words.say("upgrade.then"), Fit.RIGHT);
        }
        for (Reach reach : view.standing().figures()) {
            List<String> cells = new ArrayList<>(List.of(words.say("figure." + reach.id()), reach.least()
                    .map(least -> words.say("asked.least", amount(reach, least))).or(() -> reach.most()
                    .map(most -> words.say("asked.most", amount(reach, most)))).orElse(""), amount(reach, reach.now())));
            reach.then().ifPresent(then -> cells.add(amount(reach, then)));
            table.row(cells);
        }
        return table;
    }

    private String amount(Reach reach, double figure) {
        return words.figure(figure) + reach.unit();
    }

    private void add(Done done) {
        letter.paragraph(words.say("upgrade.after"))
                .items("", LetterParts.facts(new MachineFacts(words, view.day()).of(done.build())));
        PriceLists lists = new PriceLists(words);
        List<PriceLine> lines = Stream.concat(lists.lines(OfferLine.of(done.paid(), part -> Lines.place(part, shop))).stream(),
                lists.lines(OfferLine.of(done.pulled(), part -> 0)).stream().map(line -> new PriceLine(line.sku(),
                        line.name().isEmpty() ? words.say("upgrade.pulled") : words.say("upgrade.pulled.named", line.name()),
                        line.condition(), line.quantity(), line.each(), line.total()))).toList();
        letter.paragraph(words.say("upgrade.paid")).table(parts.prices(new PriceList(lines,
                lists.sums(pays(done.spent().total()), lists.total(view.topic().machines())))));
        if (done.touchesDrives() && !job.build().fitout().volumes().isEmpty()) {
            letter.paragraph(words.say("upgrade.save"));
        }
    }

    private Payment pays(BigDecimal amount) {
        return Payment.of(amount.movePointRight(shop.amount(0).scale()).longValueExact(), Discount.NONE, shop);
    }

    /** What the machines would cost bought whole, where they can be. */
    private Optional<String> whole() {
        return view.whole().map(whole -> {
            String extra = whole.extra().map(more -> words.say(more.signum() < 0 ? "upgrade.whole.less" : more.signum() == 0
                    ? "upgrade.whole.same" : "upgrade.whole.more", words.money(more.abs()))).orElse(words.say("upgrade.whole.only"));
            String paid = PriceSums.net(words.money(whole.spend()), shop, words);
            return extra + " " + (whole.credit().signum() == 0 ? words.say("upgrade.whole.price", paid)
                    : words.say("upgrade.whole.old", paid, words.money(whole.price()), words.money(whole.credit())));
        });
    }

    private void add(Bought whole) {
        PriceLists lists = new PriceLists(words);
        letter.paragraph(words.say("upgrade.whole.what"))
                .items("", LetterParts.facts(new MachineFacts(words, view.day()).of(whole.build(), job.request())))
                .table(parts.prices(new PriceList(lists.lines(OfferLine.of(whole.build().lines(), part -> Lines.place(part, shop))),
                        lists.sums(pays(whole.price()), lists.total(view.topic().machines())))));
    }

    private void refuse() {
        List<String> conflicts = view.explanation().conflicts().stream().map(conflict -> conflict.sentence().in(words)).distinct().toList();
        List<String> ways = view.explanation().relaxations().stream().map(way -> way.sentence().in(words)).toList();
        if (!conflicts.isEmpty()) {
            letter.paragraph(words.say("quote.conflicts") + ":").items("- ", conflicts);
        }
        if (!ways.isEmpty()) {
            letter.paragraph(words.say("quote.ways") + ":").items("- ", ways);
        }
    }
}
