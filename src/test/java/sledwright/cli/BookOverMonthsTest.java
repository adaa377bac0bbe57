package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TimeZone;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.book.HistoryEntry;
import sledwright.book.QuoteNumber;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

/** What happens to a book that is kept for long: held and revised, decided between two reviews, in a shop that changes its currency. */
class BookOverMonthsTest {

    private static final String DAY = "2026-03-02";

    @TempDir
    private Path folder;
    private Path shop;
    private Path request;

    @BeforeEach
    void write() throws IOException {
        shop = Folders.shopOfTwoWeeks(folder.resolve("shop"));
        request = Folders.nodeOf(folder);
    }

    private Run on(String day, String... words) {
        return Run.onBook(folder, day, words);
    }

    private Run book(String... words) {
        return on(DAY, words);
    }

    private void save(String customer, String... further) {
        List<String> words = new ArrayList<>(List.of("save", request.toString(), "--customer", customer));
        words.addAll(List.of(further));
        assertThat(book(words.toArray(String[]::new)).code()).isEqualTo(ExitCode.DONE);
    }

    private Run review(String day, String... further) {
        List<String> words = new ArrayList<>(List.of("review", "--catalog", shop.toString()));
        words.addAll(List.of(further));
        return on(day, words.toArray(String[]::new));
    }

    private void change(String file, String old, String fresh) throws IOException {
        Folders.change(shop.resolve(file), old, fresh);
    }

    private static String words(Run run) {
        return run.out().replaceAll("\\s+", " ");
    }

    /** All nine are held for the version before; the next one may take eight of them. */
    @Test
    void whatAQuoteKeepsItselfIsNotSoldOutForItsNextVersion() {
        save("Nordmole", "--set", "machines=9");
        book("hold", "2026-0001");
        book("revise", "2026-0001", "--set", "machines=8");
        assertThat(review(DAY).out()).isEqualTo("1 open quote against today's catalogue\n1 same\n");
        assertThat(book("send", "2026-0001").out()).isEqualTo("2026-0001: sent, held until 2026-03-16\n");
        assertThat(review(DAY, "--again").out()).endsWith("\n1 held\n");
    }

    @Test
    void whatWasDecidedSinceTheLastReviewIsNotOpen() {
        save("Nordmole");
        save("Orchard Surveys");
        book("send", "2026-0001");
        assertThat(review(DAY).out()).startsWith("2 open quotes against");
        book("accept", "2026-0001");
        assertThat(review(DAY).out()).startsWith("1 open quote against");
    }

    /** A hold until a day that somebody chose does not grow because the quote is sent. */
    @Test
    void whatIsHeldUntilADayThatWasSaidIsHeldNoLongerWhenItIsSent() throws IOException {
        save("Nordmole");
        save("Orchard Surveys");
        book("hold", "2026-0001", "--until", "2026-03-05");
        book("hold", "2026-0002", "--until", "2026-03-05");
        // What is held can be sent as it can be accepted, whatever has become of the lot.
        change("offers.csv", "REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,150,1,1");
        assertThat(book("send", "2026-0001").out()).isEqualTo("2026-0001: sent, held until 2026-03-05\n");
        change("offers.csv", "REED-S,A2,Marsh Trade,used,150,1,1", "REED-S,A2,Marsh Trade,used,150,1,9");
        assertThat(book("send", "2026-0002", "--hold").out()).isEqualTo("2026-0002: sent, held until 2026-03-16\n");
    }

    @Test
    void whyItWasTakenStaysWhileItGoesOn() {
        save("Nordmole");
        book("send", "2026-0001");
        book("accept", "2026-0001", "--reason", "order 4711");
        for (String step : List.of("pick", "deliver")) {
            book(step, "2026-0001");
            assertThat(book("history", "2026-0001").out()).contains("Reason: order 4711\n");
        }
        save("Nordmole");
        book("send", "2026-0002");
        book("accept", "2026-0002", "--reason", "order 4712");
        book("decline", "2026-0002");
        assertThat(book("history", "2026-0002").out()).doesNotContain("Reason");
    }

    /** Units and price of what was taken are of one option. */
    @Test
    void whatWasTakenStaysOfItsOption() {
        save("Nordmole");
        assertThat(book("hold", "2026-0001", "--option", "9").err()).isEqualTo("sledwright: 2026-0001 has no option 9; it has 5\n");
        assertThat(book("hold", "2026-0001", "--option", "2").out()).isEqualTo("2026-0001: draft, held until 2026-03-16\n");
        assertThat(review(DAY).out()).endsWith("\n1 held\n");
        assertThat(book("history", "2026-0001").out()).contains("option 2, until 2026-03-16");
        book("send", "2026-0001");
        book("accept", "2026-0001");
        Run before = book("list", "--format", "csv");
        assertThat(before.out()).contains(",node,1,2,1,");
        for (String step : List.of("pick", "decline")) {
            assertThat(book(step, "2026-0001", "--option", "1")).isEqualTo(new Run(ExitCode.USAGE, "",
                    "sledwright: 2026-0001 was taken with option 2 and stays so; copy it for another\n"));
        }
        assertThat(book("list", "--format", "csv")).isEqualTo(before);
        assertThat(book("pick", "2026-0001", "--hold").err()).isEqualTo("sledwright: --hold is for 'send' alone\n");
        assertThat(book("pick", "2026-0001", "--stale-prices").err()).isEqualTo("sledwright: --stale-prices is for 'send' alone\n");
        assertThat(book("pick", "2026-0001", "--option", "2").out()).isEqualTo("2026-0001: picked\n");
    }

    @Test
    void amountsInAnotherCurrencyAreHeldAgainstNothing() throws IOException {
        for (int quote = 1; quote <= 4; quote++) {
            save("Nordmole");
            book("send", "2026-000" + quote);
        }
        book("decline", "2026-0001", "--reason", "too dear", "--would-pay", "200");
        book("accept", "2026-0002");
        book("accept", "2026-0003");
        change("catalog.yaml", "currency: EUR", "currency: CHF");
        assertThat(words(review(DAY))).contains(" unreadable ").doesNotContain("same", "CHF");
        change("offers.csv", "REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,160,1,2");
        assertThat(book("accept", "2026-0004", "--catalog", shop.toString()).err())
                .endsWith("\nIt costs 439.50 CHF now, 251.50 EUR before; revise it to offer that.\n");
        save("Orchard Surveys", "--set", "platforms=[WREN-2]", "--set", "machines=1");
        book("send", "2026-0005");
        book("decline", "2026-0005", "--reason", "too dear", "--would-pay", "100");
        String lost = words(book("lost", "--months", "1", "--catalog", shop.toString()));
        assertThat(lost).contains(" 251.50 EUR 200.00 EUR 51.50 EUR ", "Amounts are CHF");
        JsonNode json = new ObjectMapper().readTree(book("lost", "--months", "1", "--catalog", shop.toString(), "--format", "json").out());
        assertThat(Schemas.faults("lost-result", json.toString())).isEmpty();
        assertThat(json.get("quotes")).extracting(quote -> quote.get("currency").asText()).containsExactly("EUR", "CHF");
        assertThat(json.get("reasons").get(0).get("too_dear")).isEqualTo(json.get("quotes").get(1).get("too_dear"));
        assertThat(book("lost", "--months", "1", "--catalog", shop.toString(), "--format", "csv").out()).contains(",51.50,,EUR,251.50\n");
        assertThat(book("demand", "--months", "1", "--catalog", shop.toString()).out()).contains(
                "  # no class, for what one of them costs is not known: they were bought in orders or in another currency\n");
        change("offers.csv", "REED-S,A2,Marsh Trade,used,160,1,2", "REED-S,A2,Marsh Trade,used,160,1,1,0,\nREED-S,A20,Marsh Trade,used,170,1,1");
        assertThat(words(book("allocate", "--catalog", shop.toString()))).contains(" 251.50 EUR 271.50 CHF ");
    }

    /** Letters that are composed and such that are not, blanks of several kinds, letters without width: the same to the eye. */
    @Test
    void aNameIsTheSameHoweverItIsSpelled() {
        for (String name : List.of("L\u00f6schteich & Co", "Lo\u0308schteich  &\u00a0Co ", "L\u00f6schteich\u200b & Co", "\u202aL\u00f6schteich & Co\u202c\u061c", "L\u00f6schteich\n& Co")) {
            save(name);
        }
        assertThat(book("save", request.toString(), "--customer", "\u00a0\u200b").err()).isEqualTo("sledwright: the customer has no name\n");
        assertThat(book("list", "--customer", "lo\u0308schteich &").out()).contains("5 quotes");
        assertThat(book("export", "--customer", "L\u00f6schteich & Co\u00a0").out()).contains("5 quotes");
        assertThat(book("erase", "--customer", "Lo\u0308schteich & Co").err()).isEqualTo("erased from 5 quotes\n");
        assertThat(book("list", "--format", "csv").out()).doesNotContain("schteich");
    }

    /** In the evening of New York it is the next day by the world's clock already. */
    @Test
    void historySaysTheDayOfTheShop() throws IOException {
        save("Nordmole");
        JsonNode json = new ObjectMapper().readTree(book("history", "2026-0001", "--format", "json").out());
        assertThat(json.get("history").get(0).get("day").asText()).isEqualTo(DAY);
        HistoryEntry late = new HistoryEntry(1, "2026-03-03T03:00:00Z", "anna", new QuoteNumber(2026, 1), 1, "save", "");
        TimeZone before = TimeZone.getDefault();
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("America/New_York"));
            assertThat(late.day()).isEqualTo(DAY);
        } finally {
            TimeZone.setDefault(before);
        }
    }
}
