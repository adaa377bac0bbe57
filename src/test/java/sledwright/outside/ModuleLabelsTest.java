package sledwright.outside;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.input.Faults;
import sledwright.input.Located;
import sledwright.input.Place;
import sledwright.label.Generation;
import sledwright.label.LabelLines;
import sledwright.label.Meaning;
import sledwright.label.ModuleLabel;
import sledwright.label.Organisation;
import sledwright.label.Reading;

/** Labels as published material explains them. */
class ModuleLabelsTest {

    private static Reading read(String label) {
        Faults faults = new Faults();
        List<Reading> readings = LabelLines.read(List.of(new Located<>(label, Place.of("label"))), faults);
        assertThat(faults.all()).isEmpty();
        return readings.get(0);
    }

    private static String meaning(String label, String field) {
        return read(label).meanings().stream().filter(meaning -> meaning.field().equals(field)).map(Meaning::meaning).findFirst().orElse("");
    }

    /**
     * S: the letters P, T, U, V and Y in a server maker's guide (Synergy 480 Gen10, p. 105), W, Y and AA in another's white paper
     * (FusionServer XH321C V6, p. 22); both count CL-tRCD-tRP. That P, T and U of unstacked modules are 15, 17 and 18 cycles each: the
     * same guide for P and T, JESD79-4 for U.
     */
    @ParameterizedTest
    @CsvSource({"2133P, 15-15-15", "2400T, 17-17-17", "2400U, 18-18-18", "2666V, 19-19-19", "3200W, 20-20-20", "2933Y, 21-21-21", "3200AA, 22-22-22"})
    void binsOfDdr4(String rateAndBin, String cycles) {
        assertThat(meaning("16GB 2Rx4 PC4-%s-RA1-11".formatted(rateAndBin), "bin")).isEqualTo(cycles + " cycles (CL-tRCD-tRP)");
    }

    /** S: the same guide, p. 105, for stacked modules. */
    @ParameterizedTest
    @CsvSource({"2400U, 20-18-18", "2666V, 22-19-19", "2933Y, 24-21-21"})
    void binsOfStackedDdr4(String rateAndBin, String cycles) {
        assertThat(meaning("128GB 2S4Rx4 PC4-%s-LA1-11".formatted(rateAndBin), "bin")).isEqualTo(cycles + " cycles (CL-tRCD-tRP)");
    }

    /** S: System x3650 M5 installation and service guide, p. 184: the bandwidth form, gggggeRxffPC4v-wwwwwm-aa-bb-ccd. */
    @ParameterizedTest
    @CsvSource({"12800, 1600", "14900, 1866", "17000, 2133", "19200, 2400"})
    void bandwidthFormOfDdr4(int designation, int mts) {
        Reading reading = read("16GB 2Rx4 PC4-%dR-17-11-B1".formatted(designation));
        assertThat(reading.label().speed().mts()).isEqualTo(mts);
        assertThat(reading.label().speed().volts()).isEqualTo(1.2);
        assertThat(meaning(reading.from(), "type")).isEqualTo("registered");
        assertThat(meaning(reading.from(), "CAS latency")).isEqualTo("17 cycles");
        assertThat(meaning(reading.from(), "SPD revision")).isEqualTo("1.1");
        assertThat(meaning(reading.from(), "raw card")).isEqualTo("board design B, revision 1");
    }

    /** S: System x3550 M4 installation and service guide, p. 60: rates, voltages and types of DDR3. */
    @ParameterizedTest
    @CsvSource({
        "8GB 2Rx4 PC3L-12800R-11-13-E2, RDIMM, 1600, 1.35", "8GB 2Rx4 PC3-14900R-13-12-E2, RDIMM, 1866, 1.5",
        "8GB 2Rx8 PC3L-12800E-11-13-E2, UDIMM, 1600, 1.35", "8GB 2Rx8 PC3-10600U-9-11-B1, UDIMM, 1333, 1.5",
        "32GB 4Rx4 PC3L-10600L-9-11-C1, LRDIMM, 1333, 1.35", "16GB 4Rx4 PC3L-8500R-7-11-F0, RDIMM, 1066, 1.35",
        "4GB 1Rx4 PC3-6400R-6-10-A0, RDIMM, 800, 1.5"})
    void ddr3(String label, String type, int mts, double volts) {
        ModuleLabel read = read(label).label();
        assertThat(read.speed().generation()).isEqualTo(Generation.DDR3);
        assertThat(read.type().orElseThrow().label()).isEqualTo(type);
        assertThat(read.speed().mts()).isEqualTo(mts);
        assertThat(read.speed().volts()).isEqualTo(volts);
    }

    /**
     * S: DDR5-4800 is 38.4 GB/s, and a server maker's parts list gives 4800B as 40-39-39, stacked as 46-39-39. M: the designation
     * PC5-38400, which only repeats the figure, and 1.1 V, which is read and not held to anything here.
     */
    @Test
    void ddr5() {
        assertThat(read("64GB 2Rx4 PC5-4800B-RA0-1010-XT").label()).hasToString("64GB 2Rx4 PC5-4800B-RA0-1010-XT");
        assertThat(meaning("64GB 2Rx4 PC5-4800B-R", "bin")).startsWith("40-39-39");
        assertThat(meaning("128GB 2S2Rx4 PC5-4800B-R", "bin")).startsWith("46-39-39");
        assertThat(meaning("64GB 2Rx4 PC5-4800B-R", "speed")).contains("38400 MB/s");
    }

    /**
     * S: trade lists give 3DS modules of 128 GB as 2S2Rx4 and of 256 GB as 2S4Rx4, of devices of 16 Gbit. M: that the figure before S
     * counts package ranks and the one behind it the layers; D: only the product of both fits the capacity.
     */
    @ParameterizedTest
    @CsvSource({"128GB 2S2Rx4 PC5-4800B-R, 2, 4", "256GB 2S4Rx4 PC5-4800B-R, 2, 8", "128GB 2S4Rx4 PC4-2666V-L, 2, 8"})
    void stacks(String label, int ranks, int logicalRanks) {
        assertThat(read(label).label().type().orElseThrow().label()).isEqualTo("3DS");
        assertThat(read(label).label().organisation().map(Organisation::ranks)).isEqualTo(Optional.of(ranks));
        assertThat(read(label).label().organisation().map(Organisation::logicalRanks)).isEqualTo(Optional.of(logicalRanks));
    }
}
