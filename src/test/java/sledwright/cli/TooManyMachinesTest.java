package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

/** More machines than can be had: how many alike ones there can be, and what an order of mixed builds delivers and costs. */
class TooManyMachinesTest {

    private static final String WISH = "require: { cores: 16, memory_gb: 64 }\n";

    @TempDir
    private Path folder;

    /** @param stock units of the platform and of its two processors */
    private void shop(int platforms, int eights, int tens) throws IOException {
        Path shop = Files.exists(folder.resolve("shop")) ? folder.resolve("shop") : Folders.copy(Folders.SHOP, folder.resolve("shop"));
        String offers = Files.readString(Folders.SHOP.resolve("offers.csv"));
        Files.writeString(shop.resolve("offers.csv"), offers.replace("WREN-2,A1,Marsh Trade,used,310.00,1,4,", "WREN-2,A1,Marsh Trade,used,310.00,1," + platforms + ",")
                .replace("H1-08,A3,Marsh Trade,used,24.50,1,20,", "H1-08,A3,Marsh Trade,used,24.50,1," + eights + ",")
                .replace("H1-10,A4,Marsh Trade,refurbished,39.00,,6,", "H1-10,A4,Marsh Trade,refurbished,39.00,," + tens + ","));
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(Folders.SHOP.resolve("catalog.yaml")) + "document: { tax_percent: 19 }\n");
    }

    private Run run(String command, String request, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve(command + ".yaml"), "kind: " + command + "\ncatalog: shop\n" + request);
        List<String> arguments = new ArrayList<>(List.of(command, file.toString()));
        arguments.addAll(List.of(more));
        return Run.of(arguments.toArray(String[]::new));
    }

    private JsonNode json(String command, String request) throws IOException {
        Run run = run(command, request, "--format", "json");
        assertThat(Schemas.faults(command + "-result", run.out())).as(run.err()).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    /** The same figures as a quote of fewer machines, none of more; an order of all of them has as many and costs no more. */
    @Test
    void whatIsSaidIsWhatTheQuoteAndTheOrderOfThemSay() throws IOException {
        int mixed = 0;
        for (long seed = 1; seed <= 6; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int asked = random.nextInt(4, 8);
            shop(random.nextInt(asked - 1, asked + 2), random.nextInt(2, 2 * asked - 1), random.nextInt(2, 2 * asked - 1));
            JsonNode quote = json("quote", "machines: " + asked + "\n" + WISH);
            assertThat(quote.get("status").asText()).as("seed %d", seed).isEqualTo("impossible");
            JsonNode some = quote.get("too_many");
            int alike = some.get("alike").asInt();
            assertThat(json("quote", "machines: " + alike + "\n" + WISH).get("best")).as("seed %d", seed).isEqualTo(some.get("alike_price"));
            assertThat(json("quote", "machines: " + (alike + 1) + "\n" + WISH).get("status").asText()).as("seed %d", seed).isEqualTo("impossible");
            JsonNode order = json("order", "lines:\n  web:\n    machines: " + asked + "\n    " + WISH);
            if (some.get("mixed").isNull()) {
                assertThat(order.get("delivered").asInt()).as("seed %d", seed).isEqualTo(alike);
            } else {
                mixed++;
                assertThat(some.get("mixed")).as("seed %d", seed).isEqualTo(order.get("delivered"));
                assertThat(some.get("mixed_price").decimalValue()).as("seed %d", seed).isGreaterThanOrEqualTo(order.get("price").decimalValue());
                assertThat(some.get("mixed_builds").asInt()).as("seed %d", seed).isBetween(1, asked);
            }
        }
        assertThat(mixed).isGreaterThan(2);
    }

    @Test
    void shopAndCustomerReadItInEveryFormat() throws IOException {
        shop(5, 4, 6);
        String asked = "machines: 5\n" + WISH;
        assertThat(run("quote", asked).out().replaceAll("\\s+", " ")).contains("How many can be had 3 of the 5 machines can be had alike, for ",
                " An order of all 5 machines of 2 builds costs ");
        assertThat(run("quote", asked, "--for", "customer").out().replaceAll("\\s+", " ")).contains("3 of the 5 machines can be alike, for ",
                "All 5 machines can be had in 2 builds, each as you asked, for ");
        for (String reader : List.of("shop", "customer")) {
            assertThat(run("quote", asked, "--for", reader, "--format", "html").out()).containsPattern("can be alike, for [^.]+[.]\\d\\d before VAT[.]")
                    .containsPattern("each as you asked, for [^.]+[.]\\d\\d before VAT[.]").contains("How many there can be", "3 of the 5 machines can be alike, for ",
                    "All 5 machines can be had in 2 builds, each as you asked, for ");
        }
        String seven = run("quote", "machines: 7\nlimit: { price: 1750 }\n" + WISH, "--for", "customer", "--format", "html").out();
        assertThat(seven).contains("Machines of 2 builds, each as you asked, can be 5 of the 7, for ", "That is above the price that you named. It may be possible for less.");
        assertThat(run("quote", "machines: 7\nlimit: { price: 1750 }\n" + WISH).out().replaceAll("\\s+", " ")).contains(" An order of 5 machines of 2 builds costs ",
                ", above the limit of the price; it is the first that was found.");
    }

    /** Where not one machine is possible, their number is not what is in the way. */
    @Test
    void whatNoMachineIsIsNotTooMany() throws IOException {
        shop(5, 4, 6);
        assertThat(json("quote", "machines: 5\nrequire: { cores: 999 }\n").get("too_many").isNull()).isTrue();
        assertThat(json("quote", "machines: 2\n" + WISH).get("too_many").isNull()).isTrue();
    }
}
