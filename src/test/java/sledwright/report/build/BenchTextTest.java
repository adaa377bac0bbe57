package sledwright.report.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;

/** What is done at the bench with drives, cards and extras, in words. */
class BenchTextTest {

    private static BenchStep out(Part part, String sku, String from) {
        return new BenchStep(Action.TAKE_OUT, part, sku, Optional.of(from), Optional.empty());
    }

    private static BenchStep aside(Part part, String sku, String from) {
        return new BenchStep(Action.LAY_ASIDE, part, sku, Optional.of(from), Optional.empty());
    }

    private static BenchStep move(Part part, String sku, String from, String to) {
        return new BenchStep(Action.MOVE, part, sku, Optional.of(from), Optional.of(to));
    }

    private static BenchStep in(Part part, String sku, String to) {
        return new BenchStep(Action.PUT_IN, part, sku, Optional.empty(), Optional.of(to));
    }

    @Test
    void drives() {
        assertThat(BenchText.sentences(List.of(out(Part.DRIVE, "SSD-480", "front 1"), aside(Part.DRIVE, "SSD-480", "front 2"),
                move(Part.DRIVE, "SSD-480", "front 3", "front 2"), in(Part.DRIVE, "SSD-960", "front 4"), in(Part.DRIVE, "SSD-960", "front 5"))))
                .containsExactly("Take SSD-480 out of bay front 1.", "Lay SSD-480 from bay front 2 aside.", "Move SSD-480 from bay front 3 to bay front 2.",
                        "Put 2 x SSD-960 into bays front 4, front 5.");
    }

    @Test
    void cards() {
        assertThat(BenchText.sentences(List.of(out(Part.CARD, "NET-2X10", "X1"), aside(Part.CARD, "CTL-8", "X2"), move(Part.CARD, "NET-2X10", "X3", "X2"),
                in(Part.CARD, "CTL-8", "X3")))).containsExactly("Take card NET-2X10 out of slot X1.", "Lay card CTL-8 from slot X2 aside.",
                "Move card NET-2X10 from slot X3 to slot X2.", "Put card CTL-8 into slot X3.");
    }

    @Test
    void cables() {
        assertThat(BenchText.sentences(List.of(move(Part.CABLE, "SSD-480", "onboard", "X1"), move(Part.CABLE, "SSD-480", "onboard", "X1"),
                in(Part.CABLE, "SSD-960", "onboard")))).containsExactly("Move the cables of 2 x SSD-480 from the board to the controller in slot X1.",
                "Connect SSD-960 to the board.");
    }

    @Test
    void extras() {
        assertThat(BenchText.sentences(List.of(out(Part.EXTRA, "BLANK", "machine"), in(Part.EXTRA, "FANS-2", "machine"), in(Part.EXTRA, "FANS-2", "machine"))))
                .containsExactly("Take off BLANK.", "Add 2 x FANS-2.");
    }
}
