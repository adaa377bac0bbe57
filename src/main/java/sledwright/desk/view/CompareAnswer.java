package sledwright.desk.view;

import sledwright.domain.Catalog;
import sledwright.request.Job;

/**
 * What money buys.
 *
 * @param job what was asked, with the catalogue that it was bought from, for documents, which bear its name
 */
public record CompareAnswer(CompareView view, Job.Quote job) {

    public Catalog shop() {
        return job.catalog();
    }
}
