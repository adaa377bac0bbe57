package sledwright.desk.view;

import sledwright.request.Job;

/**
 * The answer to a request for an upgrade.
 *
 * @param job what was asked, for letters
 */
public record UpgradeAnswer(UpgradeView view, Job.Upgrade job) {
}
