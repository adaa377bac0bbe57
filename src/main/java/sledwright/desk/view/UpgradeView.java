package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.explain.Explanation;
import sledwright.explain.ask.Unproved;
import sledwright.generator.Doubts;
import sledwright.generator.Status;
import sledwright.metrics.Figures;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.Plan;
import sledwright.planner.upgrade.Refit;
import sledwright.planner.upgrade.Spend;
import sledwright.planner.upgrade.Upgrade;
import sledwright.rules.Violation;
import sledwright.rules.target.Target;

/**
 * The answer to a request for an upgrade. Amounts are of all machines, in units of the currency.
 *
 * @param upgrade  the least that was found; empty: nothing was
 * @param whole    the machines bought whole; empty: none were found
 */
public record UpgradeView(Topic topic, UpgradeProof proof, Standing standing, Optional<Done> upgrade, Optional<Bought> whole,
                          Explanation explanation, AnswerDay day) {

    /**
     * How sure the answer is.
     *
     * @param bound       nothing costs less; empty where nothing is known
     * @param doubts      why it is not proved; none: it is
     * @param wholeDoubts why it is not proved that nothing cheaper, or nothing at all, can be bought whole
     */
    public record UpgradeProof(Status status, Optional<BigDecimal> bound, Doubts doubts, Doubts wholeDoubts) {
    }

    /**
     * How the machine stands to what is asked for.
     *
     * @param breaches rules that it breaks, whatever is asked for
     * @param misses   what keeps it from answering the request; empty: it does
     * @param figures  what is asked for, and what changes: what it reaches and what it will reach
     */
    public record Standing(List<Violation> breaches, List<Violation> misses, List<Reach> figures) {
    }

    /** Figures that are reported when they change, asked for or not; so are the memory's speed and the load. */
    private static final Set<Target> ALWAYS = Set.of(Target.BANDWIDTH, Target.THROUGHPUT);

    /**
     * A figure of one machine.
     *
     * @param id    the identifier of the rule that asks for it, or of the figure
     * @param unit  behind a number, with the space before it; empty where there is none
     * @param least what is asked for; empty: nothing
     * @param most  what is allowed; empty: anything
     * @param now   as the machine stands
     * @param then  after the upgrade; empty where there is none
     */
    public record Reach(String id, String noun, String unit, Optional<Double> least, Optional<Double> most, double now,
                        Optional<Double> then) {

        private boolean isAsked() {
            return least.isPresent() || most.isPresent();
        }

        private boolean isChanged() {
            return then.isPresent() && then.get() != now;
        }
    }

    /**
     * An upgrade.
     *
     * @param changes whether any machine is opened
     * @param build   the machines as they then stand; its lines add up to what is spent
     */
    public record Done(boolean changes, Spent spent, BuildView build, List<Work> work) {

        /** The lines of what comes from elsewhere than the machines, labour and licence. */
        public List<Line> paid() {
            return build.lines().stream().filter(line -> line.kind() != Line.Kind.CREDIT && !line.isInstalled()).toList();
        }

        /** Whether volumes are made anew, or drives are touched, so that what they hold may be lost. */
        public boolean touchesDrives() {
            return work.stream().anyMatch(some -> some.remade() || some.steps().stream()
                    .anyMatch(step -> step.part() == BenchStep.Part.DRIVE || step.part() == BenchStep.Part.CABLE));
        }

        /** The lines of what is pulled. */
        public List<Line> pulled() {
            return build.lines().stream().filter(line -> line.kind() == Line.Kind.CREDIT).toList();
        }
    }

    /**
     * What an upgrade comes to, in units of the currency.
     *
     * @param total parts + labour + licence - credit
     */
    public record Spent(BigDecimal total, BigDecimal parts, BigDecimal labour, BigDecimal licence, BigDecimal credit) {

        private static Spent of(Spend spend, Catalog shop) {
            return new Spent(shop.amount(spend.total()), shop.amount(spend.parts()), shop.amount(spend.labour()),
                    shop.amount(spend.licence()), shop.amount(spend.credit()));
        }
    }

    /**
     * What is done to a number of machines.
     *
     * @param steps  none where volumes are made anew and no part moves
     * @param remade whether volumes are of another level or other hot spares than before
     */
    public record Work(int machines, List<BenchStep> steps, boolean remade) {
    }

    /**
     * Machines bought whole.
     *
     * @param credit what the old ones fetch
     * @param spend  the price less that
     * @param extra  how much more that is than the upgrade; empty where there is none
     */
    public record Bought(BuildView build, BigDecimal price, BigDecimal credit, BigDecimal spend, Optional<BigDecimal> extra) {

        /** Whether it costs less than the upgrade. */
        public boolean isCheaper() {
            return extra.map(more -> more.signum() < 0).orElse(true);
        }
    }

    /** Whether nothing cheaper, or nothing at all, can be bought whole. */
    public boolean wholeProved() {
        return proof.wholeDoubts().none();
    }

    /** What more time does not do away with. */
    public List<String> reservations() {
        return Unproved.whateverTheTime(Doubts.ofAll(List.of(proof.doubts(), proof.wholeDoubts())));
    }

    public static UpgradeView of(Upgrade upgrade, Catalog shop, Explanation explanation) {
        Optional<Plan> plan = upgrade.plan();
        Upgrade.Proof proof = upgrade.proof();
        return new UpgradeView(new Topic(upgrade.request().name(), upgrade.installed().machines(), shop.currency().getCurrencyCode()),
                new UpgradeProof(proof.status(), proof.bound().stream().mapToObj(shop::amount).findFirst(), proof.doubts(),
                proof.wholeDoubts()), new Standing(upgrade.breaches(), upgrade.misses(), figures(upgrade, shop)),
                plan.map(found -> done(found, upgrade, shop)),
                upgrade.whole().map(whole -> new Bought(BuildView.of(whole.order(), true), shop.amount(whole.order().price().total()),
                        shop.amount(whole.credit()), shop.amount(whole.spend()),
                        plan.map(found -> shop.amount(whole.spend() - found.spend().total())))),
                explanation, AnswerDay.of(shop, Stream.concat(plan.stream().map(Plan::order),
                        upgrade.whole().stream().map(whole -> whole.order())).flatMap(order -> order.picks().stream())));
    }

    private static Done done(Plan plan, Upgrade upgrade, Catalog shop) {
        List<Line> lines = Lines.of(plan, upgrade.installed(), shop);
        return new Done(plan.changesAnything(), Spent.of(plan.spend(), shop),
                BuildView.of(plan.order(), Optional.of(shop.amount(plan.spend().total())), lines),
                plan.refits().stream().filter(Refit::changesAnything).map(UpgradeView::work).toList());
    }

    private static Work work(Refit refit) {
        return new Work(refit.machines(), BenchWork.of(refit), refit.remade());
    }

    /** What the request asks for, and beside it what else of speed, bandwidth, throughput, work and load the upgrade changes. */
    private static List<Reach> figures(Upgrade upgrade, Catalog shop) {
        Figures now = Figures.of(upgrade.installed().build(), upgrade.request(), shop.throughputFactors());
        Optional<Figures> then = upgrade.plan().map(plan -> plan.order().figures());
        OptionalDouble mostW = upgrade.request().limit().powerW();
        List<Reach> figures = new ArrayList<>();
        for (Target target : Target.ALL) {
            double least = target.least(upgrade.request().require());
            Reach reach = new Reach(target.id(), target.noun(), target.unit(), least > 0 ? Optional.of(least) : Optional.empty(),
                    Optional.empty(), target.figure(now), then.map(target::figure));
            // Without a workload work is the throughput.
            boolean told = ALWAYS.contains(target) || target == Target.WORK && upgrade.request().require().work().isOfWorkload();
            if (reach.isAsked() || told && reach.isChanged()) {
                figures.add(reach);
            }
        }
        Reach speed = new Reach("memory-speed", "memory speed", " MT/s", Optional.empty(), Optional.empty(), now.speed().mts(),
                then.map(figure -> (double) figure.speed().mts()));
        Reach load = new Reach("load", "load", " W", Optional.empty(), mostW.stream().boxed().findFirst(), now.loadW(),
                then.map(Figures::loadW));
        Stream.of(speed, load).filter(reach -> reach.isAsked() || reach.isChanged()).forEach(figures::add);
        return List.copyOf(figures);
    }
}
