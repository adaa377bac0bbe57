package sledwright.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {

    @ParameterizedTest
    @CsvSource({"cores, coers, 1", "cores, cores, 0", "cores, CORES, 0", "cores, core, 1", "cores, corse, 1", "'', abc, 3",
            "threads, thread_s, 1", "tdp_w, tpd_w, 1"})
    void distanceCountsInsertionsDeletionsSubstitutionsAndSwaps(String one, String other, int distance) {
        assertThat(Nearest.distance(one, other)).isEqualTo(distance);
        assertThat(Nearest.distance(other, one)).isEqualTo(distance);
    }

    @ParameterizedTest
    @CsvSource({"coers, cores", "core_count, cores", "price, unit_price", "SKU, sku", "min_qty, min_quantity", "leaddays, lead_days"})
    void hintNamesTheNearest(String name, String nearest) {
        Nearest columns = new Nearest(List.of("sku", "cores", "unit_price", "unit_cost", "min_quantity", "lead_days", "socket"));
        assertThat(columns.hint(name)).isEqualTo(", did you mean " + nearest + "?");
    }

    @Test
    void aSentenceIsNoNameThatWasMeant() {
        assertThat(new Nearest(List.of("Surplus of the yard, November")).hint("sku")).isEmpty();
        assertThat(new Nearest(List.of("sixteen letters.")).hint("abc")).isEqualTo(", did you mean sixteen letters.?");
    }

    @Test
    void nothingKnownGivesNoHint() {
        assertThat(new Nearest(List.of()).hint("cores")).isEmpty();
    }

    @Test
    void hintsOfManyNamesAmongManyEndButAreKept() {
        Nearest skus = new Nearest(IntStream.range(0, 1000).mapToObj(i -> "M" + i).toList());
        for (int i = 0; i < 300; i++) {
            skus.hint("X" + i);
        }
        assertThat(skus.hint("X1")).isEqualTo(", did you mean M1?");
        assertThat(skus.hint("X299")).isEmpty();
    }
}
