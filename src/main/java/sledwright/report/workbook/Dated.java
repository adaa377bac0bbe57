package sledwright.report.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A workbook with a day of our choice in place of the time of its making, which its writer takes from the clock.
 *
 * <p>The writer leaves sizes to the archive's directory, where the JDK's reader of streams does not look; so this reads the directory
 * (PKWARE's APPNOTE.TXT, 4.3.12 and 4.3.16).
 */
final class Dated {

    private static final String PROPERTIES = "docProps/core.xml";
    private static final Pattern CREATED = Pattern.compile("(<dcterms:created[^>]*>)[^<]*");
    private static final int END_LENGTH = 22;
    private static final int ENTRY_LENGTH = 46;
    private static final int LOCAL_LENGTH = 30;

    private final ByteBuffer archive;

    private Dated(byte[] archive) {
        this.archive = ByteBuffer.wrap(archive).order(ByteOrder.LITTLE_ENDIAN);
    }

    static byte[] of(byte[] workbook, LocalDate day) throws IOException {
        return new Dated(workbook).dated(day);
    }

    private byte[] dated(LocalDate day) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        int end = archive.capacity() - END_LENGTH;
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            int entry = archive.getInt(end + 16);
            for (int left = archive.getShort(end + 10); left > 0; left--) {
                int nameLength = archive.getShort(entry + 28);
                String name = new String(archive.array(), entry + ENTRY_LENGTH, nameLength, StandardCharsets.UTF_8);
                byte[] content = inflated(archive.getInt(entry + 42), archive.getInt(entry + 20), archive.getInt(entry + 24));
                ZipEntry same = new ZipEntry(name);
                same.setTimeLocal(day.atStartOfDay());
                out.putNextEntry(same);
                out.write(name.equals(PROPERTIES) ? withDay(content, day) : content);
                out.closeEntry();
                entry += ENTRY_LENGTH + nameLength + archive.getShort(entry + 30) + archive.getShort(entry + 32);
            }
        }
        return bytes.toByteArray();
    }

    private byte[] inflated(int local, int packed, int size) throws IOException {
        int from = local + LOCAL_LENGTH + archive.getShort(local + 26) + archive.getShort(local + 28);
        Inflater inflater = new Inflater(true);
        try {
            inflater.setInput(archive.array(), from, packed);
            byte[] content = new byte[size];
            if (inflater.inflate(content) != size) {
                throw new IllegalStateException("the workbook's archive ends early");
            }
            return content;
        } catch (DataFormatException broken) {
            throw new IOException(broken);
        } finally {
            inflater.end();
        }
    }

    private static byte[] withDay(byte[] properties, LocalDate day) {
        return CREATED.matcher(new String(properties, StandardCharsets.UTF_8)).replaceAll("$1" + day + "T00:00:00Z")
                .getBytes(StandardCharsets.UTF_8);
    }
}
