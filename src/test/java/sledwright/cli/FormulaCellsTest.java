package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.label.SpdImage;
import sledwright.samples.Folders;

/**
 * Whatever the texts of a catalogue and of a request begin with, no cell that any command writes runs as a formula in a spreadsheet. Which
 * beginnings are dangerous: OWASP, "CSV Injection" (from memory).
 */
class FormulaCellsTest {

    /** Every text of the sample shop that people choose, the longer before those that they begin with. */
    private static final Pattern TEXTS = Pattern.compile("WREN-HS-[12]|WREN-2|REED-S|REED-F4|RS-750|RS-1200|HS1|Heath [12]|DIMM [12]");
    private static final Pattern FREE_TEXTS = Pattern.compile("Reedmere Stores|Wren two-socket machine|low heat sink|deep heat sink|"
            + "Reed frame for four sleds|1200 W supply|outermost");
    private static final List<String> TEXT_COLUMNS = List.of("sku", "description", "socket", "lot", "supplier");
    private static final Pattern FIGURE = Pattern.compile("-?\\d+(\\.\\d+)?");

    @TempDir
    Path work;

    /** How a file has the beginning, and what skus have of it, which may hold no blanks but spaces. */
    private record Start(String text, String ofSkus) {

        static Start of(String text) {
            return new Start(text, text.isBlank() ? "" : text);
        }

        String yaml(String rest) {
            return '"' + text.replace("\t", "\\t").replace("\r", "\\r") + rest + '"';
        }

        String sku(String rest) {
            return '"' + ofSkus + rest + '"';
        }

        /** As a list has it that comes back from a spreadsheet. */
        String exported(String rest) {
            return '"' + (ofSkus.isEmpty() ? "" : "'") + ofSkus + rest + '"';
        }
    }

    private static Path shop(Start start, Path folder) throws IOException {
        Folders.copy(Folders.SHOP, folder);
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String text = Files.readString(file);
                Files.writeString(file, file.toString().endsWith(".csv") ? table(start, text) : TEXTS.matcher(
                        FREE_TEXTS.matcher(text).replaceAll(found -> Matcher.quoteReplacement(start.yaml(found.group()))))
                        .replaceAll(found -> start.sku(found.group())));
            }
        }
        return folder;
    }

    private static String table(Start start, String text) throws IOException {
        List<List<String>> rows = rows(text);
        List<String> header = rows.get(0);
        boolean processors = header.contains("socket");
        StringBuilder table = new StringBuilder(String.join(",", header)).append('\n');
        for (List<String> row : rows.subList(1, rows.size())) {
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < row.size(); i++) {
                boolean chosen = TEXT_COLUMNS.contains(header.get(i)) || processors && header.get(i).equals("generation");
                cells.add(chosen && !row.get(i).isEmpty() ? start.sku(row.get(i)) : row.get(i));
            }
            table.append(String.join(",", cells)).append('\n');
        }
        return table.toString();
    }

    private static List<List<String>> rows(String csv) throws IOException {
        try (MappingIterator<List<String>> rows = new CsvMapper().enable(CsvParser.Feature.WRAP_AS_ARRAY).readerForListOf(String.class)
                .readValues(csv)) {
            return rows.readAll();
        }
    }

    private List<List<String>> commands(Start start, Path shop) throws IOException {
        String require = "require: { cores: 8, memory_gb: 32 }\n";
        String quote = file("quote.yaml", "kind: quote\nname: " + start.yaml("quote") + "\ncustomer: [" + start.yaml("Reeve") + "]\n" + require
                + "energy: { years: 4, price_per_kwh: 0.30 }\n");
        String machine = "{ platform: %s, processor: %s, processors: 1, cooling: %s, supply: %s, supply_count: 2, modules: { %%s: %s } }".formatted(
                start.sku("WREN-2"), start.sku("H1-08"), start.sku("WREN-HS-1"), start.sku("RS-750"), start.sku("M16"));
        String upgrade = file("upgrade.yaml", "kind: upgrade\nname: " + start.yaml("upgrade") + "\nbuild: " + machine.formatted("1A1") + "\n"
                + "require: { memory_gb: 32 }\n");
        String broken = file("broken.yaml", "kind: build\nname: %s\nplatform: %s\nprocessor: %s\nprocessors: 2\ncooling: %s\nmodules: { 1A2: %s }\n"
                .formatted(start.yaml("build"), start.sku("WREN-2"), start.sku("H2-16"), start.sku("WREN-HS-1"), start.sku("M16")));
        String sled = file("sled.yaml", "kind: build\nname: %s\nplatform: %s\nprocessor: %s\nprocessors: 1\ncooling: %s\nmodules: { %s: %s }\n"
                .formatted(start.yaml("sled"), start.sku("REED-S"), start.sku("H1-08"), start.sku("WREN-HS-1"), start.sku("DIMM 1"), start.sku("M16")));
        String order = file("order.yaml", "kind: order\nname: %s\ndelivery_charge: 10\nlines:\n  %s:\n    machines: 2\n    %s".formatted(
                start.yaml("order"), start.yaml("line"), require));
        file("supply.csv", "sku,supplier,unit_cost,available\n%s,%s,5.00,200\n%s,%s,12.00,200\n".formatted(start.sku("M16"), start.sku("Quarry"),
                start.sku("H1-08"), start.sku("Quarry")));
        String restock = file("restock.yaml", ("kind: restock\nname: %s\nsupply: supply.csv\nhorizon_months: 2\nbudget: 1500\nsamples: 10\nclasses:\n"
                + "  - name: %s\n    demand: { poisson: 3 }\n    %s    margin: 60\n").formatted(start.yaml("restock"), start.yaml("class"), require));
        // A label has no free text; the memory of a module has its part number.
        String module = Files.write(work.resolve("spd.bin"), new SpdImage(4, 'R', 2, 4, 1, 4096, 2400, 1.2, 13_750, 13_750, 'A', 1,
                start.ofSkus() + "PART-1").bytes()).toString();
        String list = file("list.csv", "sku,lot,supplier,condition,unit_price,available\n%s,%s,%s,used,23,7\n%s,%s,%s,used,24,7\n".formatted(
                start.exported("H1-08"), start.exported("A3"), start.exported("Fen"), start.exported("H1-10"), start.exported("A99"),
                start.exported("Fen")));
        Path older = Folders.copy(shop, work.resolve("older"));
        Path offers = older.resolve("offers.csv");
        Files.writeString(offers, Files.readString(offers).replace("310.00", "311.00"));
        String in = shop.toString();
        return List.of(
                List.of("quote", quote, "--catalog", in, "--format", "csv"),
                List.of("compare", quote, "--catalog", in, "--format", "csv"),
                List.of("compare", quote, "--catalog", in, "--format", "xlsx"),
                List.of("upgrade", upgrade, "--catalog", in, "--format", "csv"),
                List.of("check", broken, "--catalog", in, "--format", "csv"),
                List.of("sheet", sled, "--catalog", in, "--format", "csv"),
                List.of("order", order, "--catalog", in, "--format", "csv"),
                List.of("restock", restock, "--catalog", in, "--format", "csv"),
                List.of("restock", restock, "--catalog", in, "--format", "xlsx"),
                List.of("label", "--spd", module, "--format", "csv"),
                List.of("catalog", in, "--format", "csv"),
                List.of("catalog", "diff", older.toString(), in, quote, "--format", "csv"),
                List.of("catalog", "import", list, "--as", "offers", "--into", in, "--format", "csv"),
                List.of("catalog", "export", in, "--as", "offers", "--format", "csv"),
                List.of("catalog", "export", in, "--as", "memory", "--format", "csv"),
                List.of("catalog", "export", in, "--as", "processors", "--format", "csv"),
                List.of("catalog", "export", in, "--as", "offers", "--format", "xlsx"),
                List.of("catalog", "export", in, "--as", "memory", "--format", "xlsx"),
                List.of("catalog", "export", in, "--as", "processors", "--format", "xlsx"));
    }

    private String file(String name, String text) throws IOException {
        return Files.writeString(work.resolve(name), text).toString();
    }

    @ParameterizedTest
    @ValueSource(strings = {"=", "+", "-", "@", "\t", "\r", "'="})
    void noCellRunsAsAFormula(String text) throws IOException {
        Start start = Start.of(text);
        int guarded = 0;
        for (List<String> words : commands(start, shop(start, work.resolve("shop")))) {
            Path result = work.resolve("result");
            Files.deleteIfExists(result);
            Run run = Run.of(Stream.concat(words.stream(), Stream.of("--output", result.toString())).toArray(String[]::new));
            assertThat(run.code()).as("%s: %s", words, run.err()).isIn(ExitCode.DONE, ExitCode.NO_VALID_BUILD);
            if (words.contains("xlsx")) {
                assertNoFormula(words, Files.readAllBytes(result));
            } else {
                guarded += guarded(words, Files.readString(result));
            }
        }
        assertThat(guarded).as("cells that had to be guarded").isGreaterThan(text.isBlank() ? 2 : 20);
    }

    /** How many cells have an apostrophe before what would run. */
    private static int guarded(List<String> words, String csv) throws IOException {
        int guarded = 0;
        for (List<String> row : rows(csv)) {
            for (String cell : row) {
                boolean runs = !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0;
                assertThat(runs && !FIGURE.matcher(cell).matches()).as("%s: %s", words, cell).isFalse();
                guarded += cell.startsWith("'") ? 1 : 0;
            }
        }
        return guarded;
    }

    private static void assertNoFormula(List<String> words, byte[] workbook) throws IOException {
        List<String> read = new ArrayList<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                String xml = new String(in.readAllBytes(), StandardCharsets.UTF_8);
                if (entry.getName().startsWith("xl/worksheets/sheet")) {
                    read.add(entry.getName());
                    // ECMA-376 part 1, 18.3.1.40: a formula stands in an element f; a shared string is never one.
                    assertThat(xml).as("%s: %s", words, entry.getName()).doesNotContainPattern("<f[ >/]").contains("t=\"s\"");
                }
            }
        }
        assertThat(read).as(words.toString()).isNotEmpty();
    }
}
