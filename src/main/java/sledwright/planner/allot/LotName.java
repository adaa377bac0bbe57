package sledwright.planner.allot;

import java.util.Comparator;
import sledwright.domain.Lot;

/** What a lot is called, whatever it holds today. */
public record LotName(String sku, String lot) implements Comparable<LotName> {

    private static final Comparator<LotName> ORDER = Comparator.comparing(LotName::sku).thenComparing(LotName::lot);

    static LotName of(Lot lot) {
        return new LotName(lot.sku(), lot.lot());
    }

    @Override
    public int compareTo(LotName other) {
        return ORDER.compare(this, other);
    }

    @Override
    public String toString() {
        return "%s of lot %s".formatted(sku, lot);
    }
}
