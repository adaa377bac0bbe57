package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.planner.Outcome;
import sledwright.request.Job;

/**
 * The answer to a request for a quote.
 *
 * @param job     what was asked
 * @param outcome the ranked builds behind the view, for documents, which show more of them
 * @param number  under what it is kept; empty: it is not
 */
public record QuoteAnswer(QuoteView view, Job.Quote job, Outcome outcome, Optional<KeptAs> number) implements OfferAnswer {

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
        return view.alternatives().stream().findFirst().flatMap(best -> best.build().price());
    }

    @Override
    public Optional<BigDecimal> pays() {
        return view.alternatives().stream().findFirst().map(best -> best.sale().pays().net());
    }

    @Override
    public QuoteAnswer keptAs(KeptAs kept) {
        return new QuoteAnswer(view, job, outcome, Optional.of(kept));
    }

    @Override
    public QuoteAnswer addressedTo(List<String> customer) {
        return new QuoteAnswer(view, job.addressedTo(customer), outcome, number);
    }
}
