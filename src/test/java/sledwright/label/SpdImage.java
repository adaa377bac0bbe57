package sledwright.label;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * SPDs made from the standard's layout (JESD21-C, annexes K and L), apart from the code under test: byte by byte, as decode-dimms
 * decodes them.
 *
 * @param layers 1, or the dies of a 3DS stack (DDR4)
 * @param volts  as the standard's bits state it
 */
public record SpdImage(int ddr, char letter, int ranks, int width, int layers, int dieMbit, int mts, double volts, int taaPs, int trcdPs,
                       char card, int cardRevision, String part) {

    private static final String CARDS = "ABCDEFGHJKLMNPRTUVWY";
    private static final Map<Integer, Integer> DDR4_CYCLES = Map.of(1600, 1250, 1866, 1071, 2133, 938, 2400, 833, 2666, 750, 2933, 682, 3200, 625);
    private static final Map<Integer, Integer> DDR3_CYCLES = Map.of(800, 2500, 1066, 1875, 1333, 1500, 1600, 1250, 1866, 1071, 2133, 938);

    /** A plain module: 16 GB of two ranks, DDR4-2400 at 17-17-17. */
    public static SpdImage ddr4() {
        return new SpdImage(4, 'R', 2, 4, 1, 4096, 2400, 1.2, 13_750, 13_750, 'A', 1, "DEMO-16");
    }

    /** A plain module: 8 GB of two ranks, DDR3-1600 at 11-11-11, 1.35 V. */
    public static SpdImage ddr3() {
        return new SpdImage(3, 'R', 2, 4, 1, 2048, 1600, 1.35, 13_750, 13_750, 'E', 2, "DEMO-8");
    }

    public SpdImage withRanks(int count) {
        return new SpdImage(ddr, letter, count, width, layers, dieMbit, mts, volts, taaPs, trcdPs, card, cardRevision, part);
    }

    /** Modules of every kind, drawn at random. */
    public static List<SpdImage> some(int ddr, int count, long seed) {
        Random random = new Random(seed);
        List<SpdImage> images = new ArrayList<>();
        while (images.size() < count) {
            int layers = ddr == 4 && random.nextInt(4) == 0 ? pick(random, 2, 4, 8) : 1;
            int mts = ddr == 4 ? pick(random, 1600, 1866, 2133, 2400, 2666, 2933, 3200) : pick(random, 800, 1066, 1333, 1600, 1866, 2133);
            SpdImage image = new SpdImage(ddr, "RLUE".charAt(random.nextInt(4)), pick(random, 1, 2, 4), pick(random, 4, 8, 16), layers,
                    ddr == 4 ? pick(random, 2048, 4096, 8192, 16_384) : pick(random, 1024, 2048, 4096, 8192), mts,
                    ddr == 4 ? 1.2 : new double[] {1.5, 1.35, 1.25}[random.nextInt(3)], 12_500 + 125 * random.nextInt(12),
                    12_500 + 125 * random.nextInt(12), CARDS.charAt(random.nextInt(CARDS.length())), random.nextInt(4), "DEMO-" + images.size());
            if (image.ranks * layers <= 16 && image.megabytes() >= 1024) {
                images.add(image);
            }
        }
        return images;
    }

    private static int pick(Random random, int... choices) {
        return choices[random.nextInt(choices.length)];
    }

    public int megabytes() {
        return dieMbit / 8 * (64 / width) * ranks * layers;
    }

    /** The whole SPD. */
    public byte[] bytes() {
        byte[] spd = ddr == 4 ? ddr4Bytes() : ddr3Bytes();
        sign(spd);
        return spd;
    }

    private byte[] ddr4Bytes() {
        byte[] spd = new byte[512];
        spd[0] = 0x23;
        spd[1] = 0x11;
        spd[2] = 0x0C;
        spd[3] = (byte) (letter == 'R' ? 1 : letter == 'L' ? 4 : 2);
        spd[4] = (byte) (0x80 | code(dieMbit));
        spd[5] = 0x21;
        spd[6] = (byte) (layers > 1 ? 0x80 | layers - 1 << 4 | 2 : 0);
        spd[11] = 0x03;
        spd[12] = (byte) (ranks - 1 << 3 | code(width) + 6);
        spd[13] = (byte) (letter == 'U' ? 3 : 0x0B);
        time(spd, DDR4_CYCLES.get(mts), 18, 125);
        spd[19] = 13;
        spd[21] = (byte) 0xF8;
        spd[22] = 0x0F;
        time(spd, taaPs, 24, 123);
        time(spd, trcdPs, 25, 122);
        time(spd, trcdPs, 26, 121);
        spd[128] = (byte) 0x11;
        spd[130] = (byte) (CARDS.indexOf(card) | cardRevision << 5);
        Arrays.fill(spd, 329, 349, (byte) ' ');
        System.arraycopy(part.getBytes(StandardCharsets.US_ASCII), 0, spd, 329, part.length());
        return spd;
    }

    private byte[] ddr3Bytes() {
        byte[] spd = new byte[256];
        spd[0] = (byte) 0x92;
        spd[1] = 0x13;
        spd[2] = 0x0B;
        spd[3] = (byte) (letter == 'R' ? 1 : letter == 'L' ? 0x0B : 2);
        spd[4] = (byte) code(dieMbit);
        spd[5] = 0x21;
        spd[6] = (byte) (volts == 1.5 ? 0 : volts == 1.35 ? 2 : 6);
        spd[7] = (byte) (ranks - 1 << 3 | code(width) + 6);
        spd[8] = (byte) (letter == 'U' ? 3 : 0x0B);
        spd[9] = 0x11;
        spd[10] = 1;
        spd[11] = 8;
        time(spd, DDR3_CYCLES.get(mts), 12, 34);
        spd[14] = (byte) 0xFE;
        spd[15] = 0x0F;
        time(spd, taaPs, 16, 35);
        time(spd, trcdPs, 18, 36);
        time(spd, trcdPs, 20, 37);
        spd[60] = 0x0F;
        spd[62] = (byte) (CARDS.indexOf(card) | cardRevision << 5);
        Arrays.fill(spd, 128, 146, (byte) ' ');
        System.arraycopy(part.getBytes(StandardCharsets.US_ASCII), 0, spd, 128, part.length());
        return spd;
    }

    /** The power of two above 256. */
    private static int code(int figure) {
        return Integer.numberOfTrailingZeros(figure) - 8;
    }

    /** Steps of 125 ps, rounded up, and the rest in picoseconds below. */
    private static void time(byte[] spd, int picoseconds, int coarse, int fine) {
        int steps = (picoseconds + 124) / 125;
        spd[coarse] = (byte) steps;
        spd[fine] = (byte) (picoseconds - 125 * steps);
    }

    /** Puts the checksums that the bytes need in their places. */
    static void sign(byte[] spd) {
        int covered = spd[2] == 0x0B && spd[0] < 0 ? 117 : 126;
        sign(spd, 0, covered, 126);
        if (spd[2] == 0x0C && spd.length >= 256) {
            sign(spd, 128, 126, 254);
        }
    }

    private static void sign(byte[] spd, int from, int length, int to) {
        int crc = 0;
        for (int i = from; i < from + length; i++) {
            for (int bit = 7; bit >= 0; bit--) {
                boolean carry = (crc >> 15 & 1) != (spd[i] >> bit & 1);
                crc = (crc << 1 ^ (carry ? 0x1021 : 0)) & 0xFFFF;
            }
        }
        spd[to] = (byte) crc;
        spd[to + 1] = (byte) (crc >> 8);
    }

    /** As {@code hexdump -C} prints them. */
    public static String hexdump(byte[] bytes) {
        StringBuilder text = new StringBuilder();
        for (int row = 0; row < bytes.length; row += 16) {
            text.append("%08x ".formatted(row));
            for (int i = row; i < row + 16; i++) {
                text.append((i == row + 8 ? "  %02x" : " %02x").formatted(bytes[i] & 0xFF));
            }
            text.append("  |");
            for (int i = row; i < row + 16; i++) {
                text.append(bytes[i] >= ' ' && bytes[i] <= '~' ? (char) bytes[i] : '.');
            }
            text.append("|\n");
        }
        return text.append("%08x\n".formatted(bytes.length)).toString();
    }
}
