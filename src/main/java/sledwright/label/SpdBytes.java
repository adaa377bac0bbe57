package sledwright.label;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** The bytes of an SPD. */
final class SpdBytes {

    private static final int POLYNOMIAL = 0x1021;

    private final byte[] bytes;

    SpdBytes(byte[] bytes) {
        this.bytes = bytes.clone();
    }

    int size() {
        return bytes.length;
    }

    /** The byte, from 0 to 255. */
    int at(int address) {
        return bytes[address] & 0xFF;
    }

    /** Some of a byte's bits, the lowest of them at {@code lowest}. */
    int bits(int address, int lowest, int count) {
        return at(address) >> lowest & (1 << count) - 1;
    }

    /** The byte as a number from -128 to 127. */
    int signed(int address) {
        return bytes[address];
    }

    /** Two bytes, the lower one first. */
    int word(int address) {
        return at(address) | at(address + 1) << 8;
    }

    /** Letters without the blanks that fill them up; bytes that are no visible ASCII are left out. */
    String text(int address, int length) {
        String text = new String(bytes, address, length, StandardCharsets.ISO_8859_1);
        return text.chars().filter(c -> c >= ' ' && c <= '~')
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString().strip();
    }

    /** The checksum that JEDEC prescribes: CRC-16 of polynomial 0x1021, from 0, the highest bit first. */
    int crc(int address, int length) {
        int crc = 0;
        for (byte next : Arrays.copyOfRange(bytes, address, address + length)) {
            crc ^= (next & 0xFF) << 8;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc << 1) ^ ((crc & 0x8000) == 0 ? 0 : POLYNOMIAL);
            }
            crc &= 0xFFFF;
        }
        return crc;
    }
}
