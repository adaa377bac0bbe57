package sledwright.samples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Writes an invented catalogue folder of any size, for tests and measurements that need more than the demo shop.
 *
 * <p>Scale 1 gives 8 platforms, 90 processors, 80 memory modules and 600 offer rows of these, 40 drives, 20 cards, five extras and 150 lots of
 * them; every figure but the extras grows with the scale.
 * The same scale and seed give the same bytes. The figures follow the trends of the demo: second-user prices that rise
 * with cores and clock, a price per gigabyte that is least for the middle capacities, tables that slow down with more
 * modules on a channel. Like a larger shop, a larger catalogue holds more sockets and generations, but fewer
 * than in proportion, so that a platform also has more processors to choose from; and more part numbers of alike modules.
 */
public final class CatalogGenerator {

    public static final int PLATFORMS = 8;
    public static final int PROCESSORS = 90;
    public static final int MODULES = 80;
    public static final int OFFERS = 600;

    private static final String[] SUPPLIERS = {"House stock", "Alder Surplus", "Birken & Moll, Ltd.", "Corvane Returns", "Dovrest Lease"};
    private static final String[] MAKERS = {"Ambrel", "Bryndal", "Cantoro", "Delvik"};
    private static final int[] TDPS_W = {35, 55, 65, 80, 95, 105, 120, 135, 145, 165, 185, 205, 225, 250, 280, 320, 350};
    private static final int[] LEAD_DAYS = {0, 0, 0, 1, 2, 3, 5, 7, 10, 14, 21};

    /** A kind of module: {@code gbPrice} is euro per gigabyte of a second-user part at the slowest speed. */
    private record Organisation(String ddr, String type, int capacityGb, int ranks, int logicalRanks, int width, double powerW,
                                double gbPrice) {
    }

    private static final List<Organisation> ORGANISATIONS = List.of(
            new Organisation("DDR3", "RDIMM", 4, 1, 1, 4, 3, 0.35), new Organisation("DDR3", "RDIMM", 8, 1, 1, 4, 3, 0.36),
            new Organisation("DDR3", "RDIMM", 8, 2, 2, 4, 4, 0.32), new Organisation("DDR3", "RDIMM", 8, 2, 2, 8, 4, 0.31),
            new Organisation("DDR3", "RDIMM", 16, 2, 2, 4, 5, 0.35), new Organisation("DDR3", "RDIMM", 16, 4, 4, 4, 6, 0.27),
            new Organisation("DDR3", "LRDIMM", 32, 4, 2, 4, 8, 0.45), new Organisation("DDR4", "RDIMM", 8, 1, 1, 4, 3, 1.1),
            new Organisation("DDR4", "RDIMM", 8, 1, 1, 8, 2, 1.15), new Organisation("DDR4", "RDIMM", 16, 1, 1, 4, 4, 1.05),
            new Organisation("DDR4", "RDIMM", 16, 2, 2, 4, 4, 1.0), new Organisation("DDR4", "RDIMM", 16, 2, 2, 8, 4, 1.02),
            new Organisation("DDR4", "RDIMM", 32, 2, 2, 4, 5, 0.9), new Organisation("DDR4", "RDIMM", 32, 2, 2, 8, 4.5, 0.95),
            new Organisation("DDR4", "RDIMM", 32, 4, 4, 4, 7, 0.76), new Organisation("DDR4", "RDIMM", 64, 2, 2, 4, 7, 1.5),
            new Organisation("DDR4", "LRDIMM", 32, 2, 1, 4, 7, 0.97), new Organisation("DDR4", "LRDIMM", 64, 4, 2, 4, 9, 1.05),
            new Organisation("DDR4", "LRDIMM", 128, 4, 2, 4, 11, 2.3), new Organisation("DDR4", "3DS", 64, 2, 4, 4, 8, 1.5),
            new Organisation("DDR4", "3DS", 128, 2, 4, 4, 10, 3.4), new Organisation("DDR4", "3DS", 256, 2, 8, 4, 14, 6.6),
            new Organisation("DDR4", "UDIMM", 8, 1, 1, 8, 2, 1.2), new Organisation("DDR4", "UDIMM", 16, 2, 2, 8, 4, 1.3),
            new Organisation("DDR4", "UDIMM", 16, 1, 1, 8, 3, 1.5), new Organisation("DDR4", "UDIMM", 32, 2, 2, 8, 5, 1.9),
            new Organisation("DDR5", "RDIMM", 16, 1, 1, 8, 4, 3.6), new Organisation("DDR5", "RDIMM", 32, 1, 1, 4, 5, 3.0),
            new Organisation("DDR5", "RDIMM", 32, 2, 2, 8, 5, 2.9), new Organisation("DDR5", "RDIMM", 48, 1, 1, 4, 6, 3.3),
            new Organisation("DDR5", "RDIMM", 64, 2, 2, 4, 7, 2.9), new Organisation("DDR5", "RDIMM", 96, 2, 2, 4, 9, 3.7),
            new Organisation("DDR5", "RDIMM", 128, 2, 2, 4, 10, 5.2), new Organisation("DDR5", "3DS", 256, 2, 8, 4, 15, 8.6));

    /** A part that offers name; {@code price} is that of a second-user unit. */
    private record Priced(String sku, double price, boolean needed) {
    }

    /** One lot in this many is given away. */
    private static final int GIVEN_AWAY = 37;

    private final int scale;
    private final long seed;
    private final Random random;
    private final Map<String, Priced> priced = new LinkedHashMap<>();

    private CatalogGenerator(int scale, long seed) {
        this.scale = scale;
        this.seed = seed;
        this.random = new Random(seed);
    }

    /** {@code SCALE SEED DIR}: writes the catalogue of that scale and seed into the folder. */
    public static void main(String[] args) {
        if (args.length != 3) {
            throw new IllegalArgumentException("expected: SCALE SEED DIR");
        }
        write(Integer.parseInt(args[0]), Long.parseLong(args[1]), Path.of(args[2]));
    }

    /**
     * Writes a catalogue folder; platform files of an earlier run in it go.
     *
     * @param scale 1, 10, 100 or any other positive number
     * @throws IllegalArgumentException when the scale is not positive
     * @throws UncheckedIOException     when the folder cannot be written
     */
    public static void write(int scale, long seed, Path dir) {
        if (scale < 1) {
            throw new IllegalArgumentException("the scale must be at least 1, not " + scale);
        }
        try {
            new CatalogGenerator(scale, seed).writeTo(dir);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void writeTo(Path dir) throws IOException {
        Path platforms = Files.createDirectories(dir.resolve("platforms"));
        try (Stream<Path> old = Files.list(platforms)) {
            for (Path file : old.filter(path -> path.toString().endsWith(".yaml")).toList()) {
                Files.delete(file);
            }
        }
        List<SampleFamily.Line> lines = SampleFamily.lines(Math.max(1, (int) Math.ceil(Math.sqrt(scale))));
        Files.writeString(dir.resolve("catalog.yaml"), head(lines));
        List<SampleFamily.Line> bare = lines.stream().filter(SampleFamily.Line::first).toList();
        EquipmentGenerator equipment = new EquipmentGenerator(scale, seed);
        for (int i = 0; i < PLATFORMS * scale; i++) {
            PlatformWriter writer = new PlatformWriter(random, bare.get(i % bare.size()), i + 1);
            Files.writeString(platforms.resolve(writer.sku().toLowerCase(Locale.ROOT) + ".yaml"), writer.text() + equipment.expansion(writer.ddr(), writer.sockets()));
            writer.prices().forEach((sku, price) -> priced.putIfAbsent(sku, new Priced(sku, price, true)));
        }
        Files.writeString(dir.resolve("processors.csv"), processors(lines));
        Files.writeString(dir.resolve("memory.csv"), modules());
        Files.writeString(dir.resolve("drives.csv"), equipment.drives());
        Files.writeString(dir.resolve("cards.csv"), equipment.cards());
        Files.writeString(dir.resolve("extras.csv"), equipment.extras());
        Files.writeString(dir.resolve("offers.csv"), offers() + equipment.offers());
    }

    private String head(List<SampleFamily.Line> lines) {
        String factors = lines.stream().map(line -> PlainText.of("  %s: %s\n", line.generation(), PlainText.tenths(line.factor())))
                .distinct().collect(Collectors.joining());
        return PlainText.of("""
                name: Generated catalogue, scale %d
                currency: EUR
                priced_on: 2026-11-16
                labour: { per_machine: 38.00, per_module: 0.60 }
                throughput_factors:
                %s""", scale, factors);
    }

    private String processors(List<SampleFamily.Line> lines) {
        StringBuilder csv = new StringBuilder("sku,description,socket,generation,cores,threads,base_ghz,all_core_ghz,tdp_w,"
                + "memory_mts,max_memory_gb,sockets_max,throughput\n");
        // Two platform families share a socket; its generations must not come up twice as often.
        List<SampleFamily.Line> generations = new ArrayList<>(lines.stream()
                .collect(Collectors.toMap(SampleFamily.Line::generation, line -> line, (a, b) -> a, LinkedHashMap::new)).values());
        for (int i = 0; i < PROCESSORS * scale; i++) {
            SampleFamily.Line line = generations.get(i % generations.size());
            SampleFamily family = line.family();
            int cores = 2 * between(family.minCores() / 2, family.maxCores() / 2);
            boolean fast = cores <= (family.minCores() + family.maxCores()) / 2 && random.nextInt(4) == 0;
            boolean frugal = !fast && random.nextInt(6) == 0;
            boolean lone = random.nextInt(9) == 0;
            double base = round(fast ? uniform(3.0, 3.7) : frugal ? uniform(1.7, 2.0) : uniform(2.0, 2.8), 1);
            double allCore = round(base + uniform(0.1, 0.7), 1);
            int tdpW = tdp(family, cores, allCore);
            // The cheaper half of a line is held to a slower memory bus.
            int mts = cores * 3 < family.maxCores() ? family.stepped(line.topMts(), -1) : line.topMts();
            double throughput = round(cores * allCore * line.factor() * uniform(0.95, 1.05), 1);
            String sku = PlainText.of("%s-%02d%s-%03d", line.code(), cores, fast ? "H" : frugal ? "L" : "", i + 1);
            int socketsMax = lone ? 1 : family.counts().get(family.counts().size() - 1);
            row(csv, sku, PlainText.of("%s %d-core  %s GHz%s", line.generation(), cores, PlainText.tenths(base),
                            lone ? ", one socket only" : ""),
                    line.socket(), line.generation(), cores, cores * 2, PlainText.tenths(base), PlainText.tenths(allCore), tdpW, mts,
                    random.nextInt(20) == 0 ? "" : family.maxMemoryGb(), socketsMax,
                    random.nextInt(16) == 0 ? "" : PlainText.tenths(throughput));
            double price = family.corePrice() * line.factor() / 6 * cores * Math.pow(allCore / 2.6, 1.4)
                    * (1 + 0.6 * cores / family.maxCores()) * (lone ? 0.85 : 1) * uniform(0.85, 1.15);
            priced.put(sku, new Priced(sku, price, false));
        }
        return csv.toString();
    }

    /** The standard step that a processor of that many cores and that clock comes to, held to what the family cools. */
    private static int tdp(SampleFamily family, int cores, double ghz) {
        double share = (0.35 + 0.65 * cores / family.maxCores()) * Math.pow(ghz / 2.9, 1.2);
        int watts = TDPS_W[0];
        for (int step : TDPS_W) {
            if (step <= family.maxTdpW() && step <= share * family.maxTdpW() * 1.05) {
                watts = step;
            }
        }
        return watts;
    }

    private String modules() {
        StringBuilder csv = new StringBuilder("sku,description,generation,type,capacity_gb,ranks,logical_ranks,device_width,"
                + "speed_mts,voltage,power_w\n");
        for (int i = 0; i < MODULES * scale; i++) {
            // The first round gives every organisation once, so that no platform is left without memory.
            Organisation kind = ORGANISATIONS.get(i < ORGANISATIONS.size() ? i : random.nextInt(ORGANISATIONS.size()));
            List<Integer> speeds = SampleFamily.speeds(kind.ddr());
            int step = random.nextInt(speeds.size());
            int mts = speeds.get(step);
            String maker = MAKERS[random.nextInt(MAKERS.length)];
            String sku = PlainText.of("%s%s%s%d-%d%d-%03d", maker.charAt(0), kind.ddr().substring(3), kind.type().charAt(0),
                    kind.capacityGb(), kind.ranks(), kind.width(), i + 1);
            double powerW = kind.powerW() + (random.nextInt(8) == 0 ? 0.5 : 0);
            row(csv, sku, PlainText.of("%s %d GB, %dRx%d %s-%d %s", maker, kind.capacityGb(), kind.ranks(), kind.width(),
                            kind.ddr(), mts, kind.type()),
                    kind.ddr(), kind.type(), kind.capacityGb(), kind.ranks(),
                    kind.logicalRanks() == kind.ranks() && random.nextBoolean() ? "" : kind.logicalRanks(),
                    kind.width(), mts, voltage(kind.ddr()), PlainText.tenths(powerW));
            priced.put(sku, new Priced(sku, kind.capacityGb() * kind.gbPrice() * (1 + 0.15 * step) * uniform(0.88, 1.12), false));
        }
        return csv.toString();
    }

    private String voltage(String ddr) {
        return switch (ddr) {
            case "DDR3" -> random.nextBoolean() ? "1.5" : "1.35";
            case "DDR4" -> "1.2";
            default -> "1.1";
        };
    }

    /** Every part gets a lot first (some modules and processors get none), then random parts get more until the rows are used up. */
    private String offers() {
        StringBuilder csv = new StringBuilder("sku,lot,supplier,condition,unit_price,min_quantity,available,lead_days,unit_cost\n");
        List<Priced> parts = new ArrayList<>(priced.values());
        int rows = OFFERS * scale;
        int lot = 0;
        for (Priced part : parts) {
            if (rows > 0 && (part.needed() || random.nextInt(40) > 0)) {
                rows -= lot(csv, part, ++lot, rows);
            }
        }
        while (rows > 0) {
            rows -= lot(csv, parts.get(random.nextInt(parts.size())), ++lot, rows);
        }
        return csv.toString();
    }

    /** Writes a lot of one to three price breaks, {@code mostRows} at most, and returns how many. */
    private int lot(StringBuilder csv, Priced part, int number, int mostRows) {
        int supplier = random.nextInt(SUPPLIERS.length);
        String condition = random.nextInt(3) > 0 ? "used" : random.nextBoolean() ? "refurbished" : "new";
        double price = part.price() * uniform(0.9, 1.1) * switch (condition) {
            case "new" -> 1.7;
            case "refurbished" -> 1.12;
            default -> 1.0;
        };
        int available = switch (random.nextInt(4)) {
            case 0 -> between(1, 7);
            case 1 -> between(40, 200);
            default -> between(6, 36);
        };
        int leadDays = LEAD_DAYS[random.nextInt(LEAD_DAYS.length)];
        int quantity = part.needed() || available < 8 || random.nextInt(10) > 0 ? 1 : between(2, 4);
        int breaks = Math.min(random.nextInt(3) + 1, mostRows);
        double margin = uniform(0.55, 0.85);
        boolean costKnown = random.nextInt(7) > 0;
        int written = 0;
        while (written < breaks && quantity <= available) {
            double unit = number % GIVEN_AWAY == 0 && !part.needed() ? 0 : Math.max(0.4, price);
            row(csv, part.sku(), PlainText.of("L%05d", number), SUPPLIERS[supplier], condition, PlainText.cents(unit),
                    quantity == 1 && random.nextInt(4) == 0 ? "" : quantity, available,
                    leadDays == 0 && random.nextInt(4) == 0 ? "" : leadDays, costKnown ? PlainText.cents(unit * margin) : "");
            written++;
            quantity = quantity * 3 + between(1, 4);
            price *= uniform(0.92, 0.98);
        }
        return written;
    }

    private int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    private double uniform(double from, double to) {
        return from + random.nextDouble() * (to - from);
    }

    private static double round(double value, int digits) {
        double unit = Math.pow(10, digits);
        return Math.round(value * unit) / unit;
    }

    private static void row(StringBuilder csv, Object... cells) {
        csv.append(Stream.of(cells).map(String::valueOf)
                .map(cell -> cell.contains(",") ? '"' + cell + '"' : cell)
                .collect(Collectors.joining(","))).append('\n');
    }
}
