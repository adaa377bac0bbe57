package sledwright.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** A book in a few maps, without a database: what was done in it must have been allowed, one thing after another, as its history has it. */
final class PlainBook {

    private static final class Quote {
        private QuoteState state = QuoteState.DRAFT;
        private int version = 1;
        private int chosen = 1;
        /** Lot -> units that it keeps. */
        private Map<String, Integer> kept = new TreeMap<>();
        /** Until when; null: for good. */
        private LocalDate until;
    }

    private final Map<String, Integer> units;
    private final Map<QuoteNumber, List<List<Map<String, Integer>>>> versions;
    private final Map<QuoteNumber, LocalDate> validUntil;
    private final Map<QuoteNumber, Quote> quotes = new TreeMap<>();

    /**
     * @param units    lot -> how many it has
     * @param versions quote -> its versions -> their options -> units by lot
     */
    PlainBook(Map<String, Integer> units, Map<QuoteNumber, List<List<Map<String, Integer>>>> versions, Map<QuoteNumber, LocalDate> validUntil) {
        this.units = units;
        this.versions = versions;
        this.validUntil = validUntil;
    }

    void replay(HistoryEntry entry) {
        LocalDate day = LocalDate.parse(entry.at().substring(0, 10));
        QuoteNumber number = entry.number();
        if (entry.step().equals("save")) {
            assertThat(number.place()).as("no gap before " + number).isEqualTo(quotes.size() + 1);
            assertThat(quotes.put(number, new Quote())).as("no double of " + number).isNull();
            return;
        }
        Quote quote = quotes.get(number);
        QuoteState state = quote.state == QuoteState.SENT && validUntil.get(number).isBefore(day) ? QuoteState.EXPIRED : quote.state;
        String option = entry.detail().replaceFirst("(?:option (\\d+))?.*", "$1");
        int chosen = option.isEmpty() ? quote.chosen : Integer.parseInt(option);
        boolean live = quote.until != null && !quote.until.isBefore(day) && !quote.kept.isEmpty();
        switch (entry.step()) {
            case "hold" -> {
                assertThat(state).isIn(QuoteState.DRAFT, QuoteState.SENT);
                take(number, quote, day, chosen, LocalDate.parse(entry.detail().replaceFirst(".*until ", "")));
            }
            case "release" -> {
                assertThat(live).as(entry.toString()).isTrue();
                quote.kept = Map.of();
            }
            case "revise" -> {
                assertThat(state).isIn(QuoteState.DRAFT, QuoteState.SENT, QuoteState.EXPIRED);
                quote.state = QuoteState.DRAFT;
                quote.version++;
                quote.chosen = 1;
            }
            default -> {
                QuoteStep step = QuoteStep.valueOf(entry.step().toUpperCase(Locale.ROOT));
                quote.state = step.from(state).orElseThrow(() -> new AssertionError(entry + " from " + state));
                if (step == QuoteStep.SEND) {
                    assertThat(validUntil.get(number)).isAfterOrEqualTo(day);
                    boolean held = entry.detail().contains("held until ");
                    assertThat(live && !held).as("what was held goes on being held: " + entry).isFalse();
                    if (held) {
                        LocalDate until = LocalDate.parse(entry.detail().replaceFirst(".*held until ", ""));
                        boolean asBefore = live && until.equals(quote.until) && quote.kept.equals(wanted(number, quote, chosen));
                        assertThat(asBefore || until.equals(validUntil.get(number))).as(entry.toString()).isTrue();
                        take(number, quote, day, chosen, until);
                    }
                } else if (step == QuoteStep.ACCEPT && live && quote.kept.equals(wanted(number, quote, chosen))) {
                    quote.until = null;
                } else if (step == QuoteStep.ACCEPT) {
                    take(number, quote, day, chosen, null);
                } else if (step == QuoteStep.DECLINE || step == QuoteStep.WITHDRAW) {
                    quote.kept = Map.of();
                }
                quote.chosen = chosen;
            }
        }
        assertThat(entry.version()).isEqualTo(quote.version);
    }

    private Map<String, Integer> wanted(QuoteNumber number, Quote quote, int chosen) {
        return versions.get(number).get(quote.version - 1).get(chosen - 1);
    }

    private void take(QuoteNumber number, Quote quote, LocalDate day, int chosen, LocalDate until) {
        Map<String, Integer> free = new HashMap<>(units);
        quotes.values().stream().filter(other -> other != quote && (other.until == null || !other.until.isBefore(day))).forEach(other ->
                other.kept.forEach((lot, some) -> free.merge(lot, -some, Integer::sum)));
        wanted(number, quote, chosen).forEach((lot, some) -> assertThat(free.get(lot)).as("%s on %s: %s of %s", number, day, some, lot)
                .isGreaterThanOrEqualTo(some));
        quote.kept = wanted(number, quote, chosen);
        quote.until = until;
    }

    /** Lot -> units that are kept on a day. */
    Map<String, Integer> kept(LocalDate day) {
        Map<String, Integer> kept = new TreeMap<>();
        quotes.values().stream().filter(quote -> quote.until == null || !quote.until.isBefore(day)).forEach(quote ->
                quote.kept.forEach((lot, some) -> kept.merge(lot, some, Integer::sum)));
        return kept;
    }

    Map<QuoteNumber, QuoteState> states(LocalDate day) {
        Map<QuoteNumber, QuoteState> states = new TreeMap<>();
        quotes.forEach((number, quote) -> states.put(number, quote.state == QuoteState.SENT && validUntil.get(number).isBefore(day)
                ? QuoteState.EXPIRED : quote.state));
        return states;
    }
}
