package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

class UpgradeCommandTest {

    private static final String SLED = "scenarios/sled-in-place.yaml";
    private static final String SHOP = "catalogs/heronfold-yard";

    private static JsonNode answer(String... sets) throws IOException {
        Run run = run("json", sets);
        assertThat(run.err()).isEmpty();
        assertThat(Schemas.faults("upgrade-result", run.out())).as(run.out()).isEmpty();
        return new ObjectMapper().readTree(run.out());
    }

    private static Run run(String format, String... sets) {
        List<String> arguments = new ArrayList<>(List.of("upgrade", SLED, "--format", format));
        for (String set : sets) {
            arguments.addAll(List.of("--set", set));
        }
        return Run.of(arguments.toArray(String[]::new));
    }

    private static BigDecimal amount(JsonNode node, String key) {
        return node.get(key).decimalValue();
    }

    @Test
    void whatIsSpentIsTheSumOfItsShares() throws IOException {
        JsonNode answer = answer();
        assertThat(answer.get("status").asText()).isEqualTo("proved");
        BigDecimal spend = amount(answer, "spend");
        assertThat(amount(answer, "parts").add(amount(answer, "labour")).add(amount(answer, "licence")).subtract(amount(answer, "credit")))
                .isEqualByComparingTo(spend);
        BigDecimal lines = BigDecimal.ZERO;
        for (JsonNode line : answer.get("build").get("lines")) {
            lines = lines.add(amount(line, "total"));
        }
        assertThat(lines).isEqualByComparingTo(spend).isEqualByComparingTo(amount(answer.get("build"), "price"));
        assertThat(answer.get("build").get("lines")).filteredOn(line -> line.get("kind").asText().equals("credit")).isNotEmpty();
        JsonNode whole = answer.get("whole");
        assertThat(amount(whole, "price").subtract(amount(whole, "credit"))).isEqualByComparingTo(amount(whole, "spend"));
        assertThat(amount(whole, "spend").subtract(spend)).isEqualByComparingTo(amount(whole, "extra"));
        assertThat(whole.get("cheaper").asBoolean()).isEqualTo(amount(whole, "extra").signum() < 0);
    }

    @Test
    void theUpgradedMachinePassesItsCheck(@TempDir Path folder) throws IOException {
        JsonNode build = answer().get("build");
        String text = "kind: build\nplatform: %s\nprocessor: %s\nprocessors: %d\ncooling: %s\nmodules: %s\n".formatted(build.get("platform").asText(),
                build.get("processor").asText(), build.get("processors").asInt(), build.get("cooling").asText(), build.get("slots"))
                + "require: { cores: 32, memory_gb: 256, bandwidth_gbs: 120, processors: 2 }\nlimit: { power_w: 430, inlet_c: 27 }\n";
        Path file = Files.writeString(folder.resolve("after.yaml"), text);
        Run check = Run.of("check", file.toString(), "--catalog", SHOP, "--format", "json");
        assertThat(check.code()).as(check.out()).isEqualTo(ExitCode.DONE);
        JsonNode verdict = new ObjectMapper().readTree(check.out());
        for (String key : new String[] {"cores", "memory_gb", "memory_mts", "bandwidth_gbs", "throughput", "load_w"}) {
            assertThat(verdict.get(key)).as(key).isEqualTo(build.get(key));
        }
    }

    @Test
    void peopleReadWhatToDoAndWhatToMind() {
        Run text = run("text");
        assertThat(text.code()).isEqualTo(ExitCode.DONE);
        assertThat(text.out()).startsWith("sled-in-place: upgrade of 1 machine\nproved: the target cannot be reached for less\nto spend: ")
                .contains("bought whole: ", "What is paid for", "What is pulled, with what it fetches", "At the bench", "Take 2 heat sinks",
                        // ANSI/ESD S20.20 and IEC 61340-5-1
                        "3.5 x 10^7 ohm", "1 x 10^9 ohm", "local code", "qualified people", "manual");
        assertThat(text.out().indexOf("Before the machine is opened")).isLessThan(text.out().indexOf("At the bench"));
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        assertThat(run("csv").out().lines().findFirst()).hasValueSatisfying(header -> assertThat(header).startsWith("upgrade,status,currency,kind,sku"));
    }

    @Test
    void aMachineThatDoesIsLeftAlone() throws IOException {
        JsonNode answer = answer("require.cores=20", "require.memory_gb=128", "trade_in=0");
        assertThat(answer.get("spend").decimalValue()).isZero();
        assertThat(answer.get("misses")).isEmpty();
        assertThat(answer.get("work")).isEmpty();
        assertThat(answer.get("precautions")).isEmpty();
        assertThat(run("text", "require.cores=20", "require.memory_gb=128", "trade_in=0").out()).contains("nothing needs to change")
                .doesNotContain("At the bench");
    }

    @Test
    void withACreditItPaysToPullWhatIsNotNeeded() throws IOException {
        JsonNode answer = answer("require.cores=20", "require.memory_gb=64", "trade_in=0.9");
        assertThat(answer.get("misses")).isEmpty();
        assertThat(answer.get("spend").decimalValue()).isNegative();
        assertThat(answer.get("work")).hasSize(1);
        assertThat(answer.get("whole").get("cheaper").asBoolean()).isTrue();
        String text = run("text", "require.cores=20", "require.memory_gb=64", "trade_in=0.9").out();
        assertThat(text).startsWith("sled-in-place: upgrade of 1 machine\nbought whole: ")
                .containsSubsequence("\nproved: no upgrade costs less\nto spend: ", "\nBought whole\n", "\nThe machine after the upgrade\n");
    }

    @Test
    void nothingIsTakenBackForTheSamePartFromOnHand() throws IOException {
        JsonNode without = answer("require.cores=20", "require.memory_gb=64", "trade_in=0.9");
        JsonNode with = answer("require.cores=20", "require.memory_gb=64", "trade_in=0.9", "on_hand.NV4R16-24-21=8");
        assertThat(with.get("status").asText()).isEqualTo("proved");
        assertThat(with.get("credit")).isEqualTo(without.get("credit"));
        assertThat(with.get("spend")).isEqualTo(without.get("spend"));
        assertThat(with.get("build").get("lines")).noneMatch(line -> line.get("lot").asText().equals("on hand"));
        // Where all that stand stay, those on hand go in beside them.
        JsonNode more = answer("require.cores=20", "require.memory_gb=192", "trade_in=0.9", "on_hand.NV4R16-24-21=4");
        assertThat(more.get("build").get("modules").get("NV4R16-24-21").asInt()).isEqualTo(12);
        assertThat(more.get("build").get("lines")).filteredOn(line -> line.get("lot").asText().equals("on hand")).singleElement()
                .satisfies(line -> assertThat(line.get("quantity").asInt()).isEqualTo(4));
    }

    /** The drives stay where they are, but somebody has to do it. */
    @Test
    void whoMakesAVolumeAnewIsPaid(@TempDir Path folder) throws IOException {
        Path file = anotherLevel(folder);
        Run run = Run.of("upgrade", file.toString(), "--catalog", SHOP, "--format", "json");
        JsonNode answer = new ObjectMapper().readTree(run.out());
        assertThat(answer.get("spend").asText()).as(run.out()).isEqualTo("38.0");
        assertThat(answer.get("build").get("lines")).filteredOn(line -> line.get("kind").asText().equals("labour")).singleElement()
                .satisfies(line -> assertThat(line.get("total").asText()).isEqualTo("38.0"));
        assertThat(Run.of("upgrade", file.toString(), "--catalog", SHOP).out().replaceAll("\\s+", " ")).doesNotContain("nothing needs to change").contains("labour")
                .contains("Before the volumes are changed", "save what they hold", "Volume system: level 0 on front 1 and front 2, 480 GB usable. Set it up")
                .doesNotContain("Close the machine");
    }

    @Test
    void aVolumeIsMadeAnewAlsoWhereNobodyIsPaidForIt(@TempDir Path folder) throws IOException {
        Path shop = Folders.copy(Path.of(SHOP), folder.resolve("shop"));
        Path settings = shop.resolve("catalog.yaml");
        Files.writeString(settings, Files.readString(settings).replace("per_machine: 38.00", "per_machine: 0"));
        Path file = anotherLevel(folder);
        Run run = Run.of("upgrade", file.toString(), "--catalog", shop.toString(), "--format", "json");
        assertThat(Schemas.faults("upgrade-result", run.out())).as(run.out()).isEmpty();
        assertThat(new ObjectMapper().readTree(run.out()).get("spend").decimalValue()).as(run.out()).isZero();
        assertThat(Run.of("upgrade", file.toString(), "--catalog", shop.toString()).out()).doesNotContain("nothing needs to change")
                .contains("The machine after the upgrade", "Volume system: level 0 on front 1 and front 2");
        assertThat(Run.of("sheet", file.toString(), "--catalog", shop.toString()).out()).contains("Volumes", "Volume system: level 0 on front 1 and front 2");
    }

    private static Path anotherLevel(Path folder) throws IOException {
        return Files.writeString(folder.resolve("level.yaml"), """
                kind: upgrade
                build: { platform: WHEATEAR-R1, processor: B1-06, processors: 1, cooling: WHEATEAR-HS-A, supply: PS-460S, driver: onboard,
                  modules: { 1A1: FV3R8-24-10, 1B1: FV3R8-24-10, 1C1: FV3R8-24-10, 1D1: FV3R8-24-10 }, extras: { BLANK-LB1: 1 },
                  volumes: [ { name: system, level: 1, group: front, drives: [THS25-240R, THS25-240R] } ] }
                require: { storage: [ { name: system, usable_gb: 400, level: 0 } ] }
                """);
    }

    /** Asked for or not: speed, bandwidth, throughput and load are reported whenever they change, and only then. */
    @Test
    void whatChangesIsToldBeforeAndAfter() throws IOException {
        JsonNode answer = answer("require={ memory_gb: 512 }", "limit={}");
        List<String> told = new ArrayList<>();
        for (JsonNode figure : answer.get("figures")) {
            told.add(figure.get("figure").asText());
            boolean asked = !figure.get("least").isNull() || !figure.get("most").isNull();
            assertThat(asked || !figure.get("now").equals(figure.get("then"))).as(figure.toString()).isTrue();
        }
        JsonNode build = answer.get("build");
        assertThat(told).contains("memory-capacity", "load");
        for (JsonNode figure : answer.get("figures")) {
            String key = Map.of("memory-capacity", "usable_gb", "bandwidth", "bandwidth_gbs", "throughput", "throughput", "memory-speed", "memory_mts",
                    "load", "load_w").get(figure.get("figure").asText());
            assertThat(figure.get("then").decimalValue()).as(key).isEqualByComparingTo(build.get(key).decimalValue());
        }
        assertThat(run("text", "require={ memory_gb: 512 }", "limit={}").out()).containsPattern("\\nload +[0-9.]+ W +[0-9.]+ W\\n");
    }

    /** Without a workload work is the throughput, which is told once. */
    @Test
    void workIsToldWhereItChangesAskedForOrNot() throws IOException {
        JsonNode figures = answer("workload={parallel: 0.9, gb_per_unit: 0.01}").get("figures");
        assertThat(figures).anySatisfy(figure -> {
            assertThat(figure.get("figure").asText()).isEqualTo("work");
            assertThat(figure.get("now").decimalValue()).isNotEqualByComparingTo(figure.get("then").decimalValue());
        });
        assertThat(answer().get("figures")).noneSatisfy(figure -> assertThat(figure.get("figure").asText()).isEqualTo("work"));
    }

    @Test
    void aDayThatIsOverIsSaidOnceOfWhatIsInstalled() throws IOException {
        JsonNode misses = new ObjectMapper().readTree(Run.of("upgrade", SLED, "--set", "limit.by=2026-01-02", "--today", "2026-01-05", "--format", "json").out())
                .get("misses");
        assertThat(misses).filteredOn(miss -> miss.get("rule").asText().equals("lead-time")).singleElement().satisfies(miss ->
                assertThat(miss.get("message").asText()).isEqualTo("What is installed can be delivered on 2026-01-05; the request allows 2026-01-02."));
    }

    @Test
    void machinesShareOneStock() throws IOException {
        JsonNode answer = answer("machines=3");
        assertThat(answer.get("build").get("machines").asInt()).isEqualTo(3);
        int machines = 0;
        for (JsonNode work : answer.get("work")) {
            machines += work.get("machines").asInt();
        }
        assertThat(machines).isEqualTo(3);
        assertThat(amount(answer, "spend")).isGreaterThanOrEqualTo(amount(answer(), "spend").multiply(BigDecimal.valueOf(3)));
        assertThat(run("text", "machines=3").out()).contains("upgrade of 3 machines", "At the bench, each machine");
    }

    @Test
    void whatTheMachineBreaksByItselfIsShownAndSetRight() throws IOException {
        JsonNode answer = answer("build.processor=S2-18X");
        assertThat(answer.get("breaches")).extracting(breach -> breach.get("rule").asText()).containsExactly("heat-sink-rating");
        assertThat(answer.get("build").get("cooling").asText()).isNotEqualTo("FINCH-S4-HS68");
        assertThat(run("text", "build.processor=S2-18X").out()).contains("Rules that the machine breaks as it stands\n- heat-sink-rating: ");
    }

    @Test
    void whereNothingReachesTheTargetConflictsAreNamed() throws IOException {
        Run run = run("json", "limit.price=100");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        JsonNode answer = answer("limit.price=100");
        assertThat(answer.get("status").asText()).isEqualTo("impossible");
        assertThat(answer.get("conflicts")).isNotEmpty();
        // What would suffice is said in money to spend: the limit goes up to what the upgrade costs without it.
        assertThat(answer.get("relaxations")).anySatisfy(relaxation -> {
            assertThat(relaxation.get("keys")).extracting(JsonNode::asText).containsExactly("limit.price");
            assertThat(relaxation.get("changes").get(0).get("to").asText()).isEqualTo(amount(answer(), "spend").toPlainString());
        });
        assertThat(run("text", "limit.price=100").out()).contains("impossible: no upgrade of this machine reaches the target", "What conflicts");
    }

    @Test
    void everyFaultOfTheFileIsListed() {
        Run run = run("json", "trade_in=30", "build.cooling=NOTHING", "objective=most-memory");
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(3);
        assertThat(Run.of("upgrade", "scenarios/render-node.yaml").code()).isEqualTo(ExitCode.INPUT_FAULT);
    }
}
