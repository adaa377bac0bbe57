package sledwright.input;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FaultsTest {

    @Test
    void moreThanAnybodyReadsAreCutOff() {
        Faults faults = new Faults();
        for (int line = 1; line <= 100_010; line++) {
            faults.add(new Place("offers.csv", line), "sku is empty");
        }
        assertThat(faults.all()).hasSize(100_001).last().hasToString("offers.csv: and more; put the first 100000 right");
        assertThat(faults.size()).isEqualTo(100_010);
    }
}
