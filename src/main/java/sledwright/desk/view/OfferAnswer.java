package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Catalog;

/** An answer that a shop may offer and keep: builds for one request, or machines of several lines. */
public sealed interface OfferAnswer permits QuoteAnswer, OrderAnswer {

    /** The catalogue that it was answered from. */
    Catalog shop();

    /** What the customer calls the request. */
    String name();

    /** To whom the request says that it is addressed, in lines; may be empty. */
    List<String> customer();

    /** Machines that are asked for. */
    int machines();

    /** How sure it is, in a word. */
    String status();

    AnswerDay day();

    /** What the first of what is offered costs, for all machines; empty where not all can be had. */
    Optional<BigDecimal> price();

    /** The same answer, kept under a number. */
    OfferAnswer keptAs(KeptAs number);
}
