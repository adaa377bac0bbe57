package sledwright.report.book;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sledwright.book.Allocated;
import sledwright.book.Allocated.Drawn;
import sledwright.book.Allocated.Fate;
import sledwright.book.SavedQuote;
import sledwright.domain.Catalog;
import sledwright.planner.allot.LotName;
import sledwright.report.page.Pages;
import sledwright.report.page.Wording;

/** Promises drawn anew, for the page: what becomes of each, what is new, what cannot be kept and its ways out, and how good it is. */
public final class AllocationPiece {

    /** How many promises fare alike. */
    public record Count(String promises, String words) {
    }

    /** A promise. */
    public record Row(String number, String customer, String fate, Sums sums, Lots lots) {
    }

    /** What the customer was told, and what it costs now; empty where there is none. */
    public record Sums(String told, String now) {
    }

    /** What is new, and what is given back. */
    public record Lots(List<String> fresh, List<String> given) {
    }

    /** A promise that cannot be kept. */
    public record Broken(String number, String customer, List<String> lacks, List<String> ways) {
    }

    private AllocationPiece() {
    }

    /** @param shop whose manner of writing figures counts */
    public static String of(Allocated allocated, Catalog shop) {
        Wording words = Wording.of(shop);
        List<Drawn> moved = allocated.promises().stream().filter(one -> one.fate() != Fate.SAME && one.fate() != Fate.PICKED).toList();
        return Pages.filled("promises-answer.ftlh", Map.of("promises", allocated.promises().size(),
                "changes", allocated.promises().stream().anyMatch(one -> !one.lots().fresh().isEmpty() || !one.lots().given().isEmpty()),
                "whole", allocated.isWhole(),
                "counts", AllocationReport.counts(allocated).entrySet().stream().map(one -> new Count(words.figure(one.getValue()),
                AllocationReport.words(one.getKey()))).toList(),
                "rows", moved.stream().map(one -> row(one, shop, words)).toList(),
                "broken", moved.stream().filter(one -> one.fate() == Fate.BROKEN).map(one -> new Broken(one.quote().number().toString(),
                one.quote().customer(), one.lacks(), one.ways())).toList(),
                "strained", allocated.strained().stream().map(Object::toString).toList(),
                "quality", AllocationReport.quality(allocated.quality(), words::money)));
    }

    private static Row row(Drawn one, Catalog shop, Wording words) {
        return new Row(one.quote().number().toString(), one.quote().customer(), one.fate().label(),
                new Sums(told(one.quote(), shop, words), money(one.cost(), words)),
                new Lots(units(one.lots().fresh()), units(one.lots().given())));
    }

    private static List<String> units(Map<LotName, Integer> units) {
        return new TreeMap<>(units).entrySet().stream().map(lot -> "%s %s".formatted(lot.getValue(), lot.getKey())).toList();
    }

    private static String told(SavedQuote quote, Catalog shop, Wording words) {
        String currency = shop.currency().getCurrencyCode();
        return quote.offered().currency().equals(currency) ? money(quote.offered().pays(), words)
                : AllocationReport.told(quote, currency);
    }

    private static String money(Optional<BigDecimal> amount, Wording words) {
        return amount.map(words::money).orElse("");
    }
}
