package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.domain.TaxedPrice;
import sledwright.samples.Folders;

/** A limit of what the customer pays with tax. */
class PriceWithTaxTest {

    @TempDir
    private Path folder;

    @BeforeEach
    void taxedShop() throws IOException {
        Path catalog = Folders.copy(Folders.SHOP, folder.resolve("shop")).resolve("catalog.yaml");
        Files.writeString(catalog, Files.readString(catalog) + "document: { tax_percent: 19, tax_name: MwSt }\n");
    }

    /** The tax is rounded to a coin, so that what the customer reads decides: 2016.81 and 383.19 are 2400.00. */
    @Test
    void theGreatestPriceWhoseTaxStaysWithin() {
        TaxedPrice most = new TaxedPrice(240_000, BigDecimal.valueOf(19), "MwSt", OptionalLong.empty());
        assertThat(most.gross(201_681)).isEqualTo(240_000);
        assertThat(most.mostNet()).isEqualTo(201_681);
        assertThat(most.gross(201_682)).isEqualTo(240_002);
        assertThat(most.withBeside(OptionalLong.of(150_000)).mostNet()).isEqualTo(150_000);
        assertThat(most.withMost(0).mostNet()).isZero();
        assertThat(new TaxedPrice(1000, BigDecimal.ZERO, "MwSt", OptionalLong.empty()).mostNet()).isEqualTo(1000);
    }

    private Run quote(String... sets) throws IOException {
        Path file = Files.writeString(folder.resolve("asked.yaml"), "kind: quote\ncatalog: shop\nenclosure: own\nrequire: { cores: 8, memory_gb: 16 }\nalternatives: 1\n");
        return Run.of(Stream.concat(Stream.of("quote", file.toString(), "--format", "json"), Stream.of(sets).flatMap(set -> Stream.of("--set", set)))
                .toArray(String[]::new));
    }

    private static JsonNode json(Run run, int code) throws IOException {
        assertThat(run.code()).as(run.err()).isEqualTo(code);
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void theCheapestFitsItsOwnPriceWithTaxAndNotACoinLess() throws IOException {
        BigDecimal net = json(quote(), ExitCode.DONE).get("best").decimalValue();
        TaxedPrice tax = new TaxedPrice(0, BigDecimal.valueOf(19), "MwSt", OptionalLong.empty());
        BigDecimal gross = BigDecimal.valueOf(tax.gross(net.movePointRight(2).longValueExact()), 2);
        assertThat(json(quote("limit.price_with_tax=" + gross), ExitCode.DONE).get("best").decimalValue()).isEqualByComparingTo(net);
        String less = gross.subtract(new BigDecimal("0.01")).toPlainString();
        JsonNode dear = json(quote("limit.price_with_tax=" + less), ExitCode.NO_VALID_BUILD);
        assertThat(dear.get("conflicts").get(0).get("keys").toString()).isEqualTo("[\"limit.price_with_tax\"]");
        assertThat(dear.get("conflicts").get(0).get("rules").toString()).isEqualTo("[\"budget\"]");
        assertThat(dear.get("conflicts").get(0).get("message").asText())
                .isEqualTo("The cheapest build costs %s EUR with MwSt; the request asks for a price with MwSt of at most %s EUR.".formatted(gross, less));
        assertThat(dear.get("relaxations").get(0).get("changes").get(0).toString()).contains("\"key\":\"limit.price_with_tax\"", "\"to\":\"" + gross + "\"");
        assertThat(dear.get("relaxations").get(0).get("message").asText())
                .startsWith("Raise the price with MwSt from %s EUR to %s EUR: builds from ".formatted(less, gross));
    }

    /** The sentence is about the price whatever else gives way, the number of machines, too. */
    @Test
    void ofSeveralMachinesItIsSaidWhatOneCosts() throws IOException {
        for (String key : List.of("limit.price_with_tax", "limit.price")) {
            String message = json(quote("machines=2", key + "=1"), ExitCode.NO_VALID_BUILD).get("conflicts").get(0).get("message").asText();
            assertThat(message).matches("One machine alone costs [0-9.]+ EUR(?: with MwSt)?; the request asks for a price (?:with MwSt )?of at most 1\\.00 EUR\\.");
        }
    }

    @Test
    void bothLimitsHold() throws IOException {
        JsonNode both = json(quote("limit.price=10", "limit.price_with_tax=11"), ExitCode.NO_VALID_BUILD);
        assertThat(both.get("relaxations").get(0).get("keys").toString()).contains("limit.price\"", "limit.price_with_tax");
        JsonNode one = json(quote("limit.price=10", "limit.price_with_tax=5000"), ExitCode.NO_VALID_BUILD);
        assertThat(one.get("relaxations").get(0).get("keys").toString()).isEqualTo("[\"limit.price\"]");
    }

    @Test
    void aCheckedBuildIsHeldToIt() throws IOException {
        Path file = Files.writeString(folder.resolve("build.yaml"), "kind: build\ncatalog: shop\nplatform: WREN-2\nprocessor: H1-08\nprocessors: 1\n"
                + "cooling: WREN-HS-1\nsupply: RS-750\nsupply_count: 1\nmodules: { 1A1: M16 }\nlimit: { price_with_tax: 400 }\n");
        Run run = Run.of("check", file.toString());
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(run.out().replaceAll("\\s+", " ")).containsPattern("budget The price with MwSt is [0-9.]+ EUR; the request allows 400.00 EUR.");
    }
}
