package sledwright.desk.view;

import java.util.List;
import sledwright.planner.Outcome;
import sledwright.request.Job;

/**
 * The answer to a request for a quote.
 *
 * @param job     what was asked
 * @param outcome the ranked builds behind the view, for documents, which show more of them
 */
public record QuoteAnswer(QuoteView view, Job.Quote job, Outcome outcome) {

    /** To whom the request says that it is addressed, in lines; may be empty. */
    public List<String> customer() {
        return job.customer();
    }
}
