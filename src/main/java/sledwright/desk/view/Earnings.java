package sledwright.desk.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * What the shop is left of what is paid for parts whose cost it knows; labour and licences have no cost here. For the shop alone.
 *
 * @param paid    for these parts, a discount being spread over all that is paid for in proportion to its price; units of the currency
 * @param cost    what they cost the shop
 * @param unknown lots whose cost is not known
 * @param floor   least share of {@code paid} that the shop wants to be left of it; empty: none
 * @param below   whether less is left
 */
public record Earnings(BigDecimal paid, BigDecimal cost, int unknown, OptionalDouble floor, boolean below) {

    /** @param lines what the price comes to */
    static Earnings of(List<Line> lines, Payment pays, OptionalDouble floor) {
        BigDecimal known = BigDecimal.ZERO;
        BigDecimal cost = BigDecimal.ZERO.setScale(pays.net().scale());
        int unknown = 0;
        for (Line line : lines) {
            Optional<BigDecimal> each = line.source().flatMap(Line.Source::unitCost);
            if (each.isPresent()) {
                known = known.add(line.total());
                cost = cost.add(each.get().multiply(BigDecimal.valueOf(line.quantity())));
            } else if (line.tellsLot()) {
                unknown++;
            }
        }
        boolean free = pays.price().signum() == 0;
        BigDecimal paid = free ? known.multiply(BigDecimal.ZERO).setScale(pays.net().scale())
                : known.multiply(pays.net()).divide(pays.price(), pays.net().scale(), RoundingMode.HALF_UP);
        // Held against what is paid for these parts before it is rounded to a coin.
        boolean below = floor.isPresent() && cost.multiply(pays.price())
                .compareTo(known.multiply(pays.net()).multiply(BigDecimal.ONE.subtract(BigDecimal.valueOf(floor.getAsDouble())))) > 0;
        return new Earnings(paid, cost, unknown, floor, below);
    }

    /** Whether the cost of any part is known. */
    public boolean isKnown() {
        return paid.signum() != 0 || cost.signum() != 0;
    }

    public BigDecimal margin() {
        return paid.subtract(cost);
    }

    /** The margin as a share of what is paid, to a tenth of a percent; empty where nothing is paid. */
    public Optional<BigDecimal> percent() {
        return paid.signum() == 0 ? Optional.empty()
                : Optional.of(margin().multiply(BigDecimal.valueOf(100)).divide(paid, 1, RoundingMode.HALF_UP));
    }

    /** @param what is sold, such as {@code Build 2} */
    Optional<Sentence> warning(String what, String currency) {
        return below ? Optional.of(Sentence.plain(("%s leaves %s %s of the %s that its parts of known cost bring%s; this shop wants at"
                + " least %s %%.").formatted(what, margin(), currency, paid, percent().map(share -> ", %s %%".formatted(share)).orElse(""),
                Numbers.plain(floor.orElseThrow() * 100)))) : Optional.empty();
    }
}
