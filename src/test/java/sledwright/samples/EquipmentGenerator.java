package sledwright.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Drives, cards and extras of an invented catalogue, and what its platforms take of them. It draws from numbers of its own, so that processors
 * and memory of a catalogue are what they were before there were any.
 */
final class EquipmentGenerator {

    static final int DRIVES = 40;
    static final int CARDS = 20;
    static final int LOTS = 150;

    private static final List<String> EXTRAS = List.of("GEN-RAILS", "GEN-FANS", "GEN-BLANK", "GEN-RISER", "GEN-TEST");

    /** {@code tbPrice} is euro per decimal terabyte of a second-user drive. */
    private record Media(String kind, String link, String form, List<Integer> capacitiesGb, double powerW, double tbPrice) {
    }

    private static final List<Media> MEDIA = List.of(
            new Media("hdd", "SATA", "3.5", List.of(1000, 2000, 4000, 6000, 8000, 12000), 7.5, 6), new Media("hdd", "SAS", "3.5", List.of(4000, 8000, 12000), 9, 6.5),
            new Media("hdd", "SAS", "2.5", List.of(600, 900, 1200, 1800), 6, 14), new Media("ssd", "SATA", "2.5", List.of(240, 480, 960, 1920, 3840), 3.5, 34),
            new Media("ssd", "SAS", "2.5", List.of(400, 800, 1600, 3200), 7, 40), new Media("ssd", "NVMe", "2.5", List.of(800, 1600, 3200, 6400), 11, 48),
            new Media("ssd", "NVMe", "M.2", List.of(240, 480, 960), 6, 60));

    /** The columns behind the sku; {@code price} as above. */
    private record Board(String name, String columns, double price) {
    }

    private static final List<Board> BOARDS = List.of(
            new Board("N1", "network,2,4,low,150,5,4,1,,,", 8), new Board("N10", "network,3,8,low,168,10,2,10,,,", 18),
            new Board("N25", "network,3,8,low,168,12,2,25,,,", 38), new Board("N100", "network,4,16,full,220,20,2,100,,,", 130),
            new Board("C8", "controller,3,8,low,168,13,,,SATA SAS,8,0 1 5 6 10", 42), new Board("C8J", "controller,3,8,low,168,10,,,SATA SAS,8,", 22),
            new Board("C16", "controller,3,8,full,210,20,,,SATA SAS,16,0 1 5 6 10", 90), new Board("C4", "controller,2,4,low,150,6,,,SATA,4,0 1", 12),
            new Board("A150", "accelerator,3,16,full,267,150,,,,,", 210));

    private final int scale;
    private final Random random;
    private final Map<String, Double> prices = new LinkedHashMap<>();

    EquipmentGenerator(int scale, long seed) {
        this.scale = scale;
        random = new Random(seed * 6_364_136_223_846_793_005L + 17);
        EXTRAS.forEach(sku -> prices.put(sku, 2 + 10 * random.nextDouble()));
    }

    String drives() {
        StringBuilder csv = new StringBuilder("sku,description,kind,interface,form_factor,capacity_gb,power_w\n");
        for (int i = 0; i < DRIVES * scale; i++) {
            Media media = MEDIA.get(i % MEDIA.size());
            int gb = media.capacitiesGb().get(random.nextInt(media.capacitiesGb().size()));
            String sku = PlainText.of("D%s%s%d-%03d", media.kind().charAt(0), media.link().charAt(0), gb, i + 1);
            csv.append(PlainText.of("%s,%d GB %s %s,%s,%s,%s,%d,%s\n", sku, gb, media.link(), media.kind(), media.kind(), media.link(), media.form(), gb,
                    PlainText.tenths(media.powerW() + (random.nextInt(4) == 0 ? 1 : 0))));
            prices.put(sku, (4 + gb * media.tbPrice() / 1000) * (0.8 + 0.4 * random.nextDouble()));
        }
        return csv.toString();
    }

    String cards() {
        StringBuilder csv = new StringBuilder("sku,kind,pcie_generation,lanes,height,length_mm,power_w,ports,port_gbit,drive_interfaces,drive_ports,raid_levels\n");
        for (int i = 0; i < CARDS * scale; i++) {
            Board board = BOARDS.get(i % BOARDS.size());
            String sku = PlainText.of("%s-%03d", board.name(), i + 1);
            csv.append(sku).append(',').append(board.columns()).append('\n');
            prices.put(sku, board.price() * (0.8 + 0.4 * random.nextDouble()));
        }
        return csv.toString();
    }

    String extras() {
        return "sku,power_w\n" + String.join("", EXTRAS.stream().map(sku -> sku + (sku.equals("GEN-FANS") ? ",6\n" : ",\n")).toList());
    }

    /** Rows of offers.csv without a header; every part has a lot of one or two price breaks, some have more. */
    String offers() {
        StringBuilder csv = new StringBuilder();
        List<String> skus = new ArrayList<>(prices.keySet());
        for (int lot = 0; lot < LOTS * scale; lot++) {
            String sku = skus.get(lot < skus.size() ? lot : random.nextInt(skus.size()));
            boolean isExtra = EXTRAS.contains(sku);
            double price = prices.get(sku) * (0.9 + 0.3 * random.nextDouble());
            int available = isExtra ? 400 : 1 + random.nextInt(40);
            String row = PlainText.of("%s,E%05d,%s,%s,%%s,%%d,%d,%d,\n", sku, lot + 1, random.nextBoolean() ? "House stock" : "Corvane Returns",
                    random.nextInt(3) > 0 ? "used" : "new", available, List.of(0, 0, 2, 5, 9).get(random.nextInt(5)));
            csv.append(PlainText.of(row, PlainText.cents(price), 1));
            if (available > 8 && random.nextInt(3) == 0) {
                csv.append(PlainText.of(row, PlainText.cents(price * 0.93), 4 + random.nextInt(4)));
            }
        }
        return csv.toString();
    }

    /** Bays, slots and needs of a platform, in the words of its file. */
    String expansion(String ddr, int sockets) {
        int pcie = ddr.equals("DDR5") ? 5 : 3;
        String second = sockets > 1 ? ", socket: 2" : "";
        String bays = switch (random.nextInt(3)) {
            case 0 -> """
                    - { name: front, count: 12, form_factors: ["3.5"], interfaces: [SATA, SAS] }
                    - { name: rear, count: 2, form_factors: ["2.5"], interfaces: [SATA, SAS] }
                """;
            case 1 -> """
                    - { name: front, count: 8, form_factors: ["2.5"], interfaces: [SATA, SAS] }
                    - { name: fast, count: 4, form_factors: ["2.5"], interfaces: [NVMe], raid_levels: [0, 1, 10]%s }
                """.formatted(second);
            default -> """
                    - { name: cage, count: 6, form_factors: ["3.5", "2.5"], interfaces: [SATA, SAS] }
                    - { name: boot, count: 2, form_factors: [M.2], interfaces: [NVMe], raid_levels: [1] }
                """;
        };
        String onboard = random.nextInt(4) == 0 ? "" : PlainText.of("  onboard: { drive_interfaces: [SATA], drive_ports: %d, raid_levels: [0, 1, 10] }\n",
                4 + random.nextInt(5));
        return PlainText.of("""
                storage:
                  bays:
                %s%sslots:
                  - { name: X1, lanes: 8, pcie_generation: %d, height: low, length_mm: 170, max_w: 25, socket: 1 }
                  - { name: X2, lanes: 16, pcie_generation: %d, height: full, length_mm: 312, max_w: 160, socket: 1, riser: GEN-RISER }
                  - { name: X3, lanes: 8, pcie_generation: %d, height: low, length_mm: 170, max_w: 25%s }
                needs:
                  - { processors: 2, parts: { GEN-FANS: 1 } }
                  - { empty_sockets: 1, parts: { GEN-BLANK: 1 } }
                """, bays, onboard, pcie, pcie, pcie, second);
    }
}
