package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

/** Wherever the book holds something against what a customer pays, it is what the customer was asked, not what the list says. */
class BookAskedPriceTest {

    @TempDir
    private Path folder;
    private Path shop;
    private Path request;

    @BeforeEach
    void write() throws IOException {
        shop = Folders.shopOfTwoWeeks(folder.resolve("shop"));
        request = Folders.nodeOf(folder);
    }

    private Run book(String... words) {
        return Run.onBook(folder, "2026-03-02", words);
    }

    private void save(String... sets) {
        List<String> all = new ArrayList<>(List.of("save", request.toString(), "--customer", "Orchard Surveys"));
        List.of(sets).forEach(set -> all.addAll(List.of("--set", set)));
        assertThat(book(all.toArray(String[]::new)).code()).isEqualTo(ExitCode.DONE);
    }

    private JsonNode json(String schema, String... words) throws IOException {
        List<String> all = new ArrayList<>(List.of(words));
        all.addAll(List.of("--format", "json"));
        String out = book(all.toArray(String[]::new)).out();
        assertThat(Schemas.faults(schema, out)).isEmpty();
        return new ObjectMapper().readTree(out);
    }

    private void offer(String old, String fresh) throws IOException {
        Folders.change(shop.resolve("offers.csv"), old, fresh);
    }

    private static String words(Run run) {
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void aQuoteIsListedAtWhatTheCustomerIsAsked() throws IOException {
        save("discount_percent=10");
        save("agreed_price=200");
        save();
        Files.writeString(request, "\"discount\\u005fpercent\": 10\n", StandardOpenOption.APPEND);
        save();
        assertThat(words(book("list"))).contains(" 226.35 EUR ", " 200.00 EUR ", " 251.50 EUR ");
        JsonNode quotes = json("book-result", "list").get("quotes");
        assertThat(quotes).extracting(quote -> quote.get("price").asText()).containsOnly("251.5");
        assertThat(quotes).extracting(quote -> quote.get("asked_price").asText()).containsExactly("226.35", "200.0", "251.5", "226.35");
        assertThat(book("list", "--format", "csv").out()).contains("reason,asked_price\n", ",251.50,EUR,2026-03-02,2026-03-16,,,,226.35\n");
    }

    /** A price is agreed for the first build, a discount is taken off each. */
    @Test
    void anAlternativeHasItsOwnPrice() throws IOException {
        save("agreed_price=200");
        save("discount_percent=10");
        for (String number : List.of("2026-0001", "2026-0002")) {
            book("send", number);
            book("accept", number, "--option", "2");
        }
        JsonNode quotes = json("book-result", "list").get("quotes");
        assertThat(quotes.get(0).get("asked_price")).isEqualTo(quotes.get(0).get("price"));
        assertThat(quotes.get(1).get("asked_price").decimalValue()).isLessThan(quotes.get(1).get("price").decimalValue());
    }

    @Test
    void whatWasTooDearIsCountedFromWhatTheCustomerWasAsked() throws IOException {
        save("discount_percent=10");
        book("send", "2026-0001");
        book("decline", "2026-0001", "--would-pay", "220", "--reason", "price");
        assertThat(words(book("lost", "--months", "1", "--catalog", shop.toString()))).contains(" price 226.35 220.00 6.35 ");
        JsonNode lost = json("lost-result", "lost", "--months", "1", "--catalog", shop.toString()).get("quotes").get(0);
        assertThat(lost.get("price").asText()).isEqualTo("251.5");
        assertThat(lost.get("asked_price").asText()).isEqualTo("226.35");
        assertThat(lost.get("too_dear").asText()).isEqualTo("6.35");
        assertThat(book("lost", "--months", "1", "--catalog", shop.toString(), "--format", "csv").out())
                .contains(",price,251.50,220.00,6.35,,EUR,226.35\n");
    }

    /** A plan of the stock counts with money that somebody pays. */
    @Test
    void thePriceThatIsAcceptedIsWhatWasPaid() throws IOException {
        save("discount_percent=10", "machines=2");
        book("send", "2026-0001");
        book("accept", "2026-0001");
        assertThat(json("demand-result", "demand", "--months", "1", "--catalog", shop.toString(), "--supply", supply()).get("classes").get(0)
                .get("price_accepted").decimalValue()).isBetween(new BigDecimal("210"), new BigDecimal("230"));
        JsonNode promise = json("allocation-result", "allocate", "--catalog", shop.toString()).get("promises").get(0);
        assertThat(promise.get("asked_price").decimalValue().movePointRight(1)).isEqualByComparingTo(promise.get("told").decimalValue()
                .multiply(BigDecimal.valueOf(9)));
    }

    private String supply() throws IOException {
        return Files.writeString(folder.resolve("supply.csv"), "sku,supplier,unit_cost,available\n").toString();
    }

    /** Who was second is told what there would be to pay, beside what he was asked before. */
    @Test
    void whatItCostsNowIsWhatWouldBeAsked() throws IOException {
        offer("REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,150,1,1");
        save("discount_percent=10");
        save("discount_percent=10");
        save("agreed_price=200");
        assertThat(book("hold", "2026-0001").code()).isEqualTo(ExitCode.DONE);
        assertThat(book("hold", "2026-0002").err()).endsWith("It costs 395.55 EUR now (439.50 by the list), 169.20 more; revise it to offer that.\n");
        assertThat(book("hold", "2026-0003").err()).endsWith("It costs 200.00 EUR now (439.50 by the list), as much as before; revise it to offer that.\n");
    }

    /** Figures stay when a customer is erased, and this is one. */
    @Test
    void theDiscountOutlivesItsCustomer() throws IOException {
        save("discount_percent=10");
        assertThat(book("revise", "2026-0001", "--set", "discount_percent=20").code()).isEqualTo(ExitCode.DONE);
        save("agreed_price=200.5");
        save();
        assertThat(book("erase", "--customer", "Orchard Surveys").code()).isEqualTo(ExitCode.DONE);
        assertThat(json("book-result", "list").get("quotes")).extracting(quote -> quote.get("asked_price").asText())
                .containsExactly("201.2", "200.5", "251.5");
    }

    @Test
    void aReviewSaysThatItsPricesAreThoseOfTheList() throws IOException {
        save("discount_percent=10");
        save();
        offer("REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,160,1,9");
        String review = words(book("review", "--catalog", shop.toString()));
        assertThat(review).contains("2 dearer", " 251.50 261.50 EUR ",
                "These are the prices of the list; a discount or an agreed price holds in the place of that of 2026-0001.");
    }
}
