package sledwright.desk.view;

import java.util.List;
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

    /** To whom the request says that it is addressed, in lines; may be empty. */
    public List<String> customer() {
        return job.customer();
    }
}
