package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.samples.Folders;

/** Amounts that no sum can hold are faults that say what would be right, and with what they say every sum is exact. */
class GreatAmountsTest {

    private static final Pattern RIGHT = Pattern.compile("can come to more than can be counted; it must be at most ([\\d.]+)( EUR)? here");
    private static final ObjectMapper JSON = new ObjectMapper().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);
    private static final String STOCK = "on_hand: { WREN-2: 1000000, H1-08: 1000000, H2-16: 1000000, M16: 1000000, WREN-HS-1: 1000000, RS-750: 1000000 }\n";

    @TempDir
    Path work;

    private static Run run(String command, Path file) {
        return Run.of(command, file.toString(), "--catalog", Folders.SHOP.toString(), "--format", "json");
    }

    private Path file(String text) throws IOException {
        return Files.writeString(work.resolve("request.yaml"), text);
    }

    /** The answer once the one amount in question, which stands as {@code AMOUNT}, is what the fault calls right. */
    private JsonNode mended(String command, String key, String text, String amount) throws IOException {
        Run tooMuch = run(command, file(text.replace("AMOUNT", amount)));
        assertThat(tooMuch.code()).as(tooMuch.err()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(tooMuch.out()).isEmpty();
        assertThat(tooMuch.err().lines()).singleElement().asString().contains("request.yaml:", key + " \"" + amount + "\": ");
        Matcher right = RIGHT.matcher(tooMuch.err());
        assertThat(right.find()).as(tooMuch.err()).isTrue();
        assertThat(new BigDecimal(right.group(1))).isPositive();
        Run sound = run(command, file(text.replace("AMOUNT", right.group(1))));
        assertThat(sound.code()).as(sound.err()).isEqualTo(ExitCode.DONE);
        return JSON.readTree(sound.out());
    }

    private static void assertExact(JsonNode build, BigDecimal price) {
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode line : build.get("lines")) {
            assertThat(line.get("total").decimalValue().signum()).as(line.toString()).isNotNegative();
            sum = sum.add(line.get("total").decimalValue());
        }
        assertThat(sum).isEqualByComparingTo(price);
    }

    @ParameterizedTest
    @CsvSource({"per_core, 100000", "per_processor, 100000", "per_core, 1000", "per_processor, 20000"})
    void licenceFees(String fee, int machines) throws IOException {
        JsonNode answer = mended("quote", "licence." + fee, "kind: quote\nmachines: %d\nrequire: { cores: 8, memory_gb: 16 }\n%slicence: { %s: AMOUNT }\n"
                .formatted(machines, STOCK, fee), "1000000000");
        assertThat(answer.get("status").textValue()).isEqualTo("proved");
        assertThat(answer.get("best").decimalValue()).isGreaterThan(new BigDecimal("1e9"));
        for (JsonNode build : answer.get("alternatives")) {
            assertExact(build, build.get("price").decimalValue());
        }
    }

    @ParameterizedTest
    @CsvSource({"core", "gb", "gbs", "throughput"})
    void worths(String of) throws IOException {
        JsonNode answer = mended("quote", "worth." + of, "kind: quote\nmachines: 50000\nrequire: { cores: 8, memory_gb: 16 }\n" + STOCK
                + "objective: best-value\nworth: { " + of + ": AMOUNT }\n", "1000000000");
        assertThat(answer.get("status").textValue()).isEqualTo("proved");
        JsonNode best = answer.get("alternatives").get(0);
        assertExact(best, best.get("price").decimalValue());
        assertThat(best.get("price_less_worth").decimalValue()).isLessThan(best.get("price").decimalValue());
    }

    @Test
    void theEnergyOfManyYears() throws IOException {
        JsonNode answer = mended("compare", "energy.price_per_kwh",
                "kind: quote\nrequire: { cores: 8, memory_gb: 16 }\nenergy: { years: 100, price_per_kwh: AMOUNT }\n", "1000000000");
        assertThat(answer.get("curves")).isNotEmpty();
    }

    @Test
    void aChargeForEachPartOfManyLines() throws IOException {
        Run run = run("order", file("kind: order\nmodule_part_charge: 1000000000\nlines:\n" + IntStream.range(0, 100)
                .mapToObj("  - { name: l%d, platforms: [WREN-2], require: { cores: 8 } }\n"::formatted).collect(Collectors.joining())));
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err().lines()).singleElement().asString().contains(
                "request.yaml:2: module_part_charge \"1000000000\": it can come to more than can be counted; it must be at most 312500000.00 EUR here");
    }

    @Test
    void theLinesOfAnOrderAddUp() throws IOException {
        String line = "  %s: { machines: 100, require: { cores: 8 }, licence: { per_core: %d } }\n";
        String half = line.formatted("a", 20_000_000) + line.formatted("b", 20_000_000);
        assertThat(run("order", file("kind: order\nlines:\n" + line.formatted("a", 20_000_000))).err()).doesNotContain("counted", "defect");
        Run run = run("order", file("kind: order\nlines:\n" + half));
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).contains("request.yaml:4: lines.b.licence.per_core \"20000000\": it can come to more than can be counted");
    }

    @ParameterizedTest
    @CsvSource({"margin", "price_accepted", "loss"})
    void whatExpectedOrdersBring(String amount) throws IOException {
        Files.writeString(work.resolve("supply.csv"), "sku,supplier,unit_cost,available\nM16,Quarry Parts,20.00,200\n");
        JsonNode answer = mended("restock", "classes." + amount, ("kind: restock\nsupply: supply.csv\nhorizon_months: 2\nbudget: 1500\nsamples: 10\nclasses:\n"
                + "  - name: c\n    demand: { normal: { mean: 3, sd: 1 } }\n    require: { memory_gb: 64 }\n    %s%s: AMOUNT\n")
                .formatted(amount.equals("loss") ? "margin: 60\n    " : "", amount), "100000000000000");
        assertThat(answer.get("cost").decimalValue()).isNotNegative();
        assertThat(answer.toString()).doesNotContain("92233720368547758");
    }

    @Test
    void aSupplyThatCannotBeCounted() throws IOException {
        Files.writeString(work.resolve("supply.csv"), "sku,supplier,unit_cost,available\nH1-08,Quarry,1,1\nM16,Quarry,1000000000,10000000\nM64,Quarry,1000000000,10000000\n");
        Run run = run("restock", file("kind: restock\nsupply: supply.csv\nhorizon_months: 2\nclasses: [{ name: c, demand: { poisson: 3 }, margin: 5 }]\n"));
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err().lines()).singleElement().asString()
                .contains("supply.csv:3: unit_cost \"1000000000\": up to here the supply comes to more than can be counted; lower available or unit_cost");
    }

    @Test
    void partsAndLabourOfManyMachines() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("offers.csv"), Files.readString(shop.resolve("offers.csv")).replace("M16,A7,Marsh Trade,new,44,", "M16,A7,Marsh Trade,new,1000000000,"));
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(shop.resolve("catalog.yaml")).replace("per_machine: 45", "per_machine: 1000000000"));
        Path file = file("kind: quote\nmachines: 500\nrequire: { cores: 8 }\n");
        Run run = Run.of("quote", file.toString(), "--catalog", shop.toString());
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err()).contains("request.yaml:2: machines \"500\": the parts, at the catalogue's dearest, can come to more than can be counted; it must be at most 7 here",
                "request.yaml:2: machines \"500\": the labour, at the catalogue's dearest, can come to more than can be counted; it must be at most 124 here");
        Run ranked = Run.of("quote", file.toString(), "--catalog", shop.toString(), "--set", "machines=1", "--set", "objective=best-value");
        assertThat(ranked.code()).as(ranked.err()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(ranked.err()).contains("machines \"1\": the parts, at the catalogue's dearest, can come to more than can be counted; not even one can be"
                + " counted; nothing is dearer than M16 in lot A7 at 1000000000.00 EUR: is that mistyped?");
    }
}
