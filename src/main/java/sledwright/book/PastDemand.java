package sledwright.book;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import sledwright.domain.Request;
import sledwright.request.SupplyTable;

/**
 * What a shop was asked for over some months, what it offered and what was bought.
 *
 * @param classes  alike requests together, those asked for most often first
 * @param lost     quotes that came to nothing, by their numbers
 * @param unread   quotes whose requests cannot be read with today's catalogue
 * @param from     the first day
 * @param until    the last day
 * @param months   how many
 * @param currency of all amounts but those of a lost quote, which has its own
 */
public record PastDemand(List<AskedClass> classes, List<Lost> lost, List<QuoteNumber> unread, LocalDate from, LocalDate until, int months,
                     String currency) {

    /** What became of a quote. */
    public enum Course {
        BOUGHT, LOST, OPEN
    }

    /**
     * Quotes of each month, the first first.
     *
     * @param bought of those asked for
     * @param unmet  of those asked for, what no build was found for
     */
    public record MonthByMonth(List<Integer> asked, List<Integer> bought, List<Integer> unmet) {

        public MonthByMonth {
            asked = List.copyOf(asked);
            bought = List.copyOf(bought);
            unmet = List.copyOf(unmet);
        }
    }

    /**
     * Requests that are alike.
     *
     * @param name     no other class bears it
     * @param request  the one that was asked most often
     * @param lead     days within which it was wanted; empty: any number
     * @param lost     in all months, of what was offered
     * @param open     in all months
     * @param accepted the price of a machine in the middle of those that were bought; empty: none was
     */
    public record AskedClass(String name, Request request, Optional<Integer> lead, MonthByMonth months, int lost, int open,
                             Optional<BigDecimal> accepted) {

        /** The share of what was decided that was bought; empty where nothing was. */
        public OptionalDouble winRate() {
            int won = sum(months.bought());
            return won + lost == 0 ? OptionalDouble.empty() : OptionalDouble.of(won / (double) (won + lost));
        }

        /** Orders of each month: what was bought and, at the same rate, what would have been if there had been parts for it. */
        public List<Integer> orders() {
            double rate = winRate().orElse(0);
            return java.util.stream.IntStream.range(0, months.asked().size()).mapToObj(month ->
                    months.bought().get(month) + (int) Math.round(rate * months.unmet().get(month))).toList();
        }

        /** Whether a stock can be planned for it: it is bought, and what a machine of it is sold for is known. */
        public boolean isPlanned() {
            return accepted.isPresent() && orders().stream().anyMatch(count -> count > 0);
        }

        static int sum(List<Integer> months) {
            return months.stream().mapToInt(Integer::intValue).sum();
        }
    }

    /**
     * A quote that came to nothing.
     *
     * @param reason   as it was said; for a quote that was not answered in time that it expired
     * @param price    that the customer was asked to pay for all machines; empty: no build was found
     * @param wouldPay what the customer would have paid for them; empty: not known
     * @param others   what machines of its class were bought for, for as many; empty: none was
     */
    public record Lost(SavedQuote quote, String reason, Optional<BigDecimal> price, Optional<BigDecimal> wouldPay,
                       Optional<BigDecimal> others) {

        /** Of all its amounts. */
        public String currency() {
            return quote.offered().currency();
        }

        /** By how much it was too dear, so far as the customer said; empty: not known. */
        public Optional<BigDecimal> tooDear() {
            return price.flatMap(asked -> wouldPay.map(asked::subtract));
        }

        /** By how much it was dearer than what others took; below 0: it was cheaper. */
        public Optional<BigDecimal> aboveOthers() {
            return price.flatMap(asked -> others.map(asked::subtract));
        }
    }

    /** Whether a stock can be planned for anything. */
    public boolean isPlanned() {
        return classes.stream().anyMatch(AskedClass::isPlanned);
    }

    /** Of a book in which nothing stands. */
    public static PastDemand nothing(LocalDate today, int months, String currency) {
        return new PastDemand(List.of(), List.of(), List.of(), Demanding.first(today, months), today, months, currency);
    }

    /**
     * Looks at the table of what suppliers offer, before a plan names it.
     *
     * @throws sledwright.input.FaultsException when it is not there or cannot be read
     */
    public static void requireSupply(Path table) {
        SupplyTable.requireSound(table);
    }

    public PastDemand {
        classes = List.copyOf(classes);
        lost = List.copyOf(lost);
        unread = List.copyOf(unread);
    }
}
