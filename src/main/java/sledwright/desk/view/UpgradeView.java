package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.explain.Explanation;
import sledwright.generator.Status;
import sledwright.metrics.Figures;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.Plan;
import sledwright.planner.upgrade.Refit;
import sledwright.planner.upgrade.Upgrade;
import sledwright.rules.Violation;
import sledwright.rules.target.Target;

/**
 * The answer to a request for an upgrade. Amounts are of all machines, in units of the currency.
 *
 * @param request  its name
 * @param currency ISO 4217
 * @param bound    nothing costs less; empty where nothing is known
 * @param breaches rules that the machine breaks as it stands, whatever is asked for
 * @param misses   what keeps it from answering the request as it stands; empty: it does
 * @param targets  what is asked for, what the machine reaches and what it will reach
 * @param upgrade  the least that was found; empty: nothing was
 * @param whole    the machines bought whole; empty: none were found
 * @param wholeProved whether nothing cheaper, or nothing at all, can be bought whole
 */
public record UpgradeView(String request, int machines, String currency, Status status, Optional<BigDecimal> bound,
                          List<Violation> breaches, List<Violation> misses, List<Reach> targets, Optional<Done> upgrade,
                          Optional<Bought> whole, boolean wholeProved, Explanation explanation) {

    /**
     * A figure of one machine.
     *
     * @param asked the least
     * @param now   as the machine stands
     * @param then  after the upgrade; empty where there is none
     */
    public record Reach(String noun, String unit, double asked, double now, Optional<Double> then) {
    }

    /**
     * An upgrade.
     *
     * @param changes whether any machine is opened
     * @param spend   parts + labour + licence - credit
     * @param build   the machines as they then stand; its lines add up to {@code spend}
     */
    public record Done(boolean changes, BigDecimal spend, BigDecimal parts, BigDecimal labour, BigDecimal licence, BigDecimal credit,
                       BuildView build, List<Work> work) {

        /** The lines of what comes from elsewhere than the machines, labour and licence. */
        public List<Line> paid() {
            return build.lines().stream().filter(line -> line.kind() != Line.Kind.CREDIT && !line.isInstalled()).toList();
        }

        /** The lines of what is pulled. */
        public List<Line> pulled() {
            return build.lines().stream().filter(line -> line.kind() == Line.Kind.CREDIT).toList();
        }
    }

    /** What is done to so many machines. */
    public record Work(int machines, List<BenchStep> steps) {
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

    public static UpgradeView of(Upgrade upgrade, Catalog shop, Explanation explanation) {
        Optional<Plan> plan = upgrade.plan();
        return new UpgradeView(upgrade.request().name(), upgrade.installed().machines(), shop.currency().getCurrencyCode(),
                upgrade.status(), upgrade.bound().stream().mapToObj(shop::amount).findFirst(), upgrade.breaches(), upgrade.misses(),
                targets(upgrade, shop), plan.map(found -> done(found, upgrade, shop)),
                upgrade.whole().map(whole -> new Bought(BuildView.of(whole.order(), true), shop.amount(whole.order().price().total()),
                        shop.amount(whole.credit()), shop.amount(whole.spend()),
                        plan.map(found -> shop.amount(whole.spend() - found.spend().total())))),
                upgrade.wholeProved(), explanation);
    }

    private static Done done(Plan plan, Upgrade upgrade, Catalog shop) {
        List<Line> lines = Lines.of(plan, upgrade.installed(), shop);
        return new Done(plan.changesAnything(), shop.amount(plan.spend().total()), shop.amount(plan.spend().parts()),
                shop.amount(plan.spend().labour()), shop.amount(plan.spend().licence()), shop.amount(plan.spend().credit()),
                BuildView.of(plan.order(), Optional.of(shop.amount(plan.spend().total())), lines),
                plan.refits().stream().filter(refit -> !refit.steps().isEmpty()).map(UpgradeView::work).toList());
    }

    private static Work work(Refit refit) {
        return new Work(refit.machines(), BenchWork.of(refit));
    }

    private static List<Reach> targets(Upgrade upgrade, Catalog shop) {
        Figures now = Figures.of(upgrade.installed().build(), upgrade.request(), shop.throughputFactors());
        Optional<Figures> then = upgrade.plan().map(plan -> plan.order().figures());
        return Target.ALL.stream().filter(target -> target.least(upgrade.request().require()) > 0)
                .map(target -> new Reach(target.noun(), target.unit(), target.least(upgrade.request().require()), target.figure(now),
                        then.map(target::figure))).toList();
    }
}
