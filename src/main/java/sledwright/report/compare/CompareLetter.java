package sledwright.report.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.compare.Cost;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.PointView;
import sledwright.generator.Axis;
import sledwright.metrics.Quantity;
import sledwright.report.offer.AskedWords;
import sledwright.report.offer.LetterParts;
import sledwright.report.offer.SideBySide;
import sledwright.report.page.Wording;
import sledwright.report.text.Letter;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.request.Job;
import sledwright.words.Runs;

/** A comparison as a plain letter to the customer, ready to be pasted into a mail. */
public final class CompareLetter {

    private final CompareView view;
    private final Job.Quote job;
    private final Wording words;
    private final CompareWords said;
    private final Letter letter;
    private final Set<Integer> shown = new TreeSet<>();

    private CompareLetter(CompareView view, Job.Quote job) {
        this.view = view;
        this.job = job;
        words = Wording.of(job.catalog());
        said = new CompareWords(view, words);
        letter = new LetterParts(words, job.catalog()).begin(job.customer());
    }

    /** @param job what was asked */
    public static String of(CompareView view, Job.Quote job) {
        return new CompareLetter(view, job).write();
    }

    private String write() {
        boolean found = view.costs().stream().anyMatch(cost -> view.axes().stream().anyMatch(axis -> view.curves(axis, cost).stream()
                .anyMatch(curve -> !curve.points().isEmpty())));
        letter.paragraph(new AskedWords(words, job.catalog()).sentence(job.request()))
                .paragraph(found || view.isImpossible() ? said.status() : words.say("quote.refused.open.time"));
        if (found) {
            if (view.topic().machines() > 1) {
                letter.paragraph(words.say("reading.many", words.figure(view.topic().machines())));
            }
            if (view.scope().energy().isPresent()) {
                letter.paragraph(words.say("compare.energy") + ": " + said.energy());
            }
            view.beforeDiscount().ifPresent(before -> letter.paragraph(before.in(words)));
            for (Cost cost : view.costs()) {
                view.axes().forEach(axis -> view.curves(axis, cost).stream().filter(curve -> !curve.points().isEmpty()).forEach(this::add));
            }
            view.together().ifPresent(all -> {
                String share = words.figure(Quantity.rounded(100 * all.share()));
                letter.paragraph(words.say(all.complete() ? "compare.together.all" : "compare.together.some", share) + " "
                        + spans(all.builds()) + ".");
                shown.addAll(all.builds());
            });
            letter.paragraph(words.say("compare.machines") + ":").table(machines());
        }
        String day = words.say("terms.prices", words.day(job.catalog().pricedOn()), view.topic().currency());
        List<String> terms = new ArrayList<>(List.of(day));
        job.catalog().stationery().tax().percent().ifPresent(percent -> terms.add(words.say("terms.before",
                job.catalog().stationery().tax().name(), words.rate(percent))));
        return new LetterParts(words, job.catalog()).end(letter, terms, view.topic().request());
    }

    /** Ascending numbers, those that follow each other as a span: 1\u20133, 7. */
    private static String spans(List<Integer> numbers) {
        return Runs.of(numbers, (one, next) -> next == one + 1).stream()
                .map(run -> run.size() == 1 ? String.valueOf(run.get(0)) : run.get(0) + "\u2013" + run.get(run.size() - 1))
                .collect(Collectors.joining(", "));
    }

    private void add(CurveView curve) {
        Axis axis = curve.axes().figure();
        letter.paragraph(said.title(axis, curve.axes().cost()) + curve.axes().platform().map(sku -> ", " + sku).orElse("") + ":");
        boolean less = axis.lessIsBetter();
        TextTable table = new TextTable().column(said.cost(curve.axes().cost()), Fit.RIGHT).column(said.figure(axis), Fit.RIGHT)
                .column(words.say("compare.term.extra"), Fit.RIGHT).column(words.say(less ? "compare.saves" : "compare.buys"), Fit.RIGHT)
                .column(words.say("compare.machine"), Fit.RIGHT).column(words.say("sides.mark"), Fit.FLEXIBLE);
        for (PointView point : curve.shortened().points()) {
            shown.add(point.build());
            table.row(words.money(point.cost()), said.amount(axis, point.figure()),
                    point.extra().map(extra -> words.money(extra.cost())).orElse(""),
                    point.extra().map(extra -> said.amount(axis, extra.figure())).orElse(""), point.build(),
                    String.join(", ", said.marks(point)));
        }
        letter.table(table);
        if (curve.shortened().left() > 0) {
            letter.paragraph(words.say(curve.shortened().left() == 1 ? "compare.left.one" : "compare.left",
                    curve.shortened().left(), words.figure(100 * curve.shortened().share())));
        }
    }

    private TextTable machines() {
        TextTable table = new TextTable().column(words.say("compare.machine"), Fit.RIGHT).column(words.say("column.price"), Fit.RIGHT)
                .column(words.say("compare.what"), Fit.FLEXIBLE).column(words.say("sides.lead"), Fit.RIGHT);
        for (int number : shown) {
            BuildView build = view.build(number);
            table.row(number, build.price().map(words::money).orElse(""), words.say("order.what", build.bare().name(),
                    build.bare().processors(), build.bare().processorSku().orElse(""), SideBySide.memory(build, words)),
                    SideBySide.days(build.leadDays(), words));
        }
        return table;
    }
}
