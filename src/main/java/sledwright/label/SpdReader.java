package sledwright.label;

import java.util.List;
import java.util.Optional;
import sledwright.input.Faults;
import sledwright.input.Place;
import sledwright.input.Source;

/** Reads the SPD of a DDR3 or DDR4 module from a file: the bytes themselves, or a dump of them in hexadecimal. */
public final class SpdReader {

    private static final int MOST_MEGABYTES = 1;
    private static final int LEAST_BYTES = 128;
    private static final int DDR5_KEY = 0x12;

    private SpdReader() {
    }

    /** The module; empty, with faults, when the file holds no SPD that can be trusted. */
    public static Optional<Reading> read(Source source, Faults faults) {
        Optional<byte[]> bytes = source.bytes(MOST_MEGABYTES, faults);
        return bytes.flatMap(found -> read(found, source.name(), faults));
    }

    static Optional<Reading> read(byte[] file, String name, Faults faults) {
        int before = faults.size();
        Place place = Place.of(name);
        List<SpdBytes> readings = isText(file) ? Hexdump.read(file, name, faults) : List.of(new SpdBytes(file));
        if (faults.since(before)) {
            return Optional.empty();
        }
        Optional<SpdBytes> spd = readings.stream().filter(bytes -> bytes.size() >= LEAST_BYTES)
                .filter(bytes -> SpdLayout.keyed(bytes.at(SpdLayout.KEY)).isPresent()).findFirst();
        if (spd.isEmpty()) {
            unreadable(readings.get(0), place, faults);
            return Optional.empty();
        }
        SpdLayout layout = SpdLayout.keyed(spd.get().at(SpdLayout.KEY)).orElseThrow();
        check(layout, spd.get(), place, faults);
        return faults.since(before) ? Optional.empty() : new SpdDecoder(layout, spd.get(), place, faults).read();
    }

    private static boolean isText(byte[] file) {
        for (byte next : file) {
            if ((next < ' ' || next > '~') && next != '\n' && next != '\r' && next != '\t') {
                return false;
            }
        }
        return true;
    }

    private static void unreadable(SpdBytes spd, Place place, Faults faults) {
        if (spd.size() < LEAST_BYTES) {
            faults.add(place, "holds %s bytes; an SPD has 256 (DDR3) or 512 (DDR4), of which at least the first %s are needed"
                    .formatted(spd.size(), LEAST_BYTES));
        } else {
            int key = spd.at(SpdLayout.KEY);
            faults.add(place, "memory type 0x%02X in byte 2 must be 0x0B (DDR3) or 0x0C (DDR4)%s".formatted(key, key == DDR5_KEY
                    ? "; it is that of DDR5, whose label can be read instead" : ""));
        }
    }

    private static void check(SpdLayout layout, SpdBytes spd, Place place, Faults faults) {
        check("0-" + (layout.covered(spd) - 1), spd.crc(0, layout.covered(spd)), spd.word(SpdLayout.CRC), place, faults);
        if (layout == SpdLayout.DDR4 && spd.size() >= SpdLayout.SECOND_CRC + 2) {
            check("128-253", spd.crc(128, 126), spd.word(SpdLayout.SECOND_CRC), place, faults);
        }
    }

    private static void check(String covered, int computed, int stored, Place place, Faults faults) {
        if (computed != stored) {
            faults.add(place, "checksum 0x%04X of bytes %s must be 0x%04X: the dump is damaged; read it again"
                    .formatted(stored, covered, computed));
        }
    }
}
