package sledwright.generator;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.generator.draw.Watts;
import sledwright.generator.Branches.Branch;
import sledwright.generator.Branches.Row;
import sledwright.generator.Doubts.Cause;
import sledwright.generator.memory.MemoryFloor;
import sledwright.generator.memory.MemoryNeed;
import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryPoint;
import sledwright.generator.memory.MemoryPoints;
import sledwright.generator.memory.MemoryWindow;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.generator.time.TooLargeException;
import sledwright.metrics.Figures;
import sledwright.metrics.WorkDone;
import sledwright.rules.stock.Budget;
import sledwright.rules.target.PowerLimit;
import sledwright.rules.target.Target;

/**
 * The best builds of zones, by branch and bound over families, frames and memory options, each in the order in which its
 * bound promises most.
 */
final class Query {

    private static final double MILLIONTH = 1e-6;

    private final Requirements require;
    private final Limits limits;
    private final FamilyChoice families;
    private final Ranking ranking;
    private final Deadline deadline;
    /** Of the lists of families that zones choose between. */
    private final Map<List<Family>, List<Row>> rows = new IdentityHashMap<>();
    private final Map<MemoryOption, Map<MemoryNeed, MemoryOption.Points>> points = new IdentityHashMap<>();

    Query(Request request, FamilyChoice families, Ranking ranking, Deadline deadline) {
        this.require = request.require();
        this.limits = request.limit();
        this.families = families;
        this.ranking = ranking;
        this.deadline = deadline;
    }

    /**
     * What a query found.
     *
     * @param best   null where there is none
     * @param unseen what it did not look at
     */
    record Answer(Combination best, Unseen unseen) {

        /** No build that was not looked at has a lesser aim; infinite when all were. */
        double openAim() {
            return unseen.openAim();
        }

        /** Whether no build that was not looked at has a lesser aim. */
        boolean isProved() {
            return openAim() >= aim(best);
        }

        /** Whether no build that was not looked at comes first, not even by what breaks a tie. */
        boolean isFirst() {
            return best == null ? isProved() : openAim() > best.aim();
        }

        /** What leaves it open whether one does. */
        Doubts doubts() {
            return unseen.doubts(aim(best));
        }
    }

    /** Infinite where there is no build. */
    private static double aim(Combination best) {
        return best == null ? Double.POSITIVE_INFINITY : best.aim();
    }

    /** Any build; what it does not look at, once it has one, is not noted. */
    Answer any() {
        return in(Zone.EVERYTHING).before(null, true);
    }

    Answer best(Zone zone) {
        return in(zone).before(null);
    }

    ZoneSearch in(Zone zone) {
        return new ZoneSearch(zone);
    }

    private List<Row> rows(List<Family> all) {
        return rows.computeIfAbsent(all, same -> Row.of(same, new Inside(Zone.EVERYTHING)));
    }

    /** What the builds inside a zone have at least, and bounds of them. */
    private final class Inside implements Branches.Bounds {

        private final Zone zone;
        private final double leastGb;
        private final double leastGbs;
        /** A hair below the bandwidth without which memory would hold the work of the zone back. */
        private final double workGbs;

        Inside(Zone zone) {
            this.zone = zone;
            double work = Math.max(zone.work(), require.work().least());
            workGbs = (work - 2 * MILLIONTH) * require.work().workload().gbPerUnit() - MILLIONTH;
            // What is asked for each core comes on top of it, frame by frame.
            leastGb = Math.max(zone.usableGb(), require.memoryGb() - MILLIONTH) - MILLIONTH;
            leastGbs = Math.max(Math.max(zone.bandwidthGbs(), require.bandwidthGbs() - MILLIONTH), workGbs);
        }

        @Override
        public double ofRow(Frame from, MemoryOption option) {
            return ranking.boundFrom(from, option, leastGb, leastGbs);
        }

        @Override
        public boolean mayHold(Frame frame) {
            return frame.mostWork() >= zone.work() && frame.cores() >= zone.cores() && Watts.of(frame.microwatts()) <= zone.loadW();
        }

        @Override
        public double of(Frame frame, MemoryOption option, MemoryFloor floor) {
            // Usable memory is a figure to a millionth; a share of the capacity may have been rounded up to it.
            double usableGb = leastUsableGb(frame) - MILLIONTH;
            double memoryW = option.leastW(usableGb);
            double leastW = Watts.of(frame.microwatts()) + memoryW - MILLIONTH;
            if (leastW > zone.loadW() || !frame.carries(leastW, limits) || !frame.maySuit(memoryW - MILLIONTH)) {
                return Double.POSITIVE_INFINITY;
            }
            double gbs = leastBandwidthGbs(frame);
            // Where all channels hold the same, each gives all it has.
            return ranking.bound(frame, option, floor, usableGb, !require.populated().balanced() ? gbs
                    : Math.max(gbs, option.widestGbs(frame.processor().memoryMts()) - MILLIONTH));
        }

        double leastUsableGb(Frame frame) {
            return least(zone.usableGb(), require.memoryGb(), require.gbPerCore(), frame);
        }

        double leastBandwidthGbs(Frame frame) {
            return Math.max(least(zone.bandwidthGbs(), require.bandwidthGbs(), require.gbsPerCore(), frame), workGbs);
        }

        /** A hair above what memory may load a machine of the frame with; any amount where another deal of its drives could make room. */
        double mostMicrowatts(Frame frame) {
            if (frame.completion().fitted().uneven() > 0) {
                return Double.POSITIVE_INFINITY;
            }
            double mostW = Math.min(zone.loadW(), PowerLimit.mostW(limits));
            return (mostW + MILLIONTH - Watts.of(frame.microwatts())) / MILLIONTH + 1;
        }
    }

    /**
     * A hair below what the targets ask for, since they compare to a millionth, for each core where they go by it, and this only prunes.
     */
    private static double least(double inZone, double required, double perCore, Frame frame) {
        return Math.max(inZone, Math.max(required, (perCore - MILLIONTH) * frame.cores()) - MILLIONTH);
    }

    /** The search of a zone, branch by branch; after what comes before one build it finds what comes before another behind that. */
    final class ZoneSearch {

        private final Zone zone;
        private final Inside inside;
        private final Branches branches;
        private final Unseen unseen = new Unseen();

        private ZoneSearch(Zone zone) {
            this.zone = zone;
            inside = new Inside(zone);
            branches = new Branches(rows(families.in(zone)), inside, deadline);
        }

        /**
         * The best build of the zone where it comes before another, else the other.
         *
         * @param other none of the zone comes before those that were asked for earlier; null: the best build is wanted
         */
        Answer before(Combination other) {
            return before(other, false);
        }

        private Answer before(Combination other, boolean any) {
            branches.again();
            Combination best = other;
            for (Branch branch = branches.next(aim(best)); branch != null && !(any && best != null); branch = branches.next(aim(best))) {
                if (deadline.isOver()) {
                    unseen.note(Cause.TIME, branch.bound());
                    break;
                }
                try {
                    if (!branch.frame().completion().isKnown()) {
                        throw new OutOfTimeException();
                    }
                    best = better(best, branch);
                    if (branch.option().isKeptApart()) {
                        unseen.note(Cause.SHARING, branch.bound());
                    }
                } catch (OutOfTimeException late) {
                    unseen.note(Cause.TIME, branch.bound());
                } catch (TooLargeException large) {
                    unseen.noteTooLarge(branch.frame().platform().sku(), branch.bound());
                }
            }
            return new Answer(best, unseen);
        }

        /** Prices no more of the branch's memory than may come first, what promises most before the rest. */
        private Combination better(Combination incumbent, Branch branch) {
            Frame frame = branch.frame();
            Wanted wanted = new Wanted(ranking, frame, branch.option(), inside.leastUsableGb(frame), inside.leastBandwidthGbs(frame),
                    inside.mostMicrowatts(frame));
            MemoryOption.Points points = points(branch);
            int mostSocketGb = frame.processor().maxMemoryGb().orElse(Integer.MAX_VALUE);
            Combination best = incumbent;
            MemoryWindow window = wanted.first(best);
            for (int step = 1; window != null; step++) {
                best = better(best, branch, points.within(mostSocketGb, window));
                window = wanted.next(best, window, step);
            }
            return best;
        }

        private Combination better(Combination incumbent, Branch branch, MemoryPoints points) {
            Frame frame = branch.frame();
            int speedMts = branch.option().speedMts(frame.processor().memoryMts());
            double usableGb = inside.leastUsableGb(frame);
            double leastGbs = inside.leastBandwidthGbs(frame);
            Combination best = incumbent;
            for (MemoryPoint point : ranking.order(points, speedMts)) {
                long price = frame.price() + point.price();
                double bandwidthGbs = points.bandwidthGbs(point, speedMts);
                double work = WorkDone.of(frame.computing().capacity(), points.unroundedGbs(point, speedMts), require.work().workload());
                double aim = ranking.aim(frame, point, price, bandwidthGbs, work);
                if (best != null && ranking.isHopeless(frame, aim, price, work, best)) {
                    break;
                }
                if (point.usableGb() >= usableGb && bandwidthGbs >= leastGbs && work >= zone.work() && Budget.allows(limits, price)
                        && Target.WORK.allows(require, work) && keepsTargets(frame, point, bandwidthGbs)) {
                    double loadW = Watts.of(frame.microwatts() + point.microwatts());
                    if (loadW <= zone.loadW() && frame.carries(loadW, limits) && frame.suits(point.microwatts())
                            && isBestSet(frame, point)) {
                        Combination found = new Combination(frame, branch.option(), point, aim, price, bandwidthGbs, work);
                        best = best == null || ranking.compare(found, best) < 0 ? found : best;
                        unseen.note(Cause.SHARING, ranking.aimIfLighter(frame, point, price));
                    } else if (slack(frame, point) > 0) {
                        noteIfLighterWouldDo(frame, point, Math.min(aim, ranking.aimIfLighter(frame, point, price)));
                    }
                }
            }
            return best;
        }

        /** A build that is too heavy only because its units were not dealt as well as can be leaves its aim open. */
        private void noteIfLighterWouldDo(Frame frame, MemoryPoint point, double aim) {
            double leastW = Watts.of(frame.microwatts() + point.microwatts() - slack(frame, point));
            if (leastW <= zone.loadW() && frame.carries(leastW, limits)) {
                unseen.note(Cause.SHARING, aim);
            }
        }
    }

    private MemoryOption.Points points(Branch branch) {
        return points.computeIfAbsent(branch.option(), option -> new HashMap<>())
                .computeIfAbsent(branch.need(), need -> branch.option().points(need, deadline));
    }

    /** Whether no other set of drives and cards makes the machine come to less, where the price alone does not choose it. */
    private boolean isBestSet(Frame frame, MemoryPoint point) {
        return frame.completion().rivals().isEmpty() || ranking.isBestSet(frame, point, limits);
    }

    /** By how much another deal of modules and drives could make the heaviest machine lighter, microwatts. */
    static long slack(Frame frame, MemoryPoint point) {
        int uneven = frame.completion().fitted().uneven();
        return uneven == 0 || uneven == 1 && point.draw().load().uneven() == 0 ? point.slack()
                : frame.completion().fitted().range() + point.draw().load().range();
    }

    private boolean keepsTargets(Frame frame, MemoryPoint point, double bandwidthGbs) {
        return (require.bandwidthGbs() == 0 || Target.BANDWIDTH.allows(require, bandwidthGbs))
                && (require.gbPerCore() == 0 || Target.MEMORY_PER_CORE.allows(require, Figures.perCore(point.usableGb(), frame.cores())))
                && (require.gbsPerCore() == 0 || Target.BANDWIDTH_PER_CORE.allows(require, Figures.perCore(bandwidthGbs, frame.cores())));
    }
}
