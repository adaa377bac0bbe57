package sledwright.samples;

import java.util.ArrayList;
import java.util.List;

/**
 * A family of generated platforms and the trends of its processors.
 *
 * @param root        the part of the socket's name that families of one socket share
 * @param counts      processors that a platform of the family takes
 * @param mts         MT/s of registered (or unbuffered) modules with 1, 2 ... on a channel
 * @param sled        whether an enclosure feeds it
 * @param corePrice   euro for a core of a middling second-user processor
 * @param factor      throughput of one core at one GHz
 * @param maxMemoryGb what one processor addresses
 */
record SampleFamily(String root, String ddr, String type, int channels, List<Integer> counts, List<Integer> mts, boolean sled,
                    int baseW, int maxTdpW, double price, int minCores, int maxCores, double corePrice, double factor,
                    int maxMemoryGb) {

    private static final List<Integer> DDR3_MTS = List.of(1066, 1333, 1600, 1866);
    private static final List<Integer> DDR4_MTS = List.of(1600, 1866, 2133, 2400, 2666, 2933, 3200);
    private static final List<Integer> DDR5_MTS = List.of(3600, 4000, 4400, 4800, 5600);

    private static final List<SampleFamily> ALL = List.of(
            new SampleFamily("A", "DDR3", "RDIMM", 4, List.of(1, 2), List.of(1866, 1600, 1066), false, 95, 135, 52, 4, 12, 1.2, 4.8, 768),
            new SampleFamily("B", "DDR4", "RDIMM", 4, List.of(1, 2), List.of(2400, 2400, 1866), true, 48, 145, 80, 4, 22, 2.6, 6.2, 1536),
            new SampleFamily("B", "DDR4", "RDIMM", 4, List.of(1, 2), List.of(2133, 1866, 1600), false, 88, 145, 130, 4, 22, 2.6, 6.2, 1536),
            new SampleFamily("C", "DDR4", "RDIMM", 6, List.of(1, 2), List.of(2933, 2666), false, 85, 205, 420, 6, 28, 7, 7.2, 1024),
            new SampleFamily("D", "DDR4", "RDIMM", 8, List.of(1), List.of(3200, 2933), false, 75, 225, 640, 8, 64, 11, 8.6, 4096),
            new SampleFamily("E", "DDR5", "RDIMM", 8, List.of(1, 2), List.of(4800, 4400), false, 140, 350, 1700, 8, 56, 20, 9.5, 4096),
            new SampleFamily("F", "DDR5", "RDIMM", 12, List.of(1, 2), List.of(5600), false, 150, 350, 2400, 16, 96, 22, 11, 6144),
            new SampleFamily("G", "DDR4", "UDIMM", 2, List.of(1), List.of(2666, 2400), false, 34, 95, 100, 2, 8, 9, 8, 128));

    /** One processor generation of a family's socket; the first of a socket carries the platforms. */
    record Line(SampleFamily family, int series, int age) {

        boolean first() {
            return age == 1;
        }

        String socket() {
            return "R" + family.root + series;
        }

        String code() {
            return socket() + age;
        }

        String generation() {
            return generation(age);
        }

        /** The name of the socket's first or second generation. */
        String generation(int which) {
            return PlainText.of("Roost %s%d %d", family.root, series, which);
        }

        double factor() {
            return age == 1 ? family.factor : Math.round(family.factor * 10.6) / 10.0;
        }

        /** MT/s that the better processors of the generation drive: the elder is a step behind the board. */
        int topMts() {
            return age == 1 ? family.stepped(family.mts.get(0), -1) : family.mts.get(0);
        }
    }

    int slotsPerChannel() {
        return mts.size();
    }

    /** Every family with {@code series} sockets of two generations each, a socket's first generation before all second ones. */
    static List<Line> lines(int series) {
        List<Line> lines = new ArrayList<>();
        for (int age = 1; age <= 2; age++) {
            for (int number = 1; number <= series; number++) {
                for (SampleFamily family : ALL) {
                    lines.add(new Line(family, number, age));
                }
            }
        }
        return lines;
    }

    /** The rates of a memory generation, ascending. */
    static List<Integer> speeds(String ddr) {
        return switch (ddr) {
            case "DDR3" -> DDR3_MTS;
            case "DDR4" -> DDR4_MTS;
            default -> DDR5_MTS;
        };
    }

    /** The rate a number of steps above {@code mts} (below, where negative), held to the ends of the memory generation. */
    int stepped(int mts, int by) {
        List<Integer> speeds = speeds(ddr);
        return speeds.get(Math.max(0, Math.min(speeds.size() - 1, speeds.indexOf(mts) + by)));
    }
}
