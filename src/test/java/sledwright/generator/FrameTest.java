package sledwright.generator;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import sledwright.domain.ModuleType;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.rules.Parts;
import sledwright.samples.ProcessorSketch;
import sledwright.samples.Samples;

class FrameTest {

    private static final Request PLAIN = Request.named("plain");
    private static final Frame FRAME = frame(1000, 50, 20, 300, 100, limited(256), Set.of(ModuleType.RDIMM));

    private static ProcessorSketch sketch() {
        return Samples.processor("P").cores(20);
    }

    private static Processor limited(int gb) {
        return sketch().maxMemoryGb(gb).make();
    }

    private static Frame frame(long price, double worth, int cores, double throughput, double loadW, Processor processor, Set<ModuleType> types) {
        Parts parts = Parts.of(Samples.platform().make()).with(processor, 1).with(Samples.LOW).with(Optional.of(Samples.PAIR));
        return Pieces.frame(parts, types, new Computing(cores, throughput, throughput, worth), price, 0, loadW);
    }

    private static Frame with(UnaryOperator<Frame> change) {
        return change.apply(FRAME);
    }

    private static Frame withSupply(Optional<Supply> supply) {
        return Pieces.frame(FRAME.parts().with(supply), FRAME.types(), FRAME.computing(), 1000, 0, 100);
    }

    /** Equal frames beat each other; one that is better in a single thing beats and is not beaten. */
    @Test
    void betterInOneThing() {
        Set<ModuleType> all = Set.of(ModuleType.RDIMM, ModuleType.LRDIMM);
        Set<ModuleType> one = Set.of(ModuleType.RDIMM);
        assertThat(FRAME.dominates(with(same -> same), PLAIN)).isTrue();
        List.of(frame(999, 50, 20, 300, 100, limited(256), one), frame(1000, 51, 20, 300, 100, limited(256), one),
                frame(1000, 50, 21, 300, 100, limited(256), one), frame(1000, 50, 20, 301, 100, limited(256), one),
                frame(1000, 50, 20, 300, 99, limited(256), one), frame(1000, 50, 20, 300, 100, limited(512), one),
                frame(1000, 50, 20, 300, 100, sketch().make(), one),
                frame(1000, 50, 20, 300, 100, sketch().memoryMts(2666).maxMemoryGb(256).make(), one),
                frame(1000, 50, 20, 300, 100, limited(256), all)).forEach(better -> {
                    assertThat(better.dominates(FRAME, PLAIN)).as("%s", better).isTrue();
                    assertThat(FRAME.dominates(better, PLAIN)).as("%s", better).isFalse();
                });
    }

    /** More cores are no better where a figure is asked for each of them. */
    @Test
    void coresWhereFiguresAreAskedForEach() {
        Frame more = frame(1000, 50, 21, 300, 100, limited(256), FRAME.types());
        assertThat(more.dominates(FRAME, PLAIN.withRequire(Samples.require().gbPerCore(4).make()))).isFalse();
        assertThat(more.dominates(FRAME, PLAIN.withRequire(Samples.require().gbsPerCore(4).make()))).isFalse();
        assertThat(FRAME.dominates(FRAME, PLAIN.withRequire(Samples.require().gbPerCore(4).make()))).isTrue();
    }

    @Test
    void suppliesMustBeTheSame() {
        assertThat(withSupply(Optional.empty()).dominates(FRAME, PLAIN)).isFalse();
        assertThat(FRAME.dominates(withSupply(Optional.empty()), PLAIN)).isFalse();
    }
}
