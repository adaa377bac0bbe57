package sledwright.report.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import sledwright.report.workbook.WorkbookSheet.Column;

class WorkbooksTest {

    private static final LocalDate DAY = LocalDate.of(2025, 3, 31);

    private static byte[] workbook(Object... texts) {
        return Workbooks.of("A <title>", DAY, List.of(new WorkbookSheet("Parts", List.of(Column.of("What"), Column.amounts("EUR", 2)),
                List.of(texts).stream().map(text -> List.of(text, (Object) new BigDecimal("1234.50"))).toList())));
    }

    private static Map<String, Document> read(byte[] workbook) {
        Map<String, Document> files = new HashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(in.readAllBytes())));
            }
        } catch (Exception broken) {
            throw new AssertionError(broken);
        }
        return files;
    }

    /** What the cells of the first column hold, below the header. */
    private static List<String> texts(Map<String, Document> files) {
        NodeList strings = files.get("xl/sharedStrings.xml").getElementsByTagName("t");
        NodeList cells = files.get("xl/worksheets/sheet1.xml").getElementsByTagName("c");
        List<String> texts = new ArrayList<>();
        for (int i = 2; i < cells.getLength(); i++) {
            Element cell = (Element) cells.item(i);
            if (cell.getAttribute("r").startsWith("A")) {
                assertThat(cell.getAttribute("t")).as(cell.getAttribute("r")).isEqualTo("s");
                texts.add(strings.item(Integer.parseInt(cell.getTextContent())).getTextContent());
            }
        }
        return texts;
    }

    @Test
    void textIsNeverAFormula() {
        String[] starts = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "=HYPERLINK(\"http://a.invalid\")", "plain"};
        Map<String, Document> files = read(workbook((Object[]) starts));
        assertThat(texts(files)).containsExactly(starts);
        assertThat(files.get("xl/worksheets/sheet1.xml").getElementsByTagName("f").getLength()).as("formulas").isZero();
    }

    @Test
    void textIsReadAsItStands() {
        assertThat(texts(read(workbook("_x0041_ stays", "a\u0007b", "<b>&\"'", "\rback"))))
                .containsExactly("_x005F_x0041_ stays", "a\ufffdb", "<b>&\"'", "\ufffdback");
        assertThat(texts(read(workbook("x".repeat(40_000)))).get(0)).hasSize(32_767);
    }

    @Test
    void numbersDaysAndTruthsAreWhatTheyAre() {
        byte[] bytes = Workbooks.of("a", DAY, List.of(new WorkbookSheet("All", List.of(Column.of("a"), Column.of("b"), Column.of("c"), Column.of("d")),
                List.of(List.of(new BigDecimal("0.10"), true, DAY, "")))));
        NodeList cells = read(bytes).get("xl/worksheets/sheet1.xml").getElementsByTagName("c");
        assertThat(cells.getLength()).as("four headers, three cells and an empty one").isEqualTo(7);
        assertThat(new BigDecimal(cells.item(4).getTextContent())).isEqualByComparingTo("0.1");
        assertThat(((Element) cells.item(5)).getAttribute("t")).isEqualTo("b");
        assertThat(Double.parseDouble(cells.item(6).getTextContent())).as("days since the end of 1899").isEqualTo(45747);
    }

    @Test
    void equalSheetsGiveEqualBytes() throws IOException, InterruptedException {
        byte[] first = workbook("a");
        Thread.sleep(5);
        assertThat(workbook("a")).isEqualTo(first);
        Document properties = read(first).get("docProps/core.xml");
        assertThat(properties.getElementsByTagName("dcterms:created").item(0).getTextContent()).isEqualTo("2025-03-31T00:00:00Z");
        assertThat(properties.getElementsByTagName("dc:title").item(0).getTextContent()).isEqualTo("A <title>");
    }

    @Test
    void whatNoSpreadsheetTakes() {
        assertThatThrownBy(() -> new WorkbookSheet("a/b", List.of(), List.of())).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new WorkbookSheet("a".repeat(32), List.of(), List.of())).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new WorkbookSheet("a", List.of(Column.of("b")), List.of(List.of(1, 2)))).hasMessageContaining("1 columns and a row of 2 cells");
    }
}
