package sledwright.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.domain.ModuleType;
import sledwright.input.Fault;
import sledwright.input.Faults;
import sledwright.input.Source;

class SpdReaderTest {

    static Reading read(byte[] file) {
        Faults faults = new Faults();
        Optional<Reading> reading = SpdReader.read(file, "dump", faults);
        assertThat(faults.all()).isEmpty();
        return reading.orElseThrow();
    }

    static String fault(byte[] file) {
        Faults faults = new Faults();
        assertThat(SpdReader.read(file, "dump", faults)).isEmpty();
        return String.join("\n", faults.all().stream().map(Fault::toString).toList());
    }

    @Test
    void plainModules() {
        Reading four = read(SpdImage.ddr4().bytes());
        assertThat(four.label()).hasToString("16GB 2Rx4 PC4-2400T-RA1-11");
        assertThat(four.sku()).isEqualTo("DEMO-16");
        assertThat(four.label().type()).contains(ModuleType.RDIMM);
        Reading three = read(SpdImage.ddr3().bytes());
        assertThat(three.label()).hasToString("8GB 2Rx4 PC3L-12800R-11-13-E2");
        assertThat(three.label().speed().volts()).isEqualTo(1.35);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void whatWasWrittenIsRead(int ddr) {
        long seed = 20 + ddr;
        for (SpdImage image : SpdImage.some(ddr, 400, seed)) {
            Reading read = read(image.bytes());
            ModuleLabel label = read.label();
            Organisation organisation = label.organisation().orElseThrow();
            assertThat(label.capacityGb()).as("seed %d: %s", seed, image).contains(image.megabytes() / 1024);
            assertThat(organisation.ranks()).isEqualTo(image.ranks());
            assertThat(organisation.logicalRanks()).isEqualTo(image.ranks() * image.layers());
            assertThat(organisation.width()).isEqualTo(image.width());
            assertThat(label.speed().mts()).as("seed %d: %s", seed, image).isEqualTo(image.mts());
            assertThat(label.speed().volts()).isEqualTo(image.volts());
            assertThat(read.sku()).isEqualTo(image.part());
            assertThat(label.type()).contains(image.layers() > 1 ? ModuleType.THREE_DS
                    : Map.of('R', ModuleType.RDIMM, 'L', ModuleType.LRDIMM, 'U', ModuleType.UDIMM, 'E', ModuleType.UDIMM).get(image.letter()));
        }
    }

    @Test
    void everyFlippedBitOfTheFirstBytesIsNoticed() {
        for (SpdImage image : new SpdImage[] {SpdImage.ddr3(), SpdImage.ddr4()}) {
            for (int bit = 0; bit < 8 * 117; bit++) {
                byte[] spd = image.bytes();
                spd[bit / 8] ^= (byte) (1 << bit % 8);
                assertThat(fault(spd)).as("bit %d", bit).isNotEmpty();
            }
        }
        byte[] second = SpdImage.ddr4().bytes();
        second[130] ^= 1;
        assertThat(fault(second)).contains("of bytes 128-253 must be 0x");
    }

    @Test
    void faultsNameTheByte() {
        byte[] spd = SpdImage.ddr4().bytes();
        spd[3] = 3;
        spd[12] = 0x10;
        spd[18] = 3;
        SpdImage.sign(spd);
        assertThat(fault(spd)).contains("dump: module type 0x03 in byte 3 is that of no RDIMM", "organisation 0x10 in byte 12 says 3 ranks",
                "clock 0x03 in byte 18 makes a cycle of 333 ps");
        spd[2] = 0x12;
        assertThat(fault(spd)).contains("memory type 0x12 in byte 2 must be 0x0B (DDR3) or 0x0C (DDR4); it is that of DDR5");
        assertThat(fault(Arrays.copyOf(spd, 100))).contains("holds 100 bytes");
        assertThat(fault(new byte[0])).isNotEmpty();
    }

    /** A signed image with one byte changed. */
    private static byte[] with(SpdImage image, int address, int value) {
        byte[] spd = image.bytes();
        spd[address] = (byte) value;
        SpdImage.sign(spd);
        return spd;
    }

    @Test
    void whatNoServerModuleSaysIsAFault() {
        assertThat(fault(with(SpdImage.ddr4(), 3, 0x81))).isEqualTo("dump: module type 0x81 in byte 3 is that of no RDIMM, LRDIMM or UDIMM, the modules that server slots take");
        assertThat(read(with(SpdImage.ddr3(), 3, 0x81)).label().type()).contains(ModuleType.RDIMM);
        assertThat(fault(with(SpdImage.ddr4(), 4, 0x8F))).isEqualTo("dump: density 0x8F in byte 4 is no density of DDR4 devices");
        assertThat(fault(with(SpdImage.ddr4(), 4, 0x81))).isEqualTo("dump: density 0x81 in byte 4 is no density of DDR4 devices");
        assertThat(fault(new SpdImage(3, 'U', 1, 16, 1, 1024, 1600, 1.5, 13_750, 13_750, 'A', 0, "SMALL").bytes()))
                .isEqualTo("dump: density 0x02 in byte 4 makes a module of 0.5 GB, which is no whole number of GB");
        assertThat(fault(with(SpdImage.ddr4(), 12, 0x48))).isEqualTo("dump: organisation 0x48 in byte 12 says that the ranks are not alike, which cannot be read");
        assertThat(fault(with(SpdImage.ddr4(), 12, 0x10))).isEqualTo("dump: organisation 0x10 in byte 12 says 3 ranks of x4 in layers of 1, which no module has");
        assertThat(fault(with(SpdImage.ddr4(), 18, 3))).isEqualTo("dump: clock 0x03 in byte 18 makes a cycle of 333 ps, which no rate of DDR4 has");
        assertThat(fault(with(SpdImage.ddr4(), 13, 0x0A))).isEqualTo("dump: bus width 0x0A in byte 13 must say 64 data bits");
        assertThat(fault(with(SpdImage.ddr4(), 17, 1))).contains("clock 0x07 in byte 18 counts in steps that cannot be read");
        assertThat(fault(with(SpdImage.ddr3(), 11, 0))).contains("clock 0x0A in byte 12 counts in steps that cannot be read");
        assertThat(fault(with(SpdImage.ddr4(), 24, 0x10))).isEqualTo("dump: CAS latency 0x10 in byte 24 makes [3, 17, 17] cycles with tRCD and tRP, which no module has");
    }

    @Test
    void whatIsNoWholeSpdIsAFault() {
        byte[] spd = SpdImage.ddr4().bytes();
        assertThat(fault(Arrays.copyOf(spd, 100)))
                .isEqualTo("dump: holds 100 bytes; an SPD has 256 (DDR3) or 512 (DDR4), of which at least the first 128 are needed");
        byte[] five = SpdImage.ddr4().bytes();
        five[2] = 0x12;
        assertThat(fault(five)).isEqualTo("dump: memory type 0x12 in byte 2 must be 0x0B (DDR3) or 0x0C (DDR4); it is that of DDR5, whose label can be read instead");
        spd[130] ^= 1;
        assertThat(fault(spd)).isEqualTo("dump: checksum 0x%04X of bytes 128-253 must be 0x%04X: the dump is damaged; read it again"
                .formatted(spd[254] & 0xFF | (spd[255] & 0xFF) << 8, new SpdBytes(spd).crc(128, 126)));
        assertThat(fault("no dump at all".getBytes(StandardCharsets.US_ASCII))).isEqualTo("dump: is neither an SPD nor a dump of one, such as hexdump -C prints");
        String first = SpdImage.hexdump(SpdImage.ddr4().bytes()).lines().findFirst().orElseThrow();
        assertThat(fault((first + "\nand then some\n").getBytes(StandardCharsets.US_ASCII)))
                .isEqualTo("dump:2: is no line of a dump; it would be an address and up to sixteen bytes");
    }

    @Test
    void densitiesBetweenThePowersOfTwo() {
        assertThat(read(with(SpdImage.ddr4(), 4, 0x88)).label().capacityGb()).contains(48);
        assertThat(read(with(SpdImage.ddr4(), 4, 0x89)).label().capacityGb()).contains(96);
    }

    /** Raw card AA, and those of later revisions, are given elsewhere or by more bits. */
    @Test
    void rawCards() {
        assertThat(read(with(SpdImage.ddr4(), 130, 0x80)).label().card()).isEmpty();
        assertThat(read(with(SpdImage.ddr4(), 130, 0x1F)).label().card()).isEmpty();
        assertThat(read(with(SpdImage.ddr4(), 128, 0x91)).label().card().flatMap(RawCard::revision)).contains("4");
    }

    @Test
    void aPartNumberIsWhatCanBeSeenOfIt() {
        byte[] spd = SpdImage.ddr4().bytes();
        spd[329] = ' ';
        spd[330] = 0x1B;
        spd[331] = (byte) 0xE9;
        spd[332] = '~';
        spd[333] = 0x7F;
        assertThat(read(spd).sku()).isEqualTo("~16");
        Arrays.fill(spd, 329, 349, (byte) 0);
        assertThat(read(spd).sku()).isEqualTo("16GB-2Rx4-PC4-2400T-RA1-11");
    }

    @Test
    void dumpsOfManyTools() {
        byte[] spd = SpdImage.ddr3().bytes();
        Reading expected = read(spd);
        StringBuilder xxd = new StringBuilder();
        StringBuilder words = new StringBuilder();
        StringBuilder i2c = new StringBuilder("     0  1  2  3  4  5  6  7  8  9  a  b  c  d  e  f    0123456789abcdef\n");
        for (int row = 0; row < spd.length; row += 16) {
            xxd.append("%08x:".formatted(row));
            words.append("%07x".formatted(row));
            i2c.append("%02x:".formatted(row));
            for (int i = row; i < row + 16; i += 2) {
                xxd.append(" %02x%02x".formatted(spd[i] & 0xFF, spd[i + 1] & 0xFF));
                words.append(" %02x%02x".formatted(spd[i + 1] & 0xFF, spd[i] & 0xFF));
                i2c.append(" %02x %02x".formatted(spd[i] & 0xFF, spd[i + 1] & 0xFF));
            }
            xxd.append("  be de ad 00 .\n");
            words.append('\n');
            i2c.append("    ????????????????\n");
        }
        String plain = SpdImage.hexdump(spd);
        String folded = plain.replaceFirst("(?s)(000000b0[^\n]*\n)000000c0[^\n]*\n000000d0[^\n]*\n000000e0[^\n]*\n000000f0[^\n]*\n", "$1*\n");
        assertThat(folded).isNotEqualTo(plain);
        for (String dump : new String[] {plain, folded, xxd.toString(), words.toString(), i2c.toString(), plain.replace("\n", "\r\n")}) {
            assertThat(read(dump.getBytes(StandardCharsets.US_ASCII))).isEqualTo(expected);
        }
    }

    @Test
    void aBrokenDumpNamesItsLine() {
        String dump = SpdImage.hexdump(SpdImage.ddr3().bytes());
        String gap = dump.replaceFirst("00000020[^\n]*\n", "");
        assertThat(fault(gap.getBytes(StandardCharsets.US_ASCII))).isEqualTo("dump:3: address 00000030 must be 20: a line is missing or stands twice");
        assertThat(fault("hello\nworld\n".getBytes(StandardCharsets.US_ASCII))).contains("is neither an SPD nor a dump of one");
        assertThat(fault(dump.replaceFirst("00000030", "what is this").getBytes(StandardCharsets.US_ASCII))).startsWith("dump:4: is no line of a dump");
    }

    /** Bytes of chance under a right checksum give a module or faults, nothing else. */
    @Test
    void chanceNeverBreaksIt() {
        long seed = 7;
        Random random = new Random(seed);
        for (int run = 0; run < 20_000; run++) {
            byte[] spd = (run % 2 == 0 ? SpdImage.ddr3() : SpdImage.ddr4()).bytes();
            byte[] file = Arrays.copyOf(spd, run % 7 == 0 ? random.nextInt(spd.length) : spd.length);
            for (int change = random.nextInt(8); change > 0 && file.length > 0; change--) {
                file[random.nextInt(file.length)] = (byte) random.nextInt();
            }
            if (file.length >= 128) {
                SpdImage.sign(file);
            }
            Faults faults = new Faults();
            Optional<Reading> reading = SpdReader.read(file, "dump", faults);
            assertThat(reading.isPresent()).as("seed %d, run %d", seed, run).isEqualTo(faults.size() == 0);
        }
    }

    @Test
    void chanceInADumpNeverBreaksIt() {
        long seed = 8;
        Random random = new Random(seed);
        String dump = SpdImage.hexdump(SpdImage.ddr4().bytes());
        for (int run = 0; run < 3_000; run++) {
            StringBuilder text = new StringBuilder(dump);
            for (int change = random.nextInt(5); change >= 0; change--) {
                text.setCharAt(random.nextInt(text.length()), " 0f*\n:|x".charAt(random.nextInt(8)));
            }
            Faults faults = new Faults();
            Optional<Reading> reading = SpdReader.read(text.toString().getBytes(StandardCharsets.US_ASCII), "dump", faults);
            assertThat(reading.isPresent()).as("seed %d, run %d", seed, run).isEqualTo(faults.size() == 0);
        }
    }

    /** The dump of docs/labels.md. */
    @Test
    void theDumpOfTheDocument() throws IOException {
        assertThat(Path.of("src/test/resources/spd/ddr4.txt")).hasContent(SpdImage.hexdump(SpdImage.ddr4().bytes()));
    }

    @Test
    void files(@TempDir Path folder) throws IOException {
        Path file = Files.write(folder.resolve("spd.bin"), SpdImage.ddr4().bytes());
        Faults faults = new Faults();
        assertThat(SpdReader.read(Source.of(file), faults)).isPresent();
        assertThat(SpdReader.read(Source.of(folder.resolve("none")), faults)).isEmpty();
        assertThat(SpdReader.read(Source.of(folder), faults)).isEmpty();
        assertThat(faults.all()).extracting(Fault::message).containsExactly("there is no such file", "is a folder, a file is needed");
    }
}
