package sledwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Sheet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.samples.Folders;

/**
 * What a customer of a shop that speaks German reads has no word of another language: each is a word of the German texts, or one of the data,
 * which here have none that a reader could take for English.
 */
class GermanPapersTest {

    private static final Path TEXTS = Path.of("src/main/resources/sledwright/report/page/messages_de.properties");
    private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
    /** Names of parts and units, which are the same in every language. */
    private static final Set<String> UNITS = Set.of("GB", "MT", "GHz", "Gbit", "EUR", "HDD", "SSD", "SATA", "SAS", "NVMe", "kWh", "Mbit");

    @TempDir
    private Path folder;
    private Set<String> known;

    /** The small shop, its descriptions without words, and every word that may be read in its papers. */
    @BeforeEach
    void shop() throws IOException {
        Path shop = Folders.copy(Folders.SHOP, folder.resolve("shop"));
        try (Stream<Path> files = Files.walk(shop)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String text = Files.readString(file);
                Files.writeString(file, file.toString().endsWith(".csv") && !file.endsWith("offers.csv") ? undescribed(text)
                        : text.replaceAll("\\bname: [^,}\\n]+", "name: Qq 7"));
            }
        }
        Path catalog = shop.resolve("catalog.yaml");
        Files.writeString(catalog, Files.readString(catalog).replaceFirst("(?m)^name: .*$", "name: Qq 7")
                + "document: { locale: de, tax_percent: 19, tax_name: MwSt, valid_days: 20, contact: [qq@qq.example] }\n");
        known = new TreeSet<>(UNITS);
        known.addAll(List.of("Qq", "qq", "example", "survey", "MwSt", "data", "CUSTOMER"));
        Arrays.stream(Month.values()).forEach(month -> known.add(month.getDisplayName(TextStyle.FULL, Locale.GERMAN)));
        Files.readAllLines(TEXTS).stream().filter(line -> !line.startsWith("#") && line.contains("="))
                .forEach(line -> words(line.substring(line.indexOf('=') + 1).replaceAll("%\\d\\$s|%s", " ")).forEach(this::learn));
        try (Stream<Path> files = Files.walk(shop)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".csv")).toList()) {
                Files.readAllLines(file).stream().skip(1).forEach(line -> words(line.substring(0, line.indexOf(','))).forEach(this::learn));
            }
        }
    }

    /** A sentence begins with a capital. */
    private void learn(String word) {
        known.add(word);
        known.add(word.substring(0, 1).toUpperCase(Locale.GERMAN) + word.substring(1));
    }

    private static String undescribed(String csv) {
        return csv.lines().map(line -> line.startsWith("sku,") ? line : line.replaceFirst(",(\"[^\"]*\"|[^,]*),", ",Qq 7,")).collect(Collectors.joining("\n", "", "\n"));
    }

    private static List<String> words(String text) {
        return WORD.matcher(text).results().map(MatchResult::group).toList();
    }

    private String said(String command, String yaml, String format) throws IOException {
        Path file = Files.writeString(folder.resolve("survey.yaml"), "kind: " + (command.equals("compare") ? "quote" : command)
                + "\ncatalog: shop\n" + yaml.replace('|', '\n') + "\n");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Run run = Run.into(out, Map.of(), false, command, file.toString(), "--for", "customer", "--today", "2025-04-02", "--format", format);
        assertThat(run.code()).as(run.err()).isIn(ExitCode.DONE, ExitCode.NO_VALID_BUILD);
        if (format.equals("xlsx")) {
            return cells(out.toByteArray());
        }
        String text = out.toString(StandardCharsets.UTF_8);
        return !format.equals("html") ? text : text.replaceAll("(?s)<(style|script)\\b.*?</\\1>", " ")
                .replaceAll("(?:aria-label|title|alt|placeholder)=\"([^\"]*)\"", ">$1<").replaceAll("<[^>]*>", " ").replaceAll("&#?\\w+;", " ");
    }

    private static String cells(byte[] bytes) throws IOException {
        StringBuilder all = new StringBuilder();
        try (ReadableWorkbook book = new ReadableWorkbook(new ByteArrayInputStream(bytes))) {
            for (Sheet sheet : book.getSheets().toList()) {
                all.append(sheet.getName()).append('\n');
                sheet.read().forEach(row -> row.stream().filter(cell -> cell != null && cell.getType() == CellType.STRING)
                        .forEach(cell -> all.append(cell.getText()).append('\n')));
            }
        }
        return all.toString();
    }

    private void assertGerman(String command, String yaml, String format) throws IOException {
        String said = said(command, yaml, format);
        assertThat(words(said)).as(said).hasSizeGreaterThan(20);
        assertThat(words(said).stream().filter(word -> !known.contains(word)).distinct()).as(said).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "require: { cores: 16, memory_gb: 64, processors: 2 }|limit: { lead_days: 9, power_w: 900, inlet_c: 25, mains_v: 230 }|alternatives: 4",
        "require: { cores: 999, memory_gb: 64 }|limit: { conditions: [new], altitude_m: 900, inlet_c: 44 }",
        "machines: 40|require: { cores: 8, memory_gb: 64, gb_per_core: 4 }|limit: { price: 90000, lead_days: 9 }",
        "require: { cores: 16, memory_gb: 900, memory_mode: mirrored, throughput: 100, base_ghz: 9, spare_slots: 9 }|limit: { price: 9, lead_days: 0 }",
        "require: { cores: 8, storage: [ { name: data, usable_gb: 400, level: 1, hot_spares: 1 } ], cards: [ { kind: network, ports: 2, port_gbit: 10 } ] }|extras: { RAILS: 1 }",
        "require: { storage: [ { name: data, usable_gb: 90000, level: 6 } ], cards: [ { kind: network, ports: 2, count: 5 } ] }|limit: { by: 2025-04-02, price_with_tax: 300 }|forbid: [M16]|use: [M08]",
        "require: { cores: 8, balanced: true, one_module_part: true, memory_gb: 24 }|workload: { parallel: 0.9, gb_per_unit: 2 }|objective: most-work|limit: { price: 3000 }",
        "require: { cores: 8 }|price_points: 3|discount_percent: 5|customer: [survey]",
    })
    void aQuoteHasNoOtherLanguage(String yaml) throws IOException {
        assertGerman("quote", yaml, "text");
        assertGerman("quote", yaml, "html");
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "delivery_charge: 7|lines:|  data: { machines: 2, require: { cores: 16 } }|  survey: { require: { memory_gb: 64 } }",
        "lines:|  data: { machines: 6, require: { cores: 8 }, limit: { lead_days: 0 } }|  survey: { require: { cores: 999 } }",
    })
    void anOrderHasNoOtherLanguage(String yaml) throws IOException {
        assertGerman("order", yaml, "text");
        assertGerman("order", yaml, "html");
        assertGerman("order", yaml, "xlsx");
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "require: { memory_gb: 32 }|trade_in: 0.5", "machines: 2|require: { cores: 8, memory_gb: 8 }", "require: { cores: 999 }",
        "require: { memory_gb: 128, processors: 2 }|limit: { power_w: 900 }|trade_in: 0.3",
    })
    void anUpgradeHasNoOtherLanguage(String yaml) throws IOException {
        assertGerman("upgrade", "build: { platform: WREN-2, processor: H1-08, processors: 1, cooling: WREN-HS-1, supply: RS-750, supply_count: 2, modules: { 1A1: M08 } }|" + yaml, "text");
    }

    @Test
    void whatIsSaidOfOneIsSingular() throws IOException {
        assertThat(said("compare", "require: { cores: 8 }|energy: { price_per_kwh: 0.3, years: 1 }", "html")).contains("1 Jahr, ")
                .doesNotContain("1 Jahre");
        assertThat(said("order", "lines: { a: { machines: 1, require: { cores: 8 } }, b: { machines: 1, require: { cores: 999 } } }", "text"))
                .contains("Fehlend: 1 von b.");
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "require: { cores: 8, memory_gb: 16, storage: [ { name: data, usable_gb: 400, level: 1 } ] }|limit: { price: 900 }|customer: [survey]|discount_percent: 5",
        "machines: 2|require: { cores: 8 }|limit: { price: 1500 }|energy: { price_per_kwh: 0.3, years: 4 }|licence: { per_core: 1 }",
        "require: { cores: 999 }",
    })
    void aComparisonHasNoOtherLanguage(String yaml) throws IOException {
        assertGerman("compare", yaml, "text");
        assertGerman("compare", yaml, "html");
        assertGerman("compare", yaml, "xlsx");
        said("compare", yaml, "svg").lines().filter(line -> line.contains("aria-label")).forEach(line -> assertThat(words(line.replaceAll(".*aria-label=\"([^\"]*)\".*", "$1")))
                .allMatch(known::contains));
    }
}
