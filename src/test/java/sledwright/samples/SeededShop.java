package sledwright.samples;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A shop whose lots, suppliers, costs and stock counts are written so that none of them can come about by chance.
 *
 * @param costs of one unit, as tables of numbers have them
 */
public record SeededShop(List<String> lots, List<String> suppliers, List<String> costs, List<String> stock) {

    /** Writes them into the offers of a folder that is a copy of the small shop. */
    public static SeededShop in(Path shop) throws IOException {
        List<String> lines = Files.readAllLines(shop.resolve("offers.csv"));
        List<String> seeded = new ArrayList<>(List.of(lines.get(0)));
        SeededShop secrets = new SeededShop(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            String lot = "Lotseed" + cells[1];
            String supplier = "Backdoor" + cells[1];
            String cost = new BigDecimal(cells[4]).multiply(new BigDecimal("0.7313")).setScale(2, RoundingMode.HALF_UP).toString();
            String available = "76" + cells[6] + "3";
            secrets.lots.add(lot);
            secrets.suppliers.add(supplier);
            secrets.costs.add(cost);
            secrets.stock.add(available);
            seeded.add(String.join(",", cells[0], lot, supplier, cells[3], cells[4], cells[5], available, cells[7], cost));
        }
        Files.write(shop.resolve("offers.csv"), seeded);
        return secrets;
    }

    /** Everything that the shop keeps to itself. */
    public List<String> all() {
        return Stream.of(lots, suppliers, costs, stock).flatMap(List::stream).toList();
    }
}
