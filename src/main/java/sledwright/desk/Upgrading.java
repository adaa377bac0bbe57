package sledwright.desk;

import sledwright.desk.view.UpgradeView;
import sledwright.explain.Explainer;
import sledwright.explain.Explanation;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.upgrade.Installed;
import sledwright.planner.upgrade.Upgrade;
import sledwright.planner.upgrade.Upgrader;
import sledwright.request.Job;

/** The least to spend so that machines which stand reach a target. */
final class Upgrading {

    private final Job.Upgrade job;
    private final Deadline deadline;
    private final Upgrader upgrader;
    private final Findings findings;
    private final Upgrade upgrade;

    Upgrading(Job.Upgrade job, Terms terms) {
        this.job = job;
        deadline = terms.deadline();
        Installed installed = Installed.of(job.build(), job.request().machines(), job.tradeIn(), job.request().limit(), job.catalog());
        upgrader = new Upgrader(job.catalog(), job.request(), installed);
        findings = upgrader.findings(deadline);
        upgrade = upgrader.answer(findings, deadline);
    }

    Upgrade upgrade() {
        return upgrade;
    }

    UpgradeView view() {
        Explanation explanation = upgrade.proof().status() != Status.IMPOSSIBLE ? Explanation.NONE
                : Explainer.ofStanding(findings, upgrader.catalog(), upgrader.search(), deadline);
        return UpgradeView.of(upgrade, job.catalog(), explanation);
    }
}
