package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.report.Schemas;
import sledwright.samples.Folders;

/** The commands below {@code catalog}. */
class CatalogCommandsTest {

    private static final String DEMO = "catalogs/heronfold-yard";

    @TempDir
    Path work;

    @ParameterizedTest
    @CsvSource({"offers, csv", "offers, xlsx", "memory, csv", "memory, xlsx", "processors, csv", "processors, xlsx"})
    void whatIsExportedImportsBack(String table, String format) {
        Path file = work.resolve("table." + format);
        assertThat(Run.of("catalog", "export", DEMO, "--as", table, "--format", format, "--output", file.toString()).err()).isEmpty();
        Run back = Run.of("catalog", "import", file.toString(), "--as", table, "--into", DEMO, "--format", "json");
        assertThat(back.err()).isEmpty();
        assertThat(back.code()).isEqualTo(ExitCode.DONE);
        assertThat(back.out()).contains("\"added\": 0", "\"changed\": 0", "\"changes\": []", "\"not_taken\": []").doesNotContain("\"unchanged\": 0");
        assertThat(Schemas.faults("import-result", back.out())).isEmpty();
    }

    @Test
    void noExportRunsAsAFormula() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("memory.csv"), Files.readString(shop.resolve("memory.csv")).replace("8 GB 1Rx8", "=HYPERLINK(1)")
                .replace("16 GB 2Rx4", "'@x"));
        Run csv = Run.of("catalog", "export", shop.toString(), "--as", "memory");
        assertThat(csv.out()).contains("M08,'=HYPERLINK(1),", "M16,''@x,");
        Path list = Files.writeString(work.resolve("list.csv"), csv.out());
        assertThat(Run.of("catalog", "import", list.toString(), "--as", "memory", "--into", shop.toString()).out())
                .contains("0 added, 0 changed, 4 unchanged, 0 not taken");
    }

    @Test
    void aWorkbookHasTheSameBytesEachTime() {
        assertThat(workbook()).isNotEmpty().isEqualTo(workbook());
    }

    private static byte[] workbook() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run.into(out, Map.of(), false, "catalog", "export", DEMO, "--as", "memory", "--format", "xlsx");
        return out.toByteArray();
    }

    @Test
    void importPreviewsThenWrites() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Path list = Files.writeString(work.resolve("list.csv"), "sku,lot,unit_price\nM16,A7,40\nM16,A7,41\n");
        String[] words = {"catalog", "import", list.toString(), "--as", "offers", "--into", shop.toString()};
        Run preview = Run.of(words);
        assertThat(preview.code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(preview.out().replaceAll("\\s+", " ")).contains("0 added, 1 changed, 0 unchanged, 1 not taken", "M16, A7, 1: unit_price 44 -> 40", "stands twice",
                "nothing was written; put the rows right, or take the others with --apply --skip-faulty");
        assertThat(with(words, "--apply").code()).isEqualTo(ExitCode.INPUT_FAULT);
        assertThat(shop.resolve("offers.csv")).hasSameTextualContentAs(Folders.SHOP.resolve("offers.csv"));
        Run applied = with(words, "--apply", "--skip-faulty", "--format", "json");
        assertThat(applied.code()).isEqualTo(ExitCode.DONE);
        assertThat(Schemas.faults("import-result", applied.out())).isEmpty();
        assertThat(applied.out()).contains("\"written\": true", "offers.csv.bak\"");
        assertThat(Files.readString(shop.resolve("offers.csv"))).contains("M16,A7,Marsh Trade,new,40,");
        assertThat(with(words, "--skip-faulty", "--format", "csv").out()).isEqualTo("""
                change,line,key,column,before,after,message
                "not taken",3,,,,,"sku M16, lot A7, min_quantity 1 stands twice, first at line 2"
                """);
    }

    @Test
    void whatAnImportDidIsSaid() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Path list = Files.writeString(work.resolve("list.csv"), "sku,lot,unit_price\nM16,A7,40\n");
        String[] words = {"catalog", "import", list.toString(), "--as", "offers", "--into", shop.toString()};
        assertThat(Run.of(words).out()).endsWith("\nnothing was written yet; --apply writes it\n");
        assertThat(with(words, "--apply").out().replaceAll("\\s+", " ")).endsWith(" written; the file as it was is kept as %s ".formatted(shop.resolve("offers.csv.bak")));
        assertThat(with(words, "--apply").out()).endsWith("\nnothing to write\n");
        for (int copy = 2; copy <= 1000; copy++) {
            Files.createFile(shop.resolve("offers.csv.bak" + copy));
        }
        Files.writeString(list, "sku,lot,unit_price\nM16,A7,41\n");
        Run full = with(words, "--apply");
        assertThat(full.code()).isEqualTo(ExitCode.USAGE);
        assertThat(full.err()).isEqualTo("sledwright: %1$s could not be written (1000 old copies stand beside %1$s; move them away); it is as it was.%n"
                .formatted(shop.resolve("offers.csv")));
    }

    private static Run with(String[] words, String... more) {
        return Run.of(Stream.concat(Stream.of(words), Stream.of(more)).toArray(String[]::new));
    }

    @Test
    void differencesReachTheRequests() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Path later = Folders.copy(Folders.SHOP, work.resolve("later"));
        Path request = Files.writeString(work.resolve("request.yaml"), "kind: quote\nname: node\nrequire: { cores: 8, memory_gb: 16 }\n");
        Path other = Files.writeString(work.resolve("other.yaml"), "kind: quote\nname: wren\nplatforms: [WREN-2]\nrequire: { cores: 16 }\nforbid: [M64]\n");
        String[] words = {"catalog", "diff", shop.toString(), later.toString(), request.toString(), other.toString()};
        assertThat(Run.of(words).out()).contains("the same parts, prices and stock", "- node: ", "as before; the same build");

        String offers = Files.readString(later.resolve("offers.csv"));
        Files.writeString(later.resolve("offers.csv"), offers.replace("REED-S,A2,Marsh Trade,used,150,1,9", "REED-S,A2,Marsh Trade,used,120,1,8")
                .replaceFirst("M64,.*\n", "") + "M08,A30,Marsh Trade,used,6,1,10,,\n");
        Files.writeString(later.resolve("memory.csv"), Files.readString(later.resolve("memory.csv")).replaceFirst("M64,.*\n", ""));
        Run text = Run.of(words);
        assertThat(text.err()).isEmpty();
        assertThat(text.out()).contains("M64   removed", "REED-S  A2", "150.00 -> 120.00  -20.0 %    9 -> 8", "- node: ", "another build",
                "now:", "forbid \"M64\": is no");
        Run json = with(words, "--format", "json");
        assertThat(Schemas.faults("difference-result", json.out())).isEmpty();
        assertThat(json.out()).contains("\"status\": \"unreadable\"", "\"build_changed\": true", "\"price_changed\": true");
        assertThat(with(words, "--format", "csv").out().lines()).contains("part,removed,M64,,,,,,,,,",
                "offer,changed,REED-S,A2,1,150.00,120.00,9,8,0,0,", "offer,added,M08,A30,1,,6.00,,10,,0,", "offer,removed,M64,A8,1,78.00,,12,,0,,");
    }

    @Test
    void whatElseIsOtherwiseIsSaid() throws IOException {
        Path later = Folders.copy(Folders.SHOP, work.resolve("later"));
        Path offers = later.resolve("offers.csv");
        Files.writeString(offers, Files.readString(offers).replace("REED-S,A2,Marsh Trade,used,150,1,9,0,", "REED-S,A2,Marsh Trade,refurbished,150,1,9,0,99")
                .replace("WREN-2,A1,Marsh Trade,used,310.00,1,4,0,220.00", "WREN-2,A1,Fen Surplus,used,310.00,1,4,0,221.00"));
        Path shop = later.resolve("catalog.yaml");
        Files.writeString(shop, Files.readString(shop).replaceFirst("per_machine: [0-9.]+", "per_machine: 77") + "\nhouse: { stale_after_days: 3 }\n");
        String[] words = {"catalog", "diff", Folders.SHOP.toString(), later.toString()};
        assertThat(Run.of(words).out()).contains("otherwise in catalog.yaml: labour, house\n", "  condition used ->\n", "none -> 99.00\n", "  supplier Marsh Trade\n");
        Run json = with(words, "--format", "json");
        assertThat(Schemas.faults("difference-result", json.out())).isEmpty();
        assertThat(json.out()).contains("\"unit_cost\": 221.00", "\"unit_cost\": null", "\"valid_until\": null");
        assertThat(with(words, "--format", "csv").out().lines()).contains("setting,changed,labour,,,,,,,,,",
                "offer,changed,WREN-2,A1,1,310.00,310.00,4,4,0,0,\"supplier Marsh Trade -> Fen Surplus; cost 220.00 -> 221.00\"");
    }

    /** What drives and cards a board takes is a fact of it. */
    @Test
    void aBoardWithOtherBaysIsAnother() throws IOException {
        Path later = Folders.copy(Path.of(DEMO), work.resolve("later"));
        Path board = later.resolve("platforms/lapwing-r2.yaml");
        Files.writeString(board, Files.readString(board).replace("count: 12, form_factors", "count: 10, form_factors"));
        assertThat(Run.of("catalog", "diff", DEMO, later.toString(), "--format", "csv").out()).endsWith("\npart,changed,LAPWING-R2,,,,,,,,,\n");
    }

    @Test
    void aRequestThatIsNoneOfAQuoteIsRefusedForThatAlone() throws IOException {
        Path order = Files.writeString(work.resolve("order.yaml"), "kind: order\nlines: { web: { require: { cores: 4 } } }\n");
        assertThat(Run.of("catalog", "diff", DEMO, DEMO, order.toString()).err()).isEqualTo(order + ":1: kind \"order\": must be quote here\n");
    }

    @Test
    void aPriceThatChangedAloneIsCalledThat() throws IOException {
        Path later = Folders.copy(Folders.SHOP, work.resolve("later"));
        Files.writeString(later.resolve("offers.csv"), Files.readString(later.resolve("offers.csv")).replace("REED-S,A2,Marsh Trade,used,150,", "REED-S,A2,Marsh Trade,used,149,"));
        Run csv = Run.of("catalog", "diff", Folders.SHOP.toString(), later.toString(), "src/test/resources/sentences/files/quote.yaml", "--format", "csv");
        assertThat(csv.out().lines()).contains("request,\"another price\",node,,,251.50,250.50,,,,,");
    }

    @Test
    void cataloguesOfTwoCurrenciesAreNotCompared() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
        Files.writeString(shop.resolve("catalog.yaml"), Files.readString(shop.resolve("catalog.yaml")).replace("EUR", "CHF"));
        Run run = Run.of("catalog", "diff", Folders.SHOP.toString(), shop.toString());
        assertThat(run.code()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err()).isEqualTo("sledwright: amounts of %s are in EUR, those of %s in CHF; they cannot be compared.%n".formatted(Folders.SHOP, shop));
    }

    @Test
    void wordsThatAreMissingOrWrongAreNamed() {
        assertThat(Run.of("catalog", "import", "x.csv", "--into", DEMO).err()).contains("--as");
        assertThat(Run.of("catalog", "import", "x.csv", "--as", "offer", "--into", DEMO).err()).contains("'offer' must be one of offers, memory, processors");
        assertThat(Run.of("catalog", "import", "x.csv", "--as", "offers").err()).contains("name the catalogue's folder");
        assertThat(List.of(Run.of("catalog", "import", "x.csv", "--as", "offers").code(), Run.of("catalog", "export", DEMO, "--as", "offers", "--catalog", DEMO).code()))
                .containsOnly(ExitCode.USAGE);
    }
}
