package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.List;
import sledwright.catalog.BelowCost;
import sledwright.catalog.OfferRow;
import sledwright.catalog.PlacedCatalog;
import sledwright.input.Located;

/** A price, or price break, below what the shop paid. */
final class SoldBelowCost implements Audit.Check {

    @Override
    public String id() {
        return "below-cost";
    }

    @Override
    public List<Warning> look(PlacedCatalog placed) {
        List<Warning> warnings = new ArrayList<>();
        for (Located<OfferRow> row : placed.offers()) {
            BelowCost.of(row.value(), placed.catalog()).ifPresent(message -> warnings.add(new Warning(id(), row.place(), message)));
        }
        return warnings;
    }
}
