package sledwright.label;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sledwright.input.Faults;
import sledwright.input.Place;

/**
 * Bytes as hexdump, xxd, i2cdump and others of their kind print them: an address, then up to sixteen bytes, singly or in pairs; a line
 * with an asterisk stands for lines like the one before.
 */
final class Hexdump {

    private static final Pattern LINE = Pattern.compile(
            "\\s*([0-9A-Fa-f]{2,8})(:?)((?:\\s+(?:[0-9A-Fa-f]{4}|[0-9A-Fa-f]{2})(?=\\s|$))*)(.*)");
    private static final int ROW = 16;
    private static final int MOST_BYTES = 1024;

    private final Faults faults;
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private boolean pairs;
    private boolean repeat;
    private boolean ended;

    private Hexdump(Faults faults) {
        this.faults = faults;
    }

    /** What the dump may hold, the likeliest first: some tools print pairs with their bytes swapped. Nothing after a fault. */
    static List<SpdBytes> read(byte[] text, String name, Faults faults) {
        int before = faults.size();
        Hexdump dump = new Hexdump(faults);
        List<String> lines = new String(text, StandardCharsets.US_ASCII).lines().toList();
        for (int line = 0; line < lines.size() && !faults.since(before) && !dump.ended; line++) {
            dump.line(lines.get(line), new Place(name, line + 1));
        }
        if (dump.bytes.size() == 0 && !faults.since(before)) {
            faults.add(Place.of(name), "is neither an SPD nor a dump of one, such as hexdump -C prints");
        }
        byte[] read = dump.bytes.toByteArray();
        // Pairs among single bytes are no dump of pairs, and an odd byte has none to be swapped with.
        if (faults.since(before) || !dump.pairs || read.length % 2 != 0) {
            return faults.since(before) ? List.of() : List.of(new SpdBytes(read));
        }
        byte[] swapped = new byte[read.length];
        for (int i = 0; i < read.length; i++) {
            swapped[i] = read[i ^ 1];
        }
        return List.of(new SpdBytes(read), new SpdBytes(swapped));
    }

    private void line(String line, Place place) {
        Matcher found = LINE.matcher(line);
        if (line.strip().equals("*") && bytes.size() >= ROW) {
            repeat = true;
        } else if (!found.matches() || found.group(3).isBlank() && found.group(2).isEmpty() && !found.group(4).isBlank()) {
            if (bytes.size() > 0 && !line.isBlank()) {
                faults.add(place, "is no line of a dump; it would be an address and up to sixteen bytes");
            }
        } else {
            row(found, place);
        }
    }

    private void row(Matcher found, Place place) {
        long address = Long.parseLong(found.group(1), 16);
        byte[] before = bytes.toByteArray();
        while (repeat && address <= MOST_BYTES && bytes.size() < address) {
            bytes.write(before, before.length - ROW, ROW);
        }
        repeat = false;
        if (address != bytes.size()) {
            faults.add(place, "address %s must be %x: a line is missing or stands twice".formatted(found.group(1), bytes.size()));
            return;
        }
        int end = bytes.size() + ROW;
        for (String digits : found.group(3).strip().split("\\s+")) {
            if (!digits.isEmpty() && bytes.size() + digits.length() / 2 <= end) {
                pairs |= digits.length() == 4;
                for (int at = 0; at < digits.length(); at += 2) {
                    bytes.write(Integer.parseInt(digits.substring(at, at + 2), 16));
                }
            }
        }
        ended = bytes.size() < end || bytes.size() >= MOST_BYTES;
    }
}
