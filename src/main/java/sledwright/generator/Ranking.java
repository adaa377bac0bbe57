package sledwright.generator;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Energy;
import sledwright.domain.Limits;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.domain.Workload;
import sledwright.generator.draw.Watts;
import sledwright.generator.fitout.Completion;
import sledwright.generator.memory.MemoryFloor;
import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryPoint;
import sledwright.generator.memory.MemoryPoints;
import sledwright.generator.memory.MemoryWindow;
import sledwright.metrics.EnergyCost;
import sledwright.metrics.Quantity;
import sledwright.metrics.SurplusWorth;
import sledwright.metrics.WorkDone;
import sledwright.rules.stock.Budget;

/**
 * The order of an objective. Each objective is brought to an aim, the less the better: the price, to which the energy of some
 * years can be added; a figure with its sign turned; or price less worth. Where a figure or the total is the aim, the price comes
 * next. Then more work (without a workload: throughput), more bandwidth, more usable memory, less load, more cores.
 */
final class Ranking implements Comparator<Combination> {

    private static final double ROUNDING = 1e-4;
    private static final double MILLIONTH = 1e-6;

    private final Request request;
    private final Objective objective;
    private final double money;
    private final Workload workload;
    private final Optional<Energy> energy;
    private final Comparator<Combination> order;
    /** What usable memory, a figure to a millionth, may be worth more than it is. */
    private final double roundedWorth;

    Ranking(Request request) {
        this(request, request.objective() == Objective.LEAST_TOTAL ? request.energy() : Optional.empty(), (one, other) -> 0);
    }

    /**
     * @param energy what is added to the price where the objective is the cheapest or the least total
     * @param tie    what comes next between builds of equal aim, before all else
     */
    Ranking(Request request, Optional<Energy> energy, Comparator<Combination> tie) {
        this.request = request;
        this.energy = energy;
        objective = request.objective();
        money = request.limit().price().isPresent() ? request.limit().price().getAsLong() : Double.POSITIVE_INFINITY;
        workload = request.require().work().workload();
        roundedWorth = request.machines() * request.worth().gb() * MILLIONTH;
        Comparator<Combination> aim = Comparator.comparingDouble(Combination::aim);
        Comparator<Combination> first = aim.thenComparing(tie);
        order = (isPriceNext() ? first.thenComparingLong(Combination::price) : first)
                .thenComparing(Comparator.comparingDouble(Combination::work).reversed())
                .thenComparing(Comparator.comparingDouble(Combination::bandwidthGbs).reversed())
                .thenComparing(Comparator.comparingDouble(Combination::usableGb).reversed())
                .thenComparingDouble(Combination::loadW)
                .thenComparing(Comparator.comparingInt(Combination::cores).reversed());
    }

    @Override
    public int compare(Combination one, Combination other) {
        return order.compare(one, other);
    }

    /** Whether the least price decides between builds of equal aim. */
    boolean isPriceNext() {
        return switch (objective) {
            case CHEAPEST, BEST_VALUE -> false;
            case MOST_THROUGHPUT, MOST_BANDWIDTH, MOST_MEMORY, MOST_WORK, MOST_CORES, LEAST_TOTAL -> true;
        };
    }

    /** Whether a figure of the machine is the aim, and not money. */
    boolean isFigureAim() {
        return !objective.isMoney();
    }

    /** Whether drives, cards and enclosures are chosen by what they cost together with the electricity. */
    boolean weighsSets() {
        return objective == Objective.LEAST_TOTAL;
    }

    /** Whether the aim counts what the electricity costs. */
    boolean countsEnergy() {
        return energy.isPresent();
    }

    /** What the electricity of all machines of a load costs where it counts, else 0; minor units. */
    long energy(Optional<Supply> supply, long microwatts) {
        return energy.isEmpty() ? 0 : EnergyCost.of(request.machines(), Watts.of(microwatts), supply, request.limit(), energy.get());
    }

    /**
     * Whether a frame's set of drives, cards and enclosures is the one that its build takes of all within the limits: that of the least
     * total, of equals the cheapest, then the lightest, then any one.
     */
    boolean isBestSet(Frame frame, MemoryPoint point, Limits limits) {
        Completion own = frame.completion();
        long others = frame.microwatts() - own.fitted().microwatts() + point.microwatts();
        long rest = frame.price() - own.price() + point.price();
        Comparator<Completion> order = Comparator.comparingLong((Completion one) -> rest + one.price()
                + energy(frame.supply(), others + one.fitted().microwatts())).thenComparingLong(Completion::price)
                .thenComparingLong(one -> one.fitted().microwatts());
        return own.rivals().orElseThrow().of(others).filter(one -> Budget.allows(limits, rest + one.price())).min(order)
                .filter(one -> one == own).isPresent();
    }

    /** What the aim of a build could come down to if its units were dealt as well as can be; infinite where that changes nothing. */
    double aimIfLighter(Frame frame, MemoryPoint point, long price) {
        long slack = Query.slack(frame, point);
        return energy.isEmpty() || slack == 0 ? Double.POSITIVE_INFINITY
                : price + energy(frame.supply(), frame.microwatts() + point.microwatts() - slack);
    }

    double aim(Frame frame, MemoryPoint point, long price, double bandwidthGbs, double work) {
        return switch (objective) {
            case CHEAPEST, LEAST_TOTAL -> price + energy(frame.supply(), frame.microwatts() + point.microwatts());
            case MOST_THROUGHPUT -> -frame.throughput();
            case MOST_BANDWIDTH -> -bandwidthGbs;
            case MOST_MEMORY -> -point.usableGb();
            case BEST_VALUE -> Quantity.rounded(price
                    - SurplusWorth.of(request, frame.cores(), point.usableGb(), bandwidthGbs, frame.throughput(), work));
            case MOST_WORK -> -work;
            case MOST_CORES -> -frame.cores();
        };
    }

    /** What the aim would be less if memory fed the cores in full: by so much it is no measure of what comes behind in the order. */
    private double heldBack(Frame frame, double work) {
        return objective == Objective.BEST_VALUE ? request.machines() * request.worth().work() * (frame.mostWork() - work) : 0;
    }

    /** Points in the order in which they promise most to any frame: once {@link #isHopeless} holds for one, so it does behind it. */
    List<MemoryPoint> order(MemoryPoints points, int speedMts) {
        if (isAimOfFrame()) {
            return points.cheapestFirst();
        }
        return points.inOrderOf(objective, speedMts, point -> ownAim(point, points.bandwidthGbs(point, speedMts)));
    }

    /** Whether the cheapest memory is the first to look at, for the aim is the price or a figure that memory has no part in. */
    private boolean isAimOfFrame() {
        return switch (objective) {
            case CHEAPEST, LEAST_TOTAL, MOST_THROUGHPUT, MOST_CORES -> true;
            case MOST_WORK -> workload.gbPerUnit() == 0;
            case MOST_BANDWIDTH, MOST_MEMORY, BEST_VALUE -> false;
        };
    }

    /** The memory's own part of the aim. */
    private double ownAim(MemoryPoint point, double bandwidthGbs) {
        return switch (objective) {
            case CHEAPEST, LEAST_TOTAL, MOST_THROUGHPUT, MOST_CORES -> point.price();
            case MOST_BANDWIDTH, MOST_WORK -> -bandwidthGbs;
            case MOST_MEMORY -> -point.usableGb();
            case BEST_VALUE -> point.price() - SurplusWorth.of(request, 0, point.usableGb(), bandwidthGbs, 0);
        };
    }

    /** Whether no build of the frame can come before another, once one of that aim and price does not. */
    boolean isHopeless(Frame frame, double aim, long price, double work, Combination other) {
        return switch (objective) {
            case CHEAPEST, LEAST_TOTAL -> price + frame.energy() > other.aim();
            case MOST_THROUGHPUT -> frame.throughput() <= other.throughput() && price > other.price();
            case MOST_CORES -> frame.cores() <= other.cores() && price > other.price();
            case MOST_WORK -> isAimOfFrame() ? frame.mostWork() <= other.work() && price > other.price() : aim > other.aim();
            case MOST_BANDWIDTH, MOST_MEMORY -> aim > other.aim();
            // Sums of fractions: what is taken apart and put together again may differ in the last digits.
            case BEST_VALUE -> aim - heldBack(frame, work) > other.aim() + ROUNDING;
        };
    }

    /** What a report calls the aim: minor units for a price, else the figure itself. */
    double reported(double aim) {
        return isFigureAim() ? -aim : aim;
    }

    /** Frames in the order in which they promise most: once one cannot win by itself, none after it can. */
    Comparator<Frame> promisingFirst() {
        return Comparator.<Frame>comparingDouble(this::ownAim).thenComparingLong(Frame::price)
                .thenComparing(Comparator.comparingDouble(Frame::throughput).reversed()).thenComparingLong(Frame::microwatts)
                .thenComparing(Comparator.comparingInt(Frame::cores).reversed());
    }

    /** The frame's own part of the aim. */
    double ownAim(Frame frame) {
        return switch (objective) {
            case CHEAPEST, LEAST_TOTAL -> frame.price() + frame.energy();
            case MOST_BANDWIDTH, MOST_MEMORY -> frame.price();
            case MOST_THROUGHPUT -> -frame.throughput();
            case BEST_VALUE -> frame.price() - frame.computing().worth();
            case MOST_WORK -> -frame.mostWork();
            case MOST_CORES -> -frame.cores();
        };
    }

    /**
     * A bound that no build of a frame or of one behind it in {@link #promisingFirst} beats with the option's memory; it is never less
     * for one behind. Infinite where nothing comes of the frame for want of money, and of any frame else.
     *
     * @param usableGb     the least usable memory of any of these builds
     * @param bandwidthGbs the least bandwidth of any of them
     */
    double boundFrom(Frame frame, MemoryOption option, double usableGb, double bandwidthGbs) {
        return bound(frame, option, option.coarse(), usableGb, bandwidthGbs, ANY_PROCESSOR);
    }

    /**
     * A bound that no build of a frame with the option's memory beats; infinite where there is none.
     *
     * @param floor        what the option's memory costs at least
     * @param usableGb     the build's least usable memory
     * @param bandwidthGbs its least bandwidth
     */
    double bound(Frame frame, MemoryOption option, MemoryFloor floor, double usableGb, double bandwidthGbs) {
        return bound(frame, option, floor, usableGb, bandwidthGbs,
                new Reached(frame.processor().memoryMts(), frame.processor().maxMemoryGb().orElse(Integer.MAX_VALUE), frame.mostWork()));
    }

    /** What a processor makes of memory: its fastest speed, MT/s, the most GB on a socket and the work that the cores could do. */
    private record Reached(int memoryMts, int mostSocketGb, double mostWork) {
    }

    private static final Reached ANY_PROCESSOR = new Reached(Integer.MAX_VALUE, Integer.MAX_VALUE, 0);

    private double bound(Frame frame, MemoryOption option, MemoryFloor floor, double usableGb, double bandwidthGbs, Reached reached) {
        double widestGbs = option.widestGbs(reached.memoryMts);
        double width = bandwidthGbs / (widestGbs / option.mostWidth());
        if (width > option.mostWidth() + 1e-9 || usableGb > option.mostUsableGb(reached.mostSocketGb) + 1e-9) {
            return Double.POSITIVE_INFINITY;
        }
        double least = frame.price() + floor.leastPrice(usableGb, width);
        if (least > money + 0.5) {
            return Double.POSITIVE_INFINITY;
        }
        return switch (objective) {
            case CHEAPEST, LEAST_TOTAL -> Math.ceil(least - ROUNDING) + frame.energy();
            case MOST_THROUGHPUT -> -frame.throughput();
            case MOST_BANDWIDTH -> -widestGbs;
            case MOST_WORK -> -Math.min(frame.mostWork(), MILLIONTH + WorkDone.ofMemory(widestGbs, workload));
            case MOST_CORES -> -frame.cores();
            case MOST_MEMORY -> -ROUNDING - Math.min(option.mostUsableGb(reached.mostSocketGb),
                    floor.mostUsableGbFor(money - frame.price()));
            case BEST_VALUE -> -ROUNDING - roundedWorth + frame.price() - frame.computing().worth()
                    + floor.leastPriceLessWorth(usableGb, width, reached.mostSocketGb) + request.machines()
                    * (request.worth().gb() * request.require().memoryGb()
                    - request.worth().gbs() * (widestGbs - request.require().bandwidthGbs())
                    + request.worth().work() * Math.max(0, reached.mostWork - MILLIONTH - WorkDone.ofMemory(widestGbs, workload)));
        };
    }

    /** GB/s of a machine for each channel of width, but for rounding. */
    static double gbsOfWidth(Frame frame, MemoryOption option) {
        return option.widestGbs(frame.processor().memoryMts()) / option.mostWidth();
    }

    /**
     * The memory with which builds of a frame may come before another, or that money buys where there is none.
     *
     * @param other null: any memory may come first
     */
    MemoryWindow window(Frame frame, MemoryOption option, Combination other, MemoryWindow inZone) {
        MemoryWindow bought = inZone.noDearer(money - frame.price() + 0.5);
        if (other == null) {
            return bought;
        }
        double gbs = gbsOfWidth(frame, option);
        return switch (objective) {
            case CHEAPEST, LEAST_TOTAL -> bought.noDearer(other.aim() - frame.energy() - frame.price() + 0.5);
            case MOST_THROUGHPUT -> frame.throughput() <= other.throughput() ? noDearer(frame, other, bought) : bought;
            case MOST_CORES -> frame.cores() <= other.cores() ? noDearer(frame, other, bought) : bought;
            case MOST_WORK -> !isAimOfFrame()
                    ? bought.noNarrower(((other.work() - 2 * MILLIONTH) * workload.gbPerUnit() - 2 * MILLIONTH) / gbs)
                    : frame.mostWork() <= other.work() ? noDearer(frame, other, bought) : bought;
            case MOST_BANDWIDTH -> bought.noNarrower((other.bandwidthGbs() - 3 * MILLIONTH) / gbs);
            case MOST_MEMORY -> bought.noSmaller(other.usableGb() - MILLIONTH);
            case BEST_VALUE -> ofValue(bought, other.aim() + 2 * ROUNDING + roundedWorth - frame.price() + frame.computing().worth()
                    - request.machines() * (request.worth().gb() * request.require().memoryGb()
                    + request.worth().gbs() * (request.require().bandwidthGbs() - 3 * MILLIONTH)), gbs);
        };
    }

    private static MemoryWindow noDearer(Frame frame, Combination other, MemoryWindow window) {
        return window.noDearer(other.price() - frame.price() + 0.5);
    }

    private MemoryWindow ofValue(MemoryWindow window, double most, double gbsOfWidth) {
        return window.noMoreOf(most, request.machines() * request.worth().gb(), request.machines() * request.worth().gbs() * gbsOfWidth);
    }

    /**
     * The part of a window that promises most.
     *
     * @param dearer  how much dearer than the least conceivable price its memory may be, as a share of that
     * @param reached the share of the most conceivable figure that it reaches
     */
    MemoryWindow promising(Frame frame, MemoryOption option, MemoryWindow window, double dearer, double reached) {
        double least = option.fine().leastPrice(window.leastUsableGb(), window.leastWidth());
        int mostSocketGb = frame.processor().maxMemoryGb().orElse(Integer.MAX_VALUE);
        double gbs = gbsOfWidth(frame, option);
        return switch (objective) {
            case CHEAPEST, LEAST_TOTAL, MOST_THROUGHPUT, MOST_CORES -> window.noDearer(least * (1 + dearer) + 1);
            case MOST_WORK -> isAimOfFrame() ? window.noDearer(least * (1 + dearer) + 1)
                    : window.noNarrower(reached * Math.min(option.mostWidth(), frame.mostWork() * workload.gbPerUnit() / gbs));
            case MOST_BANDWIDTH -> window.noNarrower(reached * option.mostWidth());
            case MOST_MEMORY -> window.noSmaller(reached * Math.min(option.mostUsableGb(mostSocketGb),
                    option.fine().mostUsableGbFor(money - frame.price())));
            case BEST_VALUE -> ofValue(window, dearer * least + 1
                    + option.fine().leastPriceLessWorth(window.leastUsableGb(), window.leastWidth(), mostSocketGb)
                    - request.machines() * request.worth().gbs() * gbs * option.mostWidth(), gbs);
        };
    }
}
