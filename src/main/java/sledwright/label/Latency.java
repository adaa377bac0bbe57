package sledwright.label;

import java.util.List;
import java.util.stream.Collectors;

/** CAS latency alone, or CL-tRCD-tRP, in clock cycles. */
public record Latency(List<Integer> cycles) {

    private static final int LEAST = 4;
    private static final int MOST = 99;

    public Latency {
        cycles = List.copyOf(cycles);
        if (cycles.size() != 1 && cycles.size() != 3 || !cycles.stream().allMatch(Latency::isCount)) {
            throw new IllegalArgumentException("one or three counts from 4 to 99, not " + cycles);
        }
    }

    static Latency of(int cl, int trcd, int trp) {
        return new Latency(List.of(cl, trcd, trp));
    }

    static boolean isCount(int cycle) {
        return cycle >= LEAST && cycle <= MOST;
    }

    /** As a label has it: digits without a mark between them. */
    String onLabel() {
        if (cycles.size() == 1) {
            return String.valueOf(cycles.get(0));
        }
        boolean single = cycles.stream().allMatch(cycle -> cycle < 10);
        return cycles.stream().map(cycle -> (single || cycle > 9 ? "" : "0") + cycle).collect(Collectors.joining());
    }

    /** For people, such as {@code 17-17-17}. */
    @Override
    public String toString() {
        return cycles.stream().map(String::valueOf).collect(Collectors.joining("-"));
    }
}
