package sledwright.input;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;

/** Reads a sheet of an XLSX workbook. Formulas count as what they last came to; nothing is computed. */
final class WorkbookReader {

    private static final int MOST_MEGABYTES = 64;
    /** ECMA-376 part 1, 12.3.20: the type of a workbook's styles. */
    private static final String STYLES = "spreadsheetml.styles+xml";
    /** What the library needs to distinguish one kind of file from another. */
    private static final int LEAST_BYTES = 8;
    /** A few kilobytes can unpack to gigabytes. */
    private static final int MOST_UNPACKED_MEGABYTES = 256;
    /** Spreadsheets compute with fifteen digits; what stands behind them is noise of binary fractions. */
    private static final MathContext DIGITS = new MathContext(15, RoundingMode.HALF_EVEN);
    /** Outside quoted words and colours, a letter of days, months or years. */
    private static final Pattern QUOTED = Pattern.compile("\"[^\"]*\"|\\[[^\\]]*]|\\\\.");
    private static final Pattern DATE_LETTERS = Pattern.compile("[dyDY]|[mM]{3}");

    private final String file;
    private final Faults faults;

    private WorkbookReader(String file, Faults faults) {
        this.file = file;
        this.faults = faults;
    }

    static Optional<Grid> read(Source source, Optional<String> sheet, Faults faults) {
        return source.bytes(MOST_MEGABYTES, faults).flatMap(bytes -> new WorkbookReader(source.name(), faults).grid(bytes, sheet));
    }

    private Optional<Grid> grid(byte[] bytes, Optional<String> wanted) {
        int before = faults.size();
        boolean readable = bytes.length >= LEAST_BYTES;
        if (!readable || !ReadableWorkbook.isOOXMLZipHeader(bytes)) {
            faults.add(Place.of(file), readable && ReadableWorkbook.isOLE2Header(bytes)
                    ? "is a workbook of the old kind or has a password; save it as XLSX without one" : "is no XLSX workbook");
            return Optional.empty();
        }
        try {
            if (isBomb(bytes)) {
                faults.add(Place.of(file), "unpacks to more than %s MB".formatted(MOST_UNPACKED_MEGABYTES));
                return Optional.empty();
            }
            Optional<String> unreadable = unreadable(bytes);
            if (unreadable.isPresent()) {
                faults.add(Place.of(file), unreadable.get());
                return Optional.empty();
            }
            try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes),
                    new ReadingOptions(hasStyles(bytes), true))) {
                Optional<Grid> grid = sheet(workbook, wanted);
                return faults.since(before) ? Optional.empty() : grid;
            }
        } catch (OutOfMemoryError full) {
            // The library keeps styles, texts and formulas as long as it reads; all of that is given back here.
            faults.add(Place.of(file), "takes more memory to read than there is; save the sheet alone, or as CSV");
            return Optional.empty();
        } catch (IOException | RuntimeException broken) {
            // The library reports a broken workbook by exceptions of many kinds.
            faults.add(Place.of(file), "is damaged or cut off; save it again as an XLSX workbook");
            return Optional.empty();
        }
    }

    private static ZipFile zip(byte[] bytes) throws IOException {
        return ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(bytes)).get();
    }

    private static boolean isBomb(byte[] bytes) throws IOException {
        long left = MOST_UNPACKED_MEGABYTES * 1_000_000L;
        byte[] buffer = new byte[1 << 16];
        try (ZipFile zip = zip(bytes)) {
            for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
                // ISO/IEC 29500-2, annex B (from memory): parts are stored or deflated. To unpack others, the library needs libraries that
                // are not here.
                if (entry.getMethod() != ZipEntry.STORED && entry.getMethod() != ZipEntry.DEFLATED) {
                    throw new IOException(entry.getName());
                }
                try (InputStream content = zip.getInputStream(entry)) {
                    for (int read = content.read(buffer); read >= 0; read = content.read(buffer)) {
                        left -= read;
                        if (left < 0) {
                            return true;
                        }
                    }
                }
            }
        }
        return false;
    }

    /** What keeps a sheet from being read by a library that makes room for every column up to the last one named. */
    private static Optional<String> unreadable(byte[] bytes) throws IOException {
        try (ZipFile zip = zip(bytes)) {
            for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
                if (entry.getName().endsWith(".xml")) {
                    try (InputStream content = zip.getInputStream(entry)) {
                        Optional<String> wrong = SheetSize.tooLarge(content);
                        if (wrong.isPresent()) {
                            return wrong;
                        }
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** A workbook may be without styles, and so without dates; the library must not look for them then. */
    private static boolean hasStyles(byte[] bytes) throws IOException {
        try (ZipFile zip = zip(bytes)) {
            ZipArchiveEntry types = zip.getEntry("[Content_Types].xml");
            return types == null || new String(zip.getInputStream(types).readAllBytes(), StandardCharsets.UTF_8).contains(STYLES);
        }
    }

    private Optional<Grid> sheet(ReadableWorkbook workbook, Optional<String> wanted) throws IOException {
        List<Sheet> sheets;
        try (Stream<Sheet> all = workbook.getSheets()) {
            sheets = all.toList();
        }
        List<String> names = sheets.stream().map(Sheet::getName).toList();
        if (wanted.isPresent()) {
            Optional<Sheet> named = sheets.stream().filter(sheet -> sheet.getName().equals(wanted.get())).findFirst();
            if (named.isEmpty()) {
                faults.add(Place.of(file), "has no sheet \"%s\"%s"
                        .formatted(Field.shown(wanted.get()), new Nearest(names).hint(wanted.get())));
                return Optional.empty();
            }
            return Optional.of(new Grid(file, wanted.get(), rows(named.get()), false));
        }
        List<Grid> filled = filled(sheets.stream().filter(sheet -> sheet.getVisibility() == SheetVisibility.VISIBLE).toList());
        if (filled.isEmpty()) {
            List<Grid> hidden = filled(sheets.stream().filter(sheet -> sheet.getVisibility() != SheetVisibility.VISIBLE).toList());
            faults.add(Place.of(file), hidden.isEmpty() ? "holds no cells"
                    : "holds cells in hidden sheets alone; name one with --sheet: " + names(hidden));
        } else if (filled.size() > 1) {
            faults.add(Place.of(file), "has several sheets; name one with --sheet: " + names(filled));
        }
        return filled.stream().findFirst();
    }

    private List<Grid> filled(List<Sheet> sheets) throws IOException {
        List<Grid> filled = new ArrayList<>();
        for (Sheet sheet : sheets) {
            List<Grid.Row> rows = rows(sheet);
            if (!rows.isEmpty()) {
                filled.add(new Grid(file, sheet.getName(), rows, false));
            }
        }
        return filled;
    }

    private static String names(List<Grid> grids) {
        return grids.stream().map(grid -> Field.shown(grid.sheet())).collect(Collectors.joining(", "));
    }

    private List<Grid.Row> rows(Sheet sheet) throws IOException {
        List<Grid.Row> rows = new ArrayList<>();
        try (Stream<Row> stream = sheet.openStream()) {
            Iterator<Row> each = stream.iterator();
            while (each.hasNext() && !GridReader.isFull(rows)) {
                Row row = each.next();
                List<Grid.Cell> cells = new ArrayList<>();
                for (int column = 0; column < Math.min(row.getCellCount(), CsvCells.MOST_COLUMNS); column++) {
                    cells.add(row.getOptionalCell(column).map(this::cell).orElse(Grid.Cell.EMPTY));
                }
                Grid.Row read = new Grid.Row(row.getRowNum(), cells);
                if (!read.isEmpty()) {
                    rows.add(read);
                }
            }
        }
        return rows;
    }

    private Grid.Cell cell(Cell cell) {
        Object value = cell.getValue();
        if (cell.getType() == CellType.ERROR) {
            return new Grid.Cell(Grid.Kind.ERROR, String.valueOf(cell.getRawValue()));
        }
        if (value instanceof BigDecimal number) {
            return isDate(cell) ? date(cell, number) : number(number);
        }
        String text = value == null ? cell.getRawValue() : value.toString();
        return Grid.Cell.text(text == null ? "" : text.strip());
    }

    private static Grid.Cell number(BigDecimal number) {
        BigDecimal plain = number.round(DIGITS).stripTrailingZeros();
        boolean sane = Math.abs((long) plain.scale()) < 30;
        return new Grid.Cell(Grid.Kind.NUMBER, sane ? plain.toPlainString() : plain.toString());
    }

    private static boolean isDate(Cell cell) {
        String format = cell.getDataFormatString();
        return format != null && DATE_LETTERS.matcher(QUOTED.matcher(format).replaceAll("")).find();
    }

    private static Grid.Cell date(Cell cell, BigDecimal number) {
        try {
            LocalDateTime moment = cell.asDate();
            return moment == null ? number(number) : new Grid.Cell(Grid.Kind.DATE, moment.toLocalDate().toString());
        } catch (DateTimeException | ArithmeticException absurd) {
            return number(number);
        }
    }
}
