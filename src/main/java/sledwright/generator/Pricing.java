package sledwright.generator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToLongFunction;
import java.util.stream.IntStream;
import sledwright.domain.MemorySupport;
import sledwright.domain.Request;
import sledwright.metrics.CheapestDraw;
import sledwright.metrics.UsableMemory;
import sledwright.rules.stock.Budget;
import sledwright.rules.target.Target;

/** Turns the shapes of a socket into priced points: the worthwhile draws of every bucket that can meet the request. */
final class Pricing {

    /** Above any price, and small enough that a few of them add up without overflow. */
    private static final long UNAVAILABLE = CheapestDraw.IMPOSSIBLE / 1024;

    private final Request request;
    private final MemorySupport memory;
    private final Shapes shapes;
    private final List<List<List<Draw>>> draws;
    private final int sockets;
    private final int uncoveredSlots;
    private final long labourPerModule;
    private final Deadline deadline;
    private final List<Integer> wantedGroups;
    private final long[][] leastPrice;
    private final long[][] leastMicrowatts;
    private final boolean dealtExactly;

    /**
     * @param draws          for each group of the shapes' key, for each number of modules, the worthwhile draws
     * @param uncoveredSlots slots of the fitted sockets that the kit leaves free
     */
    Pricing(Request request, MemorySupport memory, Shapes shapes, List<List<List<Draw>>> draws, int sockets, int uncoveredSlots,
            long labourPerModule, Deadline deadline) {
        this.request = request;
        this.memory = memory;
        this.shapes = shapes;
        this.draws = draws;
        this.sockets = sockets;
        this.uncoveredSlots = uncoveredSlots;
        this.labourPerModule = labourPerModule;
        this.deadline = deadline;
        dealtExactly = Deal.isExact(shapes.layouts().maxModules() * shapes.key().multiple() * sockets * request.machines());
        leastPrice = bounds(draws, Draw::price);
        leastMicrowatts = bounds(draws, draw -> dealtExactly ? draw.load().lightest() : draw.load().heaviest() - draw.load().range());
        // A group that cannot be left empty holds a part that the request wants used.
        wantedGroups = IntStream.range(0, draws.size()).filter(group -> draws.get(group).get(0).isEmpty()).boxed().toList();
    }

    /** For each group and number of modules the least figure of its draws; {@link #UNAVAILABLE} where there is none. */
    private static long[][] bounds(List<List<List<Draw>>> draws, ToLongFunction<Draw> figure) {
        return draws.stream().map(group -> group.stream()
                .mapToLong(of -> of.stream().mapToLong(figure).min().orElse(UNAVAILABLE)).toArray()).toArray(long[][]::new);
    }

    /** The points with no more than so many GB on a socket. */
    MemoryPoints points(int mostSocketGb) {
        List<MemoryPoint> points = new ArrayList<>();
        Skyline skyline = new Skyline(shapes.widths());
        for (Shapes.Bucket bucket : shapes.buckets()) {
            // Buckets come with the most to use first, so what serves no more here serves no more behind it.
            if (!Target.MEMORY_CAPACITY.allows(request.require(), usableGb(bucket))) {
                break;
            }
            if (bucket.totalGb() * shapes.key().multiple() <= mostSocketGb
                    && Target.SPARE_SLOTS.allows(request.require(), uncoveredSlots - modules(bucket))) {
                addPoints(points, skyline, bucket);
            }
        }
        return new MemoryPoints(points, sockets);
    }

    private double usableGb(Shapes.Bucket bucket) {
        double totalGb = (double) sockets * shapes.key().multiple() * bucket.totalGb();
        return UsableMemory.gb(memory, request.require().mode(), totalGb, sockets * bucket.sparedGb());
    }

    private int modules(Shapes.Bucket bucket) {
        return bucket.modules() * shapes.key().multiple() * sockets;
    }

    /** Adds the points of a bucket that none of those before matches: all of them leave at least as much to use. */
    private void addPoints(List<MemoryPoint> points, Skyline skyline, Shapes.Bucket bucket) {
        if (deadline.isOver()) {
            throw new OutOfTimeException();
        }
        List<MemoryPoint> kept = new ArrayList<>(2);
        long labour = labourPerModule * modules(bucket) * request.machines();
        for (Shapes.Shape shape : bucket.shapes()) {
            // Most shapes are too dear at their cheapest and lightest; that is told without building anything.
            long price = labour;
            long lightest = 0;
            for (int i = 0; i < shape.groups().length; i++) {
                int group = shape.groups()[i];
                price += leastPrice[group][shape.counts()[i]];
                lightest += leastMicrowatts[group][shape.counts()[i]];
            }
            if (price < UNAVAILABLE && Budget.allows(request.limit(), price) && !isMatched(kept, price, lightest)
                    && !skyline.matches(bucket.widthRank(), price, lightest) && holdsWanted(shape)) {
                combine(kept, bucket, shape, 0, Draw.NOTHING, new Draw[shape.groups().length], labour);
            }
        }
        for (MemoryPoint point : kept) {
            if (!skyline.matches(bucket.widthRank(), point.price(), point.microwatts() - point.slack())) {
                skyline.add(bucket.widthRank(), point.price(), point.microwatts());
                points.add(point);
            }
        }
    }

    private boolean holdsWanted(Shapes.Shape shape) {
        return wantedGroups.isEmpty() || Arrays.stream(shape.groups()).boxed().toList().containsAll(wantedGroups);
    }

    private void combine(List<MemoryPoint> kept, Shapes.Bucket bucket, Shapes.Shape shape, int index, Draw sofar, Draw[] chosen,
                         long labour) {
        if (index < chosen.length) {
            for (Draw draw : draws.get(shape.groups()[index]).get(shape.counts()[index])) {
                chosen[index] = draw;
                combine(kept, bucket, shape, index + 1, sofar.plus(draw), chosen, labour);
            }
            return;
        }
        long price = sofar.price() + labour;
        Draw.Load load = sofar.load();
        long lightest = load.uneven() == 0 ? load.heaviest() : dealtExactly ? load.total() / request.machines() : load.heaviest() - load.range();
        if (!Budget.allows(request.limit(), price)) {
            return;
        }
        if (isMatched(kept, price, lightest)) {
            return;
        }
        long heaviest = load.uneven() > 0 && dealtExactly ? Deal.heaviestMicrowatts(sofar.shares(), request.machines()) : load.heaviest();
        long slack = load.uneven() > 1 && !dealtExactly ? load.range() : 0;
        if (isMatched(kept, price, heaviest - slack)) {
            return;
        }
        kept.removeIf(point -> point.price() >= price && point.microwatts() - point.slack() >= heaviest);
        kept.add(new MemoryPoint(price, bucket.totalGb() * shapes.key().multiple(), bucket.fullestGb(), usableGb(bucket),
                modules(bucket), heaviest, slack, shapes.key(), bucket, shape, List.of(chosen)));
    }

    private static boolean isMatched(List<MemoryPoint> kept, long price, long microwatts) {
        for (MemoryPoint point : kept) {
            if (point.price() <= price && point.microwatts() <= microwatts) {
                return true;
            }
        }
        return false;
    }
}
