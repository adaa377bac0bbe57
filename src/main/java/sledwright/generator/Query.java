package sledwright.generator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.metrics.Figures;
import sledwright.rules.power.PowerBudget;
import sledwright.rules.power.PowerSupply;
import sledwright.rules.stock.Budget;
import sledwright.rules.target.PowerLimit;
import sledwright.rules.target.Target;

/**
 * The best build of a zone, by branch and bound over families, frames and memory options, each in the order in which its
 * bound promises most.
 */
final class Query {

    private final Requirements require;
    private final Limits limits;
    private final List<Family> families;
    private final Ranking ranking;
    private final Deadline deadline;

    Query(Request request, List<Family> families, Ranking ranking, Deadline deadline) {
        this.require = request.require();
        this.limits = request.limit();
        this.families = families;
        this.ranking = ranking;
        this.deadline = deadline;
    }

    /**
     * What a query found.
     *
     * @param best    null where there is none
     * @param openAim no build that was not looked at has a lesser aim; infinite when all were
     */
    record Answer(Candidate best, double openAim) {

        boolean isProved() {
            return best == null ? openAim == Double.POSITIVE_INFINITY : openAim >= best.aim();
        }
    }

    /** A frame's choice of memory and the bound of what can come of it. */
    private record Branch(Frame frame, MemoryOption option, double bound) {
    }

    /** The best build of a zone. */
    Answer best(Zone zone) {
        List<Branch> branches = branches(zone);
        branches.sort(Comparator.comparingDouble(Branch::bound).thenComparing(Branch::frame, ranking.promisingFirst()));
        Candidate best = null;
        double openAim = Double.POSITIVE_INFINITY;
        for (Branch branch : branches) {
            if (best != null && branch.bound > best.aim()) {
                break;
            }
            if (deadline.isOver()) {
                openAim = Math.min(openAim, branch.bound);
                break;
            }
            try {
                best = better(best, branch, zone);
            } catch (OutOfTimeException unfinished) {
                openAim = Math.min(openAim, branch.bound);
            }
        }
        return new Answer(best, openAim);
    }

    private List<Branch> branches(Zone zone) {
        List<Branch> branches = new ArrayList<>();
        for (Family family : families) {
            for (Frame frame : family.frames()) {
                if (frame.throughput() >= zone.throughput() && frame.cores() >= zone.cores() && Watts.of(frame.microwatts()) <= zone.loadW()) {
                    for (MemoryOption option : family.options()) {
                        if (option.serves(frame.processor().memoryMts()) && frame.types().contains(option.level().type())) {
                            double bound = ranking.bound(frame, option, leastUsableGb(frame, zone), leastBandwidthGbs(frame, zone));
                            if (bound < Double.POSITIVE_INFINITY) {
                                branches.add(new Branch(frame, option, bound));
                            }
                        }
                    }
                }
            }
        }
        return branches;
    }

    /** A hair below what the targets ask for, since they compare to a millionth and this only prunes. */
    private double leastUsableGb(Frame frame, Zone zone) {
        return Math.max(zone.usableGb(), Math.max(require.memoryGb(), require.gbPerCore() * frame.cores() * (1 - 1e-6)) - 1e-6);
    }

    private double leastBandwidthGbs(Frame frame, Zone zone) {
        return Math.max(zone.bandwidthGbs(), Math.max(require.bandwidthGbs(), require.gbsPerCore() * frame.cores() * (1 - 1e-6)) - 1e-6);
    }

    private Candidate better(Candidate incumbent, Branch branch, Zone zone) {
        Frame frame = branch.frame;
        MemoryPoints points = branch.option.points(frame.processor().maxMemoryGb().orElse(Integer.MAX_VALUE));
        double[] bandwidths = points.bandwidthsGbs(branch.option.speedMts(frame.processor().memoryMts()));
        double usableGb = leastUsableGb(frame, zone);
        double bandwidthGbs = leastBandwidthGbs(frame, zone);
        Candidate best = incumbent;
        for (int i = 0; i < points.size(); i++) {
            MemoryPoint point = points.get(i);
            long price = frame.price() + point.price();
            if (!Budget.allows(limits, price) || best != null && ranking.isHopeless(frame, price, best)) {
                break;
            }
            if (point.usableGb() >= usableGb && bandwidths[i] >= bandwidthGbs) {
                double loadW = Watts.of(frame.microwatts() + point.microwatts());
                if (loadW <= zone.loadW() && keepsTargets(frame, point, bandwidths[i]) && carries(frame, loadW)) {
                    double aim = ranking.aim(frame, point, price, bandwidths[i]);
                    if (best == null || aim <= best.aim()) {
                        Candidate found = new Candidate(frame, branch.option, point, aim, price, bandwidths[i], loadW);
                        if (best == null || ranking.compare(found, best) < 0) {
                            best = found;
                        }
                    }
                }
            }
        }
        return best;
    }

    private boolean keepsTargets(Frame frame, MemoryPoint point, double bandwidthGbs) {
        return Target.BANDWIDTH.allows(require, bandwidthGbs)
                && Target.MEMORY_PER_CORE.allows(require, Figures.perCore(point.usableGb(), frame.cores()))
                && Target.BANDWIDTH_PER_CORE.allows(require, Figures.perCore(bandwidthGbs, frame.cores()));
    }

    private boolean carries(Frame frame, double loadW) {
        return PowerLimit.allows(limits, loadW) && PowerBudget.allows(frame.platform(), loadW)
                && (frame.supply().isEmpty() || PowerSupply.allows(frame.supply().get(), limits, loadW));
    }
}
