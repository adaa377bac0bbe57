package sledwright.generator.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryModule;
import sledwright.generator.Pieces;
import sledwright.samples.Samples;

class HandsTest {

    private static Draw.Share share(int capacityGb, int units, int watts, boolean everywhere) {
        MemoryModule module = Samples.module("H" + watts, capacityGb).make();
        return new Draw.Share(new Draw.Alike(Pieces.group(capacityGb), module.kind()), List.of(module), units, Watts.micro(watts), everywhere);
    }

    private static Draw draw(Draw.Share... shares) {
        Draw draw = Draw.NOTHING;
        for (Draw.Share share : shares) {
            draw = draw.plus(Draw.of(share, 10));
        }
        return draw;
    }

    /** Of four units: one with fewer heavy ones is kept beside another, one with as many or more is not. */
    @Test
    void onlyWhatIsLighterSomewhereIsKept() {
        Draw two = draw(share(16, 2, 5, false), share(16, 2, 3, false));
        Draw one = draw(share(16, 1, 5, false), share(16, 3, 3, false));
        Draw three = draw(share(16, 3, 5, false), share(16, 1, 3, false));
        Draw middle = draw(share(16, 1, 5, false), share(16, 2, 4, false), share(16, 1, 3, false));
        Draw more = draw(share(16, 2, 5, false), share(16, 3, 3, false));
        Hands hands = new Hands(List.of(two, one, three, middle, more));
        assertThat(hands.keep(two)).isTrue();
        assertThat(hands.keep(two)).as("the same again").isFalse();
        assertThat(hands.keep(three)).as("one more that is heavy").isFalse();
        assertThat(hands.keep(middle)).as("fewer of the heaviest, more in the middle").isTrue();
        assertThat(hands.keep(one)).as("fewer").isTrue();
        assertThat(hands.keep(more)).as("of other numbers").isTrue();
    }

    @Test
    void kindsAndPartsForEveryMachineStandApart() {
        Draw kinds = draw(share(16, 2, 5, false), share(32, 2, 3, false));
        Draw others = draw(share(32, 2, 5, false), share(16, 2, 3, false));
        Draw everywhere = draw(share(16, 2, 3, true), share(32, 2, 3, false));
        Hands hands = new Hands(List.of(kinds, others, everywhere));
        assertThat(hands.keep(kinds)).isTrue();
        assertThat(hands.keep(others)).isTrue();
        assertThat(hands.keep(everywhere)).isTrue();
        assertThat(hands.keep(everywhere)).isFalse();
    }

    @Test
    void drawsAddUp() {
        Draw.Share heavy = share(16, 2, 5, false);
        Draw.Share everywhere = share(16, 7, 3, true);
        Draw both = Draw.of(heavy, 10).with(new Draw.Load(1, 2, 3, 4, 5)).plus(Draw.of(everywhere, 20).with(new Draw.Load(10, 20, 30, 40, 50)));
        assertThat(both.price()).isEqualTo(30);
        assertThat(both.load()).isEqualTo(new Draw.Load(11, 22, 33, 44, 55));
        assertThat(both.shares()).containsExactly(heavy, everywhere);
        assertThat(both.even()).isFalse();
        assertThat(Draw.of(heavy, 10).even()).isTrue();
        assertThat(both.priced(7).price()).isEqualTo(7);
        assertThat(both.priced(7).shares()).isEqualTo(both.shares());
        assertThat(both.plus(Draw.NOTHING)).isSameAs(both);
        assertThat(Draw.NOTHING.plus(both)).isSameAs(both);
        assertThat(Draw.NOTHING.shares()).isEqualTo(new ArrayList<>());
        assertThat(heavy.free(2)).isEqualTo(2);
        assertThat(everywhere.free(3)).isEqualTo(4);
        assertThat(Watts.of(Watts.micro(4.25))).isEqualTo(4.25);
    }
}
