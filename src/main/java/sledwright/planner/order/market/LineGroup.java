package sledwright.planner.order.market;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.PriorityQueue;
import java.util.function.DoubleBinaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import sledwright.domain.Limits;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.OrderLine;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.WorkWish;
import sledwright.rules.target.PowerLimit;

/**
 * Lines that differ in figures alone, so that one question to the search can stand for all of them: a machine that does what any of them
 * asks suits each, and none costs less than a machine that does only what all of them ask.
 */
public final class LineGroup {

    /** Differences that say nothing. */
    private static final double NOTHING = 1e-9;

    /** What stands for a limit that is absent. */
    private static final double MANY_DAYS = 30;
    private static final double MANY_WATTS = 2_000;
    private static final double MILD = 20;

    /** Figures by which lines differ, each on a scale on which equal steps weigh about the same. */
    private static final List<Axis> AXES = List.of(
            new Axis(request -> request.require().cores(), 4),
            new Axis(request -> request.require().memoryGb(), 16),
            new Axis(request -> request.require().bandwidthGbs(), 80),
            new Axis(request -> request.require().throughput(), 80),
            new Axis(request -> request.require().work().least(), 80),
            new Axis(request -> request.require().spareSlots(), 8),
            new Axis(request -> request.require().baseGhz(), 2),
            new Axis(request -> request.require().allCoreGhz(), 2),
            new Axis(request -> request.require().gbPerCore(), 4),
            new Axis(request -> request.require().gbsPerCore(), 4),
            new Axis(request -> request.limit().powerW().orElse(MANY_WATTS), 100),
            new Axis(request -> request.limit().mostDays().orElse((int) MANY_DAYS), 15),
            new Axis(request -> request.limit().inletC().orElse(MILD), MILD),
            new Axis(request -> request.limit().altitudeM(), 2_000));

    private final Market market;
    private final List<Integer> lines;
    private final Axis widest;
    private final double spread;

    /** @param soft figures well below it count as equal */
    private record Axis(ToDoubleFunction<Request> figure, double soft) {

        double at(Request request) {
            return Math.log(figure.applyAsDouble(request) + soft);
        }
    }

    private LineGroup(Market market, List<Integer> lines) {
        this.market = market;
        this.lines = List.copyOf(lines);
        Axis most = AXES.get(0);
        double by = -1;
        for (Axis axis : AXES) {
            double[] at = requests().stream().mapToDouble(axis::at).toArray();
            double differ = of(at, Math::max) - of(at, Math::min);
            if (differ > by + NOTHING) {
                by = differ;
                most = axis;
            }
        }
        widest = most;
        spread = by;
    }

    private static double of(double[] values, DoubleBinaryOperator choice) {
        return Arrays.stream(values).reduce(choice).orElseThrow();
    }

    /** All that makes lines unlike beside figures, and their priority. */
    private record Kind(List<Object> wishes, int priority, int pool) {

        /** @param pool of the lots that they accept; -1 where that does not matter */
        static Kind of(OrderLine line, int pool) {
            Request asked = line.request();
            Requirements require = asked.require();
            return new Kind(List.of(asked.platforms(), asked.forbid(), asked.use(), asked.equipment(), asked.objective(), asked.worth(),
                    asked.licence(), require.processors(), require.mode(), require.populated(), require.work().workload(),
                    asked.limit().mainsV(), asked.limit().conditions()), line.priority(), pool);
        }
    }

    /**
     * Some lines in about as many groups as are wanted, or more where lines differ in other things than figures: those of the highest
     * priority first, of these those that ask for most.
     *
     * @param byPool whether lines of a group accept the same lots
     */
    public static List<LineGroup> of(Market market, Collection<Integer> lines, int groups, boolean byPool) {
        Map<Kind, List<Integer>> kinds = new LinkedHashMap<>();
        for (int line : lines) {
            kinds.computeIfAbsent(Kind.of(market.line(line), byPool ? market.poolOf(line) : -1), kind -> new ArrayList<>()).add(line);
        }
        PriorityQueue<LineGroup> open = new PriorityQueue<>(Comparator.comparingDouble(LineGroup::weight).reversed());
        kinds.values().forEach(some -> open.add(new LineGroup(market, some)));
        while (open.size() < groups && open.peek().isSplittable()) {
            open.addAll(open.poll().split());
        }
        Comparator<LineGroup> byPriority = Comparator.comparing(group -> -market.line(group.lines.get(0)).priority());
        return open.stream().sorted(byPriority.thenComparing(Comparator.comparingDouble(LineGroup::asked).reversed())
                .thenComparing(group -> group.lines.get(0))).toList();
    }

    public List<Integer> lines() {
        return lines;
    }

    /** How much splitting it may gain. */
    public double weight() {
        return spread * lines.stream().mapToInt(line -> market.line(line).machines()).sum();
    }

    /** About how much a machine of it is. */
    private double asked() {
        Request most = most();
        return AXES.get(0).at(most) + AXES.get(1).at(most);
    }

    public boolean isSplittable() {
        return spread > NOTHING;
    }

    /** Those that ask for more, and those that ask for less, of what they differ by most; itself where they do not. */
    public List<LineGroup> split() {
        if (!isSplittable()) {
            return List.of(this);
        }
        double[] at = requests().stream().mapToDouble(widest::at).toArray();
        double middle = (of(at, Math::min) + of(at, Math::max)) / 2;
        Map<Boolean, List<Integer>> parts = lines.stream()
                .collect(Collectors.partitioningBy(line -> widest.at(market.line(line).request()) > middle));
        return List.of(new LineGroup(market, parts.get(true)), new LineGroup(market, parts.get(false)));
    }

    /** The same without some of its lines; at least one stays. */
    public LineGroup only(List<Integer> some) {
        return new LineGroup(market, some);
    }

    private List<Request> requests() {
        return lines.stream().map(line -> market.line(line).request()).toList();
    }

    /** What asks for all that any line asks for. */
    public Request most() {
        return joined(Math::max, Math::min);
    }

    /** What asks for no more than every line does. */
    public Request least() {
        return joined(Math::min, Math::max);
    }

    private Request joined(DoubleBinaryOperator figures, DoubleBinaryOperator limits) {
        List<Request> all = requests();
        Request first = all.get(0);
        Requirements asked = first.require();
        Requirements require = new Requirements(
                new ProcessorNeeds(asked.processors(), (int) over(all, figures, request -> request.require().cores()),
                        over(all, figures, request -> request.require().throughput()),
                        over(all, figures, request -> request.require().baseGhz()),
                        over(all, figures, request -> request.require().allCoreGhz())),
                new MemoryNeeds(over(all, figures, request -> request.require().memoryGb()),
                        over(all, figures, request -> request.require().bandwidthGbs()),
                        over(all, figures, request -> request.require().gbPerCore()),
                        over(all, figures, request -> request.require().gbsPerCore()),
                        (int) over(all, figures, request -> request.require().spareSlots()), asked.mode(), asked.populated()),
                new WorkWish(over(all, figures, request -> request.require().work().least()), asked.work().workload()));
        double watts = over(all, limits, request -> PowerLimit.mostW(request.limit()));
        double inlet = over(all, figures, request -> request.limit().inletC().orElse(Double.NEGATIVE_INFINITY));
        Limits limit = first.limit().waiting()
                .withPowerW(Double.isInfinite(watts) ? OptionalDouble.empty() : OptionalDouble.of(watts))
                .withInletC(Double.isInfinite(inlet) ? OptionalDouble.empty() : OptionalDouble.of(inlet))
                .withAltitudeM(over(all, figures, request -> request.limit().altitudeM()));
        double days = over(all, limits, request -> request.limit().mostDays().orElse(Integer.MAX_VALUE));
        return first.withRequire(require).withLimit(days < Integer.MAX_VALUE ? limit.withLeadDays(OptionalInt.of((int) days)) : limit);
    }

    private static double over(List<Request> all, DoubleBinaryOperator choice, ToDoubleFunction<Request> figure) {
        return of(all.stream().mapToDouble(figure).toArray(), choice);
    }
}
