package sledwright.catalog.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.dhatim.fastexcel.VisibilityState;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogTable;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.samples.Folders;

class CatalogImportTest {

    @TempDir
    Path work;
    private Path shop;

    @BeforeEach
    void copyShop() throws IOException {
        shop = Folders.copy(Folders.SHOP, work.resolve("shop"));
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(work.resolve(name), text);
    }

    private Path workbook(String name, Consumer<Workbook> content) throws IOException {
        Path file = work.resolve(name);
        try (OutputStream out = Files.newOutputStream(file); Workbook workbook = new Workbook(out, "test", "1.0")) {
            content.accept(workbook);
        }
        return file;
    }

    /** A workbook with some of its parts, in which other text stands. */
    private Path repacked(Path workbook, String name, Predicate<String> parts, String regex, String by) throws IOException {
        Path file = work.resolve(name);
        try (ZipFile from = new ZipFile(workbook.toFile()); ZipOutputStream to = new ZipOutputStream(Files.newOutputStream(file))) {
            for (ZipEntry entry : Collections.list(from.entries())) {
                if (parts.test(entry.getName())) {
                    to.putNextEntry(new ZipEntry(entry.getName()));
                    String text = new String(from.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
                    to.write(text.replaceAll(regex, by).getBytes(StandardCharsets.UTF_8));
                }
            }
        }
        return file;
    }

    private CatalogImport offers(Path list) {
        return CatalogImport.of(shop, CatalogTable.OFFERS, Source.of(list), Optional.empty(), Optional.empty());
    }

    private CatalogImport offers(Path list, Path mapping) {
        return CatalogImport.of(shop, CatalogTable.OFFERS, Source.of(list), Optional.of(Source.of(mapping)), Optional.empty());
    }

    private List<String> refusals(CatalogImport made) {
        return made.refused().stream().map(fault -> fault.toString().replace(work + "/", "")).toList();
    }

    private List<String> faults(ThrowingCallable run) {
        FaultsException thrown = catchThrowableOfType(FaultsException.class, run);
        return thrown == null ? List.of() : thrown.faults().stream().map(Fault::toString).map(text -> text.replace(work + "/", "")).toList();
    }

    @Test
    void rowsAreAddedChangedAndLeft() throws IOException {
        CatalogImport made = offers(file("list.csv", """
                sku,lot,unit_price,available,min_quantity,supplier,condition
                WREN-2,A1,295.00,4,,,
                H1-08,A3,24.5,20.0,1,,
                H1-08,F1,22,7,,Fen Surplus,new
                """));
        assertThat(made.refused()).isEmpty();
        assertThat(made.unchanged()).isEqualTo(1);
        assertThat(made.changes()).extracting(Change::key, Change::kind).containsExactly(
                tuple(List.of("WREN-2", "A1", "1"), Change.Kind.CHANGED), tuple(List.of("H1-08", "F1", "1"), Change.Kind.ADDED));
        assertThat(made.changes().get(0).edits()).containsExactly(new Change.Edit("unit_price", "310.00", "295.00"));
        assertThat(Files.readString(shop.resolve("offers.csv"))).as("not written yet").contains("310.00");

        assertThat(made.apply()).contains(shop.resolve("offers.csv.bak").toRealPath());
        assertThat(shop.resolve("offers.csv.bak")).hasSameTextualContentAs(Folders.SHOP.resolve("offers.csv"));
        Catalog after = CatalogReader.read(shop);
        assertThat(after.lots("WREN-2").get(0).breaks().get(0).unitPrice()).isEqualTo(29_500);
        assertThat(after.lots("WREN-2").get(0).breaks().get(0).unitCost()).as("kept").hasValue(22_000);
        assertThat(after.lots("H1-08")).extracting(Lot::lot).containsExactly("A3", "F1");
        assertThat(after.lots("M16")).isEqualTo(CatalogReader.read(Folders.SHOP).lots("M16"));
    }

    /** Of the rows that change, and not of what stood there before. */
    @Test
    void pricesBelowCostAreSaid() throws IOException {
        Files.writeString(shop.resolve("offers.csv"), Files.readString(shop.resolve("offers.csv")) + "M16,C1,Fen,used,1,1,5,2,12.25\n");
        CatalogImport made = offers(file("list.csv", "sku,lot,unit_price\nM64,A8,39.99\nRS-750,A11,9\nWREN-2,A1,300\n"));
        assertThat(made.warnings()).extracting(fault -> fault.toString().replace(work + "/", ""))
                .containsExactly("list.csv:2: lot A8 sells M64 at 39.99 EUR, below its cost of 40.00.");
    }

    @Test
    void everyRowThatCannotBeTakenSaysWhy() throws IOException {
        CatalogImport made = offers(file("list.csv", """
                sku,lot,unit_price,available,supplier,condition
                H1-08,F1,22,7,Fen,new
                H1-08,F1,23,7,Fen,new
                NOPE,F1,22,7,Fen,new
                M16,F1,21 EUR,7,Fen,new
                M16,F2,21.005,7,Fen,new
                M16,,21,7,Fen,new
                M16,F3,21,7,Fen,shiny
                M16,F4,21,,Fen,new
                """));
        assertThat(made.changes()).extracting(change -> change.key().get(1)).containsExactly("F1");
        assertThat(refusals(made)).containsExactly(
                "list.csv:3: sku H1-08, lot F1, min_quantity 1 stands twice, first at line 2",
                "list.csv:4: sku \"NOPE\" is no part of this catalogue; known are REED-S, WREN-HS-1, WREN-2, WREN-HS-2, RS-750, REED-F4, RS-1200,"
                        + " H1-08, H1-10, H2-16, M08, M16, M64, M128, SSD-480, HDD-4T, NET-2X10, CTL-8, RAILS, FANS-2",
                "list.csv:5: unit_price (cell C5) \"21 EUR\": must be a number alone; drop the unit and write 21",
                "list.csv:6: unit_price (cell C6) \"21.005\": must have at most 2 decimals, as EUR has",
                "list.csv:7: lot is empty",
                "list.csv:8: condition (cell F8) \"shiny\": must be one of new, refurbished, used",
                "list.csv:9: available is missing");
    }

    @Test
    void aMessyWorkbookIsRead() throws IOException {
        Path list = workbook("list.xlsx", workbook -> {
            Worksheet cover = workbook.newWorksheet("Cover");
            cover.value(0, 0, "Fen Surplus");
            Worksheet sheet = workbook.newWorksheet("Prices");
            sheet.value(1, 0, "All prices net");
            // Two rows of header; "Net" is merged over two columns, "Article" over two rows.
            sheet.value(3, 0, "Article");
            sheet.range(3, 0, 4, 0).merge();
            sheet.value(3, 1, "Net");
            sheet.range(3, 1, 3, 2).merge();
            sheet.value(4, 1, "single");
            sheet.value(4, 2, "dozen");
            sheet.value(4, 3, "Qty");
            sheet.value(4, 4, "Until");
            sheet.value(4, 5, "State");
            sheet.value(6, 0, "H1-08");
            sheet.value(6, 1, "1.022,50 €");
            sheet.value(6, 2, 900);
            sheet.value(6, 3, "7");
            sheet.value(6, 4, LocalDate.of(2025, 4, 30));
            sheet.style(6, 4).format("dd.mm.yyyy").set();
            sheet.value(6, 5, "A-Ware");
            sheet.value(8, 0, "M16");
            sheet.value(8, 1, 0.1 + 0.2);
            sheet.value(8, 3, 12.0);
            sheet.value(8, 4, "31.12.2025");
            sheet.value(8, 5, "NEU");
            sheet.value(9, 0, "M64");
            sheet.value(9, 1, 70);
            sheet.value(9, 3, LocalDate.of(2025, 4, 30));
            sheet.style(9, 3).format("yyyy-mm-dd").set();
            sheet.value(9, 5, "neu");
        });
        Path mapping = file("map.yaml", """
                as: offers
                sheet: Prices
                header: 4-5
                decimal: comma
                thousands: point
                dates: dd.MM.uuuu
                columns:
                  sku: Article
                  unit_price: { heading: Net single, strip: "€", factor: 1.1, decimals: 2 }
                  available: Qty
                  valid_until: Until
                  condition: { heading: State, words: { a-ware: used, neu: new } }
                constants: { lot: W1, supplier: Fen Surplus }
                """);
        CatalogImport made = offers(list, mapping);
        assertThat(refusals(made)).containsExactly(
                "list.xlsx:10: available (cell D10) \"2025-04-30\": is a date and must be a number; the cell has the wrong format");
        assertThat(made.text().lines().skip(13)).containsExactly(
                "H1-08,W1,Fen Surplus,used,1124.75,,7,,,2025-04-30", "M16,W1,Fen Surplus,new,0.33,,12,,,2025-12-31");
        assertThat(faults(() -> CatalogImport.of(shop, CatalogTable.OFFERS, Source.of(list), Optional.empty(), Optional.empty())))
                .containsExactly("list.xlsx: has several sheets; name one with --sheet: Cover, Prices");
        assertThat(faults(() -> CatalogImport.of(shop, CatalogTable.OFFERS, Source.of(list), Optional.empty(), Optional.of("Price"))))
                .containsExactly("list.xlsx: has no sheet \"Price\", did you mean Prices?");
    }

    /** ECMA-376 part 1, 12.3.20: a workbook may have styles, and need not. */
    @Test
    void aWorkbookWithoutStylesIsRead() throws IOException {
        Path styled = workbook("styled.xlsx", workbook -> {
            Worksheet sheet = workbook.newWorksheet("Prices");
            List.of("sku", "lot", "unit_price").forEach(heading -> sheet.value(0, List.of("sku", "lot", "unit_price").indexOf(heading), heading));
            sheet.value(1, 0, "H1-08");
            sheet.value(1, 1, "A3");
            sheet.value(1, 2, 23.5);
        });
        Path bare = repacked(styled, "bare.xlsx", part -> !part.endsWith("styles.xml"), "<(Override|Relationship) [^>]*styles[^>]*>", "");
        assertThat(offers(bare).changes()).singleElement().asString().contains("23.5");
    }

    @Test
    void nothingIsTakenWhenTheCatalogueWouldHaveAFaultElsewhere() throws IOException {
        // The price break of 16 stays behind with another stock.
        assertThat(faults(() -> offers(file("list.csv", "sku,lot,min_quantity,available\nM16,A6,1,50\n")))).containsExactly(
                "shop/offers.csv:8: available \"60\" must be 50, as at list.csv:2: both are price breaks of lot A6");
        Files.writeString(shop.resolve("catalog.yaml"), "name: Reedmere\n");
        assertThat(faults(() -> offers(file("sound.csv", "sku,lot,unit_price\nM16,A7,40\n")))).anyMatch(fault -> fault.startsWith("shop/catalog.yaml"));
    }

    @Test
    void aTableThatChangedMeanwhileIsNotOverwritten() throws IOException {
        CatalogImport made = offers(file("list.csv", "sku,lot,unit_price\nM16,A7,40\n"));
        Files.writeString(shop.resolve("offers.csv"), Files.readString(shop.resolve("offers.csv")) + "H1-10,A20,Marsh Trade,used,30,1,2,,\n");
        String changed = Files.readString(shop.resolve("offers.csv"));
        assertThat(faults(made::apply)).containsExactly(
                "shop/offers.csv: was changed while it was read; nothing was written: run it again");
        assertThat(shop.resolve("offers.csv")).hasContent(changed);
        assertThat(shop.resolve("offers.csv.bak")).doesNotExist();
    }

    @Test
    void oldFilesAreAllKept() throws IOException {
        offers(file("one.csv", "sku,lot,unit_price\nM16,A7,40\n")).apply();
        offers(file("two.csv", "sku,lot,unit_price\nM16,A7,41\n")).apply();
        assertThat(Files.readString(shop.resolve("offers.csv.bak"))).contains("M16,A7,Marsh Trade,new,44,");
        assertThat(Files.readString(shop.resolve("offers.csv.bak2"))).contains("M16,A7,Marsh Trade,new,40,");
        assertThat(Files.readString(shop.resolve("offers.csv"))).contains("M16,A7,Marsh Trade,new,41,");
    }

    @Test
    void aTableOfDecimalCommasBecomesOneOfPoints() throws IOException {
        Files.writeString(shop.resolve("memory.csv"), Files.readString(shop.resolve("memory.csv")).replace(',', ';').replace("1.2;", "1,2;").replace("4.5", "4,5"));
        Catalog before = CatalogReader.read(shop);
        CatalogImport made = CatalogImport.of(shop, CatalogTable.MEMORY, Source.of(file("list.csv", "sku,power_w\nM08,3.5\n")), Optional.empty(), Optional.empty());
        assertThat(made.changes()).hasSize(1);
        made.apply();
        Catalog after = CatalogReader.read(shop);
        assertThat(after.module("M16")).isEqualTo(before.module("M16"));
        assertThat(after.module("M08").orElseThrow().powerW()).isEqualTo(3.5);
    }

    @Test
    void faultsOfAMappingAreAllNamed() throws IOException {
        Path mapping = file("map.yaml", """
                as: memory
                decimal: semicolon
                thousands: point
                header: 4-2
                dates: dd.mm.uuuu
                columns:
                  sku: Article
                  unit_prise: Net
                  supplier: { heading: From, factor: 2 }
                  available: { factor: many }
                constants: { sku: X, weight: 3 }
                """);
        assertThat(faults(() -> offers(file("list.csv", "sku\nM16\n"), mapping))).containsExactly(
                "map.yaml:1: as \"memory\": must be offers, as --as has it",
                "map.yaml:2: decimal \"semicolon\": must be one of point, comma",
                "map.yaml:3: thousands \"point\": must not be the same as decimal",
                "map.yaml:4: header \"4-2\": must be a row, or some few rows, such as 3-4",
                "map.yaml:5: dates \"dd.mm.uuuu\": must be a pattern of days, months and years, such as dd.MM.uuuu",
                "map.yaml:8: columns \"unit_prise\": is no column of offers.csv, did you mean unit_price?",
                "map.yaml:9: factor is for figures, and supplier holds words",
                "map.yaml:10: columns.available.heading is missing",
                "map.yaml:10: columns.available.factor \"many\": must be a number",
                "map.yaml:11: constants \"sku\": stands under columns already; give it a value for empty cells there, with \"empty\"",
                "map.yaml:11: constants \"weight\": is no column of offers.csv; known are sku, lot, supplier, condition, unit_price, min_quantity, available,"
                        + " lead_days, unit_cost, valid_until");
    }

    /** What cannot tell one day from another is wrong in the mapping, not in every row of the list. */
    @ParameterizedTest
    @ValueSource(strings = {"qqqqqqq", "dd.MM", "MM/uuuu", "HH:mm", "dd.mm.uuuu", "dd.MM.uuuu HH:mm", "YYYY-DD", "''", "dd.MM.'20'"})
    void aPatternOfDatesIsBlamedAtItsOwnLine(String pattern) throws IOException {
        Path mapping = file("map.yaml", "columns: { sku: sku, lot: lot, valid_until: until }\ndates: \"%s\"\n".formatted(pattern));
        assertThat(faults(() -> offers(file("list.csv", "sku,lot,until\nM16,A7,30.04.2025\n"), mapping))).containsExactly(
                "map.yaml:2: dates \"%s\": must be a pattern of days, months and years, such as dd.MM.uuuu".formatted(pattern));
    }

    @ParameterizedTest
    @CsvSource({"dd.MM.uuuu, 30.04.2025", "d.M.yyyy, 30.4.2025", "MM/dd/yy, 04/30/25", "uuuuMMdd, 20250430", "d MMM uuuu, 30 Apr 2025", "uuuu-DDD, 2025-120"})
    void aPatternThatTellsDaysApartIsTaken(String pattern, String day) throws IOException {
        Path mapping = file("map.yaml", "columns: { sku: sku, lot: lot, valid_until: until }\ndates: \"%s\"\n".formatted(pattern));
        CatalogImport made = offers(file("list.csv", "sku,lot,until\nM16,A7,%s\n".formatted(day)), mapping);
        assertThat(made.changes().get(0).edits()).extracting(Change.Edit::after).containsExactly("2025-04-30");
    }

    private static List<String> said(CatalogImport made) {
        return made.changes().stream().map(change -> "%s %s: %s".formatted(change.kind().label(), String.join(" ", change.key()),
                change.edits().stream().filter(edit -> !CatalogTable.OFFERS.key().contains(edit.column()))
                        .map(edit -> edit.column() + " " + edit.before() + ">" + edit.after()).collect(Collectors.joining(", ")))).toList();
    }

    private static final String WHOLE = """
            columns: { sku: part, lot: lot, supplier: from, available: stock }
            breaks: [ { from: 10, heading: ten }, { from: 1, heading: one, factor: 2 } ]
            constants: { condition: used }
            """;

    /** A price break for each column that has a price; what all breaks of a lot have alike need not be said again. */
    @Test
    void aRowHasSeveralPriceBreaks() throws IOException {
        CatalogImport made = offers(file("list.csv", "part,lot,from,stock,one,ten\nM64,N1,Fen Surplus,7,30,55\nM64,N2,Fen Surplus,8,,54\nM64,A8,,12,39,70\n"),
                file("map.yaml", WHOLE));
        assertThat(refusals(made)).isEmpty();
        assertThat(said(made)).containsExactly(
                "added M64 N1 1: supplier >Fen Surplus, condition >used, unit_price >60, available >7",
                "added M64 N1 10: supplier >Fen Surplus, condition >used, unit_price >55, available >7",
                "added M64 N2 10: supplier >Fen Surplus, condition >used, unit_price >54, available >8",
                "added M64 A8 10: supplier >Marsh Trade, condition >used, unit_price >70, available >12, lead_days >0");
        assertThat(made.unchanged()).as("78 stands there").isEqualTo(1);
        made.apply();
        assertThat(CatalogReader.read(shop).lots("M64")).extracting(lot -> lot.breaks().size()).containsExactlyInAnyOrder(2, 2, 1);
    }

    @Test
    void aRowWithoutAPriceOrWithAFaultInOneIsNotTaken() throws IOException {
        CatalogImport made = offers(file("list.csv", "part,lot,from,stock,one,ten\nM64,N1,Fen Surplus,7,,\nM64,N2,Fen Surplus,8,30,soon\nM64,N3,,8,30,20\n"),
                file("map.yaml", WHOLE));
        assertThat(refusals(made)).containsExactly("list.csv:2: none of the columns of breaks has a price",
                "list.csv:3: unit_price (cell F3) \"soon\": must be a number", "list.csv:4: supplier is missing");
        assertThat(made.changes()).isEmpty();
    }

    /** As a count of the stock has it; lot A6 of M16 has a break at 16, lot C1 begins with one at 8. */
    @Test
    void aRowThatNamesNoPriceBreakSpeaksOfItsLot() throws IOException {
        Path offers = shop.resolve("offers.csv");
        Files.writeString(offers, Files.readString(offers) + "M64,C1,Fen,used,70,8,20,2,\nM64,C1,Fen,used,60,16,20,2,\n");
        CatalogImport made = offers(file("list.csv", "sku,lot,available\nM16,A6,58\nM64,C1,17\nM64,A8,12\n"));
        assertThat(said(made)).containsExactly("changed M16 A6 1: available 60>58", "changed M16 A6 16: available 60>58",
                "changed M64 C1 8: available 20>17", "changed M64 C1 16: available 20>17");
        assertThat(made.unchanged()).isEqualTo(1);
        made.apply();
        assertThat(CatalogReader.read(shop).lots("M64")).extracting(Lot::available).containsExactlyInAnyOrder(12, 17);
        assertThat(said(offers(file("list.csv", "sku,lot,min_quantity,unit_price,available\nM16,A6,,21,50\nM16,A6,16,18,50\nM64,C1,,80,17\n"))))
                .as("a break that the list has is its own, and a price is one").containsExactly("changed M16 A6 1: unit_price 21.50>21, available 58>50",
                "changed M16 A6 16: unit_price 19.00>18, available 58>50",
                "added M64 C1 1: supplier >Fen, condition >used, unit_price >80, available >17, lead_days >2");
        assertThat(refusals(offers(file("list.csv", "sku,lot,available,supplier\nM16,A6,-1,\nM64,C1,3,Fen\nM64,C2,3,Fen\n"))))
                .containsExactly("list.csv:2: available (cell C2) \"-1\": must be from 0 to 10000000 units",
                "list.csv:4: condition is missing", "list.csv:4: unit_price is missing");
    }

    @Test
    void aRowOfCsvThatIsLongerThanItsHeadingsIsNotTaken() throws IOException {
        CatalogImport made = offers(file("list.csv", "sku,lot,unit_price\nM16,A6,21,75\nM64,A8,79,\nM16,A7,40,,\n"));
        assertThat(refusals(made)).containsExactly("list.csv:2: cell D2 \"75\" stands under no heading; a cell that has in it what"
                + " separates cells needs quotes around it");
        assertThat(said(made)).containsExactly("changed M64 A8 1: unit_price 78>79", "changed M16 A7 1: unit_price 44>40");
        Path workbook = workbook("list.xlsx", book -> {
            Worksheet sheet = book.newWorksheet("offers");
            List.of("sku", "lot", "unit_price").forEach(heading -> sheet.value(0, List.of("sku", "lot", "unit_price").indexOf(heading), heading));
            sheet.value(1, 0, "M64");
            sheet.value(1, 1, "A8");
            sheet.value(1, 2, 79);
            sheet.value(1, 3, "ask Fen again");
        });
        assertThat(said(offers(workbook))).as("a note beside the table").containsExactly("changed M64 A8 1: unit_price 78>79");
    }

    @Test
    void aHeadingThatIsNoneOfOursIsSaid() throws IOException {
        CatalogImport made = offers(file("list.csv", "sku,lot,unit_prize,Remark,available\nM64,A8,79,good,12\n"));
        assertThat(made.unchanged()).isEqualTo(1);
        assertThat(made.warnings()).extracting(fault -> fault.toString().replace(work + "/", "")).containsExactly(
                "list.csv:1: heading \"unit_prize\" is none of ours, so its column is not read, did you mean unit_price?",
                "list.csv:1: heading \"Remark\" is none of ours, so its column is not read");
        assertThat(offers(file("list.csv", "sku,lot,unit_prize\nM64,A8,79\n"), file("map.yaml", "columns: { sku: sku, lot: lot }\n")).warnings())
                .as("a mapping leaves out what it likes").isEmpty();
    }

    /** Fen Surplus has lot A6 of M16, with a break at 16, and lot A5 of H2-16; lot A7 of M16 is of another supplier. */
    @Test
    void whatAReplacingListLeavesOutIsSoldOut() throws IOException {
        Path list = file("list.csv", "part,lot,from,stock,one,ten\nM16,A6,FEN SURPLUS,50,11,19\n");
        assertThat(said(offers(list, file("map.yaml", WHOLE + "replaces: supplier\n")))).containsExactly(
                "changed M16 A6 1: supplier Fen Surplus>FEN SURPLUS, unit_price 21.50>22, available 60>50",
                "added M16 A6 10: supplier >FEN SURPLUS, condition >used, unit_price >19, available >50, lead_days >2",
                "sold out H2-16 A5 1: available 3>0",
                "removed M16 A6 16: supplier Fen Surplus>, condition used>, unit_price 19.00>, available 60>, lead_days 2>, unit_cost 12.25>");
        CatalogImport made = offers(list, file("map.yaml", WHOLE + "replaces: supplier\n"));
        made.apply();
        assertThat(CatalogReader.read(shop).lots("H2-16")).extracting(Lot::available).containsExactly(0);
        assertThat(CatalogReader.read(shop).lots("M16")).extracting(Lot::available).containsExactly(50, 100);
        assertThat(said(offers(list, file("map.yaml", WHOLE + "replaces: supplier\n")))).as("once").isEmpty();
    }

    @Test
    void aListOfLotsLeavesOtherLotsAlone() throws IOException {
        Path offers = shop.resolve("offers.csv");
        Files.writeString(offers, Files.readString(offers) + "H1-08,A6,fen surplus,used,20,1,5,,\nH1-10,A6,Marsh Trade,used,20,1,5,,\n");
        CatalogImport made = offers(file("list.csv", "part,lot,from,stock,one,ten\nM16,A6,Fen Surplus,60,10.75,\n"),
                file("map.yaml", WHOLE + "replaces: lots\n"));
        assertThat(said(made)).as("lot A6 of Marsh Trade is another").containsExactly(
                "removed M16 A6 16: supplier Fen Surplus>, condition used>, unit_price 19.00>, available 60>, lead_days 2>, unit_cost 12.25>",
                "sold out H1-08 A6 1: available 5>0");
    }

    @Test
    void anAliasIsTheSupplierAndARowThatIsRefusedNamesItsLot() throws IOException {
        Path about = shop.resolve("catalog.yaml");
        Files.writeString(about, Files.readString(about) + "\nsupplier_aliases: { Fens: Fen Surplus }\n");
        CatalogImport made = offers(file("list.csv", "part,lot,from,stock,one,ten\nM16,A6,Fens,lots,10.75,\nM64,N1,Fens,3,9,\n"),
                file("map.yaml", WHOLE + "replaces: supplier\n"));
        assertThat(refusals(made)).containsExactly("list.csv:2: available (cell D2) \"lots\": must be a number");
        assertThat(said(made)).containsExactly("added M64 N1 1: supplier >Fens, condition >used, unit_price >18, available >3",
                "sold out H2-16 A5 1: available 3>0");
    }

    @Test
    void aRowThatNamesNothingKeepsTheRest() throws IOException {
        CatalogImport made = offers(file("list.csv", "part,lot,from,stock,one,ten\nM16,,Fen Surplus,60,10.75,\nM64,N1,Fen Surplus,3,9,\n"),
                file("map.yaml", WHOLE + "replaces: supplier\n"));
        assertThat(said(made)).containsExactly("added M64 N1 1: supplier >Fen Surplus, condition >used, unit_price >18, available >3");
        assertThat(made.warnings()).extracting(fault -> fault.toString().replace(work + "/", ""))
                .containsExactly("list.csv:2: does not say its sku and lot, so nothing that the list leaves out is taken as sold out");
    }

    @Test
    void faultsOfBreaksAreNamed() throws IOException {
        Path list = file("list.csv", "sku\nM16\n");
        assertThat(faults(() -> offers(list, file("map.yaml", """
                columns: { sku: part, unit_price: net }
                breaks:
                  - { from: 1, heading: one }
                  - { from: 1, heading: two }
                  - { from: 0, factor: x }
                constants: { min_quantity: 1 }
                replaces: all
                """)))).containsExactly(
                "map.yaml:2: breaks say each price and from how many units on it holds, so unit_price must not stand under columns or constants",
                "map.yaml:2: breaks say each price and from how many units on it holds, so min_quantity must not stand under columns or constants",
                "map.yaml:4: the price from 1 stands twice",
                "map.yaml:5: breaks.from \"0\": must be from 1 to 1000000 units",
                "map.yaml:5: breaks.heading is missing",
                "map.yaml:5: breaks.factor \"x\": must be a number",
                "map.yaml:7: replaces \"all\": must be one of supplier, lots");
        assertThat(faults(() -> CatalogImport.of(shop, CatalogTable.MEMORY, Source.of(list), Optional.of(Source.of(file("memory.yaml",
                "columns: { sku: part }\nbreaks: [ { from: 1, heading: one } ]\nreplaces: lots\n"))), Optional.empty())))
                .containsExactly("memory.yaml:2: breaks is for lists of offers", "memory.yaml:3: replaces is for lists of offers");
    }

    @Test
    void headingsThatAreNotThereAreNamed() throws IOException {
        Path mapping = file("map.yaml", "columns: { sku: Article, lot: Lot, unit_price: Net, available: Qty }\n");
        assertThat(faults(() -> offers(file("list.csv", "x\nArtikle;Lot;Net;Net\n1;2;3;4\n"), mapping))).containsExactly(
                "list.csv:2: no column has the heading \"Article\", did you mean Artikle? The headings are Artikle, Lot, Net",
                "list.csv:2: heading \"Net\" stands over columns C2, D2; rename all but one",
                "list.csv:2: no column has the heading \"Qty\"; the headings are Artikle, Lot, Net");
    }

    @Test
    void brokenListsAreRefused() throws IOException {
        assertThat(faults(() -> offers(work.resolve("gone.csv")))).containsExactly("gone.csv: there is no such file");
        assertThat(faults(() -> offers(file("list.doc", "x")))).containsExactly("list.doc: must end in .xlsx, .csv, .tsv or .txt; save it as one of them");
        assertThat(faults(() -> offers(file("text.xlsx", "sku,lot")))).containsExactly("text.xlsx: is no XLSX workbook");
        Path cut = workbook("cut.xlsx", workbook -> workbook.newWorksheet("S").value(0, 0, "sku"));
        byte[] whole = Files.readAllBytes(cut);
        Files.write(cut, Arrays.copyOf(whole, whole.length / 2));
        assertThat(faults(() -> offers(cut))).singleElement().asString().isEqualTo("cut.xlsx: is damaged or cut off; save it again as an XLSX workbook");
    }

    @Test
    void workbooksAndListsThatHoldNothingOrTooMuchAreRefused() throws IOException {
        assertThat(faults(() -> offers(workbook("empty.xlsx", workbook -> workbook.newWorksheet("S"))))).containsExactly("empty.xlsx: holds no cells");
        Path old = Files.write(work.resolve("old.xlsx"), new byte[] {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, (byte) 0xA1, (byte) 0xB1, 0x1A, (byte) 0xE1});
        assertThat(faults(() -> offers(old))).containsExactly("old.xlsx: is a workbook of the old kind or has a password; save it as XLSX without one");
        Path bomb = work.resolve("bomb.xlsx");
        try (ZipOutputStream to = new ZipOutputStream(Files.newOutputStream(bomb))) {
            to.putNextEntry(new ZipEntry("xl/workbook.xml"));
            byte[] block = new byte[1_000_000];
            for (int megabyte = 0; megabyte <= 256; megabyte++) {
                to.write(block);
            }
        }
        assertThat(faults(() -> offers(bomb))).containsExactly("bomb.xlsx: unpacks to more than 256 MB");
        String ownHeadings = "sku,lot,unit_price\n";
        assertThat(faults(() -> offers(file("long.csv", "Our prices\n" + ownHeadings + "M16,A7,1\n".repeat(200_001)))))
                .containsExactly("long.csv: has more than 200000 rows below its headings; split it");
        CatalogImport most = offers(file("most.csv", "Our prices\n" + ownHeadings + "M16,A7,1\n".repeat(200_000)));
        assertThat(most.refused()).as("all but the first stand twice").hasSizeGreaterThanOrEqualTo(100_000);
        assertThat(faults(() -> CatalogImport.of(shop, CatalogTable.OFFERS, Source.of(file("list.csv", "sku\nM16\n")), Optional.empty(), Optional.of("Prices"))))
                .containsExactly("list.csv: has no sheets; leave out sheet \"Prices\"");
        assertThat(faults(() -> CatalogImport.of(work.resolve("gone"), CatalogTable.OFFERS, Source.of(file("list.csv", "sku\nM16\n")), Optional.empty(), Optional.empty())))
                .containsExactly("gone: there is no such folder; a catalogue is one");
        assertThat(faults(() -> offers(file("list.csv", "sku\nM16\n"), file("map.yaml", "columns: {}\n"))))
                .containsExactly("map.yaml:1: columns must name at least one of our columns and their heading");
    }

    private static void row(Worksheet sheet, int row, String... cells) {
        for (int column = 0; column < cells.length; column++) {
            sheet.value(row, column, cells[column]);
        }
    }

    /** What nobody sees is never taken for the list unless it is named. */
    @Test
    void hiddenSheetsAreNotImportedSilently() throws IOException {
        for (VisibilityState state : List.of(VisibilityState.HIDDEN, VisibilityState.VERY_HIDDEN)) {
            Path alone = workbook("alone.xlsx", workbook -> {
                workbook.newWorksheet("Cover");
                Worksheet secret = workbook.newWorksheet("Costs");
                row(secret, 0, "sku", "lot", "unit_price");
                row(secret, 1, "M16", "A7", "1");
                secret.setVisibilityState(state);
            });
            assertThat(faults(() -> offers(alone))).containsExactly("alone.xlsx: holds cells in hidden sheets alone; name one with --sheet: Costs");
            assertThat(CatalogImport.of(shop, CatalogTable.OFFERS, Source.of(alone), Optional.empty(), Optional.of("Costs")).changes()).hasSize(1);
            Path beside = workbook("beside.xlsx", workbook -> {
                Worksheet secret = workbook.newWorksheet("Costs");
                row(secret, 0, "sku", "lot", "unit_price");
                row(secret, 1, "M16", "A7", "1");
                secret.setVisibilityState(state);
                Worksheet prices = workbook.newWorksheet("Prices");
                row(prices, 0, "sku", "lot", "unit_price");
                row(prices, 1, "M16", "A7", "41");
            });
            assertThat(offers(beside).changes().get(0).edits()).extracting(Change.Edit::after).containsExactly("41");
        }
    }

    /** The library makes room for every column up to the one that a cell names. */
    @ParameterizedTest
    @ValueSource(strings = {"ZZZZZZ2", "XFE2", "AAAA2", "ZZZZZZZZZZZZZ2"})
    void aCellWhereNoSheetHasOneIsAFault(String address) throws IOException {
        Path sound = workbook("sound.xlsx", workbook -> {
            Worksheet sheet = workbook.newWorksheet("S");
            row(sheet, 0, "sku", "lot", "unit_price");
            row(sheet, 1, "M16", "A7", "1");
        });
        Path broken = repacked(sound, "broken.xlsx", part -> true, "r=\"B2\"", "r=\"" + address + "\"");
        assertThat(faults(() -> offers(broken))).containsExactly(
                "broken.xlsx: names a cell %s, but a sheet has no such column; save it again as an XLSX workbook".formatted(address));
        Path last = repacked(sound, "last.xlsx", part -> true, "r=\"C2\"", "r=\"XFD2\"");
        assertThat(offers(last).changes()).as("the last column that there is").isEmpty();
    }

    @Test
    void aWorkbookOfTooManyCellsOrTextsIsAFault() throws IOException {
        Path sound = workbook("sound.xlsx", workbook -> workbook.newWorksheet("S").value(0, 0, "sku"));
        for (String part : List.of("xl/worksheets/sheet1.xml", "xl/sharedStrings.xml")) {
            Path full = work.resolve("full.xlsx");
            String element = part.contains("sheet1") ? "<c/>" : "<si/>";
            try (ZipFile from = new ZipFile(sound.toFile()); ZipOutputStream to = new ZipOutputStream(Files.newOutputStream(full))) {
                for (ZipEntry entry : Collections.list(from.entries())) {
                    to.putNextEntry(new ZipEntry(entry.getName()));
                    if (entry.getName().equals(part)) {
                        String name = part.contains("sheet1") ? "worksheet" : "sst";
                        to.write("<%s><sheetData><row>".formatted(name).getBytes(StandardCharsets.UTF_8));
                        byte[] thousand = element.repeat(1000).getBytes(StandardCharsets.UTF_8);
                        for (int thousands = 0; thousands <= 5000; thousands++) {
                            to.write(thousand);
                        }
                        to.write("</row></sheetData></%s>".formatted(name).getBytes(StandardCharsets.UTF_8));
                    } else {
                        from.getInputStream(entry).transferTo(to);
                    }
                }
            }
            assertThat(faults(() -> offers(full))).as(part).containsExactly("full.xlsx: has more than 5000000 cells; split it");
        }
    }

    /** A line end in a name comes back as it went, or is not read at all: spreadsheets keep it in one format and lose it in the next. */
    @Test
    void aNameOfTwoLinesIsAFaultOfTheTableAndOneLineInAList() throws IOException {
        Path offers = shop.resolve("offers.csv");
        String sound = Files.readString(offers);
        for (String end : List.of("\n", "\r\n", "\t")) {
            Files.writeString(offers, sound + "M16,\"Z%s9\",Fen,new,40,1,2,,\n".formatted(end));
            assertThat(faults(() -> CatalogReader.read(shop))).singleElement().asString().startsWith("shop/offers.csv:14: lot \"Z\\u00")
                    .endsWith("\": must stand on one line, without tabs");
        }
        Files.writeString(offers, sound);
        CatalogImport made = offers(file("list.csv", "sku,lot,unit_price,available,supplier,condition\nM16,\"Z\n9\",40,1,Fen,new\n"));
        assertThat(made.changes().get(0).key()).containsExactly("M16", "Z 9", "1");
        made.apply();
        String written = Files.readString(offers);
        Path exported = file("exported.csv", TableExport.of(shop, CatalogTable.OFFERS).csv());
        assertThat(offers(exported).changes()).isEmpty();
        assertThat(written).contains("M16,Z 9,Fen");
    }

    /** Twenty times the rows take some twenty times as long, and not four hundred. Processor time, so that others on the machine do not count. */
    @Test
    void rowsOfUnknownPartsTakeTimeByTheirNumber() throws IOException {
        ThreadMXBean time = ManagementFactory.getThreadMXBean();
        offers(unknown(2_000));
        long before = time.getCurrentThreadCpuTime();
        assertThat(offers(unknown(2_000)).refused()).hasSize(2_000);
        long few = time.getCurrentThreadCpuTime() - before;
        before = time.getCurrentThreadCpuTime();
        assertThat(offers(unknown(40_000)).refused()).hasSize(40_000);
        assertThat((time.getCurrentThreadCpuTime() - before) / few).isLessThan(100);
    }

    private Path unknown(int rows) throws IOException {
        StringBuilder list = new StringBuilder("sku,lot,supplier,condition,unit_price,available\n");
        for (int row = 0; row < rows; row++) {
            list.append("UNKNOWN-").append(row).append(",L").append(row).append(",Fen,new,40,1\n");
        }
        return file("unknown.csv", list.toString());
    }

    /** Each row that the stock has no room for is refused at once, not one in each round. */
    @Test
    void stockThatCannotBeCountedIsRefusedInOneRound() throws IOException {
        StringBuilder list = new StringBuilder("sku,lot,supplier,condition,unit_price,available\n");
        for (int row = 0; row < 5000; row++) {
            list.append("M16,L").append(row).append(",Fen,new,1000000000,10000000\n");
        }
        CatalogImport made = offers(file("list.csv", list.toString()));
        assertThat(made.refused()).hasSizeGreaterThan(4990).allMatch(fault -> fault.message().startsWith("up to here the stock comes to more than can be counted"));
    }

    @Test
    void cellsThatAreNoDatesOrHoldErrorsAreNamed() throws IOException {
        Path dates = file("dates.yaml", "dates: dd.MM.uuuu\ncolumns: { sku: sku, lot: lot, valid_until: until }\n");
        assertThat(refusals(offers(file("list.csv", "sku,lot,until\nM16,A7,2025-04-30\nM64,A8,31.04.2025\nH1-08,A3,30.04.2025\n"), dates)))
                .containsExactly("list.csv:2: valid_until (cell C2) \"2025-04-30\": must be a date as dd.MM.uuuu",
                "list.csv:3: valid_until (cell C3) \"31.04.2025\": must be a date as dd.MM.uuuu");
        Path sheet = workbook("errors.xlsx", workbook -> {
            Worksheet cells = workbook.newWorksheet("S");
            List.of("sku", "lot", "unit_price").forEach(heading -> cells.value(0, List.of("sku", "lot", "unit_price").indexOf(heading), heading));
            cells.value(1, 0, "M16");
            cells.value(1, 1, "A7");
            cells.value(1, 2, 12345);
        });
        Path broken = repacked(sheet, "broken.xlsx", part -> true, "<c r=\"C2\"[^>]*><v>12345</v></c>", "<c r=\"C2\" t=\"e\"><v>#DIV/0!</v></c>");
        assertThat(refusals(offers(broken))).containsExactly("broken.xlsx:2: unit_price (cell C2) \"#DIV/0!\": is an error of the spreadsheet");
    }

    @Test
    void textsThatAFormulaCouldHideInComeBack() throws IOException {
        for (String text : List.of("=1+1", "'=1+1", "''@x", "-5", "+x", "'plain", "plain", "@", "'", "")) {
            assertThat(Formulas.restored(Formulas.defused(text))).isEqualTo(text);
        }
        assertThat(Formulas.defused("=1+1")).isEqualTo("'=1+1");
        assertThat(Formulas.defused("\t=1")).isEqualTo("'\t=1");
        assertThat(Formulas.defused("plain")).isEqualTo("plain");
    }

    @Test
    void everyColumnHasAPlace() {
        for (CatalogTable table : CatalogTable.values()) {
            assertThat(table.order()).doesNotHaveDuplicates().containsAll(table.columns().optional());
        }
    }
}
