package sledwright.generator.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryModule;
import sledwright.generator.shape.GroupKind;
import sledwright.generator.time.TooLargeException;
import sledwright.samples.Samples;

class DealTest {

    private static final int MACHINES = 6;
    private static final int UNITS = 18;

    /** Each unit of other watts; every kind has so many units that each machine gets the same number. */
    private static List<Draw.Share> unequal(int kinds, int unitsOfKind) {
        SplittableRandom random = new SplittableRandom(5);
        List<Draw.Share> shares = new ArrayList<>();
        for (int kind = 0; kind < kinds; kind++) {
            MemoryModule module = Samples.module("R" + kind, 8 << kind).make();
            Draw.Alike alike = new Draw.Alike(new GroupKind(module.capacityGb(), 2, 0, 7), module.kind());
            for (int unit = 0; unit < unitsOfKind; unit++) {
                shares.add(new Draw.Share(alike, List.of(module), 1, 2_000_000 + random.nextLong(3_000_000), false));
            }
        }
        return shares;
    }

    private static long weight(List<Draw.Share> shares, List<int[]> dealt, int machine) {
        return IntStream.range(0, shares.size()).mapToLong(i -> dealt.get(i)[machine] * shares.get(i).microwatts()).sum();
    }

    @Test
    void twoMachinesShareAsEvenlyAsCanBe() {
        MemoryModule module = Samples.R16;
        Draw.Alike alike = new Draw.Alike(new GroupKind(16, 2, 0, 7), module.kind());
        List<Draw.Share> shares = IntStream.of(4, 3, 2, 1)
                .mapToObj(watts -> new Draw.Share(alike, List.of(module), 1, watts * 1_000_000L, false)).toList();
        assertThat(Deal.heaviestMicrowatts(shares, 2)).isEqualTo(5_000_000);
        List<int[]> dealt = Deal.deal(shares, 2);
        assertThat(weight(shares, dealt, 0)).isEqualTo(5_000_000);
        assertThat(weight(shares, dealt, 1)).isEqualTo(5_000_000);
    }

    @Test
    void whatIsTooHardToDealBestIsDealtInRounds() {
        List<Draw.Share> shares = unequal(2, UNITS);
        assertThatThrownBy(() -> Deal.heaviestMicrowatts(shares, MACHINES)).isInstanceOf(TooLargeException.class);
        List<int[]> dealt = Deal.deal(shares, MACHINES);
        for (int kind = 0; kind < 2; kind++) {
            for (int machine = 0; machine < MACHINES; machine++) {
                int one = machine;
                assertThat(IntStream.range(kind * UNITS, (kind + 1) * UNITS).map(i -> dealt.get(i)[one]).sum()).isEqualTo(UNITS / MACHINES);
            }
        }
        long inRounds = 0;
        for (int kind = 0; kind < 2; kind++) {
            long[] ascending = shares.subList(kind * UNITS, (kind + 1) * UNITS).stream().mapToLong(Draw.Share::microwatts).sorted().toArray();
            for (int heaviest = UNITS - 1; heaviest >= 0; heaviest -= MACHINES) {
                inRounds += ascending[heaviest];
            }
        }
        assertThat(IntStream.range(0, MACHINES).mapToLong(machine -> weight(shares, dealt, machine)).max().orElseThrow()).isLessThanOrEqualTo(inRounds);
    }
}
