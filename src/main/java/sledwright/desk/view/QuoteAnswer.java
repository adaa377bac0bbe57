package sledwright.desk.view;

import sledwright.planner.Outcome;
import sledwright.request.Job;

/**
 * The answer to a request for a quote.
 *
 * @param job     what was asked
 * @param outcome the ranked builds behind the view, for documents, which show more of them
 */
public record QuoteAnswer(QuoteView view, Job.Quote job, Outcome outcome) {
}
