package sledwright.report.compare;

import java.util.ArrayList;
import java.util.List;
import sledwright.compare.Cost;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.PointView;
import sledwright.domain.Stationery;
import sledwright.generator.Axis;
import sledwright.metrics.EnergyCost;
import sledwright.metrics.Quantity;
import sledwright.report.build.BuildText;
import sledwright.report.page.Wording;
import sledwright.words.Sentences;

/** What a comparison is told in, in the language and the words of whom it is for. */
final class CompareWords {

    /** What a word means. */
    record Note(String term, String meaning) {
    }

    private static final String TIMES = " × ";

    private final CompareView view;
    private final Wording words;

    CompareWords(CompareView view, Wording words) {
        this.view = view;
        this.words = words;
    }

    String figure(Axis axis) {
        return words.say("compare.figure." + axis.name());
    }

    /** Such as {@code Usable memory, GB}. */
    String figureAndUnit(Axis axis) {
        return figure(axis) + axis.unitAfter(", ");
    }

    /** The figure of a machine with its unit. */
    String amount(Axis axis, double figure) {
        return words.figure(Quantity.rounded(figure)) + axis.unitAfter(" ");
    }

    String cost(Cost cost) {
        return words.say("compare.cost." + cost.name());
    }

    String title(Axis axis, Cost cost) {
        return words.say("compare.curve", figure(axis), words.say("compare.by." + cost.name()));
    }

    String status() {
        return words.say("compare.status." + view.proof().status().name());
    }

    /** What a point is, beside its figures. */
    List<String> marks(PointView point) {
        List<String> marks = new ArrayList<>();
        if (point.marks().knee()) {
            marks.add(words.say("mark.KNEE"));
        }
        if (point.marks().bestPerUnit()) {
            marks.add(words.say("mark.UNIT"));
        }
        if (view.scope().byPlatform() && point.marks().foremost()) {
            marks.add(words.say("compare.ahead"));
        }
        if (!point.marks().proved()) {
            marks.add(words.say("compare.open"));
        }
        return marks;
    }

    /** How far a curve that is not finished is certain. */
    String open(CurveView curve) {
        String certain = words.say(curve.proved() == 0 ? "compare.certain.none" : curve.proved() == 1 ? "compare.certain.one"
                : "compare.certain.many", curve.proved(), curve.points().size());
        return curve.axes().platform().map(sku -> sku + ": ").orElse("")
                + curve.bound().map(bound -> words.say("compare.bound", certain, words.money(bound))).orElse(certain + ".");
    }

    /** Such as {@code 2 × K1-24X}. */
    String processors(BuildView build) {
        return build.bare().processorSku().map(sku -> build.bare().processors() + TIMES + sku).orElse(words.say("none"));
    }

    /** Such as {@code 12 × 16 GB = 192 GB}, of one machine. */
    String memory(BuildView build) {
        return BuildText.memory(build, TIMES);
    }

    /** The modules of one machine, such as {@code 12 × M16}. */
    String modules(BuildView build) {
        return BuildText.modules(build.heaviest().modules(), TIMES);
    }

    String energy() {
        return view.scope().energy().map(energy -> words.say(energy.years() == 1 ? "compare.energy.words.one" : "compare.energy.words",
                words.figure(energy.years()),
                words.measure(view.scope().pricePerKwh().orElseThrow().stripTrailingZeros()) + " " + view.topic().currency(),
                words.figure(Quantity.rounded(100 * energy.duty())))).orElse("");
    }

    /** What the words mean. @param shop may add a tax to its prices */
    List<Note> notes(Stationery shop) {
        List<Note> notes = new ArrayList<>(List.of(note("step"), note("unit"), note("extra"),
                new Note(Sentences.capital(words.say("mark.KNEE")), words.say("compare.note.knee")),
                new Note(Sentences.capital(words.say("mark.UNIT")), words.say("compare.note.best"))));
        shop.tax().percent().ifPresent(percent -> notes.add(new Note(words.say("column.price"), words.say("compare.note.price",
                shop.tax().name(), words.rate(percent)))));
        view.beforeDiscount().ifPresent(said -> notes.add(new Note(words.say("compare.term.discount"), said.in(words))));
        if (view.scope().byPlatform()) {
            notes.add(new Note(Sentences.capital(words.say("compare.ahead")), words.say("compare.note.ahead")));
        }
        if (view.scope().energy().isPresent()) {
            notes.add(new Note(cost(Cost.TOTAL), words.say("compare.note.total", words.figure(EnergyCost.HOURS_A_YEAR))));
        }
        return notes;
    }

    private Note note(String key) {
        return new Note(words.say("compare.term." + key), words.say("compare.note." + key));
    }
}
