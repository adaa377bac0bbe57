package sledwright.samples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Draws random requests for a catalogue: every objective, memory modes, limits, and scarce stock by many machines.
 *
 * <p>A request starts from a machine that one of the catalogue's platforms could be, and asks for most of its figures, so
 * that many requests can be met, some only just, and some not at all. The same catalogue and seed give the same text.
 */
public final class RequestGenerator {

    private static final List<String> OBJECTIVES =
            List.of("cheapest", "most-throughput", "most-bandwidth", "most-memory", "best-value");

    /** What a wish needs to know of a platform. */
    private record Board(String sku, String ddr, int channels, int slotsPerChannel, List<Integer> counts, int maxTdpW, int topMts) {
    }

    /** Euro for a machine without processors and memory, for a core and for a gigabyte, and throughput of a core. */
    private record Level(double bare, double core, double gb, double coreThroughput, List<Integer> capacitiesGb) {
    }

    private final List<Board> boards;
    private final String catalog;

    /**
     * @param catalog what the requests state as their catalogue
     * @param dir     the catalogue's folder
     * @throws UncheckedIOException  when a platform file cannot be read
     * @throws IllegalStateException when the folder holds no platform, or a platform lacks a figure
     */
    public RequestGenerator(String catalog, Path dir) {
        this.catalog = catalog;
        try (Stream<Path> files = Files.list(dir.resolve("platforms"))) {
            this.boards = files.filter(file -> file.toString().endsWith(".yaml")).sorted().map(RequestGenerator::board).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (boards.isEmpty()) {
            throw new IllegalStateException("no platform in " + dir);
        }
    }

    /** {@code CATALOG SEED COUNT DIR}: writes requests of the seeds SEED, SEED + 1 ... into the folder. */
    public static void main(String[] args) throws IOException {
        if (args.length != 4) {
            throw new IllegalArgumentException("expected: CATALOG SEED COUNT DIR");
        }
        Path catalog = Path.of(args[0]).toAbsolutePath();
        Path dir = Files.createDirectories(Path.of(args[3])).toAbsolutePath();
        RequestGenerator generator = new RequestGenerator(dir.relativize(catalog).toString(), catalog);
        long first = Long.parseLong(args[1]);
        for (long seed = first; seed < first + Integer.parseInt(args[2]); seed++) {
            Files.writeString(dir.resolve("random-" + seed + ".yaml"), generator.request(seed));
        }
    }

    /** The request file of that seed. */
    public String request(long seed) {
        return request(seed, OBJECTIVES.get(Math.floorMod(seed, OBJECTIVES.size())));
    }

    /** The request file of that seed, with an objective of the caller's choice. */
    public String request(long seed, String objective) {
        // Neighbouring seeds of Random begin alike; an odd multiplier spreads them.
        Random random = new Random(seed * 0x9E3779B97F4A7C15L);
        Board board = boards.get(random.nextInt(boards.size()));
        Level level = level(board);
        int machines = random.nextInt(4) > 0 ? 1 : random.nextInt(3) > 0 ? 2 + random.nextInt(4) : 6 + random.nextInt(20);
        String mode = random.nextInt(4) > 0 ? "independent" : random.nextBoolean() ? "mirrored" : "rank-sparing";

        int processors = board.counts().get(random.nextInt(board.counts().size()));
        int cores = processors * (2 + 2 * random.nextInt(Math.max(2, board.channels() * 2)));
        int capacityGb = level.capacitiesGb().get(random.nextInt(level.capacitiesGb().size()));
        int filled = 1 + random.nextInt(board.channels());
        int deep = random.nextInt(3) > 0 ? 1 : 1 + random.nextInt(board.slotsPerChannel());
        int totalGb = processors * filled * deep * capacityGb;
        double usableGb = totalGb * (mode.equals("mirrored") ? 0.5 : mode.equals("rank-sparing") ? 0.7 : 1);
        double bandwidthGbs = processors * filled * board.topMts() * 8 / 1000.0;
        double price = machines * (level.bare() + cores * level.core() + totalGb * level.gb()) * (0.9 + 1.8 * random.nextDouble());
        double loadW = 120 + processors * board.maxTdpW() * (0.6 + 0.5 * random.nextDouble()) + processors * filled * deep * 5;

        List<String> require = new ArrayList<>();
        require.add("cores: " + most(random, cores));
        require.add("memory_gb: " + most(random, usableGb));
        sometimes(random, 2, require, () -> "bandwidth_gbs: " + most(random, bandwidthGbs * 0.85));
        sometimes(random, 3, require, () -> "throughput: " + most(random, cores * level.coreThroughput()));
        sometimes(random, 5, require, () -> "base_ghz: " + PlainText.tenths(1.8 + random.nextDouble() * 1.4));
        sometimes(random, 6, require, () -> "all_core_ghz: " + PlainText.tenths(2.2 + random.nextDouble() * 1.2));
        sometimes(random, 6, require, () -> "gb_per_core: " + PlainText.tenths(usableGb / cores * 0.8));
        sometimes(random, 8, require, () -> "gbs_per_core: " + PlainText.tenths(bandwidthGbs / cores * 0.6));
        sometimes(random, 5, require, () -> "spare_slots: " + (1 + random.nextInt(processors * board.channels())));
        sometimes(random, 5, require, () -> "processors: " + processors);
        if (!mode.equals("independent")) {
            require.add("memory_mode: " + mode);
        }

        List<String> limit = new ArrayList<>();
        if (!objective.equals("cheapest") || random.nextInt(3) == 0) {
            limit.add("price: " + Math.round(price));
        }
        sometimes(random, 3, limit, () -> "power_w: " + Math.round(loadW));
        sometimes(random, 2, limit, () -> "lead_days: " + (1 + random.nextInt(14)));
        sometimes(random, 2, limit, () -> "inlet_c: " + (20 + random.nextInt(12)));
        sometimes(random, 6, limit, () -> "altitude_m: " + 100 * random.nextInt(28));
        limit.add("mains_v: " + (random.nextInt(6) == 0 ? 115 : 230));
        sometimes(random, 4, limit, () -> "conditions: " + (random.nextBoolean() ? "[new, refurbished]" : "[used, refurbished]"));

        StringBuilder text = new StringBuilder("# Drawn with seed " + seed + ".\nkind: quote\ncatalog: " + catalog + "\n");
        if (random.nextInt(5) > 0) {
            text.append("platforms: ").append(platforms(random, board)).append('\n');
        }
        text.append("machines: ").append(machines).append('\n')
                .append("require: ").append(flow(require)).append('\n')
                .append("limit: ").append(flow(limit)).append('\n')
                .append("objective: ").append(objective).append('\n');
        if (objective.equals("best-value")) {
            text.append(PlainText.of("worth: { core: %.2f, gb: %.2f, gbs: %.2f, throughput: %.3f }\n",
                    level.core() * random.nextDouble() * 1.5, level.gb() * random.nextDouble() * 1.1,
                    random.nextDouble(), random.nextDouble() * level.core() / level.coreThroughput()));
        }
        if (random.nextInt(10) == 0) {
            text.append("licence: { per_core: ").append(10 * random.nextInt(60)).append(" }\n");
        }
        text.append("alternatives: ").append(1 + random.nextInt(6)).append('\n');
        return text.toString();
    }

    /** The same request, of which half ask for one to three volumes and a third for cards. */
    public String equipped(long seed) {
        // The first numbers of neighbouring seeds are alike.
        Random random = new Random(seed * 6_364_136_223_846_793_005L + 1_442_695_040_888_963_407L);
        List<String> asked = new ArrayList<>();
        if (random.nextInt(2) == 0) {
            List<String> volumes = new ArrayList<>();
            for (int i = 1 + random.nextInt(3); i > 0; i--) {
                int level = List.of(0, 1, 1, 5, 6, 10).get(random.nextInt(6));
                List<String> volume = new ArrayList<>(List.of("name: v" + i, "level: " + level, "usable_gb: " + 100 * (1 + random.nextInt(i == 1 ? 80 : 12))));
                sometimes(random, 3, volume, () -> "kind: " + (random.nextBoolean() ? "ssd" : "hdd"));
                if (level > 0) {
                    sometimes(random, 4, volume, () -> "hot_spares: 1");
                }
                volumes.add(flow(volume));
            }
            asked.add("storage: " + volumes);
        }
        if (random.nextInt(3) == 0) {
            String network = "{ kind: network, ports: %s, port_gbit: %s, count: %s }".formatted(1 + random.nextInt(2), List.of(1, 10, 25).get(random.nextInt(3)),
                    1 + random.nextInt(2));
            asked.add("cards: [" + network + (random.nextInt(4) == 0 ? ", { kind: controller }]" : "]"));
        }
        return asked.isEmpty() ? request(seed) : request(seed).replace("require: {", "require: { " + String.join(", ", asked) + ",");
    }

    /** The wish's platform alone, or up to two more beside it. */
    private List<String> platforms(Random random, Board board) {
        List<String> skus = new ArrayList<>(List.of(board.sku()));
        for (int i = random.nextInt(3); i > 0; i--) {
            String other = boards.get(random.nextInt(boards.size())).sku();
            if (!skus.contains(other)) {
                skus.add(other);
            }
        }
        return skus;
    }

    /** 50 to 95 percent of a wish's figure. */
    private static long most(Random random, double figure) {
        return Math.max(1, Math.round(figure * (0.5 + 0.45 * random.nextDouble())));
    }

    /** Adds an entry in one of {@code times} requests. */
    private static void sometimes(Random random, int times, List<String> entries, Supplier<String> entry) {
        if (random.nextInt(times) == 0) {
            entries.add(entry.get());
        }
    }

    private static String flow(List<String> entries) {
        return entries.stream().collect(Collectors.joining(", ", "{ ", " }"));
    }

    private static Level level(Board board) {
        if (board.channels() <= 2) {
            return new Level(160, 18, 1.8, 30, List.of(8, 16, 32));
        }
        return switch (board.ddr()) {
            case "DDR3" -> new Level(130, 2, 0.45, 13, List.of(4, 8, 16, 32));
            case "DDR4" -> board.channels() == 4 ? new Level(180, 4, 1.1, 16, List.of(8, 16, 32, 64))
                    : new Level(620, 11, 1.4, 20, List.of(8, 16, 32, 64, 128));
            default -> new Level(2400, 40, 3.4, 28, List.of(16, 32, 64, 128));
        };
    }

    // The files are read by their lines: a fault of the program's own reader must not hide in its tests' requests.
    private static Board board(Path file) {
        try {
            String text = Files.readString(file);
            String mts = find(file, text, "mts: \\[(\\d+)");
            return new Board(find(file, text, "(?m)^sku: (\\S+)"), find(file, text, "(?m)^  generation: (\\S+)"),
                    Integer.parseInt(find(file, text, "(?m)^  channels: (\\d+)")),
                    Integer.parseInt(find(file, text, "(?m)^  slots_per_channel: (\\d+)")),
                    Stream.of(find(file, text, "counts: \\[([^\\]]+)\\]").split(",\\s*")).map(Integer::valueOf).toList(),
                    Integer.parseInt(find(file, text, "max_tdp_w: (\\d+)")), Integer.parseInt(mts));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String find(Path file, String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        if (!matcher.find()) {
            throw new IllegalStateException(file + " has nothing like " + pattern);
        }
        return matcher.group(1);
    }
}
