package sledwright.input;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Reads a text file that must be UTF-8; a byte-order mark is ignored. */
public final class TextFile {

    private static final char BYTE_ORDER_MARK = '\uFEFF';
    /** What a workbook begins with, as every ZIP file does. */
    private static final byte[] PACKED = {'P', 'K', 3, 4};

    private TextFile() {
    }

    /** The text; empty, with faults, when it cannot be read as text. */
    static Optional<String> read(Source source, int mostMegabytes, Faults faults) {
        return source.bytes(mostMegabytes, faults).flatMap(bytes -> decode(bytes, source.place(), faults));
    }

    /** The lines of a text, each with its place; none, with faults, when it cannot be read as text. */
    public static List<Located<String>> lines(Source source, int mostMegabytes, Faults faults) {
        List<Located<String>> lines = new ArrayList<>();
        read(source, mostMegabytes, faults).ifPresent(text -> text.lines()
                .forEach(line -> lines.add(new Located<>(line, new Place(source.name(), lines.size() + 1)))));
        return lines;
    }

    private static Optional<String> decode(byte[] bytes, Place file, Faults faults) {
        if (bytes.length >= 2 && (bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE
                || bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF)) {
            faults.add(new Place(file.file(), 1), "the file is UTF-16; save it as UTF-8");
            return Optional.empty();
        }
        if (bytes.length >= PACKED.length && Arrays.equals(bytes, 0, PACKED.length, PACKED, 0, PACKED.length)) {
            faults.add(new Place(file.file(), 1), "the file is a workbook, or packed otherwise; save it as text, a table as CSV");
            return Optional.empty();
        }
        if (isPlain(bytes)) {
            return Optional.of(new String(bytes, StandardCharsets.US_ASCII));
        }
        CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT).onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        CoderResult result = decoder.decode(in, out, true);
        if (result.isError()) {
            faults.add(new Place(file.file(), lineOf(bytes, in.position())),
                    ("byte 0x%02X is not UTF-8; a spreadsheet often saves Windows-1252: save the file again as \"CSV UTF-8\" "
                            + "or with the encoding UTF-8").formatted(bytes[in.position()] & 0xFF));
            return Optional.empty();
        }
        String text = out.flip().toString();
        if (!text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK) {
            text = text.substring(1);
        }
        return hasControls(text, file, faults) ? Optional.empty() : Optional.of(text);
    }

    /** Whether a text needs no look at its letters, which nearly none does: lines of plain ASCII. */
    private static boolean isPlain(byte[] bytes) {
        for (byte next : bytes) {
            if ((next < ' ' || next > '~') && next != '\n') {
                return false;
            }
        }
        return true;
    }

    private static int lineOf(byte[] bytes, int position) {
        int line = 1;
        for (int i = 0; i < position; i++) {
            if (bytes[i] == '\n' || bytes[i] == '\r' && bytes[i + 1] != '\n') {
                line++;
            }
        }
        return line;
    }

    private static boolean hasControls(String text, Place file, Faults faults) {
        boolean found = false;
        int line = 1;
        int lastFaulty = 0;
        for (int i = 0; i < text.length(); i++) {
            char next = text.charAt(i);
            if (Printable.ascii(next)) {
                continue;
            }
            if (next == '\n' || next == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n')) {
                line++;
            } else if (Character.isISOControl(next) && next != '\t' && next != '\r') {
                found = true;
                if (line != lastFaulty) {
                    faults.add(new Place(file.file(), line),
                            "control character U+%04X; take it out".formatted((int) next));
                }
                lastFaulty = line;
            }
        }
        return found;
    }
}
