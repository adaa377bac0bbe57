package sledwright.oracle;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.List;
import sledwright.domain.Lot;
import sledwright.domain.Stock;

/** Draws units from lots in a model: a yes or no and a number of units for each price of each lot. */
final class CpSatDraw {

    private final CpModel model;
    private final RandomCase that;

    CpSatDraw(CpModel model, RandomCase that) {
        this.model = model;
        this.that = that;
    }

    /** The price of drawing exactly a given number of units of a part, never more than {@code most}. */
    LinearExpr price(String sku, LinearExpr units, int most) {
        LinearExprBuilder price = LinearExpr.newBuilder();
        LinearExprBuilder drawn = LinearExpr.newBuilder();
        for (Lot lot : Stock.of(that.catalog(), that.request()).lots(sku)) {
            if (Reading.lot(lot, that.request().limit()).isEmpty()) {
                List<Literal> taken = new ArrayList<>();
                for (int i = 0; i < lot.breaks().size(); i++) {
                    int from = lot.breaks().get(i).minQuantity();
                    int beyond = i + 1 < lot.breaks().size() ? lot.breaks().get(i + 1).minQuantity() : Integer.MAX_VALUE;
                    int to = Math.min(Math.min(beyond - 1, lot.available()), most);
                    if (from <= to) {
                        BoolVar at = model.newBoolVar(sku + lot.lot() + from);
                        IntVar count = model.newIntVar(0, to, sku + lot.lot() + from);
                        model.addGreaterOrEqual(count, LinearExpr.affine(at, from, 0));
                        model.addLessOrEqual(count, LinearExpr.affine(at, to, 0));
                        taken.add(at);
                        drawn.add(count);
                        price.addTerm(count, lot.breaks().get(i).unitPrice());
                    }
                }
                if (taken.size() > 1) {
                    model.addAtMostOne(taken.toArray(Literal[]::new));
                }
            }
        }
        model.addEquality(drawn.build(), units);
        return price.build();
    }
}
