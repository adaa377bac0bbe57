package sledwright.label;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.label.SpdReaderTest.fault;
import static sledwright.label.SpdReaderTest.read;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import sledwright.input.Faults;

/** SPDs and dumps of just the length that is enough, and bytes at the ends of what they may say. */
class SpdBordersTest {

    private static final String ROW = " 41".repeat(16);

    private static byte[] signed(byte[] spd) {
        SpdImage.sign(spd);
        return spd;
    }

    private static SpdImage times(SpdImage like, int picoseconds) {
        return new SpdImage(like.ddr(), like.letter(), like.ranks(), like.width(), like.layers(), like.dieMbit(), like.mts(), like.volts(),
                picoseconds, picoseconds, like.card(), like.cardRevision(), like.part());
    }

    private static SpdImage lettered(SpdImage like, char letter, String part) {
        return new SpdImage(like.ddr(), letter, like.ranks(), like.width(), like.layers(), like.dieMbit(), like.mts(), like.volts(),
                like.taaPs(), like.trcdPs(), like.card(), like.cardRevision(), part);
    }

    @Test
    void theLeastThatIsAnSpd() {
        byte[] whole = SpdImage.ddr3().bytes();
        assertThat(read(signed(Arrays.copyOf(whole, 128))).label()).hasToString("8GB 2Rx4 PC3L-12800R-11-13-E2");
        assertThat(fault(Arrays.copyOf(whole, 127))).contains("holds 127 bytes");
        assertThat(fault(new byte[128])).contains("memory type 0x00 in byte 2");
    }

    @Test
    void theLeastThatHasAPartNumber() {
        byte[] whole = SpdImage.ddr4().bytes();
        assertThat(read(signed(Arrays.copyOf(whole, 349))).sku()).isEqualTo("DEMO-16");
        assertThat(read(signed(Arrays.copyOf(whole, 348))).sku()).isEqualTo("16GB-2Rx4-PC4-2400T-RA1-11");
    }

    @Test
    void checksumsSayWhatTheyCover() {
        byte[] three = SpdImage.ddr3().bytes();
        three[100] ^= 1;
        assertThat(fault(three)).contains("of bytes 0-116 must be");
        byte[] four = SpdImage.ddr4().bytes();
        four[100] ^= 1;
        assertThat(fault(four)).contains("of bytes 0-125 must be");
        byte[] second = Arrays.copyOf(SpdImage.ddr4().bytes(), 256);
        second[200] ^= 1;
        assertThat(fault(second)).contains("of bytes 128-253 must be");
        assertThat(read(Arrays.copyOf(second, 255)).label().speed().mts()).isEqualTo(2400);
    }

    /** 14.17 ns are 17.004 cycles at 2400 MT/s: a time that was rounded to whole steps, and no eighteenth cycle. */
    @Test
    void timesALittleTooLong() {
        assertThat(read(times(SpdImage.ddr4(), 14_170).bytes()).label()).hasToString("16GB 2Rx4 PC4-2400T-RA1-11");
        assertThat(read(times(SpdImage.ddr3(), 13_751).bytes()).label()).hasToString("8GB 2Rx4 PC3L-12800R-11-13-E2");
        assertThat(read(times(SpdImage.ddr3(), 13_760).bytes()).label()).hasToString("8GB 2Rx4 PC3L-12800R-12-13-E2");
    }

    /** DDR3 states its fine step as a fraction: 2/2 ps is 1/1 ps. */
    @Test
    void fineStepsAreAFraction() {
        SpdImage plain = SpdImage.ddr3();
        byte[] spd = new SpdImage(3, 'R', 2, 4, 1, 2048, 1866, 1.35, plain.taaPs(), plain.trcdPs(), 'E', 2, plain.part()).bytes();
        assertThat(read(spd).label().speed().mts()).isEqualTo(1866);
        spd[9] = 0x22;
        assertThat(read(signed(spd)).label().speed().mts()).isEqualTo(1866);
    }

    @Test
    void checkBitsMakeTheDifferenceBetweenUAndE() {
        assertThat(read(lettered(SpdImage.ddr4(), 'U', "DEMO").bytes()).label().letter()).contains(ModuleLetter.U);
        assertThat(read(lettered(SpdImage.ddr4(), 'E', "DEMO").bytes()).label().letter()).contains(ModuleLetter.E);
    }

    /** A label has a digit for each half of the revision. */
    @Test
    void aRevisionOfThreeDigitsIsOnNoLabel() {
        byte[] spd = SpdImage.ddr4().bytes();
        spd[1] = (byte) 0xA1;
        assertThat(read(signed(spd)).label()).hasToString("16GB 2Rx4 PC4-2400T-RA1");
    }

    @Test
    void whatIsVisibleOfAText() {
        byte[] text = " A ~\u007fB\u001f ".getBytes(StandardCharsets.ISO_8859_1);
        assertThat(new SpdBytes(text).text(0, text.length)).isEqualTo("A ~B");
        byte[] file = SpdImage.hexdump(lettered(SpdImage.ddr4(), 'R', "A~B").bytes()).getBytes(StandardCharsets.US_ASCII);
        assertThat(read(file).sku()).isEqualTo("A~B");
    }

    private static List<SpdBytes> dump(Faults faults, String... lines) {
        return Hexdump.read(String.join("\n", lines).getBytes(StandardCharsets.US_ASCII), "dump", faults);
    }

    private static int size(String... lines) {
        Faults faults = new Faults();
        List<SpdBytes> dump = dump(faults, lines);
        assertThat(faults.all()).isEmpty();
        return dump.get(0).size();
    }

    @Test
    void anAsteriskStandsForRows() {
        assertThat(size("0000" + ROW, "*", "0040")).isEqualTo(64);
        assertThat(size("0000" + ROW, "*", "0400")).isEqualTo(1024);
        Faults far = new Faults();
        assertThat(dump(far, "0000" + ROW, "*", "0401")).isEmpty();
        assertThat(far.all()).singleElement().asString().contains("address 0401 must be 10");
        Faults none = new Faults();
        assertThat(dump(none, "0000 41", "*", "0040")).isNotEmpty();
    }

    @Test
    void aDumpEndsWhereItIsFull() {
        String[] rows = new String[80];
        Arrays.setAll(rows, row -> "%04x".formatted(16 * row) + ROW);
        assertThat(size(rows)).isEqualTo(1024);
    }

    /** Headers come before the first row; a line of words behind it is a fault, an address with a colon and no byte the end. */
    @Test
    void linesThatAreNoRows() {
        assertThat(size("     0  1  2  words", "0000" + ROW, "", "0010")).isEqualTo(16);
        assertThat(size("0000:" + ROW, "0010: words", "more words")).isEqualTo(16);
        Faults faults = new Faults();
        assertThat(dump(faults, "0000" + ROW, "0010 words")).isEmpty();
        assertThat(faults.all()).singleElement().asString().contains("is no line of a dump");
    }
}
