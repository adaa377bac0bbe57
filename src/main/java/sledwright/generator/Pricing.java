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
    private final long[][] cheapest;
    private final long[][] lightest;
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
        cheapest = bounds(draws, Draw::price);
        lightest = bounds(draws, draw -> dealtExactly ? draw.load().lightest() : draw.load().heaviest() - draw.load().range());
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
        for (Shapes.Bucket bucket : shapes.buckets()) {
            int socketGb = bucket.totalGb() * shapes.key().multiple();
            if (!Target.MEMORY_CAPACITY.allows(request.require(), (double) socketGb * sockets)) {
                break;
            }
            if (socketGb <= mostSocketGb && canServe(bucket)) {
                addPoints(points, bucket);
            }
        }
        return new MemoryPoints(points, sockets);
    }

    private double usableGb(Shapes.Bucket bucket) {
        double totalGb = (double) sockets * shapes.key().multiple() * bucket.totalGb();
        return UsableMemory.gb(memory, request.require().mode(), totalGb, sockets * bucket.sparedGb());
    }

    private boolean canServe(Shapes.Bucket bucket) {
        int modules = modules(bucket);
        return Target.MEMORY_CAPACITY.allows(request.require(), usableGb(bucket))
                && Target.SPARE_SLOTS.allows(request.require(), uncoveredSlots - modules);
    }

    private int modules(Shapes.Bucket bucket) {
        return bucket.modules() * shapes.key().multiple() * sockets;
    }

    private void addPoints(List<MemoryPoint> points, Shapes.Bucket bucket) {
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
                price += cheapest[group][shape.counts()[i]];
                lightest += this.lightest[group][shape.counts()[i]];
            }
            if (price < UNAVAILABLE && Budget.allows(request.limit(), price) && !isMatched(kept, price, lightest)
                    && holdsWanted(shape)) {
                combine(kept, bucket, shape, 0, Draw.NOTHING, new Draw[shape.groups().length], labour);
            }
        }
        points.addAll(kept);
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
