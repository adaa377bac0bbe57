package sledwright.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import sledwright.input.Faults;
import sledwright.input.Located;
import sledwright.input.Place;

/** What every field of a label or of an SPD is said to mean; the sources of the facts stand in docs/labels.md. */
class MeaningsTest {

    /** A label, then each field as it is written, its meaning, and a star where that is from memory. */
    private static final List<String> LABELS = List.of("""
            16GB 2Rx4 PC4-2400T-RA1-11
            capacity 16GB: 16 GB, check bits aside
            ranks 2R: two ranks
            device width x4: devices of 4 bits; 4 Gbit each
            generation PC4: DDR4
            voltage none: 1.2 V
            speed 2400: 2400 MT/s; 19200 MB/s in the other form
            bin T: 17-17-17 cycles (CL-tRCD-tRP)
            type R: registered
            raw card A1: board design A, revision 1
            SPD revision 11: 1.1
            ""","""
            64GB 4DRx4 PC4-2666V-LD2-12-MA0
            capacity 64GB: 64 GB, check bits aside
            ranks 4DR: four ranks, in packages of several dies*
            device width x4: devices of 4 bits; 8 Gbit each
            generation PC4: DDR4
            voltage none: 1.2 V
            speed 2666: 2666 MT/s; 21300 MB/s in the other form
            bin V: 19-19-19 cycles (CL-tRCD-tRP)
            type L: load-reduced
            raw card D2: board design D, revision 2
            SPD revision 12: 1.2
            suffix MA0: the maker's own*
            ""","""
            128GB 2S4Rx4 PC4-2666V-R
            capacity 128GB: 128 GB, check bits aside
            ranks 2S4R: two ranks of packages, each a stack of four: 8 logical ranks*
            device width x4: devices of 4 bits; 8 Gbit each
            generation PC4: DDR4
            voltage none: 1.2 V
            speed 2666: 2666 MT/s; 21300 MB/s in the other form
            bin V: 22-19-19 cycles (CL-tRCD-tRP)
            type R: registered; its devices are stacked, so its type is 3DS
            ""","""
            64GB 2S2Rx4 PC4-2400T-R
            capacity 64GB: 64 GB, check bits aside
            ranks 2S2R: two ranks of packages, each a stack of two: 4 logical ranks*
            device width x4: devices of 4 bits; 8 Gbit each
            generation PC4: DDR4
            voltage none: 1.2 V
            speed 2400: 2400 MT/s; 19200 MB/s in the other form
            bin T: 19-17-17 cycles (CL-tRCD-tRP)*
            type R: registered; its devices are stacked, so its type is 3DS
            ""","""
            64GB 2S2Rx4 PC4-2400L-R
            capacity 64GB: 64 GB, check bits aside
            ranks 2S2R: two ranks of packages, each a stack of two: 4 logical ranks*
            device width x4: devices of 4 bits; 8 Gbit each
            generation PC4: DDR4
            voltage none: 1.2 V
            speed 2400: 2400 MT/s; 19200 MB/s in the other form
            bin L: the letter alone does not determine the cycles of a stacked module; unusual at 2400 MT/s, which has P, R, T, U*
            type R: registered; its devices are stacked, so its type is 3DS
            ""","""
            PC4-3200P-U
            generation PC4: DDR4
            voltage none: 1.2 V
            speed 3200: 3200 MT/s; 25600 MB/s in the other form
            bin P: 15-15-15 cycles (CL-tRCD-tRP); unusual at 3200 MT/s, which has W, AA, AC*
            type U: unbuffered, without ECC
            ""","""
            8GB 1Rx8 PC4-1866M-E
            capacity 8GB: 8 GB, check bits aside
            ranks 1R: one rank
            device width x8: devices of 8 bits; 8 Gbit each
            generation PC4: DDR4
            voltage none: 1.2 V
            speed 1866: 1866 MT/s; 14900 MB/s in the other form
            bin M: 13-13-13 cycles (CL-tRCD-tRP)*
            type E: unbuffered, with ECC
            ""","""
            4GB 1Rx4 PC3L-10600R-9-11-E2-P2
            capacity 4GB: 4 GB, check bits aside
            ranks 1R: one rank
            device width x4: devices of 4 bits; 2 Gbit each
            generation PC3: DDR3
            voltage L: 1.35 V
            speed 10600: 10600 MB/s: 1333 MT/s of 8 bytes
            type R: registered
            CAS latency 9: 9 cycles
            raw card E2: board design E, revision 2
            SPD revision 11: 1.1
            suffix P2: the maker's own*
            ""","""
            8GB 2Rx8 PC3U-12800E-11
            capacity 8GB: 8 GB, check bits aside
            ranks 2R: two ranks
            device width x8: devices of 8 bits; 4 Gbit each
            generation PC3: DDR3
            voltage U: 1.25 V*
            speed 12800: 12800 MB/s: 1600 MT/s of 8 bytes
            type E: unbuffered, with ECC
            CAS latency 11: 11 cycles
            ""","""
            4GB 2Rx8 PC3-10600R-999
            capacity 4GB: 4 GB, check bits aside
            ranks 2R: two ranks
            device width x8: devices of 8 bits; 2 Gbit each
            generation PC3: DDR3
            voltage none: 1.5 V
            speed 10600: 10600 MB/s: 1333 MT/s of 8 bytes
            type R: registered
            CAS latency 999: 9-9-9 cycles (CL-tRCD-tRP)
            ""","""
            48GB 1Rx4 PC5-4800B-PF0-1011-XT-XX
            capacity 48GB: 48 GB, check bits aside
            ranks 1R: one rank
            device width x4: devices of 4 bits; 24 Gbit each
            generation PC5: DDR5
            voltage none: 1.1 V*
            speed 4800: 4800 MT/s; 38400 MB/s in the other form
            bin B: 40-39-39 cycles (CL-tRCD-tRP)
            type P: registered, with 4 check bits for 32 data bits*
            raw card F0: board design F, revision 0
            SPD revision 1011: 1.0, of the part by type of module 1.1*
            suffix XT: temperature range*
            suffix XX: the maker's own*
            ""","""
            32GB 2Rx8 PC5-5600C-R
            capacity 32GB: 32 GB, check bits aside
            ranks 2R: two ranks
            device width x8: devices of 8 bits; 16 Gbit each
            generation PC5: DDR5
            voltage none: 1.1 V*
            speed 5600: 5600 MT/s; 44800 MB/s in the other form
            bin C: the letter alone does not determine the cycles at this rate
            type R: registered
            """);

    private static String meanings(Reading reading) {
        return reading.meanings().stream().map(one -> "%s %s: %s%s%n".formatted(one.field(), one.written(), one.meaning(), one.fromMemory() ? "*" : ""))
                .collect(Collectors.joining());
    }

    @TestFactory
    List<DynamicTest> fieldsOfLabels() {
        return LABELS.stream().map(text -> {
            String label = text.lines().findFirst().orElseThrow();
            return DynamicTest.dynamicTest(label, () -> {
                Faults faults = new Faults();
                List<Reading> read = LabelLines.read(List.of(new Located<>(label, Place.of("here"))), faults);
                assertThat(faults.all()).isEmpty();
                assertThat(label + "\n" + meanings(read.get(0))).isEqualTo(text);
            });
        }).toList();
    }

    private static String meanings(SpdImage image) {
        Faults faults = new Faults();
        Reading reading = SpdReader.read(image.bytes(), "dump", faults).orElseThrow();
        assertThat(faults.all()).isEmpty();
        return meanings(reading);
    }

    @Test
    void fieldsOfAnSpd() {
        assertThat(meanings(SpdImage.ddr4())).isEqualTo("""
                generation byte 2: 0x0C: DDR4
                type byte 3: 0x01: registered
                ranks x width byte 12: 0x08: 2Rx4
                density byte 4: 0x84: 4 Gbit a die: 16 GB
                speed byte 18: 0x07: 2400 MT/s
                voltage byte 11: 0x03: 1.2 V
                CAS latency byte 24: 0x6E: 17-17-17 cycles (CL-tRCD-tRP)
                raw card byte 130: 0x20: board design A, revision 1
                SPD revision byte 1: 0x11: 1.1
                part number byte 329: 0x44: DEMO-16
                """);
        assertThat(meanings(SpdImage.ddr3())).isEqualTo("""
                generation byte 2: 0x0B: DDR3
                type byte 3: 0x01: registered
                ranks x width byte 7: 0x08: 2Rx4
                density byte 4: 0x03: 2 Gbit a die: 8 GB
                speed byte 12: 0x0A: 1600 MT/s
                voltage byte 6: 0x02: 1.35 V
                CAS latency byte 16: 0x6E: 11-11-11 cycles (CL-tRCD-tRP)
                raw card byte 62: 0x44: board design E, revision 2
                SPD revision byte 1: 0x13: 1.3
                part number byte 128: 0x44: DEMO-8
                """);
        SpdImage stacked = new SpdImage(4, 'E', 2, 4, 4, 16_384, 3200, 1.2, 13_750, 13_750, 'B', 3, "DEMO-256");
        assertThat(meanings(stacked)).contains("type byte 3: 0x02: unbuffered, with ECC\n", "ranks x width byte 12: 0x08: 2S4Rx4\n",
                "density byte 4: 0x86: 16 Gbit a die: 256 GB\n");
    }
}
