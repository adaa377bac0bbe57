package sledwright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnbrokenTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "memory at 2133 MT/s, 34.11 GB/s|memory at 2133_MT/s, 34.11_GB/s",
        "8 x 32 GB = 256 GB|8_x_32_GB = 256_GB",
        "4 \u00d7 S2-18X and 2 x PS-750G|4_\u00d7_S2-18X and 2_x_PS-750G",
        "from 300.00 EUR to 354.36 EUR|from 300.00_EUR to 354.36_EUR",
        "air of 25 \u00b0C, 900 m above, 230 V, 2.4 GHz, 25 Gbit/s, 20 % of it|air of 25_\u00b0C, 900_m above, 230_V, 2.4_GHz, 25_Gbit/s, 20_% of it",
        "2 machines, 8 cores, slot X1 Mine, DDR4 WHeatear, 5 mirrors|2 machines, 8 cores, slot X1 Mine, DDR4 WHeatear, 5 mirrors"})
    void figuresAndUnitsStayTogether(String text, String expected) {
        assertThat(Unbroken.text(text).replace('\u00a0', '_')).isEqualTo(expected);
    }
}
