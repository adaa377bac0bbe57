package sledwright.book;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import sledwright.desk.Reply;
import sledwright.desk.Terms;

/**
 * Answers the request of a quote again, from today's stock less what the book keeps.
 *
 * @param catalog the folder of today's catalogue; empty: the one that the quote was answered from
 */
public record AskingAgain(Book book, Optional<Path> catalog, Terms terms) {

    /**
     * @param sets beside those that were set before
     * @param but  a quote that may be offered what it keeps itself
     */
    public Reply<Answered> of(SavedQuote quote, List<String> sets, Optional<QuoteNumber> but, Signature by) {
        return Answering.again(quote.number().toString(), book.asked(quote).with(sets, catalog), book.stock(but, by), terms);
    }
}
