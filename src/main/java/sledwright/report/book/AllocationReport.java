package sledwright.report.book;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.book.Allocated;
import sledwright.book.Allocated.Drawn;
import sledwright.book.Allocated.Fate;
import sledwright.book.SavedQuote;
import sledwright.planner.allot.LotName;
import sledwright.report.text.Csv;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.words.Numbers;

/** Promised machines, drawn anew from today's stock. */
public final class AllocationReport {

    private static final Map<Fate, String> WORDS = Map.of(
            Fate.SAME, "the same parts from the same lots",
            Fate.MOVED, "the same parts, some from other lots",
            Fate.CHANGED, "other parts; all that the customer was told is kept",
            Fate.BROKEN, "cannot be kept",
            Fate.PICKED, "picked, and stays as it is");

    private AllocationReport() {
    }

    /** @param applied whether it was written into the book */
    public static String text(Allocated allocated, boolean applied, Screen screen) {
        Page page = new Page(screen);
        if (allocated.promises().isEmpty()) {
            return page.text("Nothing is promised.").toString();
        }
        page.text("%s drawn from today's stock".formatted(Numbers.counted(allocated.promises().size(), "promise")));
        counts(allocated).forEach((fate, count) -> page.line("%s: %s".formatted(count, WORDS.get(fate))));
        table(allocated, page);
        allocated.promises().stream().filter(one -> one.fate() == Fate.BROKEN).forEach(one -> broken(one, page));
        allocated.strained().forEach(lot -> page.gap().text("Holds are more than there is: %s".formatted(lot)));
        page.gap();
        quality(allocated.quality(), amount -> "%s %s".formatted(amount, allocated.quality().currency())).forEach(page::text);
        return page.text(applied ? "Applied: the book keeps these units from now on." : "Nothing is written yet; --apply does that.")
                .toString();
    }

    private static void table(Allocated allocated, Page page) {
        TextTable table = new TextTable().column("number", Fit.LEFT).column("customer", Fit.FLEXIBLE).column("", Fit.LEFT)
                .column("told", Fit.RIGHT).column("costs now", Fit.RIGHT).column("", Fit.LEFT).column("takes now", Fit.FLEXIBLE)
                .column("gives back", Fit.FLEXIBLE);
        allocated.promises().stream().filter(one -> one.fate() != Fate.SAME && one.fate() != Fate.PICKED).forEach(one ->
                table.row(one.quote().number(), one.quote().customer(), one.fate().label(),
                told(one.quote(), allocated.quality().currency()), one.cost().map(Object::toString).orElse("none"),
                allocated.quality().currency(), units(one.lots().fresh(), ", "), units(one.lots().given(), ", ")));
        if (allocated.promises().stream().anyMatch(one -> one.fate() != Fate.SAME && one.fate() != Fate.PICKED)) {
            page.gap().table(table);
        }
    }

    /** What the customer was told; in another currency than today's, with its name. */
    static String told(SavedQuote quote, String currency) {
        return quote.offered().pays().map(amount -> BookText.amount(amount, quote.offered().currency(), currency)).orElse("none");
    }

    private static String units(Map<LotName, Integer> units, String between) {
        return units.entrySet().stream().map(lot -> "%s %s".formatted(lot.getValue(), lot.getKey())).collect(Collectors.joining(between));
    }

    private static void broken(Drawn one, Page page) {
        page.heading("%s for %s cannot be kept".formatted(one.quote().number(), one.quote().customer())).items(one.lacks());
        if (!one.ways().isEmpty()) {
            page.text("The nearest ways out:").items(one.ways());
        }
    }

    /**
     * How good it is, in sentences.
     *
     * @param money how amounts are written
     */
    static List<String> quality(Allocated.Quality quality, Function<BigDecimal, String> money) {
        List<String> said = new ArrayList<>();
        if (quality.found().broken() > 0) {
            said.add(quality.found().broken() <= quality.leastBroken() ? "No allocation delivers more machines."
                    : "%s cannot be delivered; at least %s cannot in any case.".formatted(
                    Numbers.counted(quality.found().broken(), "machine"), quality.leastBroken()));
        }
        if (quality.found().changed() > 0) {
            said.add(quality.found().changed() <= quality.leastChanged() ? "None that delivers as many changes fewer."
                    : "%s change; at least %s do in any case.".formatted(
                    Numbers.counted(quality.found().changed(), "machine"), quality.leastChanged()));
        }
        if (quality.found().cost().signum() != 0) {
            String cost = "All that is delivered costs %s at today's prices".formatted(money.apply(quality.found().cost()));
            said.add(quality.leastCost().map(least -> least.compareTo(quality.found().cost()) >= 0 ? cost + "; none like it costs less."
                    : cost + "; none like it costs less than %s.".formatted(money.apply(least)))
                    .orElse(cost + "; how much less would do is not known."));
        }
        return said;
    }

    static String words(Fate fate) {
        return WORDS.get(fate);
    }

    static Map<Fate, Integer> counts(Allocated allocated) {
        Map<Fate, Integer> counts = new EnumMap<>(Fate.class);
        allocated.promises().forEach(one -> counts.merge(one.fate(), 1, Integer::sum));
        return counts;
    }

    /** A row for each lot that a promise takes from; of a promise that cannot be kept a row without a lot. */
    public static String csv(Allocated allocated) {
        List<List<Object>> rows = new ArrayList<>();
        for (Drawn one : allocated.promises()) {
            List<Object> head = List.of(one.quote().number().toString(), one.quote().customer(), one.fate().label());
            new TreeMap<>(one.lots().units()).forEach((lot, units) -> rows.add(row(head, lot.sku(), lot.lot(), units)));
            if (one.lots().units().isEmpty()) {
                rows.add(row(head, "", "", 0));
            }
        }
        return Csv.write(List.of("number", "customer", "fate", "sku", "lot", "units"), rows);
    }

    private static List<Object> row(List<Object> head, String sku, String lot, int units) {
        List<Object> row = new ArrayList<>(head);
        row.addAll(List.of(sku, lot, units));
        return row;
    }
}
