package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;
import sledwright.samples.Folders;
import sledwright.samples.SeededShop;

/** What a customer pays in the place of the price. */
class DiscountsTest {

    private static final String QUOTE = "kind: quote\ncatalog: shop\nrequire: { cores: 16, memory_gb: 64 }\n";
    private static final String ORDER = "kind: order\ncatalog: shop\nlines:\n  web: { machines: 2, require: { cores: 16 } }\n";

    @TempDir
    private Path folder;

    @BeforeEach
    void shop() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        SeededShop.in(shop);
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(shop.resolve("catalog.yaml"))
                + "document: { tax_percent: 19, tax_name: MwSt }\nhouse: { margin_floor: 0.25 }\n");
    }

    private Run run(String command, String request, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("asked.yaml"), request);
        List<String> arguments = new ArrayList<>(List.of(command, file.toString()));
        arguments.addAll(List.of(more));
        return Run.of(arguments.toArray(String[]::new));
    }

    private JsonNode json(String command, String request, String... more) throws IOException {
        List<String> all = new ArrayList<>(List.of(more));
        all.addAll(List.of("--format", "json"));
        Run run = run(command, request, all.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isIn(ExitCode.DONE, ExitCode.NO_VALID_BUILD);
        assertThat(Schemas.faults(command + "-result", run.out())).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    private String text(String command, String request, String... more) throws IOException {
        return run(command, request, more).out().replaceAll("\\s+", " ");
    }

    /** Builds, their order and their prices stay; each is paid at its own price less the share, to half a coin for the customer. */
    @Test
    void aShareIsTakenOffEveryBuildAndChangesNoneOfThem() throws IOException {
        JsonNode plain = json("quote", QUOTE);
        Random random = new Random(20_261_129);
        for (int i = 0; i < 6; i++) {
            BigDecimal percent = BigDecimal.valueOf(random.nextInt(10_001), 2);
            JsonNode given = json("quote", QUOTE + "discount_percent: " + percent + "\n");
            assertThat(given.get("best")).isEqualTo(plain.get("best"));
            assertThat(given.get("alternatives").size()).isGreaterThan(1).isEqualTo(plain.get("alternatives").size());
            for (int rank = 0; rank < plain.get("alternatives").size(); rank++) {
                JsonNode one = given.get("alternatives").get(rank);
                assertThat(one.get("lines")).as("%s %%", percent).isEqualTo(plain.get("alternatives").get(rank).get("lines"));
                BigDecimal price = one.get("price").decimalValue();
                BigDecimal off = price.multiply(percent).movePointLeft(2).setScale(2, RoundingMode.HALF_UP);
                BigDecimal net = one.get("net").decimalValue();
                assertThat(net).as("%s %% of %s", percent, price).isEqualByComparingTo(price.subtract(off));
                assertThat(one.get("discount").decimalValue()).isEqualByComparingTo(off);
                assertThat(plain.get("alternatives").get(rank).get("discount").isNull()).isTrue();
                BigDecimal tax = net.multiply(new BigDecimal("0.19")).setScale(2, RoundingMode.HALF_UP);
                assertThat(one.get("tax").decimalValue()).isEqualByComparingTo(tax);
                assertThat(one.get("gross").decimalValue()).isEqualByComparingTo(net.add(tax));
            }
        }
    }

    /** The floor is of what is paid for parts of known cost: shops of the sample sell at a price of which 26.87 % are left. */
    @Test
    void theShopIsWarnedBelowItsFloorAndTheCustomerIsNot() throws IOException {
        assertThat(json("quote", QUOTE).get("warnings").toString()).doesNotContain("this shop wants");
        JsonNode given = json("quote", QUOTE + "discount_percent: 2.6\n");
        JsonNode first = given.get("alternatives").get(0);
        assertThat(given.get("warnings").get(0).asText()).startsWith("Rank 1 leaves " + first.get("earned").decimalValue().setScale(2))
                .endsWith("; this shop wants at least 25 %.");
        assertThat(first.get("earned_percent").decimalValue()).isBetween(new BigDecimal("24.5"), new BigDecimal("25"));
        assertThat(json("quote", QUOTE + "discount_percent: 2\n").get("warnings").toString()).doesNotContain("this shop wants");
        JsonNode customers = json("quote", QUOTE + "discount_percent: 2.6\n", "--for", "customer");
        assertThat(customers.get("warnings")).isEmpty();
        assertThat(customers.get("alternatives").get(0).get("earned").isNull()).isTrue();
        assertThat(customers.get("alternatives").get(0).get("net")).isEqualTo(first.get("net"));
        assertThat(json("order", ORDER + "discount_percent: 30\n").get("warnings").toString()).contains("The order leaves ", "this shop wants at least 25 %.");
        assertThat(json("order", ORDER + "discount_percent: 30\n", "--for", "customer").get("earned").isNull()).isTrue();
        assertThat(json("quote", QUOTE + "discount_percent: 100\n").get("warnings").toString()).contains(" of the 0.00 that its parts of known cost bring; this shop");
    }

    @Test
    void anAgreedPriceIsThatOfTheFirstBuildAndOfAWholeOrder() throws IOException {
        JsonNode given = json("quote", QUOTE + "agreed_price: 700\n").get("alternatives");
        assertThat(given.get(0).get("agreed").asBoolean()).isTrue();
        assertThat(given.get(0).get("net").decimalValue()).isEqualByComparingTo("700");
        assertThat(given.get(0).get("gross").decimalValue()).isEqualByComparingTo("833");
        assertThat(given.get(0).get("discount").decimalValue())
                .isEqualByComparingTo(given.get(0).get("price").decimalValue().subtract(new BigDecimal("700")));
        assertThat(given.get(1).get("agreed").asBoolean()).isFalse();
        assertThat(given.get(1).get("discount").isNull()).isTrue();
        assertThat(given.get(1).get("net")).isEqualTo(given.get(1).get("price"));
        BigDecimal more = given.get(1).get("price").decimalValue().subtract(new BigDecimal("700")).abs();
        assertThat(given.get(1).get("reasons").get(0).asText()).startsWith("For %s EUR ".formatted(more.setScale(2)));
        assertThat(given.get(0).get("reasons").toString()).contains("those of the list, not the price that was agreed");
        JsonNode order = json("order", ORDER + "agreed_price: 1000\n");
        assertThat(order.get("net").decimalValue()).isEqualByComparingTo("1000");
        assertThat(order.get("agreed").asBoolean()).isTrue();
        assertThat(order.get("discount").decimalValue())
                .isEqualByComparingTo(order.get("price").decimalValue().subtract(new BigDecimal("1000")));
        JsonNode lacking = json("order", ORDER + "  more: { machines: 1, require: { cores: 9999 } }\nagreed_price: 1000\n");
        assertThat(lacking.get("net")).isEqualTo(lacking.get("price"));
        assertThat(lacking.get("discount").isNull()).isTrue();
        assertThat(lacking.get("warnings").toString()).contains("The agreed price is that of all machines; what can be delivered is at its own price.");
    }

    @Test
    void textAndDocumentsHaveALineForIt() throws IOException {
        String given = text("quote", QUOTE + "discount_percent: 5\n", "--for", "shop");
        assertThat(given).containsPattern("discount 5 % -[0-9.]+ to pay [0-9.]+ MwSt 19 % [0-9.]+ with MwSt [0-9.]+")
                .contains("Prices in these sentences are before the discount.", "Rank 1 leaves 107.39 EUR of the 466.45 that its parts of known cost bring, 23.0 %; this shop wants at least 25 %.");
        assertThat(text("quote", QUOTE + "agreed_price: 700\n", "--for", "shop")).contains("agreed 700.00 MwSt 19 % 133.00 with MwSt 833.00");
        assertThat(text("order", ORDER + "discount_percent: 5\n", "--for", "shop")).containsPattern("discount 5 %: -[0-9.]+ EUR to pay: [0-9.]+ EUR MwSt 19 %: ");
        for (String letter : List.of(text("quote", QUOTE + "discount_percent: 5\n", "--for", "customer"), text("order", ORDER + "discount_percent: 5\n", "--for", "customer"))) {
            assertThat(letter).containsPattern("Sum of all lines \\S+ Discount, 5 % -\\S+ Before MwSt \\S+ MwSt, 19 % \\S+ Total(?: for \\d+ machines)? with MwSt \\S+").doesNotContain("known cost", "wants at least");
        }
        assertThat(text("quote", QUOTE + "agreed_price: 700\n", "--for", "customer")).containsPattern("To the agreed price \\S+ Before MwSt \\S*700.00 ");
        String page = text("quote", QUOTE + "discount_percent: 5\n", "--format", "html");
        assertThat(page).contains("Sum of all lines", "Discount, 5\u00a0%", "Before MwSt", "Total with MwSt", "Taken\u00a0off").doesNotContain("known cost");
        String agreed = text("quote", QUOTE + "agreed_price: 700\n", "--format", "html", "--for", "shop");
        assertThat(agreed).contains("To the agreed price", "Prices of this list are those before the price was agreed. After it the parts of known cost bring ");
        assertThat(text("quote", QUOTE + "discount_percent: 50\n", "--format", "html", "--for", "shop")).contains("this shop wants at least 25",
                "Prices of this list are those before the discount.");
    }

    @Test
    void aComparisonSaysThatItsPricesAreBeforeIt() throws IOException {
        assertThat(text("compare", QUOTE + "discount_percent: 5\n")).contains("Prices are before the discount of 5 %.");
        assertThat(text("compare", QUOTE + "agreed_price: 700\n")).contains("a price was agreed for one build, which no point counts.");
        assertThat(text("compare", QUOTE + "discount_percent: 5\n", "--format", "html")).contains("Prices are before the discount of 5");
        assertThat(json("compare", QUOTE + "discount_percent: 5\n").get("discount_percent").decimalValue()).isEqualByComparingTo("5");
    }

    /** A reader who works the amount out by the rate comes to the same. */
    @Test
    void ratesHaveAllOfTheirDecimals() throws IOException {
        Path catalog = folder.resolve("shop/catalog.yaml");
        Files.writeString(catalog, Files.readString(catalog).replace("tax_percent: 19", "tax_percent: 7.12500"));
        String discount = "discount_percent: 33.333\n";
        assertThat(text("quote", QUOTE + discount, "--for", "shop")).contains("discount 33.333 % -", " MwSt 7.125 % ");
        assertThat(text("order", ORDER + discount, "--for", "shop")).contains("discount 33.333 %: -", " MwSt 7.125 %: ");
        for (String[] papers : new String[][] {{"quote", QUOTE}, {"order", ORDER}}) {
            assertThat(text(papers[0], papers[1] + discount, "--for", "customer")).contains("Discount, 33.333 % ", "MwSt, 7.125 % ");
            assertThat(text(papers[0], papers[1] + discount, "--format", "html")).contains("Discount, 33.333\u00a0%", "MwSt, 7.125\u00a0%");
        }
        assertThat(text("compare", QUOTE + discount)).contains("Prices are before the discount of 33.333 %.");
        assertThat(text("compare", QUOTE, "--for", "customer")).contains("7.125");
        assertThat(text("compare", QUOTE + discount, "--format", "html")).contains("33.333", "7.125");
        Files.writeString(catalog, Files.readString(catalog).replace("document: {", "document: { locale: de,"));
        assertThat(text("quote", QUOTE + discount, "--for", "customer")).contains("Nachlass, 33,333 % ", "MwSt, 7,125 % ");
    }

    /** A limit with tax keeps to the price, whatever is taken off. */
    @Test
    void limitsLookAtThePrice() throws IOException {
        BigDecimal price = json("quote", QUOTE).get("best").decimalValue();
        String below = QUOTE + "limit: { price: %s }\n".formatted(price.subtract(BigDecimal.ONE));
        assertThat(json("quote", below + "discount_percent: 50\n").get("status").asText()).isEqualTo("impossible");
    }
}
