package sledwright.generator;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ZoneTest {

    /** Throughput 100, 10 cores, 50 GB/s, 64 GB and 200 W. */
    private static final Combination BUILD = Pieces.candidate(100, 10, 50, 64, 200);

    /** The build that is a little worse in one figure and better in all others is outside. */
    @Test
    void everyFigureMustBeInside() {
        Zone zone = new Zone(100, 10, 50, 64, 200);
        assertThat(zone.contains(BUILD)).isTrue();
        assertThat(List.of(Pieces.candidate(99, 11, 51, 65, 199), Pieces.candidate(101, 9, 51, 65, 199), Pieces.candidate(101, 11, 49, 65, 199),
                Pieces.candidate(101, 11, 51, 63, 199), Pieces.candidate(101, 11, 51, 65, 201))).noneMatch(zone::contains);
        assertThat(Zone.EVERYTHING.contains(BUILD)).isTrue();
    }

    @Test
    void aZoneWithinAnother() {
        Zone zone = new Zone(100, 10, 50, 64, 200);
        assertThat(zone.isWithin(zone)).isTrue();
        assertThat(new Zone(101, 11, 51, 65, 199).isWithin(zone)).isTrue();
        assertThat(List.of(new Zone(99, 11, 51, 65, 199), new Zone(101, 9, 51, 65, 199), new Zone(101, 11, 49, 65, 199),
                new Zone(101, 11, 51, 63, 199), new Zone(101, 11, 51, 65, 201))).noneMatch(part -> part.isWithin(zone));
    }

    /** Beyond a build by a tenth: in each part one figure is a tenth better and the others are as free as they were. */
    @Test
    void partsBeyondABuild() {
        List<Zone> parts = Zone.EVERYTHING.beyond(BUILD, 0.1);
        List<Combination> better = List.of(Pieces.candidate(110, 1, 1, 1, 999), Pieces.candidate(1, 11, 1, 1, 999), Pieces.candidate(1, 1, 55, 1, 999),
                Pieces.candidate(1, 1, 1, 70.4, 999), Pieces.candidate(1, 1, 1, 1, 180));
        List<Combination> tooLittle = List.of(Pieces.candidate(109.9, 1, 1, 1, 999), Pieces.candidate(1, 10, 1, 1, 999), Pieces.candidate(1, 1, 54.9, 1, 999),
                Pieces.candidate(1, 1, 1, 70.3, 999), Pieces.candidate(1, 1, 1, 1, 180.1));
        assertThat(parts).hasSize(5);
        for (int i = 0; i < 5; i++) {
            for (int j = 0; j < 5; j++) {
                assertThat(parts.get(i).contains(better.get(j))).as("part %d, build %d", i, j).isEqualTo(i == j);
            }
            assertThat(parts.get(i).contains(tooLittle.get(i))).as("part %d", i).isFalse();
        }
        Zone narrow = new Zone(500, 50, 90, 400, 100);
        assertThat(narrow.beyond(BUILD, 0.1)).allMatch(part -> part.equals(narrow));
    }

    /** Only the axis's figure counts, and it must be better, not equal. */
    @ParameterizedTest
    @EnumSource(Axis.class)
    void beyondOnAnAxis(Axis axis) {
        Zone beyond = axis.beyond(BUILD);
        assertThat(beyond.contains(BUILD)).isFalse();
        double[] figures = {1, 1, 1, 1, 999};
        // Throughput and the work that stands for it are one figure of a zone.
        int place = Math.max(0, axis.ordinal() - 1);
        double better = axis.of(BUILD) + (axis.lessIsBetter() ? -1 : 1);
        figures[place] = better;
        Combination other = Pieces.candidate(figures[0], (int) figures[1], figures[2], figures[3], figures[4]);
        assertThat(axis.of(other)).isEqualTo(better);
        assertThat(beyond.contains(other)).isTrue();
        assertThat(axis.betterFirst().compare(other, BUILD)).isNegative();
        assertThat(axis.betterFirst().compare(BUILD, other)).isPositive();
    }

    @Test
    void axesHaveWords() {
        assertThat(Axis.named("Memory")).contains(Axis.MEMORY);
        assertThat(Axis.named("nothing")).isEmpty();
        assertThat(List.of(Axis.values())).extracting(axis -> axis.label() + "/" + axis.noun() + "/" + axis.unit() + "/" + axis.lessIsBetter())
                .containsExactly("throughput/throughput//false", "work/work//false", "cores/cores/cores/false", "bandwidth/memory bandwidth/GB/s/false",
                        "memory/usable memory/GB/false", "load/load/W/true");
    }
}
