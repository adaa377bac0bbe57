package sledwright.generator.shape;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LatticeTest {

    @Test
    void vectorsOfTwoCountsOfAtMostTwo() {
        Lattice lattice = new Lattice(2, 2);
        lattice.list();
        assertThat(lattice.size()).isEqualTo(6);
        List<List<Integer>> vectors = new ArrayList<>();
        for (int number = 0; number < 6; number++) {
            vectors.add(Arrays.stream(lattice.vector(number)).boxed().toList());
        }
        assertThat(vectors).containsExactly(List.of(0, 0), List.of(0, 1), List.of(0, 2), List.of(1, 0), List.of(1, 1), List.of(2, 0));
    }

    @ParameterizedTest
    @CsvSource({"1, 5", "2, 4", "3, 6", "4, 3", "5, 0"})
    void sumsAndNumbersOfSums(int dimensions, int most) {
        Lattice lattice = new Lattice(dimensions, most);
        lattice.list();
        for (int one = 0; one < lattice.size(); one++) {
            assertThat(lattice.sum(one)).isEqualTo(Arrays.stream(lattice.vector(one)).sum()).isLessThanOrEqualTo(most);
            for (int other = 0; other < lattice.size(); other++) {
                if (lattice.sum(one) + lattice.sum(other) <= most) {
                    int[] sum = lattice.vector(one);
                    int[] added = lattice.vector(other);
                    Arrays.setAll(sum, i -> sum[i] + added[i]);
                    assertThat(lattice.vector(lattice.plus(one, added))).containsExactly(sum);
                }
            }
        }
    }
}
