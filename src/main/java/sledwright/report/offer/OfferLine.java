package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;
import sledwright.desk.view.Line;
import sledwright.domain.Lot;
import sledwright.report.page.Wording;

/**
 * What a customer pays, whichever lots it comes from: units of one part at one price.
 *
 * @param total in units of the currency
 */
public record OfferLine(Goods goods, int quantity, BigDecimal total) {

    /**
     * Something that is paid for.
     *
     * @param place     where it stands in a list: parts in the order in which a machine is put together, then work, then software
     * @param kind      what it is
     * @param sku       the part; empty for labour and licences
     * @param name      what a person calls it; of labour and licences, what they are counted by
     * @param condition new, refurbished or used; empty for labour and licences, and where it is the customer's own
     * @param yours     whether it is the customer's own
     * @param unitPrice in units of the currency
     */
    public record Goods(int place, Line.Kind kind, String sku, String name, String condition, boolean yours, BigDecimal unitPrice) {

        static final Comparator<Goods> IN_BUILDING_ORDER = Comparator.comparingInt(Goods::place).thenComparing(Goods::sku);

        /** What a person calls it, where that is more than its part number. */
        public String shownName(Wording words) {
            if (kind == Line.Kind.LABOUR || kind == Line.Kind.LICENCE) {
                return words.say((kind == Line.Kind.LABOUR ? "labour." : "licence.") + name.replaceFirst("^per ", "").replace(' ', '-'));
            }
            return name.equals(sku) ? "" : name;
        }

        public String shownCondition(Wording words) {
            return yours ? words.say("condition.yours") : condition.isEmpty() ? "" : words.say("condition." + condition);
        }
    }

    /**
     * Lines that differ only in their lots become one.
     *
     * @param place where a line stands in a list
     */
    static List<OfferLine> of(List<Line> lines, ToIntFunction<Line> place) {
        Map<Goods, OfferLine> merged = new LinkedHashMap<>();
        for (Line line : lines) {
            Goods goods = goods(line, place.applyAsInt(line));
            merged.merge(goods, new OfferLine(goods, line.quantity(), line.total()), OfferLine::plus);
        }
        return new ArrayList<>(merged.values());
    }

    /** What a line pays for, by itself. */
    public static Goods goods(Line line) {
        return goods(line, 0);
    }

    private static Goods goods(Line line, int place) {
        boolean yours = line.source().map(Line.Source::lot).filter(Lot.OWN::contains).isPresent();
        return switch (line.kind()) {
            case PART, CREDIT -> new Goods(place, line.kind(), line.sku(), line.description(), yours ? ""
                    : line.source().map(Line.Source::condition).orElse(""), yours, line.unitPrice());
            case LABOUR, LICENCE -> new Goods(place, line.kind(), "", line.description(), "", false, line.unitPrice());
        };
    }

    private OfferLine plus(OfferLine other) {
        return new OfferLine(goods, quantity + other.quantity, total.add(other.total));
    }
}
