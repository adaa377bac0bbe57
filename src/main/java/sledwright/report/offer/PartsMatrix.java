package sledwright.report.offer;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import sledwright.report.offer.Offer.Option;
import sledwright.report.page.Wording;

/** What every option is made of, in one list: a line for each part, condition and price, and how many units each option takes. */
final class PartsMatrix {

    /** One table; {@code sums} stand below the units of each option. */
    public record Part(List<String> heads, List<Row> rows, List<Sum> sums) {
    }

    /** One part at one price. */
    public record Row(String sku, String name, String condition, String each, List<SideBySide.Cell> units) {
    }

    /** A sum of every option. */
    public record Sum(String label, List<SideBySide.Cell> amounts, boolean last) {
    }

    private final Wording words;
    private final List<Option> options;

    private PartsMatrix(Wording words, List<Option> options) {
        this.words = words;
        this.options = options;
    }

    /** As many tables as the options need. */
    static List<Part> of(Offer offer, Wording words) {
        return Sheet.split(offer.options(), some -> new PartsMatrix(words, some).part(), PartsMatrix::width);
    }

    /** The least width of a table. */
    private static double width(Part part) {
        double parts = part.rows().stream().mapToDouble(row -> Math.max(Sheet.strong(row.sku()), Sheet.cell(row.name()))).max().orElse(0);
        double conditions = part.rows().stream().mapToDouble(row -> Sheet.cell(row.condition())).max().orElse(0);
        double prices = part.rows().stream().mapToDouble(row -> Sheet.whole(row.each())).max().orElse(0);
        List<List<SideBySide.Cell>> cells = Stream.concat(part.rows().stream().map(Row::units), part.sums().stream().map(Sum::amounts))
                .toList();
        double options = 0;
        for (int option = 0; option < part.heads().size(); option++) {
            options += Sheet.column(part.heads().get(option), cells, option, Sheet::whole);
        }
        return parts + conditions + prices + options;
    }

    private Part part() {
        return new Part(options.stream().map(option -> SideBySide.head(option, words)).toList(), rows(), sums());
    }

    private List<Row> rows() {
        Map<OfferLine.Goods, int[]> units = new LinkedHashMap<>();
        for (int option = 0; option < options.size(); option++) {
            for (OfferLine line : options.get(option).lines()) {
                units.computeIfAbsent(line.goods(), goods -> new int[options.size()])[option] += line.quantity();
            }
        }
        List<Row> rows = new ArrayList<>();
        units.entrySet().stream().sorted(Map.Entry.comparingByKey(OfferLine.Goods.IN_BUILDING_ORDER)).forEach(entry -> {
            OfferLine.Goods goods = entry.getKey();
            rows.add(new Row(goods.sku(), goods.shownName(words), goods.shownCondition(words), words.money(goods.unitPrice()),
                    cells(option -> entry.getValue()[options.indexOf(option)] == 0 ? ""
                    : words.figure(entry.getValue()[options.indexOf(option)]))));
        });
        return rows;
    }

    private List<Sum> sums() {
        Map<Option, Map<String, String>> amounts = new LinkedHashMap<>();
        options.forEach(option -> amounts.put(option, PriceSums.of(option.pays(), words.say("sum.total"), words)));
        // A price that was agreed is one option's alone, which then has the most lines.
        List<String> labels = amounts.values().stream().max(Comparator.comparingInt(Map::size)).map(Map::keySet).stream()
                .flatMap(Collection::stream).toList();
        return labels.stream().map(label -> new Sum(label, cells(option -> amounts.get(option).getOrDefault(label, "")),
                label.equals(labels.get(labels.size() - 1)))).toList();
    }

    private List<SideBySide.Cell> cells(Function<Option, String> text) {
        return options.stream().map(option -> new SideBySide.Cell(SideBySide.head(option, words), text.apply(option))).toList();
    }
}
