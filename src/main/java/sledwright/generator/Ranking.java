package sledwright.generator;

import java.util.Comparator;
import java.util.List;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.metrics.Quantity;
import sledwright.metrics.SurplusWorth;

/**
 * The order of an objective. Each objective is brought to an aim, the less the better: the price; a figure with its sign
 * turned; or price less worth. Where a figure is the aim, the price comes next. Then more throughput, more bandwidth,
 * more usable memory, less load, more cores.
 */
final class Ranking implements Comparator<Candidate> {

    private static final double ROUNDING = 1e-4;

    private final Request request;
    private final Objective objective;
    private final Comparator<Candidate> order;

    Ranking(Request request) {
        this.request = request;
        objective = request.objective();
        Comparator<Candidate> aim = Comparator.comparingDouble(Candidate::aim);
        order = (isPriceNext() ? aim.thenComparingLong(Candidate::price) : aim)
                .thenComparing(Comparator.comparingDouble(Candidate::throughput).reversed())
                .thenComparing(Comparator.comparingDouble(Candidate::bandwidthGbs).reversed())
                .thenComparing(Comparator.comparingDouble(Candidate::usableGb).reversed())
                .thenComparingDouble(Candidate::loadW)
                .thenComparing(Comparator.comparingInt(Candidate::cores).reversed());
    }

    @Override
    public int compare(Candidate one, Candidate other) {
        return order.compare(one, other);
    }

    /** Whether the least price decides between builds of equal aim. */
    boolean isPriceNext() {
        return switch (objective) {
            case CHEAPEST, BEST_VALUE -> false;
            case MOST_THROUGHPUT, MOST_BANDWIDTH, MOST_MEMORY -> true;
        };
    }

    /** The aim of a build. */
    double aim(Frame frame, MemoryPoint point, long price, double bandwidthGbs) {
        return switch (objective) {
            case CHEAPEST -> price;
            case MOST_THROUGHPUT -> -frame.throughput();
            case MOST_BANDWIDTH -> -bandwidthGbs;
            case MOST_MEMORY -> -point.usableGb();
            case BEST_VALUE -> Quantity.rounded(price
                    - SurplusWorth.of(request, frame.cores(), point.usableGb(), bandwidthGbs, frame.throughput()));
        };
    }

    /** Points in the order in which they promise most to any frame: once {@link #isHopeless} holds for one, so it does behind it. */
    List<MemoryPoint> order(MemoryPoints points, int speedMts) {
        if (objective == Objective.CHEAPEST || objective == Objective.MOST_THROUGHPUT) {
            return points.cheapestFirst();
        }
        return points.inOrderOf(speedMts, point -> ownAim(point, points.bandwidthGbs(point, speedMts)));
    }

    /** The memory's own part of the aim. */
    private double ownAim(MemoryPoint point, double bandwidthGbs) {
        return switch (objective) {
            case CHEAPEST, MOST_THROUGHPUT -> point.price();
            case MOST_BANDWIDTH -> -bandwidthGbs;
            case MOST_MEMORY -> -point.usableGb();
            case BEST_VALUE -> point.price() - SurplusWorth.of(request, 0, point.usableGb(), bandwidthGbs, 0);
        };
    }

    /** Whether no build of the frame can come before another, once one of that aim and price does not. */
    boolean isHopeless(Frame frame, double aim, long price, Candidate other) {
        return switch (objective) {
            case CHEAPEST -> price > other.price();
            case MOST_THROUGHPUT -> frame.throughput() <= other.throughput() && price > other.price();
            case MOST_BANDWIDTH, MOST_MEMORY -> aim > other.aim();
            // Sums of fractions: what is taken apart and put together again may differ in the last digits.
            case BEST_VALUE -> aim > other.aim() + ROUNDING;
        };
    }

    /** What a report calls the aim: minor units for a price, else the figure itself. */
    double reported(double aim) {
        return isPriceNext() ? -aim : aim;
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
            case CHEAPEST, MOST_BANDWIDTH, MOST_MEMORY -> frame.price();
            case MOST_THROUGHPUT -> -frame.throughput();
            case BEST_VALUE -> frame.price() - frame.worth();
        };
    }

    /**
     * A bound that no build of a frame with the option's memory beats; infinite where there is none.
     *
     * @param floor        what the option's memory costs at least
     * @param usableGb     the build's least usable memory
     * @param bandwidthGbs its least bandwidth
     */
    double bound(Frame frame, MemoryOption option, MemoryFloor floor, double usableGb, double bandwidthGbs) {
        double channelsGbs = option.widestGbs(frame.processor().memoryMts()) / option.mostWidth();
        double width = bandwidthGbs / channelsGbs;
        int mostSocketGb = frame.processor().maxMemoryGb().orElse(Integer.MAX_VALUE);
        if (width > option.mostWidth() + 1e-9 || usableGb > option.mostUsableGb(mostSocketGb) + 1e-9) {
            return Double.POSITIVE_INFINITY;
        }
        double least = frame.price() + floor.leastPrice(usableGb, width);
        double money = request.limit().price().isPresent() ? request.limit().price().getAsLong() : Double.POSITIVE_INFINITY;
        if (least > money + 0.5) {
            return Double.POSITIVE_INFINITY;
        }
        return switch (objective) {
            case CHEAPEST -> Math.ceil(least - ROUNDING);
            case MOST_THROUGHPUT -> -frame.throughput();
            case MOST_BANDWIDTH -> -option.widestGbs(frame.processor().memoryMts());
            case MOST_MEMORY -> -ROUNDING - Math.min(option.mostUsableGb(mostSocketGb), floor.mostUsableGbFor(money - frame.price()));
            case BEST_VALUE -> -ROUNDING + frame.price() - frame.worth()
                    + floor.leastPriceLessWorth(usableGb, width, mostSocketGb) + request.machines()
                    * (request.worth().gb() * request.require().memoryGb()
                    - request.worth().gbs() * (channelsGbs * option.mostWidth() - request.require().bandwidthGbs()));
        };
    }
}
