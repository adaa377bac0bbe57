package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.request.Job;

/** An answer that a shop may offer and keep: builds for one request, or machines of several lines. */
public sealed interface OfferAnswer permits QuoteAnswer, OrderAnswer {

    /** What was asked. */
    Job.Offerable job();

    /** The catalogue that it was answered from. */
    default Catalog shop() {
        return job().catalog();
    }

    /** What the customer calls the request. */
    default String name() {
        return job().name();
    }

    /** To whom the request says that it is addressed, in lines; may be empty. */
    default List<String> customer() {
        return job().customer();
    }

    /** Machines that are asked for. */
    int machines();

    /** How sure it is, in a word. */
    String status();

    AnswerDay day();

    /** What the first of what is offered costs, for all machines; empty where not all can be had. */
    Optional<BigDecimal> price();

    /** What the customer is asked to pay in its place, before tax. */
    Optional<BigDecimal> pays();

    /** The same answer, kept under a number. */
    OfferAnswer keptAs(KeptAs number);

    /** The same answer for whom these lines name. */
    OfferAnswer addressedTo(List<String> customer);
}
