package sledwright.book;

import java.util.List;

/**
 * All that the book has of one customer.
 *
 * @param kept  each quote with its history and what was asked, version by version
 * @param links by which requests may be looked at
 */
public record CustomerFile(String customer, List<Kept> kept, List<CustomerLink> links) {

    /**
     * One quote.
     *
     * @param requests as they were handed in, the first version first
     */
    public record Kept(SavedQuote quote, List<HistoryEntry> history, List<String> requests) {

        public Kept {
            history = List.copyOf(history);
            requests = List.copyOf(requests);
        }
    }

    public CustomerFile {
        kept = List.copyOf(kept);
        links = List.copyOf(links);
    }
}
