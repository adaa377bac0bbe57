package sledwright.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvReaderTest {

    private static final CsvReader.Columns COLUMNS = new CsvReader.Columns(List.of("sku", "price", "note"), List.of("note"));
    private static final Bounds PRICE = Bounds.of(0, 1000, "");

    @TempDir
    Path folder;

    private final Faults faults = new Faults();

    private CsvTable read(String text) throws IOException {
        Path file = folder.resolve("table.csv");
        Files.writeString(file, text);
        return CsvReader.read(Source.of(file), COLUMNS, faults);
    }

    /** Every way in which a spreadsheet may save the same two rows. */
    @ParameterizedTest
    @ValueSource(strings = {
            "sku,price,note\nA,2.5,\"x, y\"\nB,3,\n",
            "\uFEFFsku,price,note\nA,2.5,\"x, y\"\nB,3,\n",
            "sku,price,note\r\nA,2.5,\"x, y\"\r\nB,3,\r\n",
            "note,sku,price\n\"x, y\",A,2.5\n,B,3",
            "\"sku\",\"price\",\"note\"\n\"A\",\"2.5\",\"x, y\"\n\"B\",\"3\",\"\"\n",
            " sku , price , note \n A , 2.5 ,\"x, y\"\n B , 3 , \n",
            "sku,price,note,,\nA,2.5,\"x, y\",,\nB,3,,,\n,,,,\n",
            "sku;price;note\nA;2,5;x, y\nB;3;\n",
            "sku;price;note\nA;2.5;x, y\nB;3;\n",
            "sep=;\nsku;price;note\nA;2,5;x, y\nB;3;\n",
            "\uFEFFsep=;\r\nsku;price;note\r\nA;2,5;x, y\r\nB;3;\r\n",
            "sku\tprice\tnote\nA\t2,5\tx, y\nB\t3\t\n"})
    void oneTableManySpellings(String text) throws IOException {
        CsvTable table = read(text);
        assertThat(faults.all()).isEmpty();
        assertThat(table.whole()).isTrue();
        assertThat(table.rows()).extracting(row -> row.text("sku")).containsExactly("A", "B");
        assertThat(table.rows()).extracting(row -> row.decimalIfAny("price", PRICE).orElseThrow())
                .usingElementComparator(BigDecimal::compareTo).containsExactly(new BigDecimal("2.5"), new BigDecimal("3"));
        assertThat(table.rows()).extracting(row -> row.text("note", "none")).containsExactly("x, y", "none");
        assertThat(faults.all()).isEmpty();
    }

    @Test
    void anOptionalColumnMayBeAbsent() throws IOException {
        CsvTable table = read("price,sku\n2.5,A\n");
        assertThat(table.whole()).isTrue();
        assertThat(table.columns()).containsExactlyInAnyOrder("sku", "price");
        assertThat(table.rows().get(0).text("note", "none")).isEqualTo("none");
    }

    @Test
    void aTableMayHaveNoRows() throws IOException {
        assertThat(read("sku,price\n").whole()).isTrue();
        assertThat(faults.all()).isEmpty();
    }

    @Test
    void linesAreThoseOfAnEditor() throws IOException {
        CsvTable table = read("\n\nsku,price,note\r\n\r\nA,1,\"two\nlines\"\n,,\nB,2,\n\nC,x,\n");
        assertThat(table.rows()).extracting(row -> row.place().line()).containsExactly(8, 10);
        table.rows().get(1).number("price", PRICE);
        assertThat(faults.all()).extracting(Fault::line).containsExactly(5, 10);
        assertThat(faults.all().get(0).message()).isEqualTo("note \"two\\u000Alines\": must stand on one line, without tabs");
    }

    @Test
    void aDecimalCommaBetweenCommasIsRefused() throws IOException {
        read("sku,price\nA,\"2,5\"\n").rows().get(0).number("price", PRICE);
        assertThat(faults.all()).extracting(Fault::message).containsExactly("price \"2,5\": must have a decimal point; write 2.5");
    }

    @Test
    void aFolderIsNoTable() {
        assertThat(CsvReader.read(Source.of(folder), COLUMNS, faults).whole()).isFalse();
        assertThat(faults.all()).extracting(Fault::toString).containsExactly(folder + ": is a folder, a file is needed");
    }
}
