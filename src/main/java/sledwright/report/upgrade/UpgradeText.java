package sledwright.report.upgrade;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.desk.view.UpgradeView.Bought;
import sledwright.desk.view.UpgradeView.Done;
import sledwright.desk.view.UpgradeView.Reach;
import sledwright.desk.view.UpgradeView.Work;
import sledwright.desk.view.UpgradeView;
import sledwright.domain.Fitout;
import sledwright.generator.Status;
import sledwright.metrics.Figures;
import sledwright.planner.upgrade.BenchStep;
import sledwright.report.build.BenchText;
import sledwright.report.build.BuildText;
import sledwright.report.build.ExplanationText;
import sledwright.report.build.Precautions;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable.Fit;
import sledwright.report.text.TextTable;
import sledwright.rules.Violation;
import sledwright.words.Advice;
import sledwright.words.Numbers;
import sledwright.words.Sentence;
import sledwright.words.Sentences;

/** The answer to a request for an upgrade, for people. */
public final class UpgradeText {

    private final UpgradeView view;
    private final Page page;

    private UpgradeText(UpgradeView view, Screen screen) {
        this.view = view;
        page = new Page(screen);
    }

    public static String of(UpgradeView view, Screen screen) {
        return new UpgradeText(view, screen).write();
    }

    private String write() {
        page.text(Ink.HEAD, "%s: upgrade of %s".formatted(view.topic().request(), Numbers.counted(view.topic().machines(), "machine")));
        Optional<Bought> cheaper = view.whole().filter(Bought::isCheaper);
        cheaper.ifPresent(whole -> page.text(Ink.GOOD, whole()));
        addStatus(cheaper.isPresent());
        view.day().warnings().forEach(warning -> page.text(Ink.FAIR, warning));
        view.upgrade().ifPresent(done -> page.text(spend(done)));
        if (cheaper.isEmpty()) {
            page.text(whole());
        }
        view.reservations().forEach(page::text);
        addStanding();
        cheaper.ifPresent(this::addWhole);
        view.upgrade().ifPresent(this::addUpgrade);
        addConflicts();
        return page.toString();
    }

    private void addWhole(Bought whole) {
        page.heading("Bought whole").text(BuildText.summary(whole.build()) + ", " + BuildText.memory(whole.build()));
        page.gap().table(BuildText.parts(whole.build(), view.topic().currency()));
    }

    private void addStatus(boolean cheaperWhole) {
        switch (view.proof().status()) {
            case PROVED -> page.text(Ink.GOOD, !view.upgrade().orElseThrow().changes()
                    ? "proved: nothing needs to change, the target is reached as it stands"
                    : cheaperWhole ? "proved: no upgrade costs less" : "proved: the target cannot be reached for less");
            case BEST_FOUND -> page.text(Ink.FAIR, view.upgrade().isEmpty() ? view.proof().doubts().late()
                    ? Sentence.of("nothing found before the time limit, and not proved that nothing exists. %s", Advice.MORE_TIME)
                    : Sentence.plain("nothing found, and not proved that nothing exists")
                    : Sentence.plain("best found" + (view.proof().doubts().late() ? " in time" : "")
                    + view.proof().bound().map(bound -> ": nothing costs less than " + money(bound)).orElse("")));
            case IMPOSSIBLE -> page.text(Ink.BAD, "impossible: no upgrade of this machine reaches the target");
        }
    }

    private String money(BigDecimal amount) {
        return amount + " " + view.topic().currency();
    }

    private String spend(Done done) {
        String bought = String.join(" + ", BuildText.shares(done.spent().parts(), done.spent().labour(), done.spent().licence()));
        String fetched = done.spent().credit().signum() == 0 ? "" : "less %s for what is pulled".formatted(done.spent().credit());
        String made = Stream.of(bought, fetched).filter(part -> !part.isEmpty()).collect(Collectors.joining(", "));
        return "to spend: %s%s".formatted(money(done.spent().total()), made.isEmpty() ? "" : " (" + made + ")");
    }

    private String whole() {
        if (view.whole().isEmpty()) {
            return view.wholeProved() ? "bought whole: no machine of the catalogue answers the request within its limits"
                    : view.proof().wholeDoubts().late() ? "bought whole: nothing found before the time limit"
                    : "bought whole: nothing found, and not proved that nothing exists";
        }
        Bought whole = view.whole().get();
        String old = whole.credit().signum() == 0 ? "" : " (%s, less %s for what stands now)".formatted(whole.price(), whole.credit());
        String against = whole.extra().map(extra -> extra.signum() == 0 ? ", as much as the upgrade"
                : ", %s %s than the upgrade".formatted(money(extra.abs()), extra.signum() < 0 ? "less" : "more")).orElse("");
        return "bought whole: %s%s%s%s".formatted(money(whole.spend()), old, against,
                view.wholeProved() ? "" : view.proof().wholeDoubts().late() ? "; time ran out before it was proved that nothing is cheaper"
                : "; not proved that nothing is cheaper");
    }

    private void addStanding() {
        if (!view.standing().figures().isEmpty()) {
            TextTable table = new TextTable().column("what one machine reaches", Fit.LEFT).column("asked", Fit.RIGHT)
                    .column("now", Fit.RIGHT);
            if (view.upgrade().isPresent()) {
                table.column("then", Fit.RIGHT);
            }
            for (Reach reach : view.standing().figures()) {
                String asked = reach.least().map(least -> Numbers.plain(least) + reach.unit())
                        .or(() -> reach.most().map(most -> "at most " + Numbers.plain(most) + reach.unit())).orElse("");
                List<String> cells = new ArrayList<>(List.of(reach.noun(), asked, Numbers.plain(reach.now()) + reach.unit()));
                reach.then().ifPresent(then -> cells.add(Numbers.plain(then) + reach.unit()));
                table.row(cells);
            }
            page.gap().table(table);
        }
        addViolations("Rules that the machine breaks as it stands", view.standing().breaches());
        List<Violation> more = view.standing().misses().stream().filter(violation -> !view.standing().breaches().contains(violation))
                .toList();
        addViolations("What keeps it from answering the request as it stands", more);
    }

    private void addViolations(String heading, List<Violation> violations) {
        if (!violations.isEmpty()) {
            page.heading(heading);
            violations.forEach(violation -> page.item("- ", "%s: %s".formatted(violation.rule(), violation.message())));
        }
    }

    private void addUpgrade(Done done) {
        page.heading(done.changes() ? "The machine after the upgrade" : "The machine")
                .text(BuildText.summary(done.build()) + ", " + BuildText.memory(done.build()));
        if (!done.paid().isEmpty()) {
            page.heading("What is paid for").table(BuildText.lines(done.paid(), view.topic().currency()));
        }
        if (!done.pulled().isEmpty()) {
            page.heading("What is pulled" + (done.spent().credit().signum() == 0 ? "" : ", with what it fetches"));
            TextTable table = new TextTable().column("part", Fit.LEFT).column("", Fit.FLEXIBLE).column("units", Fit.RIGHT)
                    .column("each", Fit.RIGHT)
                    .column(view.topic().currency(), Fit.RIGHT);
            done.pulled().forEach(line -> table.row(line.sku(), line.description(), line.quantity(),
                    line.unitPrice().negate(), line.total().negate()));
            page.table(table);
        }
        BuildText.addSlots(page, done.build());
        if (done.changes()) {
            addWork(done);
        }
    }

    private void addWork(Done done) {
        List<Work> opened = opened(done);
        page.heading(opened.isEmpty() ? "Before the volumes are changed" : "Before the machine is opened").items(precautions(done));
        for (Work work : opened) {
            String which = view.topic().machines() == 1 ? "" : done.work().size() == 1 && work.machines() == view.topic().machines()
                    ? ", each machine"
                    : ", each of " + Numbers.counted(work.machines(), "machine");
            page.heading("At the bench" + which);
            List<String> sentences = BenchText.sentences(work.steps());
            for (int i = 0; i < sentences.size(); i++) {
                page.item("%2s. ".formatted(i + 1), sentences.get(i));
            }
            if (work.steps().stream().anyMatch(step -> step.part() == BenchStep.Part.HEAT_SINK)) {
                page.items(Precautions.HEAT_SINKS);
            }
        }
        page.gap();
        if (!opened.isEmpty()) {
            addFirstStart(done);
        }
        page.items(volumes(done));
    }

    static List<Work> opened(Done done) {
        return done.work().stream().filter(work -> !work.steps().isEmpty()).toList();
    }

    /** What to mind before the work; none where there is none. */
    static List<String> precautions(Done done) {
        return Stream.concat(done.touchesDrives() ? Precautions.DRIVES.stream() : Stream.of(),
                opened(done).isEmpty() ? Stream.of() : Precautions.BEFORE.stream()).toList();
    }

    /** What is to be done about the volumes. Machines differ in part numbers alone, so that what is true of those of one is true of all. */
    static List<String> volumes(Done done) {
        return BenchText.volumes(done.build().heaviest().fitout(),
                done.work().stream().anyMatch(work -> work.remade() || BenchText.touchVolumes(work.steps())), false);
    }

    private void addFirstStart(Done done) {
        Figures then = done.build().figures();
        Fitout fitout = done.build().heaviest().fitout();
        List<String> counted = new ArrayList<>(List.of("%s with %s cores".formatted(Numbers.counted(then.processors(), "processor"),
                then.cores()), "%s GB at %s MT/s".formatted(then.memoryGb(), then.speed().mts())));
        if (!fitout.drives().isEmpty()) {
            counted.add(Numbers.counted(fitout.drives().size(), "drive"));
        }
        if (!fitout.cards().isEmpty()) {
            counted.add(Numbers.counted(fitout.cards().size(), "card"));
        }
        page.text("Close the machine before it is plugged in. At its first start it should count %s."
                .formatted(Sentences.list(counted)));
    }

    private void addConflicts() {
        if (view.proof().status() == Status.IMPOSSIBLE) {
            ExplanationText.addConflicts(page, view.explanation());
        }
    }
}
