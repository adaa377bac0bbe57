package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.planner.order.OrderOutcome;
import sledwright.request.Job;

/**
 * The answer to an order of several lines.
 *
 * @param job     what was asked
 * @param outcome the machines behind the view, for the bench, which needs more of them
 * @param number  under what it is kept; empty: it is not
 */
public record OrderAnswer(OrderView view, Job.Order job, OrderOutcome outcome, Optional<KeptAs> number) implements OfferAnswer {

    @Override
    public int machines() {
        return view.topic().machines();
    }

    @Override
    public String status() {
        return view.proof().status().label();
    }

    @Override
    public AnswerDay day() {
        return view.day();
    }

    @Override
    public Optional<BigDecimal> price() {
        return Optional.of(view.cost().total()).filter(total -> view.shortage().isEmpty());
    }

    @Override
    public Optional<BigDecimal> pays() {
        return price().map(whole -> view.sale().pays().net());
    }

    @Override
    public OrderAnswer keptAs(KeptAs kept) {
        return new OrderAnswer(view, job, outcome, Optional.of(kept));
    }

    @Override
    public OrderAnswer addressedTo(List<String> customer) {
        return new OrderAnswer(view, job.addressedTo(customer), outcome, number);
    }
}
