package sledwright.report.quote;

import sledwright.desk.view.QuoteView;

/** How sure a quote is, in words that go on behind a colon or begin a line. */
public final class QuoteStatus {

    private QuoteStatus() {
    }

    /** Such as {@code proved: no cheaper valid build exists}. */
    public static String of(QuoteView view) {
        return switch (view.proof().status()) {
            case PROVED -> "proved: " + (view.hasPoints() ? "no valid build gives as much for less than one of these"
                    : switch (view.objective()) {
                case CHEAPEST -> "no cheaper valid build exists";
                case LEAST_TOTAL -> "no valid build costs less with its energy";
                case MOST_THROUGHPUT -> "no valid build has more throughput";
                case MOST_BANDWIDTH -> "no valid build has more memory bandwidth";
                case MOST_MEMORY -> "no valid build has more usable memory";
                case MOST_WORK -> "no valid build does more work";
                case MOST_CORES -> "no valid build has more cores";
                case BEST_VALUE -> "no valid build has a lower price less worth";
            });
            case BEST_FOUND -> bestFound(view);
            case IMPOSSIBLE -> "impossible: no valid build exists";
        };
    }

    private static String bestFound(QuoteView view) {
        boolean late = view.proof().doubts().late();
        return !view.alternatives().isEmpty() ? "best found%s: %s".formatted(late ? " in time" : "", bound(view)) : late
                ? "nothing found before the time limit, and not proved that nothing exists"
                : "nothing found, and not proved that nothing exists";
    }

    private static String bound(QuoteView view) {
        if (view.proof().bound().isEmpty()) {
            return "how much better a build could be is not known";
        }
        String unit = view.isMoney() ? " " + view.topic().currency() : "";
        return "no valid build is %s %s%s%s".formatted(view.isMoney() ? "below" : "above", view.proof().bound().get(), unit,
                view.gapPercent().map(gap -> " (gap " + gap + " %)").orElse(""));
    }
}
