package sledwright.book;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.Catalog;

/**
 * Units that are kept from whoever asks: held until a day that is not over, promised, or picked.
 *
 * @param lots units of each lot for each quote that takes some
 */
public record Reserved(List<Kept> lots) {

    /** Nothing. */
    public static final Reserved NOTHING = new Reserved(List.of());

    /**
     * Units that one quote takes from one lot.
     *
     * @param goneOn the day on which they were picked; empty: they are still on the shelf
     */
    record Kept(String sku, String lot, QuoteNumber number, int units, Optional<LocalDate> goneOn) {

        /**
         * Whether they are among what a list of stock counts. What was picked before the list's day is not; what was picked on that day
         * may be, and is taken for it, so that nothing is sold twice.
         */
        boolean isCounted(LocalDate pricedOn) {
            return goneOn.isEmpty() || !goneOn.get().isBefore(pricedOn);
        }
    }

    public Reserved {
        lots = List.copyOf(lots);
    }

    /** The catalogue without these units. */
    public Catalog less(Catalog catalog) {
        Map<List<String>, Integer> units = new HashMap<>();
        lots.stream().filter(kept -> kept.isCounted(catalog.pricedOn())).forEach(kept ->
                units.merge(List.of(kept.sku(), kept.lot()), kept.units(), Integer::sum));
        return units.isEmpty() ? catalog : catalog.withEachLot(lot ->
                lot.with(Math.max(0, lot.available() - units.getOrDefault(List.of(lot.sku(), lot.lot()), 0)), lot.breaks()));
    }

    /** What others take of one lot. */
    List<Kept> of(String sku, String lot, LocalDate pricedOn) {
        return lots.stream().filter(kept -> kept.sku().equals(sku) && kept.lot().equals(lot) && kept.isCounted(pricedOn)).toList();
    }
}
