package sledwright.report.offer;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.desk.view.Line;

/**
 * What the parts of an order cost the shop, lot by lot. Labour and licences have no cost here: catalogues know none.
 *
 * @param rows  one for each lot that is drawn on
 * @param price what the customer pays for the parts
 * @param cost  what the shop paid for those whose cost it knows
 */
record Costs(List<Row> rows, BigDecimal price, BigDecimal cost) {

    /**
     * Units of one lot.
     *
     * @param unitCost empty where the catalogue has none
     */
    record Row(Line line, Line.Source source, Optional<BigDecimal> unitCost) {

        Optional<BigDecimal> cost() {
            return unitCost.map(each -> each.multiply(BigDecimal.valueOf(line.quantity())));
        }

        Optional<BigDecimal> margin() {
            return cost().map(cost -> line.total().subtract(cost));
        }
    }

    /** @param none no amount, in the currency's digits */
    static Costs of(List<Line> lines, BigDecimal none) {
        List<Row> rows = new ArrayList<>();
        for (Line line : lines) {
            line.source().filter(source -> line.kind() == Line.Kind.PART)
                    .ifPresent(source -> rows.add(new Row(line, source, source.unitCost())));
        }
        return new Costs(List.copyOf(rows), rows.stream().map(row -> row.line().total()).reduce(none, BigDecimal::add),
                rows.stream().flatMap(row -> row.cost().stream()).reduce(none, BigDecimal::add));
    }

    /** Lots whose cost the catalogue does not know. */
    long unknown() {
        return rows.stream().filter(row -> row.unitCost().isEmpty()).count();
    }

    /** What the parts leave; empty where the cost of any is not known. */
    Optional<BigDecimal> margin() {
        return unknown() == 0 ? Optional.of(price.subtract(cost)) : Optional.empty();
    }

    /** A margin as a share of the price, percent to one decimal; empty for a price of zero. */
    static Optional<BigDecimal> percent(BigDecimal margin, BigDecimal price) {
        return price.signum() == 0 ? Optional.empty()
                : Optional.of(margin.multiply(BigDecimal.valueOf(100)).divide(price, 1, RoundingMode.HALF_UP));
    }
}
