package sledwright.generator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import sledwright.domain.MemorySupport;
import sledwright.domain.Request;
import sledwright.metrics.UsableMemory;
import sledwright.rules.target.Target;

/** Turns the shapes of a socket into priced points: the worthwhile draws of every bucket that can meet the request. */
final class Pricing {

    /** Combinations of uneven draws beyond which each group's are thinned to those worthwhile by themselves. */
    private static final int MOST_COMBINATIONS = 4_096;

    private final Request request;
    private final MemorySupport memory;
    private final Shapes shapes;
    private final List<List<List<Draw>>> draws;
    private final int sockets;
    private final int uncoveredSlots;
    private final long labourPerModule;
    private final Deadline deadline;
    private final List<Integer> wantedGroups;

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
        // A group that cannot be left empty holds a part that the request wants used.
        wantedGroups = IntStream.range(0, draws.size()).filter(group -> draws.get(group).get(0).isEmpty()).boxed().toList();
    }

    /** The points with no more than so many GB on a socket. */
    MemoryPoints points(int mostSocketGb) {
        List<MemoryPoint> points = new ArrayList<>();
        for (Shapes.Bucket bucket : shapes.buckets()) {
            if (bucket.totalGb() * shapes.key().multiple() <= mostSocketGb && canServe(bucket)) {
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
        for (Shapes.Shape shape : bucket.shapes()) {
            List<List<Draw>> choices = choices(shape);
            if (choices != null) {
                combine(kept, bucket, shape, choices, 0, Draw.NOTHING, new Draw[choices.size()]);
            }
        }
        points.addAll(kept);
    }

    /** The draws of each group of a shape; null where the stock cannot give them, or a part that is wanted would be left out. */
    private List<List<Draw>> choices(Shapes.Shape shape) {
        if (!wantedGroups.isEmpty() && !Arrays.stream(shape.groups()).boxed().toList().containsAll(wantedGroups)) {
            return null;
        }
        List<List<Draw>> choices = new ArrayList<>(shape.groups().length);
        long combinations = 1;
        int uneven = 0;
        for (int i = 0; i < shape.groups().length; i++) {
            List<Draw> of = draws.get(shape.groups()[i]).get(shape.counts()[i]);
            if (of.isEmpty()) {
                return null;
            }
            choices.add(of);
            combinations *= of.size();
            uneven += of.stream().allMatch(Draw::even) ? 0 : 1;
        }
        if (uneven == 1 || combinations > MOST_COMBINATIONS && uneven > 1) {
            choices.replaceAll(this::worthwhileByThemselves);
        }
        return choices;
    }

    /** Drops draws whose heaviest machine another undercuts at no greater price; exact where no other group is uneven. */
    private List<Draw> worthwhileByThemselves(List<Draw> of) {
        List<Draw> kept = new ArrayList<>();
        long lightest = Long.MAX_VALUE;
        for (Draw draw : of) {
            long weight = draw.heaviest(request.machines());
            if (weight < lightest) {
                lightest = weight;
                kept.add(draw);
            }
        }
        return kept;
    }

    private void combine(List<MemoryPoint> kept, Shapes.Bucket bucket, Shapes.Shape shape, List<List<Draw>> choices, int group,
                         Draw sofar, Draw[] chosen) {
        if (group < choices.size()) {
            for (Draw draw : choices.get(group)) {
                chosen[group] = draw;
                combine(kept, bucket, shape, choices, group + 1, sofar.plus(draw), chosen);
            }
            return;
        }
        long price = sofar.price() + labourPerModule * modules(bucket) * request.machines();
        long least = sofar.least() / request.machines();
        if (kept.stream().anyMatch(point -> point.price() <= price && point.microwatts() <= least)) {
            return;
        }
        long microwatts = sofar.heaviest(request.machines());
        if (kept.stream().anyMatch(point -> point.price() <= price && point.microwatts() <= microwatts)) {
            return;
        }
        kept.removeIf(point -> point.price() >= price && point.microwatts() >= microwatts);
        kept.add(new MemoryPoint(price, bucket.totalGb() * shapes.key().multiple(), bucket.fullestGb(), usableGb(bucket),
                modules(bucket), microwatts, shapes.key(), bucket, shape, List.of(chosen)));
    }
}
