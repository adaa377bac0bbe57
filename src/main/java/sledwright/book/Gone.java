package sledwright.book;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A lot that does not have the units that a quote takes from it any more.
 *
 * @param wanted  units
 * @param left    those that nobody else has
 * @param takenBy the quotes that have some
 */
public record Gone(String sku, String lot, int wanted, int left, List<QuoteNumber> takenBy) {

    public Gone {
        takenBy = List.copyOf(takenBy);
    }

    @Override
    public String toString() {
        String others = takenBy.isEmpty() ? "" : "; %s %s some".formatted(takenBy.stream().map(QuoteNumber::toString)
                .collect(Collectors.joining(", ")), takenBy.size() == 1 ? "has" : "have");
        return "%s of lot %s: %s wanted, %s left%s".formatted(sku, lot, wanted, left, others);
    }
}
