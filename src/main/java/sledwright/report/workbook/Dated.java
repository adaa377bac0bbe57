package sledwright.report.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Collections;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/** A workbook with a day of our choice in place of the time of its making, which its writer takes from the clock. */
final class Dated {

    private static final String PROPERTIES = "docProps/core.xml";
    private static final Pattern CREATED = Pattern.compile("(<dcterms:created[^>]*>)[^<]*");

    private Dated() {
    }

    static byte[] of(byte[] workbook, LocalDate day) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        // The writer leaves sizes to the archive's directory, where a reader of streams does not look.
        try (ZipFile from = ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(workbook)).get();
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (ZipArchiveEntry entry : Collections.list(from.getEntries())) {
                ZipEntry same = new ZipEntry(entry.getName());
                // Local time, as zip files have it, would differ between time zones.
                same.setTimeLocal(day.atStartOfDay());
                out.putNextEntry(same);
                byte[] content = from.getInputStream(entry).readAllBytes();
                out.write(entry.getName().equals(PROPERTIES) ? withDay(content, day) : content);
                out.closeEntry();
            }
        }
        return bytes.toByteArray();
    }

    private static byte[] withDay(byte[] properties, LocalDate day) {
        return CREATED.matcher(new String(properties, StandardCharsets.UTF_8)).replaceAll("$1" + day + "T00:00:00Z")
                .getBytes(StandardCharsets.UTF_8);
    }
}
