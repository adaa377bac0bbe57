package sledwright.report.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.Formulas;
import sledwright.catalog.intake.TableExport;
import sledwright.input.Figure;
import sledwright.report.text.Json;

/** A table of a catalogue for spreadsheets and programs. */
public final class TableSheet {

    /** The first day of zip files would be written as a moment, which differs between time zones. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 2, 0, 0);
    private static final Pattern MADE_AT = Pattern.compile("\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}[.\\d]*Z");

    private TableSheet() {
    }

    public static String json(TableExport export) {
        return Json.document(out -> {
            out.writeStringField("table", export.table().label());
            out.writeArrayFieldStart("rows");
            for (Map<String, String> row : export.rows()) {
                out.writeStartObject();
                for (String column : export.columns()) {
                    Optional<BigDecimal> figure = figure(export.table(), column, row);
                    if (figure.isPresent()) {
                        out.writeNumberField(column, figure.get());
                    } else if (row.containsKey(column)) {
                        out.writeStringField(column, row.get(column));
                    } else {
                        out.writeNullField(column);
                    }
                }
                out.writeEndObject();
            }
            out.writeEndArray();
        });
    }

    /** A workbook of one sheet; the same rows always give the same bytes. */
    public static byte[] workbook(TableExport export) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            try (Workbook workbook = new Workbook(bytes, "sledwright", "1.0")) {
                Worksheet sheet = workbook.newWorksheet(export.table().label());
                List<String> columns = export.columns();
                for (int column = 0; column < columns.size(); column++) {
                    sheet.value(0, column, columns.get(column));
                }
                int line = 1;
                for (Map<String, String> row : export.rows()) {
                    for (int column = 0; column < columns.size(); column++) {
                        cell(sheet, line, column, export.table(), columns.get(column), row);
                    }
                    line++;
                }
                sheet.freezePane(1, 1);
            }
            return timeless(bytes.toByteArray());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static void cell(Worksheet sheet, int line, int place, CatalogTable table, String column, Map<String, String> row) {
        Optional<BigDecimal> figure = figure(table, column, row);
        if (figure.isPresent()) {
            sheet.value(line, place, figure.get());
        } else if (row.containsKey(column)) {
            sheet.value(line, place, Formulas.defused(row.get(column)));
        }
    }

    private static Optional<BigDecimal> figure(CatalogTable table, String column, Map<String, String> row) {
        return table.isText(column) ? Optional.empty()
                : Optional.ofNullable(row.get(column)).flatMap(text -> Figure.parse(text, false).value());
    }

    /** The same archive without the time at which it was made. */
    private static byte[] timeless(byte[] made) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipFile from = ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(made)).get();
                ZipOutputStream to = new ZipOutputStream(bytes)) {
            for (ZipArchiveEntry entry : Collections.list(from.getEntries())) {
                ZipEntry same = new ZipEntry(entry.getName());
                // Local time, as zip files have it, would differ between time zones.
                same.setTimeLocal(NO_TIME);
                to.putNextEntry(same);
                byte[] content = from.getInputStream(entry).readAllBytes();
                to.write(entry.getName().startsWith("docProps/")
                        ? MADE_AT.matcher(new String(content, StandardCharsets.UTF_8)).replaceAll("1980-01-02T00:00:00Z")
                        .getBytes(StandardCharsets.UTF_8)
                        : content);
                to.closeEntry();
            }
        }
        return bytes.toByteArray();
    }
}
