package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.ArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.report.Schemas;

class QuoteCommandTest {

    private static final String SMALL = "scenarios/small-web-node.yaml";

    /** Of an objective that is no money the figure stands beside the price. */
    @Test
    void whatAWishCostsIsSaidInTheFigureOfTheObjective() {
        String text = Run.of("quote", "scenarios/most-for-the-budget.yaml", "--steps", "--set", "alternatives=1", "--today", "2026-11-18").out();
        assertThat(text.replaceAll(" +", " ")).contains("What each wish costs (each dropped by itself)\nwithout throughput change EUR\ndelivery within 7 days 931.8 1104.69\n");
    }

    @Test
    void aRequestIsAnsweredInEveryFormat() throws IOException {
        Run json = Run.of("quote", SMALL, "--format", "json");
        assertThat(json.err()).isEmpty();
        assertThat(json.code()).isEqualTo(ExitCode.DONE);
        assertThat(Schemas.faults("quote-result", json.out())).isEmpty();
        JsonNode answer = new ObjectMapper().readTree(json.out());
        assertThat(answer.get("request").asText()).isEqualTo("small-web-node");
        assertThat(answer.get("status").asText()).isEqualTo("proved");
        JsonNode best = answer.get("alternatives").get(0);
        assertThat(best.get("cores").asInt()).isGreaterThanOrEqualTo(6);
        assertThat(best.get("load_w").asDouble()).isLessThanOrEqualTo(200);

        Run text = Run.of("quote", SMALL);
        assertThat(text.out()).startsWith("small-web-node: 1 machine, cheapest\nproved: no cheaper valid build exists\n")
                .contains("total ", best.get("platform").asText());
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));

        Run csv = Run.of("quote", SMALL, "--format", "csv");
        assertThat(csv.out().lines()).hasSize(1 + answer.get("alternatives").size());
    }

    @ParameterizedTest
    @ValueSource(strings = {SMALL, "scenarios/file-server.yaml", "scenarios/ledger-database.yaml", "scenarios/accelerator-node.yaml"})
    void aFoundBuildPassesItsOwnCheck(String file, @TempDir Path folder) throws IOException {
        JsonNode best = new ObjectMapper().readTree(Run.of("quote", file, "--format", "json").out()).get("alternatives").get(0);
        StringBuilder build = new StringBuilder("kind: build\nprocessors: %d\n".formatted(best.get("processors").asInt()));
        for (String key : List.of("platform", "processor", "cooling", "supply", "driver")) {
            if (!best.get(key).isNull()) {
                build.append(key).append(": ").append(best.get(key).asText()).append('\n');
            }
        }
        ArrayNode volumes = best.get("volumes").deepCopy();
        volumes.forEach(volume -> ((ObjectNode) volume).remove("usable_gb"));
        build.append("volumes: ").append(volumes).append("\nmodules: ").append(best.get("slots")).append("\ncards: ").append(best.get("cards"))
                .append("\nextras: ").append(best.get("extras")).append('\n');
        Path found = Files.writeString(folder.resolve("found.yaml"), build + asked(file));
        Run check = Run.of("check", found.toString(), "--catalog", "catalogs/heronfold-yard", "--format", "json");
        assertThat(check.err()).isEmpty();
        assertThat(check.code()).as(check.out()).isEqualTo(ExitCode.DONE);
        JsonNode verdict = new ObjectMapper().readTree(check.out());
        for (String key : new String[] {"price", "cores", "memory_gb", "memory_mts", "bandwidth_gbs", "throughput", "load_w", "wall_w", "lead_days",
                "volumes", "driver", "cards", "extras"}) {
            assertThat(verdict.get(key)).as(key).isEqualTo(best.get(key));
        }
    }

    /** What a request asks of a machine, as a build file has it. */
    private static String asked(String request) throws IOException {
        String text = Files.readString(Path.of(request));
        return text.substring(text.indexOf("require:"), text.indexOf("objective:")).replaceAll("(?m)^extras:.*\n", "");
    }

    @Test
    void aChangeOfTheRequestIsAnswered() throws IOException {
        Run run = Run.of("quote", SMALL, "--set", "require.cores=8", "--set", "alternatives=1", "--format", "json");
        JsonNode answer = new ObjectMapper().readTree(run.out());
        assertThat(answer.get("alternatives")).hasSize(1);
        assertThat(answer.get("alternatives").get(0).get("cores").asInt()).isGreaterThanOrEqualTo(8);
    }

    @Test
    void anImpossibleRequestEndsWithFourAndItsResult() {
        Run run = Run.of("quote", SMALL, "--set", "limit.price=1", "--format", "json");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(Schemas.faults("quote-result", run.out())).isEmpty();
        assertThat(run.out()).contains("\"status\": \"impossible\"", "\"alternatives\": []");
        assertThat(Run.of("quote", SMALL, "--set", "limit.price=1").out()).contains("impossible: no valid build exists");
    }

    @Test
    void everyWrongChangeIsListed() {
        Run run = Run.of("quote", SMALL, "--set", "require.coers=8", "--set", "limit.price=much");
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.err().lines()).hasSize(2).allSatisfy(line -> assertThat(line).startsWith("--set "));
        assertThat(run.out()).isEmpty();
    }

    @Test
    void stepsStandInEveryFormat() throws IOException {
        Run json = Run.of("quote", SMALL, "--steps", "--format", "json");
        assertThat(Schemas.faults("quote-result", json.out())).isEmpty();
        JsonNode answer = new ObjectMapper().readTree(json.out());
        JsonNode steps = answer.get("steps");
        assertThat(steps.get("requirements")).extracting(curve -> curve.get("key").asText()).containsExactly("require.cores", "require.memory_gb");
        for (JsonNode curve : steps.get("requirements")) {
            assertThat(curve.get("steps")).filteredOn(step -> step.get("asked").asBoolean()).hasSize(1)
                    .allSatisfy(step -> assertThat(step.get("price")).isEqualTo(answer.get("best")));
        }
        // Each step is what the same request with that figure is answered with, and beyond it the next is.
        JsonNode memory = steps.get("requirements").get(1).get("steps");
        for (int i = 0; i + 1 < memory.size(); i++) {
            double upTo = memory.get(i).get("up_to").asDouble();
            assertThat(priceOf("require.memory_gb=" + upTo)).isEqualTo(memory.get(i).get("price").asDouble());
            assertThat(priceOf("require.memory_gb=" + (upTo + 0.5))).isEqualTo(memory.get(i + 1).get("price").asDouble());
        }
        assertThat(steps.get("parts")).hasSize((int) answer.get("alternatives").get(0).get("lines").findValuesAsText("kind").stream()
                .filter("part"::equals).count());

        Run text = Run.of("quote", SMALL, "--steps");
        assertThat(text.out()).contains("What more or less would cost", "asked: 32", "stays the best");
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
    }

    private static double priceOf(String change) throws IOException {
        return new ObjectMapper().readTree(Run.of("quote", SMALL, "--set", change, "--format", "json").out()).get("best").asDouble();
    }

    @Test
    void whereNothingIsFoundThereAreNoSteps() throws IOException {
        Run run = Run.of("quote", SMALL, "--steps", "--set", "limit.price=1", "--format", "json");
        assertThat(run.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(Schemas.faults("quote-result", run.out())).isEmpty();
        assertThat(new ObjectMapper().readTree(run.out()).get("steps").get("notes")).hasSize(1);
        assertThat(new ObjectMapper().readTree(Run.of("quote", SMALL, "--format", "json").out()).get("steps").isNull()).isTrue();
    }

    @Test
    void whatConflictsAndWhatWouldDoAreSaid() throws IOException {
        String file = "scenarios/too-much-for-the-money.yaml";
        Run text = Run.of("quote", file);
        assertThat(text.code()).isEqualTo(ExitCode.NO_VALID_BUILD);
        assertThat(text.out()).contains("\nWhat conflicts, whatever else gives way\n- ", "\nWays out, all else as asked\n- ");
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        Run json = Run.of("quote", file, "--format", "json");
        assertThat(Schemas.faults("quote-result", json.out())).isEmpty();
        JsonNode answer = new ObjectMapper().readTree(json.out());
        assertThat(answer.get("conflicts")).isNotEmpty();
        JsonNode way = answer.get("relaxations").get(0);
        List<String> arguments = new ArrayList<>(List.of("quote", file, "--format", "json"));
        way.get("changes").forEach(change -> arguments.addAll(List.of("--set", change.get("key").asText() + "=" + change.get("to").asText())));
        Run changed = Run.of(arguments.toArray(String[]::new));
        assertThat(changed.code()).isEqualTo(ExitCode.DONE);
        assertThat(new ObjectMapper().readTree(changed.out()).get("best")).isEqualTo(way.get("price"));
    }

    @Test
    void whyNotIsAnsweredPartByPart() throws IOException {
        String[] asked = {"quote", "scenarios/render-node.yaml", "--why-not", "S2-22X", "--why-not", "S1-06", "--why-not", "S2-18"};
        Run text = Run.of(asked);
        assertThat(text.out()).contains("\nWhy not S2-22X\n- The best build with it is ", "\nWhy not S1-06\n- No valid build holds it.\n",
                "\nWhy not S2-18\n- ");
        assertThat(text.out().lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        List<String> arguments = new ArrayList<>(List.of(asked));
        arguments.addAll(List.of("--format", "json"));
        Run json = Run.of(arguments.toArray(String[]::new));
        assertThat(Schemas.faults("quote-result", json.out())).isEmpty();
        JsonNode answers = new ObjectMapper().readTree(json.out()).get("why_not");
        assertThat(answers.findValuesAsText("verdict")).containsExactly("beaten", "barred", "chosen");
        assertThat(answers.get(0).get("extra").decimalValue()).isPositive();
        assertThat(answers.get(1).get("rules")).isNotEmpty();
        assertThat(Run.of("quote", "scenarios/render-node.yaml", "--why-not", "S2-99").code()).isEqualTo(ExitCode.USAGE);
    }
}
