package sledwright.catalog.intake;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Where one of our columns comes from.
 *
 * @param column   ours
 * @param heading  theirs; empty: a constant
 * @param constant what every row has, and what an empty cell of theirs stands for; may be empty
 * @param factor   what their figure is multiplied by
 * @param decimals to how many decimals the figure is then rounded, halves up; empty: it is not
 * @param strip    what is cut off around the cell's text, such as a unit
 * @param words    their word, in lower case -> ours
 */
record ColumnRule(String column, Optional<String> heading, String constant, BigDecimal factor, OptionalInt decimals, String strip,
                  Map<String, String> words) {

    ColumnRule {
        words = Map.copyOf(words);
    }

    static ColumnRule of(String column, String heading) {
        return new ColumnRule(column, Optional.of(heading), "", BigDecimal.ONE, OptionalInt.empty(), "", Map.of());
    }

    static ColumnRule constant(String column, String value) {
        return new ColumnRule(column, Optional.empty(), value, BigDecimal.ONE, OptionalInt.empty(), "", Map.of());
    }
}
