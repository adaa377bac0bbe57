package sledwright.report.check;

import sledwright.desk.view.CheckView;
import sledwright.metrics.Figures;
import sledwright.report.build.BuildText;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** The verdict on a build, for people. */
public final class CheckText {

    private CheckText() {
    }

    public static String of(CheckView view, Screen screen) {
        Page page = new Page(screen);
        page.text(Ink.HEAD, view.name());
        int broken = view.violations().size();
        if (view.valid()) {
            page.text(Ink.GOOD, "valid: every rule holds");
        } else {
            page.text(Ink.BAD, "invalid: %s %s".formatted(broken, broken == 1 ? "breach of a rule" : "breaches of rules"));
            page.gap();
            TextTable table = new TextTable().column("rule", Fit.LEFT).column("where", Fit.FLEXIBLE).column("what is wrong", Fit.FLEXIBLE);
            for (Violation violation : view.violations()) {
                table.row(violation.rule(), violation.where(), violation.message());
            }
            page.table(table);
        }
        page.heading("The build").text(BuildText.summary(view.build()));
        page.gap().table(figures(view));
        if (!view.build().lines().isEmpty()) {
            page.heading("Parts to pick").table(BuildText.parts(view.build(), view.currency()));
        }
        BuildText.addSlots(page, view.build());
        return page.toString();
    }

    private static TextTable figures(CheckView view) {
        Figures figures = view.build().figures();
        String wall = BuildText.wall(figures);
        return new TextTable().column("", Fit.LEFT).column("", Fit.LEFT)
                .row("cores", figures.cores() + " (" + BuildText.processors(view.build()) + ")")
                .row("memory", BuildText.memory(view.build())
                        + (figures.usableGb() == figures.memoryGb() ? "" : ", " + Numbers.plain(figures.usableGb()) + " GB usable"))
                .row("memory speed", "%s MT/s, set by %s".formatted(figures.speed().mts(), figures.speed().setBy().label()))
                .row("memory bandwidth", Numbers.plain(figures.bandwidthGbs()) + " GB/s")
                .row("throughput", BuildText.throughput(figures) + (figures.throughputEstimated() ? " (an estimate)" : ""))
                .row("load", Numbers.plain(figures.loadW()) + " W" + (figures.wallW().isPresent() ? ", " + wall + " W from the wall" : ""))
                .row("spare slots", String.valueOf(figures.spareSlots()))
                .row("lead time", view.build().leadDays() + (view.build().leadDays() == 1 ? " day" : " days"))
                .row("price", view.build().price().map(price -> price + " " + view.currency())
                        .orElse("none: stock does not hold all parts"));
    }
}
