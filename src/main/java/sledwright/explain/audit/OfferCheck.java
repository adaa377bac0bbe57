package sledwright.explain.audit;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import sledwright.catalog.OfferRow;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Catalog;
import sledwright.input.Located;
import sledwright.input.Place;

/** What can be odd about each row of offers by itself; what is the same of several is said once. */
interface OfferCheck extends Audit.Check {

    /** What is odd about a row of a catalogue, a sentence; empty: nothing. */
    Function<OfferRow, Optional<String>> messages(Catalog catalog);

    @Override
    default void look(PlacedCatalog placed, BiConsumer<Place, String> odd) {
        Function<OfferRow, Optional<String>> messages = messages(placed.catalog());
        Set<String> said = new HashSet<>();
        for (Located<OfferRow> row : placed.offers()) {
            messages.apply(row.value()).filter(said::add).ifPresent(message -> odd.accept(row.place(), message));
        }
    }
}
