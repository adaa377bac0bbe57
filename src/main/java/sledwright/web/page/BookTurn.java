package sledwright.web.page;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.book.QuoteState;
import sledwright.book.QuoteStep;

/**
 * A button that takes a quote further.
 *
 * @param label  of the step, as addresses have it
 * @param from   where a quote may stand before it, with blanks between
 * @param taking whether it is about one of the options
 * @param last   whether nothing comes after it, so that it cannot be taken back
 */
public record BookTurn(String label, String from, String words, boolean taking, boolean last) {

    /** States that a quote goes through where all goes well. */
    static final List<String> LIFE = Stream.of(QuoteState.DRAFT, QuoteState.SENT, QuoteState.ACCEPTED, QuoteState.PICKED,
            QuoteState.DELIVERED).map(QuoteState::label).toList();

    private static final String OPEN = Stream.of(QuoteState.values()).filter(QuoteState::isOpen).map(QuoteState::label)
            .collect(Collectors.joining(" "));

    static final List<BookTurn> ALL = List.of(
            of(QuoteStep.SEND, "It was sent to the customer", true), of(QuoteStep.ACCEPT, "The customer takes it", true),
            of(QuoteStep.PICK, "Its parts were taken from the shelf", false),
            of(QuoteStep.DELIVER, "The machines are with the customer", false),
            new BookTurn("hold", OPEN, "Hold its parts until its last day", true, false),
            new BookTurn("release", OPEN, "Give back what it holds", false, false),
            of(QuoteStep.DECLINE, "The customer does not take it", false), of(QuoteStep.WITHDRAW, "Withdraw it", false));

    private static BookTurn of(QuoteStep step, String words, boolean taking) {
        return new BookTurn(step.label(), step.starts().stream().map(QuoteState::label).collect(Collectors.joining(" ")), words, taking,
                Stream.of(QuoteStep.values()).noneMatch(next -> step.starts().stream().flatMap(start -> step.from(start).stream())
                        .anyMatch(next.starts()::contains)));
    }
}
