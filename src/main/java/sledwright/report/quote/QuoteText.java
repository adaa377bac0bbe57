package sledwright.report.quote;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import sledwright.compare.PricePoints;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.QuoteView.Alternative;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Objective;
import sledwright.generator.Status;
import sledwright.metrics.MemorySpeed;
import sledwright.report.build.BuildText;
import sledwright.report.build.ExplanationText;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable.Fit;
import sledwright.report.text.TextTable;
import sledwright.words.Advice;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** The answer to a request, for people. */
public final class QuoteText {

    private record Column(String header, Fit fit, Function<Alternative, String> cell) {

        static Column of(String header, Fit fit, Function<BuildView, ?> cell) {
            return new Column(header, fit, alternative -> cell.apply(alternative.build()).toString());
        }
    }

    private final QuoteView view;
    private final Page page;

    private QuoteText(QuoteView view, Screen screen) {
        this.view = view;
        page = new Page(screen);
    }

    public static String of(QuoteView view, Screen screen) {
        return new QuoteText(view, screen).write();
    }

    private String write() {
        page.text(Ink.HEAD, "%s: %s, %s".formatted(view.topic().request(),
                view.topic().machines() == 1 ? "1 machine" : view.topic().machines() + " machines", view.objective()));
        addStatus();
        view.day().warnings().forEach(warning -> page.text(Ink.FAIR, warning));
        if (!view.alternatives().isEmpty()) {
            addRanking();
            addBest(view.alternatives().get(0));
        }
        addExplanation();
        view.outlook().steps().ifPresent(steps -> StepsText.add(page, steps, view));
        return page.toString();
    }

    private void addStatus() {
        switch (view.proof().status()) {
            case PROVED -> page.text(Ink.GOOD, QuoteStatus.of(view));
            case BEST_FOUND -> {
                boolean nothing = view.alternatives().isEmpty() && view.proof().doubts().late();
                page.text(Ink.FAIR, nothing ? Sentence.of("%s. %s", QuoteStatus.of(view), Advice.MORE_TIME)
                        : Sentence.plain(QuoteStatus.of(view)));
                view.reservations().forEach(page::text);
            }
            case IMPOSSIBLE -> page.text(Ink.BAD, QuoteStatus.of(view));
        }
        view.proof().best().filter(best -> !view.objective().label().equals("cheapest"))
                .ifPresent(best -> page.line(switch (view.objective()) {
                    case MOST_THROUGHPUT -> "throughput of the best: " + best;
                    case MOST_BANDWIDTH -> "memory bandwidth of the best: " + best + " GB/s";
                    case MOST_MEMORY -> "usable memory of the best: " + best + " GB";
                    case MOST_WORK -> "work of the best: " + best;
                    case MOST_CORES -> "cores of the best: " + best;
                    default -> "%s of the best: %s %s".formatted(measured(view.objective()), best, view.topic().currency());
                }));
    }

    /** What an objective of money measures. */
    public static String measured(Objective objective) {
        return switch (objective) {
            case LEAST_TOTAL -> "price and energy";
            case BEST_VALUE -> "price less worth";
            default -> "price";
        };
    }

    private void addRanking() {
        boolean points = view.hasPoints();
        String builds = points ? "Price points" : "Alternatives";
        page.heading(view.topic().machines() == 1 ? builds
                : "%s (prices for all %s machines, figures of one)".formatted(builds, view.topic().machines()));
        List<Column> parts = new ArrayList<>(List.of(Column.of(view.topic().currency(), Fit.RIGHT, BuildText::money)));
        if (view.alternatives().stream().anyMatch(alternative -> alternative.sale().pays().isChanged())) {
            parts.add(new Column("to pay", Fit.RIGHT, alternative -> alternative.sale().pays().net().toString()));
        }
        boolean energy = view.alternatives().stream().anyMatch(alternative -> alternative.weighed().energy().isPresent());
        if (energy) {
            parts.add(new Column("energy", Fit.RIGHT, alternative -> alternative.weighed().energy().map(BigDecimal::toString).orElse("")));
            parts.add(new Column("with it", Fit.RIGHT, alternative -> alternative.total().map(BigDecimal::toString).orElse("")));
        }
        if (view.objective() == Objective.BEST_VALUE) {
            parts.add(new Column("less worth", Fit.RIGHT,
                    alternative -> alternative.weighed().priceLessWorth().map(BigDecimal::toString).orElse("")));
        }
        if (view.alternatives().stream().map(alternative -> alternative.build().bare().platform()).distinct().count() > 1) {
            parts.add(Column.of("platform", Fit.LEFT, build -> build.bare().platform()));
        }
        if (points) {
            parts.add(new Column("chosen for", Fit.FLEXIBLE, alternative -> alternative.mark().map(QuoteText::words).orElse("")));
        }
        parts.addAll(List.of(
                Column.of("processor", Fit.LEFT, BuildText::processors),
                Column.of("memory", Fit.LEFT, BuildText::memory),
                Column.of("days", Fit.RIGHT, build -> String.valueOf(build.leadDays()))));
        List<Column> figures = new ArrayList<>(List.of(
                Column.of("cores", Fit.RIGHT, build -> String.valueOf(build.figures().cores()))));
        if (view.alternatives().stream().anyMatch(alternative -> !allUsable(alternative.build()))) {
            figures.add(Column.of("usable GB", Fit.RIGHT, build -> Numbers.plain(build.figures().usableGb())));
        }
        if (view.alternatives().stream().anyMatch(alternative -> alternative.build().doesWork())) {
            figures.add(Column.of("work", Fit.RIGHT, build -> Numbers.plain(Math.rint(build.figures().work() * 10) / 10)));
        }
        figures.addAll(List.of(
                Column.of("MT/s", Fit.RIGHT, build -> String.valueOf(build.figures().speed().mts())),
                Column.of("set by", Fit.FLEXIBLE, build -> build.figures().speed().setBy().label()),
                Column.of("GB/s", Fit.RIGHT, build -> Numbers.plain(build.figures().bandwidthGbs())),
                Column.of("throughput", Fit.RIGHT, build -> BuildText.throughput(build.figures())),
                Column.of("load W", Fit.RIGHT, build -> Numbers.plain(build.figures().loadW())),
                Column.of("wall W", Fit.RIGHT, build -> BuildText.wall(build.figures()))));
        List<Column> all = new ArrayList<>(parts);
        all.addAll(figures);
        if (page.fits(ranking(all))) {
            page.table(ranking(all));
        } else {
            page.table(ranking(parts)).gap().table(ranking(figures));
        }
        if (view.alternatives().stream().anyMatch(alternative -> alternative.build().figures().throughputEstimated())) {
            page.line("~ an estimate: cores x all-core clock x the generation's factor");
        }
        if (energy && view.alternatives().stream()
                .anyMatch(alternative -> alternative.build().figures().wallW().isEmpty())) {
            page.text("Where no wall power is shown, the loss of what feeds the machine is not known and in no energy cost.");
        }
        if (view.proof().status() == Status.PROVED && !view.complete()) {
            if (view.proof().doubts().late()) {
                page.text(Sentence.of("The time limit ended the search for alternatives: better ones may be missing. %s",
                        Advice.MORE_TIME));
            }
            view.reservations().forEach(words -> page.text("Better alternatives may be missing. " + words));
        }
        view.alternatives().forEach(alternative -> alternative.difference()
                .ifPresent(difference -> page.item(alternative.rank() + " - ", difference + speed(alternative))));
    }

    /** What sets the memory speed, where that is not what sets it in the best build. */
    private String speed(Alternative alternative) {
        MemorySpeed speed = alternative.build().figures().speed();
        return speed.equals(view.alternatives().get(0).build().figures().speed()) ? "" : " " + alternative.reasons().get(0);
    }

    /** What a price point is chosen for. */
    public static String words(PricePoints.Mark mark) {
        return switch (mark) {
            case CHEAPEST -> "least price";
            case UNIT -> "most for the money";
            case KNEE -> "last good step";
            case NEXT -> "next step up";
        };
    }

    private static boolean allUsable(BuildView build) {
        return build.figures().usableGb() == build.figures().memoryGb();
    }

    private TextTable ranking(List<Column> columns) {
        TextTable table = new TextTable().column("#", Fit.RIGHT);
        columns.forEach(column -> table.column(column.header(), column.fit()));
        for (Alternative alternative : view.alternatives()) {
            List<String> cells = new ArrayList<>(List.of(String.valueOf(alternative.rank())));
            columns.forEach(column -> cells.add(column.cell().apply(alternative)));
            table.row(cells);
        }
        return table;
    }

    private void addBest(Alternative best) {
        page.heading("The best build").text(BuildText.summary(best.build()));
        page.heading("Parts to pick").table(BuildText.parts(best.build(), best.sale().pays(), view.topic().currency()));
        BuildText.addSlots(page, best.build());
        page.heading("Why").items(best.sentences());
    }

    private void addExplanation() {
        view.outlook().tooMany().ifPresent(some -> page.heading("How many can be had").text(some.words()));
        ExplanationText.addConflicts(page, view.explanation());
        view.explanation().whyNot().forEach(answer -> page.heading("Why not " + answer.sku()).items(answer.sentences()));
    }
}
