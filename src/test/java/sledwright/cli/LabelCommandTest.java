package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.label.SpdImage;
import sledwright.report.Schemas;

class LabelCommandTest {

    private static final Path SHOP = Path.of("src/test/resources/shop");
    private static final String LABEL = "16GB 2Rx4 PC4-2400T-RA1-11";

    @Test
    void textSaysWhatEachFieldMeans() {
        Run run = Run.of("label", LABEL);
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).startsWith(LABEL + "\n").contains("17-17-17 cycles", "logical_ranks  2\n", "power_w        (empty)\n", "- power_w: left empty");
        assertThat(run.out()).doesNotContain("from memory");
        assertThat(Run.of("label", "16GB", "2Rx4", "PC4-2400T-RA1-11").out()).isEqualTo(run.out());
        assertThat(Run.of("label", "pc4 2400t ra1 11 16gb 2rx4").out()).contains("as the standard prints it: " + LABEL);
        assertThat(Run.of("label", "PC5-4800B-R").out()).contains("1.1 V *\n", "* from memory of the standard\n");
    }

    @Test
    void jsonFollowsItsSchema() throws IOException {
        Run run = Run.of("label", LABEL, "PC5-4800B", "--format", "json");
        assertThat(Schemas.faults("label-result", run.out())).isEmpty();
        JsonNode modules = new ObjectMapper().readTree(run.out()).get("modules");
        assertThat(modules).hasSize(2);
        assertThat(modules.get(0).get("row").get("speed_mts").intValue()).isEqualTo(2400);
        assertThat(modules.get(0).get("row").get("power_w").isNull()).isTrue();
        assertThat(modules.get(1).get("row").get("type").isNull()).isTrue();
    }

    /** Once the watts are filled in, the rows are read as they stand. */
    @Test
    void aCatalogueReadsTheRows(@TempDir Path folder) throws IOException {
        Path list = Files.write(folder.resolve("labels.txt"), List.of("# pulled today", LABEL, "", "8GB 2Rx4 PC3L-12800R-11-13-E2", LABEL,
                "128GB 2S4Rx4 PC4-2666V-LA1-12", "32GB 2Rx8 PC5-4800B-EA0-1010-XT"));
        Run run = Run.of("label", "--file", list.toString(), "--format", "csv");
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.err()).contains("left empty in each row: power_w");
        List<String> lines = run.out().lines().toList();
        assertThat(lines).hasSize(5);
        copy(SHOP, folder.resolve("shop"));
        Path memory = folder.resolve("shop/memory.csv");
        assertThat(lines.get(0)).isEqualTo(Files.readAllLines(memory).get(0));
        Files.write(memory, Stream.concat(Files.readAllLines(memory).stream(), lines.stream().skip(1).map(line -> line + "4")).toList());
        Catalog catalog = CatalogReader.read(folder.resolve("shop"));
        MemoryModule stacked = (MemoryModule) catalog.part("128GB-2S4Rx4-PC4-2666V-LA1-12").orElseThrow();
        assertThat(stacked).isEqualTo(new MemoryModule("128GB-2S4Rx4-PC4-2666V-LA1-12", "128GB 2S4Rx4 PC4-2666V-LA1-12", "DDR4",
                new MemoryModule.Kind(ModuleType.THREE_DS, 128, 2, 4), 8, new MemoryModule.Rating(2666, 1.2, 4)));
        Files.write(memory, lines);
        assertThat(Run.of("catalog", folder.resolve("shop").toString()).err()).contains("memory.csv:2: power_w is empty");
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(from.relativize(file).toString()));
            }
        }
    }

    @Test
    void whatIsPassedOverIsSaidInEveryFormat() throws IOException {
        String text = LABEL + " Yarrow Memory";
        assertThat(Run.of("label", text).out()).startsWith(text + "\nas the standard prints it: " + LABEL)
                .contains("ignored, since it is not a field of a label: YARROW MEMORY\n");
        assertThat(new ObjectMapper().readTree(Run.of("label", text, "--format", "json").out()).at("/modules/0/passed_over").toString())
                .isEqualTo("[\"YARROW\",\"MEMORY\"]");
        Run csv = Run.of("label", text, "--format", "csv");
        assertThat(csv.out()).isEqualTo(Run.of("label", LABEL, "--format", "csv").out());
        assertThat(csv.err()).contains("sledwright: ignored in " + text + ": YARROW MEMORY\n");
    }

    @Test
    void gapsOfARowAreNamed() {
        assertThat(Run.of("label", "PC4-2400T-R", "--format", "csv").err())
                .contains("row of PC4-2400T-R: capacity_gb, ranks, device_width, power_w\n");
    }

    @Test
    void everyFaultIsListedWithItsPlace(@TempDir Path folder) throws IOException {
        Path list = Files.write(folder.resolve("labels.txt"), List.of(LABEL, "16GB 2Rz4 PC4-2400X-RA1", "", "hello"));
        Path spd = Files.write(folder.resolve("spd.bin"), new byte[] {1, 2, 3});
        Run run = Run.of("label", "15GB 2Rx4 PC4-2400T", "--file", list.toString(), "--spd", spd.toString(), "--spd", folder.resolve("no").toString());
        assertThat(run.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines().map(line -> line.replace(folder.toString(), "F"))).satisfiesExactly(
                line -> assertThat(line).startsWith("label \"15GB 2Rx4 PC4-2400T\": capacity \"15GB\": "),
                line -> assertThat(line).startsWith("F/labels.txt:2: ranks x width"),
                line -> assertThat(line).startsWith("F/labels.txt:2: bin"),
                line -> assertThat(line).startsWith("F/labels.txt:4: word"),
                line -> assertThat(line).startsWith("F/labels.txt:4: speed is missing"),
                line -> assertThat(line).startsWith("F/spd.bin: holds 3 bytes"),
                line -> assertThat(line).isEqualTo("F/no: there is no such file"));
    }

    @Test
    void whatCannotBeReadIsPassedOverIfAsked(@TempDir Path folder) throws IOException {
        Path list = Files.write(folder.resolve("labels.txt"), List.of("16GB 2Rz4 PC4-2400T-R", LABEL, "hello"));
        Run run = Run.of("label", "--file", list.toString(), "--spd", folder.resolve("no").toString(), "--skip-faulty", "--format", "csv");
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out().lines().skip(1)).singleElement().asString().contains(LABEL);
        assertThat(run.err()).contains("sledwright: skipped: " + list + ":1: ranks x width \"2RZ4\": ", "skipped: " + list + ":3: word \"HELLO\": ",
                "skipped: " + folder.resolve("no") + ": there is no such file\n");
        Run none = Run.of("label", "hello", "--skip-faulty");
        assertThat(none.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(none.out()).isEmpty();
        assertThat(none.err()).contains("word \"HELLO\": ").doesNotContain("skipped");
    }

    @Test
    void anSpdGivesARowWithItsPartNumber(@TempDir Path folder) throws IOException {
        Path binary = Files.write(folder.resolve("spd.bin"), SpdImage.ddr4().bytes());
        Path dump = Files.writeString(folder.resolve("spd.txt"), SpdImage.hexdump(SpdImage.ddr4().bytes()));
        Run run = Run.of("label", "--spd", binary.toString(), "--format", "csv");
        assertThat(run.out()).endsWith("\nDEMO-16,\"16GB 2Rx4 PC4-2400T-RA1-11\",DDR4,RDIMM,16,2,2,4,2400,1.2,\n");
        assertThat(Run.of("label", "--spd", dump.toString(), "--format", "csv").out()).isEqualTo(run.out());
        assertThat(Run.of("label", "--spd", binary.toString()).out()).contains("byte 12: 0x08", "as the standard prints it: 16GB 2Rx4");
    }

    /** Two part numbers alike on unlike modules are both kept, for the catalogue to refuse. */
    @Test
    void rowsThatDifferAreAllKept(@TempDir Path folder) throws IOException {
        byte[] other = SpdImage.ddr4().withRanks(1).bytes();
        Path one = Files.write(folder.resolve("one.bin"), SpdImage.ddr4().bytes());
        Path two = Files.write(folder.resolve("two.bin"), other);
        Run run = Run.of("label", "--spd", one.toString(), "--spd", two.toString(), "--spd", one.toString(), "--format", "csv");
        assertThat(run.out().lines().skip(1).map(line -> line.split(",")[4])).containsExactly("16", "8");
    }

    @Test
    void nothingToReadIsWrong(@TempDir Path folder) throws IOException {
        Path empty = Files.write(folder.resolve("empty.txt"), List.of("# none", ""));
        assertThat(Run.of("label", "--file", empty.toString()).err()).isEqualTo(empty + ": holds no label; it would have one on each line\n");
        assertThat(Run.of("label").code()).isEqualTo(ExitCode.USAGE);
        assertThat(Run.of("label", "").code()).isEqualTo(ExitCode.INPUT_FAULT);
    }
}
