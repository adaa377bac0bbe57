package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongBiFunction;
import java.util.stream.IntStream;
import sledwright.generator.draw.CountedDraws;
import sledwright.generator.draw.Deal;
import sledwright.generator.draw.Draw;
import sledwright.generator.draw.EntangledDraws;
import sledwright.generator.draw.Watts;
import sledwright.generator.shape.Population;
import sledwright.generator.shape.Shapes;
import sledwright.generator.time.Deadline;
import sledwright.metrics.CheapestDraw;
import sledwright.metrics.UsableMemory;
import sledwright.rules.stock.Budget;
import sledwright.rules.target.Target;

/** Turns the shapes of a socket into priced points: the worthwhile draws of every bucket that can meet the request. */
final class Pricing {

    /** Above any price, and small enough that a few of them add up without overflow. */
    private static final long UNAVAILABLE = CheapestDraw.IMPOSSIBLE / 1024;

    private final int machines;
    private final MemoryNeed need;
    private final SocketRoom room;
    private final Shapes shapes;
    private final List<GroupDraws> draws;
    private final long labourPerModule;
    private final Deadline deadline;
    private final int mostModules;
    private final int[] wantedGroups;
    private final long[][] leastPrice;
    private final long[][] leastMicrowatts;
    private final boolean dealtExactly;
    private final boolean everyWeight;
    /** What the populations of each bucket cost at least, once they were looked through; below 0 before. */
    private final long[] leastOfBucket;
    /** What they load at least, likewise. */
    private final long[] lightestOfBucket;

    /** @param draws for each group of the shapes' key */
    Pricing(int machines, MemoryNeed need, SocketRoom room, Shapes shapes, List<GroupDraws> draws, long labourPerModule,
            Deadline deadline) {
        this.machines = machines;
        this.need = need;
        everyWeight = need.everyWeight();
        this.room = room;
        this.shapes = shapes;
        this.draws = draws;
        this.labourPerModule = labourPerModule;
        this.deadline = deadline;
        dealtExactly = Deal.isExact(shapes.layouts().maxModules() * shapes.key().multiple() * room.sockets() * machines);
        mostModules = room.mostModules(need.require());
        leastPrice = bounds((own, modules) -> Math.min(UNAVAILABLE, own.leastPrice(modules)));
        leastMicrowatts = bounds(CountedDraws::leastMicrowatts);
        // A group that cannot be left empty holds a part that the request wants used.
        wantedGroups = IntStream.range(0, draws.size())
                .filter(group -> draws.get(group).own() != null && leastPrice[group][0] >= UNAVAILABLE).toArray();
        leastOfBucket = new long[shapes.buckets().size()];
        Arrays.fill(leastOfBucket, -1);
        lightestOfBucket = new long[leastOfBucket.length];
    }

    /** For each group and number of modules the least figure of its draws; 0 for entangled groups. */
    private long[][] bounds(ToLongBiFunction<CountedDraws, Integer> least) {
        int most = shapes.layouts().maxModules();
        return draws.stream().map(GroupDraws::own).map(own -> own == null ? new long[most + 1]
                : IntStream.rangeClosed(0, most).mapToLong(modules -> least.applyAsLong(own, modules)).toArray()).toArray(long[][]::new);
    }

    /** The points of a window with at most a given number of GB on a socket. */
    MemoryPoints points(int mostSocketGb, MemoryWindow window) {
        List<MemoryPoint> points = new ArrayList<>();
        Map<Long, Skyline> skylines = new HashMap<>();
        int roomy = roomy(window.leastUsableGb());
        for (int i = 0; i < roomy; i++) {
            Shapes.Bucket bucket = shapes.buckets().get(i);
            double most = window.mostPrice(usableGb(bucket), shapes.key().multiple() * bucket.figures().width());
            if (leastOfBucket[i] <= most && lightestOfBucket[i] <= window.mostMicrowatts()
                    && bucket.figures().totalGb() * shapes.key().multiple() <= mostSocketGb && modules(bucket) <= mostModules) {
                addPoints(points, skylines, i, new Most(most, window.mostMicrowatts()));
            }
        }
        return new MemoryPoints(points, room.sockets());
    }

    /** What a point may cost and load at most. */
    private record Most(double price, double microwatts) {
    }

    /** How many buckets leave enough to use: they come with the most to use first, so all before some place do. */
    private int roomy(double leastUsableGb) {
        int low = 0;
        int high = shapes.buckets().size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            double usableGb = usableGb(shapes.buckets().get(middle));
            if (usableGb >= leastUsableGb && Target.MEMORY_CAPACITY.allows(need.require(), usableGb)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double usableGb(Shapes.Bucket bucket) {
        double totalGb = (double) room.sockets() * shapes.key().multiple() * bucket.figures().totalGb();
        return UsableMemory.gb(room.memory(), need.require().mode(), totalGb, room.sockets() * bucket.figures().sparedGb());
    }

    private int modules(Shapes.Bucket bucket) {
        return bucket.figures().modules() * shapes.key().multiple() * room.sockets();
    }

    /** Adds the points of a bucket that cost and load no more and that none of those before matches: all of these leave as much to use. */
    private void addPoints(List<MemoryPoint> points, Map<Long, Skyline> skylines, int place, Most most) {
        Shapes.Bucket bucket = shapes.buckets().get(place);
        deadline.check();
        BucketPoints kept = BucketPoints.of(everyWeight);
        long labour = labourPerModule * modules(bucket) * machines;
        long leastOfAll = UNAVAILABLE;
        long lightestOfAll = Long.MAX_VALUE;
        for (Shapes.Shape shape : bucket.shapes()) {
            long price = labour;
            long least = 0;
            for (int i = 0; i < shape.groups().length; i++) {
                int group = shape.groups()[i];
                price += leastPrice[group][shape.counts()[i]];
                least += leastMicrowatts[group][shape.counts()[i]];
            }
            leastOfAll = Math.min(leastOfAll, price);
            lightestOfAll = Math.min(lightestOfAll, least);
            if (price < UNAVAILABLE && price <= most.price && least <= most.microwatts && Budget.allows(need.limit(), price)
                    && (everyWeight || !skyline(skylines, least).matches(bucket.widthRank(), price, least))
                    && holdsWanted(shape)) {
                combine(kept, bucket, shape, most, 0, price, least, new Draw[shape.groups().length]);
            }
        }
        for (MemoryPoint point : kept.all()) {
            Skyline skyline = skyline(skylines, point.microwatts());
            if (!skyline.matches(bucket.widthRank(), point.price(), point.microwatts() - point.slack())) {
                skyline.add(bucket.widthRank(), point.price(), point.microwatts());
                points.add(point);
            }
        }
        leastOfBucket[place] = leastOfAll;
        lightestOfBucket[place] = lightestOfAll;
    }

    /** What populations of a weight are held against: all others, or those of the same weight. */
    private Skyline skyline(Map<Long, Skyline> skylines, long microwatts) {
        return skylines.computeIfAbsent(everyWeight ? microwatts : 0, weight -> new Skyline(shapes.widths()));
    }

    private boolean holdsWanted(Shapes.Shape shape) {
        for (int group : wantedGroups) {
            if (Arrays.binarySearch(shape.groups(), group) < 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * Tries the draws of each group of a shape in turn.
     *
     * @param price of the draws chosen so far and, for the groups still open, their cheapest
     * @param least watts of the draws chosen so far and, for the groups still open, their lightest
     */
    private void combine(BucketPoints kept, Shapes.Bucket bucket, Shapes.Shape shape, Most most, int index, long price,
            long least, Draw[] chosen) {
        if (!everyWeight && kept.isMatched(price, least) || price > most.price || least > most.microwatts
                || !Budget.allows(need.limit(), price)) {
            return;
        }
        if (index == chosen.length) {
            keep(kept, bucket, shape, price, chosen);
            return;
        }
        int group = shape.groups()[index];
        int count = shape.counts()[index];
        for (Draw draw : draws(shape, group, count)) {
            chosen[index] = draw;
            combine(kept, bucket, shape, most, index + 1, price - leastPrice[group][count] + draw.price(),
                    least - leastMicrowatts[group][count] + surely(draw.load()), chosen);
        }
    }

    /** The draws of a group; the first of an entangled set stands for all of it, and the others add nothing. */
    private List<Draw> draws(Shapes.Shape shape, int group, int count) {
        EntangledDraws set = draws.get(group).set();
        if (set == null) {
            return draws.get(group).of(count, deadline);
        }
        if (!set.groups().get(0).equals(shapes.key().groups().get(group))) {
            return List.of(Draw.NOTHING);
        }
        return set.of(set.groups().stream().map(member -> count(shape, shapes.key().groups().indexOf(member))).toList());
    }

    private static int count(Shapes.Shape shape, int group) {
        return shape.counts()[Arrays.binarySearch(shape.groups(), group)];
    }

    /** Watts of the heaviest machine that no deal, and no draw that this one stands for, goes below. */
    private long surely(Draw.Load load) {
        return dealtExactly ? load.lightest() : load.heaviest() - load.range();
    }

    private void keep(BucketPoints kept, Shapes.Bucket bucket, Shapes.Shape shape, long price, Draw[] chosen) {
        Draw all = Draw.NOTHING;
        for (Draw draw : chosen) {
            all = all.plus(draw);
        }
        Draw.Load load = all.load();
        // A single uneven kind of two weights is already dealt as well as can be.
        boolean dealt = load.uneven() > 1 && dealtExactly;
        if (dealt && !everyWeight && kept.isMatched(price, load.total() / machines)) {
            return;
        }
        long heaviest = dealt ? Deal.heaviestMicrowatts(all.shares(), machines) : load.heaviest();
        long slack = load.uneven() > 1 && !dealtExactly ? load.range() : 0;
        if (!kept.isMatched(price, heaviest - slack)) {
            Population socket = new Population(shapes.key(), bucket.figures(), shape);
            kept.add(new MemoryPoint(price, bucket.figures().totalGb() * shapes.key().multiple(), bucket.figures().fullestGb(),
                    usableGb(bucket), heaviest, slack, new MemoryPoint.Filling(modules(bucket), socket, all)));
        }
    }
}
