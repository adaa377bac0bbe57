package sledwright.report.quote;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.Line;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Objective;
import sledwright.explain.steps.Steps;
import sledwright.explain.steps.Steps.Curve;
import sledwright.explain.steps.Steps.Dropped;
import sledwright.explain.steps.Steps.End;
import sledwright.explain.steps.Steps.PriceRange;
import sledwright.explain.steps.Steps.Step;
import sledwright.report.text.Page;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.words.Numbers;

/** The part of a text that shows how the best changes with the request and with prices. */
final class StepsText {

    private StepsText() {
    }

    static void add(Page page, Steps steps, QuoteView view) {
        if (!steps.curves().isEmpty()) {
            page.heading("What more or less would cost (each requirement by itself)").table(curves(steps.curves(), view));
        }
        if (!steps.wishes().isEmpty()) {
            page.heading("What each wish costs (each dropped by itself)").table(wishes(steps.wishes(), view));
        }
        if (!steps.parts().isEmpty()) {
            page.heading("Unit prices at which this build stays the best (each part by itself)").table(parts(steps.parts(), view));
            page.text("The price of all lots of the part is taken to rise or fall alike" + (averaged(steps.parts(), view)
                    ? "; where units come at different prices, the average is shown." : "."));
        }
        if (!steps.notes().isEmpty()) {
            page.gap();
            steps.notes().forEach(page::text);
        }
    }

    private static TextTable curves(List<Curve> curves, QuoteView view) {
        TextTable table = new TextTable().column("requirement", Fit.LEFT).column("up to", Fit.RIGHT);
        figureColumns(table, view).column("", Fit.FLEXIBLE);
        for (Curve curve : curves) {
            boolean named = false;
            for (Step step : curve.steps()) {
                List<String> cells = new ArrayList<>(List.of(named ? "" : curve.label(), step.upToWords() + curve.unit()));
                cells.addAll(figures(step.best(), step.change(), step.price(), view));
                cells.add(remarks(curve, step));
                table.row(cells);
                named = true;
            }
        }
        return table;
    }

    private static TextTable wishes(List<Dropped> wishes, QuoteView view) {
        TextTable table = figureColumns(new TextTable().column("without", Fit.FLEXIBLE), view);
        for (Dropped one : wishes) {
            List<String> cells = new ArrayList<>(List.of(one.wish().toString()));
            cells.addAll(figures(one.best(), one.change(), one.price(), view));
            table.row(cells);
        }
        return table;
    }

    /** What the objective measures, where that is not the price; by how much it changes, and the price. */
    private static TextTable figureColumns(TextTable table, QuoteView view) {
        if (view.objective() != Objective.CHEAPEST) {
            table.column(measured(view.objective()), Fit.RIGHT);
        }
        return table.column("change", Fit.RIGHT).column(view.topic().currency(), Fit.RIGHT);
    }

    private static List<String> figures(BigDecimal best, BigDecimal change, BigDecimal price, QuoteView view) {
        return view.objective() == Objective.CHEAPEST ? List.of(signed(change), price.toString())
                : List.of(best.toString(), signed(change), price.toString());
    }

    private static String measured(Objective objective) {
        return switch (objective) {
            case CHEAPEST -> "";
            case LEAST_TOTAL -> "with energy";
            case BEST_VALUE -> "less worth";
            case MOST_THROUGHPUT -> "throughput";
            case MOST_BANDWIDTH -> "GB/s";
            case MOST_MEMORY -> "usable GB";
            case MOST_WORK -> "work";
            case MOST_CORES -> "cores";
        };
    }

    private static String signed(BigDecimal change) {
        return change.signum() == 0 ? "" : change.signum() > 0 ? "+" + change : change.toString();
    }

    private static String remarks(Curve curve, Step step) {
        List<String> remarks = new ArrayList<>();
        if (curve.isAsked(step)) {
            remarks.add("asked: " + Numbers.decimal(curve.asked()));
        }
        if (!step.within()) {
            remarks.add("above the limit");
        }
        if (curve.first() && step == curve.steps().get(0)) {
            remarks.add("less changes nothing");
        }
        if (curve.last() && step == curve.steps().get(curve.steps().size() - 1)) {
            remarks.add("no build reaches more");
        }
        return String.join("; ", remarks);
    }

    private static TextTable parts(List<PriceRange> parts, QuoteView view) {
        TextTable table = new TextTable().column("part", Fit.LEFT).column("units", Fit.RIGHT).column("each", Fit.RIGHT)
                .column("from", Fit.RIGHT).column("to", Fit.RIGHT).column("", Fit.FLEXIBLE);
        for (PriceRange part : parts) {
            table.row(part.sku(), part.units(), part.unitPrice(), part.from(),
                    part.to().map(BigDecimal::toString).orElse("any"), ends(part));
        }
        return table;
    }

    private static String ends(PriceRange part) {
        List<String> ends = new ArrayList<>();
        if (part.below() == End.FREE && part.from().signum() > 0) {
            ends.add("at %s its cheapest lot is free".formatted(part.from()));
        }
        if (part.above() == End.PRICE_LIMIT) {
            ends.add("beyond %s the price breaks its limit".formatted(part.to().orElseThrow()));
        }
        return String.join("; ", ends);
    }

    private static boolean averaged(List<PriceRange> parts, QuoteView view) {
        List<Line> lines = view.alternatives().get(0).build().lines();
        return parts.stream().anyMatch(part -> lines.stream().filter(line -> line.sku().equals(part.sku()) && line.unitPrice().signum() > 0)
                .map(Line::unitPrice).distinct().count() > 1);
    }
}
