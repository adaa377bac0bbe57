package sledwright.desk.view;

import sledwright.planner.order.OrderOutcome;
import sledwright.request.Job;

/**
 * The answer to an order of several lines.
 *
 * @param job     what was asked
 * @param outcome the machines behind the view, for the bench, which needs more of them
 */
public record OrderAnswer(OrderView view, Job.Order job, OrderOutcome outcome) {
}
