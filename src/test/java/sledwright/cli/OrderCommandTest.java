package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

class OrderCommandTest {

    private static final String SHOP = "src/test/resources/shop";

    /** Two lines on the small shop: sleds in a frame that is there, and boxes. */
    private static final String ORDER = """
            kind: order
            name: two lines
            delivery_charge: 10
            on_hand: { REED-F4: 1 }
            lines:
              web:
                machines: 3
                platforms: [REED-S]
                require: { cores: 8, memory_gb: 32 }
                limit: { lead_days: 5 }
              data:
                machines: 2
                platforms: [WREN-2]
                require: { cores: 16, memory_gb: 64 }
                limit: { lead_days: 5 }
                licence: { per_core: 2 }
                priority: 3
            """;

    @TempDir
    Path folder;

    private Run run(String format, String... sets) throws IOException {
        Path file = Files.writeString(folder.resolve("order.yaml"), ORDER);
        List<String> arguments = new ArrayList<>(List.of("order", file.toString(), "--catalog", SHOP, "--format", format));
        for (String set : sets) {
            arguments.addAll(List.of("--set", set));
        }
        return Run.of(arguments.toArray(String[]::new));
    }

    /** The order takes more of a lot than any machine or line, and what its units cost the shop goes by that, as their price does. */
    @Test
    void whatALotCostsIsThatOfAllUnitsOfTheOrder() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        Files.writeString(shop.resolve("offers.csv"), Files.readString(shop.resolve("offers.csv")).replace("19.00,16,60,2,12.25", "19.00,10,60,2,11.75"));
        Path file = Files.writeString(folder.resolve("order.yaml"), ORDER);
        Run json = Run.of("order", file.toString(), "--catalog", shop.toString(), "--format", "json", "--set", "lines.web.machines=4");
        Set<String> costs = new TreeSet<>();
        new ObjectMapper().readTree(json.out()).findParents("lot").stream().filter(line -> line.get("lot").asText().equals("A6"))
                .forEach(line -> costs.add(line.get("unit_price").asText() + " of which " + line.get("unit_cost").asText()));
        assertThat(costs).as(json.out()).containsExactly("19.0 of which 11.75");
    }

    private JsonNode answer(int code, String... sets) throws IOException {
        Run run = run("json", sets);
        assertThat(run.code()).as(run.err()).isEqualTo(code);
        assertThat(Schemas.faults("order-result", run.out())).as(run.out()).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    private static BigDecimal sum(JsonNode nodes, String key) {
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode node : nodes) {
            sum = sum.add(node.get(key).decimalValue());
        }
        return sum;
    }

    private static BigDecimal amount(JsonNode node, String key) {
        return node.get(key).decimalValue();
    }

    @Test
    void everyAmountAddsUp() throws IOException {
        JsonNode answer = answer(ExitCode.DONE);
        assertThat(answer.get("delivered").asInt()).isEqualTo(5);
        assertThat(amount(answer, "parts").add(amount(answer, "labour")).add(amount(answer, "licence")).add(amount(answer, "delivery")))
                .isEqualByComparingTo(amount(answer, "price"));
        assertThat(amount(answer, "best")).isEqualByComparingTo(amount(answer, "price"));
        assertThat(sum(answer.get("lines"), "price").add(sum(answer.get("enclosures"), "price")).add(amount(answer, "delivery")))
                .isEqualByComparingTo(amount(answer, "price"));
        assertThat(sum(answer.get("picks"), "total")).isEqualByComparingTo(amount(answer, "parts"));
        assertThat(sum(answer.get("suppliers"), "parts")).isEqualByComparingTo(amount(answer, "parts"));
        assertThat(sum(answer.get("suppliers"), "delivery")).isEqualByComparingTo(amount(answer, "delivery"));
        // Two boxes of two sockets with eight cores at 2.00 each.
        assertThat(amount(answer, "licence")).isEqualByComparingTo("64.00");
        for (JsonNode line : answer.get("lines")) {
            assertThat(sum(line.get("builds"), "price")).isEqualByComparingTo(amount(line, "price"));
            assertThat(sum(line.get("builds"), "machines").intValue()).isEqualTo(line.get("delivered").asInt());
            for (JsonNode build : line.get("builds")) {
                assertThat(sum(build.get("lines"), "total")).isEqualByComparingTo(amount(build, "price"));
            }
        }
    }

    @Test
    void aDeliveryMayCostMoreThanTheMachines() throws IOException {
        JsonNode answer = answer(ExitCode.DONE, "delivery_charge=10000000");
        assertThat(answer.get("status").textValue()).isEqualTo("proved");
        assertThat(answer.get("delivered").asInt()).isEqualTo(5);
        assertThat(answer.get("suppliers").size()).isEqualTo(2);
        assertThat(amount(answer, "delivery")).isEqualByComparingTo("20000000");
    }

    @Test
    void whatALineForbidsIsNotInItsEnclosuresEither() throws IOException {
        JsonNode asked = answer(ExitCode.DONE);
        String supply = asked.get("enclosures").get(0).get("supply").textValue();
        JsonNode answer = answer(ExitCode.NO_VALID_BUILD, "lines.web.forbid=[REED-F4]");
        assertThat(answer.get("enclosures")).isEmpty();
        assertThat(answer.get("delivered").asInt()).isEqualTo(2);
        Run without = run("json", "lines.web.forbid=[" + supply + "]");
        JsonNode other = new ObjectMapper().readTree(without.out());
        assertThat(other.get("enclosures")).as(without.out()).noneMatch(enclosure -> enclosure.get("supply").textValue().equals(supply));
    }

    @Test
    void machinesAndEnclosuresTakeWhatIsPicked() throws IOException {
        JsonNode answer = answer(ExitCode.DONE, "lines.web.machines=4", "lines.data.machines=3");
        Map<String, Integer> taken = new HashMap<>();
        Map<String, String> prices = new HashMap<>();
        for (JsonNode line : answer.get("lines")) {
            int next = 1;
            for (JsonNode build : line.get("builds")) {
                for (JsonNode picked : build.get("picked")) {
                    assertThat(picked.get("first").asInt()).isEqualTo(next);
                    next = picked.get("last").asInt() + 1;
                    add(taken, prices, picked.get("lines"), next - picked.get("first").asInt());
                }
            }
            assertThat(next - 1).isEqualTo(line.get("delivered").asInt());
        }
        Set<String> housed = new TreeSet<>();
        for (JsonNode enclosure : answer.get("enclosures")) {
            add(taken, prices, enclosure.get("lines"), 1);
            enclosure.get("sleds").forEach(sled -> assertThat(housed.add(sled.get("line").asText() + " " + sled.get("machine").asInt())).isTrue());
        }
        assertThat(housed).containsExactly("web 1", "web 2", "web 3", "web 4");
        for (JsonNode pick : answer.get("picks")) {
            String lot = pick.get("sku").asText() + " " + pick.get("lot").asText();
            assertThat(taken.remove(lot)).as(lot).isEqualTo(pick.get("quantity").asInt());
            assertThat(prices.get(lot)).as("price of " + lot + " by what the whole order takes").isEqualTo(pick.get("unit_price").asText());
        }
        assertThat(taken).isEmpty();
    }

    private static void add(Map<String, Integer> taken, Map<String, String> prices, JsonNode lines, int times) {
        for (JsonNode line : lines) {
            String lot = line.get("sku").asText() + " " + line.get("lot").asText();
            taken.merge(lot, line.get("quantity").asInt() * times, Integer::sum);
            assertThat(prices.computeIfAbsent(lot, first -> line.get("unit_price").asText())).isEqualTo(line.get("unit_price").asText());
        }
    }

    @Test
    void peopleReadTheSame() throws IOException {
        Run text = run("text");
        assertThat(text.code()).isEqualTo(ExitCode.DONE);
        assertThat(text.out()).startsWith("two lines: 5 machines on 2 lines\n").contains("\nprice: " + answer(ExitCode.DONE).get("price").decimalValue().setScale(2) + " EUR",
                "delivery\n20.00 by 2 suppliers)", "\nLines\n", "\nweb: 3 machines\n", "\ndata: 2 machines\n", "Enclosure 1: REED-F4", "\nParts to pick, by lot\n", "\nWho delivers\n");
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        // Not standard error, where a busy machine may show progress.
        assertThat(run("text").out()).isEqualTo(text.out());
    }

    @Test
    void theTableHasEveryUnitAndAddsUp() throws IOException {
        Run csv = run("csv");
        List<String> rows = csv.out().lines().toList();
        assertThat(rows.get(0)).isEqualTo("request,status,currency,kind,line,machine,build,enclosure,bay,sku,description,lot,supplier,condition,lead_days,slots,"
                + "unit_cost,quantity,unit_price,total");
        BigDecimal sum = rows.stream().skip(1).map(row -> new BigDecimal(row.substring(row.lastIndexOf(',') + 1))).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(sum).isEqualByComparingTo(amount(answer(ExitCode.DONE), "price"));
        assertThat(rows).anySatisfy(row -> assertThat(row).contains(",part,web,3,1,1,3,M16,").contains(",\"DIMM 1; DIMM 2\",12.25,2,"));
        assertThat(rows.stream().filter(row -> row.contains(",delivery,"))).hasSize(2);
    }

    @Test
    void whereStockIsShortItSaysWhatIsLacking() throws IOException {
        // Four boxes are in stock, and the boxes come first.
        JsonNode answer = answer(ExitCode.NO_VALID_BUILD, "lines.data.machines=6");
        assertThat(answer.get("status").asText()).isEqualTo("short");
        assertThat(answer.get("lines").get(1).get("missing").asInt()).isEqualTo(2);
        assertThat(answer.get("shortage").get("most_proved").asBoolean()).isTrue();
        assertThat(answer.get("shortage").get("lacks")).anySatisfy(lack -> {
            assertThat(lack.get("sku").asText()).isEqualTo("WREN-2");
            assertThat(lack.get("units").asInt()).isEqualTo(2);
            assertThat(lack.get("by_line").toString()).isEqualTo("{\"data\":2}");
        });
        assertThat(run("text", "lines.data.machines=6").out()).contains("short: 7 of 9 machines can be delivered; proved: no order delivers more",
                "price of what is delivered: ", "Units to add to the stock so that all can be delivered\n");
    }

    @Test
    void aLineThatCannotBeIsExplained() throws IOException {
        JsonNode answer = answer(ExitCode.NO_VALID_BUILD, "lines.web.require.cores=12");
        assertThat(answer.get("lines").get(0).get("impossible").asBoolean()).isTrue();
        assertThat(answer.get("lines").get(0).get("conflicts")).isNotEmpty();
        assertThat(answer.get("lines").get(1).get("impossible").asBoolean()).isFalse();
        assertThat(answer.get("lines").get(1).get("missing").asInt()).isZero();
        assertThat(run("text", "lines.web.require.cores=12").out()).contains("Why not one machine of web can be built\n- At least 12 cores");
        JsonNode nothing = answer(ExitCode.NO_VALID_BUILD, "lines.web.require.cores=12", "lines.data.require.cores=64");
        assertThat(nothing.get("status").asText()).isEqualTo("impossible");
        assertThat(nothing.get("best").isNull()).isTrue();
    }

    @Test
    void outOfTimeIsNotImpossible() throws IOException {
        Path file = Files.writeString(folder.resolve("order.yaml"), ORDER);
        Run run = Run.of("order", file.toString(), "--catalog", SHOP, "--time-limit", "0.000001", "--format", "json");
        assertThat(Schemas.faults("order-result", run.out())).as(run.out()).isEmpty();
        assertThat(new ObjectMapper().readTree(run.out()).get("status").asText()).isIn("short", "best-found");
    }

    @Test
    void orderOfTheLargestNumberEnds() throws IOException {
        JsonNode answer = answer(ExitCode.NO_VALID_BUILD, "lines.web.machines=100000");
        assertThat(answer.get("machines").asInt()).isEqualTo(100_002);
        // The frame has four bays, and no other is for sale.
        assertThat(answer.get("lines").get(0).get("delivered").asInt()).isEqualTo(4);
    }

    @Test
    void faultsAreListed() throws IOException {
        Path file = Files.writeString(folder.resolve("empty.yaml"), "kind: order\nlines: []\n");
        Run run = Run.of("order", file.toString(), "--catalog", SHOP);
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).startsWith(file + ":2: lines must hold at least one line");
        assertThat(run("text", "lines.web.machines=0", "lines.data.objective=most-memory").err().lines()).hasSize(2);
        assertThat(Run.of("order", "scenarios/render-node.yaml").code()).isEqualTo(ExitCode.INPUT_FAULT);
    }

    @Test
    void everyKeyIsDescribed() throws IOException {
        String described = Files.readString(Path.of("docs/json.md"));
        Set<String> keys = new TreeSet<>();
        collect(answer(ExitCode.DONE), keys);
        collect(answer(ExitCode.NO_VALID_BUILD, "lines.data.machines=6"), keys);
        assertThat(keys).hasSizeGreaterThan(60).allSatisfy(key -> assertThat(described).contains("`" + key + "`"));
    }

    private static void collect(JsonNode node, Set<String> keys) {
        node.properties().forEach(entry -> {
            keys.add(entry.getKey());
            if (!Set.of("modules", "slots", "by_line").contains(entry.getKey())) {
                collect(entry.getValue(), keys);
            }
        });
        if (node.isArray()) {
            node.forEach(child -> collect(child, keys));
        }
    }

    /** An order of the demo that takes seconds; the interrupt comes when the first line of progress does. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void anInterruptGivesTheBestSoFar() throws Exception {
        // A shell that runs tests in the background may have them ignore interrupts, which Java then leaves at that.
        assumeTrue(new ProcessBuilder("env", "--default-signal=INT", "true").start().waitFor() == 0);
        Path out = folder.resolve("out.json");
        Process process = new ProcessBuilder("env", "--default-signal=INT", Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:+UseSerialGC", "-cp",
                System.getProperty("java.class.path"), "sledwright.cli.Main", "order", "scenarios/sled-rack-order.yaml", "--time-limit", "600",
                "--format", "json").redirectOutput(out.toFile()).start();
        try (BufferedReader err = process.errorReader()) {
            String first = err.readLine();
            assertThat(first).startsWith("sledwright: ").contains(" s: ");
            assertThat(new ProcessBuilder("kill", "-INT", String.valueOf(process.pid())).start().waitFor()).isZero();
            assertThat(process.waitFor(1, TimeUnit.MINUTES)).as("ended within a minute").isTrue();
            assertThat(err.lines()).anySatisfy(line -> assertThat(line).contains("stopping with the best found"));
        } finally {
            process.destroyForcibly();
        }
        JsonNode answer = new ObjectMapper().readTree(out.toFile());
        assertThat(Schemas.faults("order-result", Files.readString(out))).isEmpty();
        assertThat(process.exitValue()).isEqualTo(answer.get("shortage").isNull() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD);
    }
}
