package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import sledwright.desk.view.Audience;
import sledwright.desk.view.OrderAnswer;
import sledwright.domain.Catalog;
import sledwright.report.page.Wording;
import sledwright.report.text.Letter;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;

/** The quote of an order as a plain letter to the customer, ready to be pasted into a mail. */
public final class OrderLetter {

    private final OrderAnswer answer;
    private final OrderPage page;
    private final Wording words;
    private final LetterParts parts;

    private OrderLetter(OrderAnswer answer) {
        this.answer = answer;
        Catalog shop = answer.job().catalog();
        page = new OrderPage(answer, Audience.CUSTOMER);
        words = Wording.of(shop);
        parts = new LetterParts(words, shop);
    }

    public static String of(OrderAnswer answer) {
        return new OrderLetter(answer).write();
    }

    private String write() {
        Letter letter = parts.begin(answer.job().customer())
                .paragraph(Stream.of(page.asked(), page.lead()).filter(text -> !text.isEmpty()).reduce((one, other) -> one + " " + other)
                .orElseThrow());
        page.missing().forEach(letter::paragraph);
        if (!page.rows().isEmpty()) {
            letter.paragraph(words.say("letter.what")).table(summary());
        }
        page.lines().forEach(line -> add(line, letter));
        page.enclosures().forEach(enclosure -> letter.paragraph(enclosure.title()).items("- ", enclosure.sleds())
                .table(parts.prices(enclosure.prices())));
        return parts.end(letter, page.rows().isEmpty() ? List.of() : page.terms(), page.named().whole());
    }

    private TextTable summary() {
        TextTable table = new TextTable().column(words.say("order.column.machines"), Fit.RIGHT)
                .column(words.say("order.column.line"), Fit.FLEXIBLE).column(words.say("order.column.here"), Fit.FLEXIBLE)
                .column(words.say("column.price"), Fit.RIGHT);
        page.rows().forEach(row -> table.row(row.machines(), row.name(), row.here(), row.price()));
        page.sums().forEach(sum -> table.row("", sum.label(), "", sum.amount()));
        return table;
    }

    private void add(OrderPage.LinePart line, Letter letter) {
        List<String> said = new ArrayList<>(List.of(line.title() + ":", line.asked()));
        said.addAll(line.missing());
        letter.lines(said);
        line.builds().forEach(build -> {
            List<String> facts = new ArrayList<>(build.title().isEmpty() ? List.of() : List.of(build.title() + ":"));
            facts.addAll(LetterParts.facts(build.facts()));
            letter.lines(facts).table(parts.prices(build.prices()));
        });
    }
}
