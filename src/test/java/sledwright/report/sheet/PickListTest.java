package sledwright.report.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.Line;
import sledwright.report.sheet.SheetView.Pick;

class PickListTest {

    private static Line line(String sku, String lot, int units) {
        return new Line(Line.Kind.PART, sku, "module", Optional.of(new Line.Source(lot, "Fen", "used", 0, Optional.empty())), units, BigDecimal.ONE, BigDecimal.valueOf(units));
    }

    /** Two kinds of machine share two lots; what no lot is left for comes out of a machine that gives it up. */
    @Test
    void lotsAreSharedInTheirOrder() {
        PickList list = new PickList(List.of(line("M16", "A", 3), line("M16", "B", 2)));
        assertThat(list.take(Map.of("M16", 4), sku -> "from the catalogue")).containsExactly(new Pick("M16", "module", "A", "Fen", 3), new Pick("M16", "module", "B", "Fen", 1));
        assertThat(list.take(Map.of("M16", 3), sku -> "from the catalogue")).containsExactly(new Pick("M16", "module", "B", "Fen", 1),
                new Pick("M16", "from the catalogue", "another machine", "customer", 2));
        assertThat(list.take(Map.of("M32", 1), sku -> "from the catalogue")).containsExactly(new Pick("M32", "from the catalogue", "another machine", "customer", 1));
    }
}
