package sledwright.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Draws one platform of a family and renders its file; tables, covered slots, limits and supplies vary from board to board. */
final class PlatformWriter {

    /** A supply model that platforms share; {@code lowLineW} 0: not for low-line mains. */
    private record Feed(int count, int redundant, int watts, int lowLineW, String efficiency, double price) {

        String sku() {
            return PlainText.of("FEED-%d%s", watts, redundant == 0 ? "N" : "");
        }

        int deliversW() {
            return (count - redundant) * watts;
        }

        String text() {
            return PlainText.of("    - { sku: %s, count: %d, redundant: %d, watts: %d, "
                    + "low_line_watts: %d, efficiency: { %s } }\n",
                    sku(), count, redundant, watts, lowLineW, efficiency);
        }
    }

    // Efficiencies follow the 80 PLUS levels Bronze (115 V), Silver, Gold, Platinum and Titanium (230 V, redundant);
    // the figures at 10 % are from memory.
    private static final List<Feed> FEEDS = List.of(
            new Feed(1, 0, 300, 300, "20: 82, 50: 85, 100: 82", 12), new Feed(2, 1, 460, 460, "20: 85, 50: 89, 100: 85", 10),
            new Feed(1, 0, 550, 550, "20: 85, 50: 89, 100: 85", 16), new Feed(2, 1, 750, 650, "10: 80, 20: 88, 50: 92, 100: 88", 22),
            new Feed(2, 1, 1100, 800, "10: 84, 20: 90, 50: 94, 100: 91", 44), new Feed(2, 1, 1600, 0, "10: 84, 20: 90, 50: 94, 100: 91", 90),
            new Feed(2, 1, 2200, 0, "10: 90, 20: 94, 50: 96, 100: 91", 170));

    /** Watts to allow for a module where a load is only estimated. */
    private static final int MODULE_W = 6;

    private final Random random;
    private final SampleFamily.Line line;
    private final SampleFamily family;
    private final String sku;
    private final Map<String, Double> prices = new LinkedHashMap<>();
    private final String text;

    PlatformWriter(Random random, SampleFamily.Line line, int number) {
        this.random = random;
        this.line = line;
        this.family = line.family();
        this.sku = PlainText.of("RIG-%s-%03d", family.root(), number);
        prices.put(sku, family.price() * (0.85 + 0.3 * random.nextDouble()));
        this.text = render(number);
    }

    String sku() {
        return sku;
    }

    String ddr() {
        return family.ddr();
    }

    int sockets() {
        return family.counts().get(family.counts().size() - 1);
    }

    /** The platform's file, without what it takes besides processors and memory. */
    String text() {
        return text;
    }

    /** Second-user price of the platform, its cooling kits and its supplies, euro. */
    Map<String, Double> prices() {
        return prices;
    }

    private String render(int number) {
        int sockets = family.counts().get(family.counts().size() - 1);
        int slots = family.channels() * family.slotsPerChannel();
        List<String> own = random.nextInt(8) > 0 ? List.of()
                : IntStream.rangeClosed(1, sockets * slots).mapToObj(i -> PlainText.of("S%02d", i)).toList();
        int baseW = family.baseW() + random.nextInt(21) - 10;
        int worstW = baseW + sockets * (family.maxTdpW() + slots * MODULE_W);
        List<Integer> counts = family.channels() < 8 || random.nextInt(3) > 0 ? List.of()
                : IntStream.rangeClosed(1, slots).filter(n -> n == 1 || n % 2 == 0).boxed().toList();
        return PlainText.of("""
                sku: %s
                name: Generated platform %d
                processors: { socket: %s, generations: [%s, %s], counts: %s, max_tdp_w: %d }
                memory:
                  generation: %s
                  channels: %d
                  slots_per_channel: %d
                %s  max_distinct_capacities: %d
                  mixed_widths: %b
                  counts_per_socket: %s
                  modes: %s
                  slot_names: %s
                  fill_side: furthest from the processor
                cooling:
                %sthermal:
                %spower:
                  base_w: %d
                %s""", sku, number, line.socket(), line.generation(1), line.generation(2),
                random.nextInt(6) == 0 ? List.of(sockets) : family.counts(), family.maxTdpW(),
                family.ddr(), family.channels(), family.slotsPerChannel(), tables(),
                random.nextInt(5) > 0 ? 2 : random.nextBoolean() ? 1 : 3, random.nextInt(4) > 0, counts, modes(), own,
                cooling(sockets, own), thermal(), baseW, power(worstW));
    }

    /** Rank limits and speeds: the family's table, in places a step slower where more than one module stands on a channel. */
    private String tables() {
        List<Integer> plain = new ArrayList<>(family.mts());
        for (int i = 1; i < plain.size(); i++) {
            int mts = random.nextInt(3) == 0 ? family.stepped(plain.get(i), -1) : plain.get(i);
            plain.set(i, Math.min(mts, plain.get(i - 1)));
        }
        if (family.type().equals("UDIMM")) {
            return PlainText.of("""
                      max_logical_ranks: { UDIMM: 4 }
                      speeds:
                        - { type: UDIMM, mts: %s }
                    """, plain);
        }
        int last = plain.size() - 1;
        List<Integer> fourRank = plain.subList(0, Math.max(1, last)).stream().map(mts -> family.stepped(mts, -1)).toList();
        List<Integer> loadReduced = new ArrayList<>(plain);
        loadReduced.set(last, Math.min(plain.get(Math.max(0, last - 1)), family.stepped(plain.get(last), 1)));
        boolean stacked = family.channels() >= 6;
        boolean ddr5 = family.ddr().equals("DDR5");
        return PlainText.of("""
                  max_logical_ranks: { RDIMM: 8%s%s }
                  speeds:
                    - { type: RDIMM, ranks: [1, 2], mts: %s }
                    - { type: RDIMM, ranks: [4], mts: %s }
                """, ddr5 ? "" : ", LRDIMM: 8", stacked ? ", 3DS: 16" : "", plain, fourRank)
                + (ddr5 ? "" : PlainText.of("    - { type: LRDIMM, mts: %s }\n", loadReduced))
                + (stacked ? PlainText.of("    - { type: 3DS, mts: %s }\n",
                        plain.stream().map(mts -> family.stepped(mts, -1)).toList()) : "");
    }

    private String modes() {
        List<String> modes = new ArrayList<>();
        if (family.channels() % 2 == 0 && random.nextInt(3) > 0) {
            modes.add("mirrored: 0.5");
        }
        if (random.nextBoolean()) {
            modes.add("rank-sparing: true");
        }
        return modes.isEmpty() ? "{}" : modes.stream().collect(Collectors.joining(", ", "{ ", " }"));
    }

    /** A short kit, and a long one that reaches the full TDP and, on most boards, covers the last slots of one or two channels. */
    private String cooling(int sockets, List<String> own) {
        int shortW = family.maxTdpW() * 4 / 5 / 5 * 5;
        TreeSet<Integer> channels = new TreeSet<>();
        if (family.slotsPerChannel() > 1 && family.channels() > 2 && random.nextInt(5) > 0) {
            for (int i = 0; i < (family.channels() == 6 ? 1 : 2); i++) {
                channels.add(random.nextInt(family.channels()));
            }
        }
        List<String> covers = new ArrayList<>();
        for (int socket = 0; socket < sockets; socket++) {
            for (int channel : channels) {
                int index = (socket * family.channels() + channel + 1) * family.slotsPerChannel() - 1;
                String name = own.isEmpty() ? PlainText.of("%d%c%d", socket + 1, 'A' + channel, family.slotsPerChannel()) : own.get(index);
                covers.add('"' + name + '"');
            }
        }
        double price = 4 + family.price() / 40;
        prices.put(sku + "-HS1", price);
        prices.put(sku + "-HS2", price * 2.1);
        return PlainText.of("""
                  - { sku: %1$s-HS1, name: short heat sink, max_tdp_w: %2$d, covers: [] }
                  - { sku: %1$s-HS2, name: long heat sink, max_tdp_w: %3$d, covers: %4$s }
                """, sku, shortW, family.maxTdpW(), covers);
    }

    private String thermal() {
        boolean sturdy = random.nextInt(3) == 0;
        int coolestC = 27 + random.nextInt(4);
        return PlainText.of("""
                  altitude_from_m: %d
                  metres_per_kelvin: %d
                  inlet: [ { max_tdp_w: %d, max_inlet_c: %d }, { max_tdp_w: %d, max_inlet_c: %d } ]
                """, sturdy ? 900 : 950, sturdy ? 175 : 300, family.maxTdpW() * 7 / 10, sturdy ? 40 : 35, family.maxTdpW(), coolestC);
    }

    private String power(int worstW) {
        if (family.sled()) {
            return PlainText.of("  budget_w: %d\n  supplies: []\n", worstW * (85 + random.nextInt(16)) / 100);
        }
        // The smaller choice may be too small for the hottest build; the larger one never is.
        List<Feed> large = FEEDS.stream().filter(feed -> feed.deliversW() >= worstW).limit(1).toList();
        List<Feed> small = FEEDS.stream().filter(feed -> feed.deliversW() < worstW && feed.deliversW() >= worstW * 55 / 100)
                .reduce((first, later) -> later).stream().toList();
        StringBuilder supplies = new StringBuilder("  budget_w: 0\n  supplies:\n");
        for (List<Feed> choice : List.of(small, large)) {
            for (Feed feed : choice) {
                supplies.append(feed.text());
                prices.put(feed.sku(), feed.price());
            }
        }
        return supplies.toString();
    }
}
