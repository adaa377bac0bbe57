package sledwright.report.build;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import sledwright.metrics.Figures;
import sledwright.metrics.WorkDone;
import sledwright.words.Numbers;

/** What a machine reaches, as JSON. */
public record FiguresJson(@JsonUnwrapped Size size, @JsonUnwrapped Speed speed, BigDecimal throughput, boolean throughputEstimated,
                          @JsonUnwrapped Watts watts, @JsonUnwrapped Rest rest) {

    /** Cores and memory. */
    public record Size(int cores, int memoryGb, BigDecimal usableGb) {
    }

    /**
     * What a machine's part numbers decide, though they are alike in all else.
     *
     * @param workHeldBy null where nothing holds it back
     */
    public record Speed(int memoryMts, String speedSetBy, BigDecimal bandwidthGbs, BigDecimal work, String workHeldBy) {

        static Speed of(Figures figures) {
            return new Speed(figures.speed().mts(), figures.speed().setBy().label(), Numbers.decimal(figures.bandwidthGbs()),
                    Numbers.decimal(figures.work()),
                    figures.workHeldBy() == WorkDone.Held.NOTHING ? null : figures.workHeldBy().label());
        }
    }

    /** @param wallW null where it is not known */
    public record Watts(BigDecimal loadW, BigDecimal wallW) {

        static Watts of(Figures figures) {
            return new Watts(Numbers.decimal(figures.loadW()),
                    figures.wallW().stream().mapToObj(Numbers::decimal).findFirst().orElse(null));
        }
    }

    /** What nothing else stands between. */
    public record Rest(BigDecimal baseGhz, BigDecimal allCoreGhz, int spareSlots) {
    }

    static FiguresJson of(Figures figures) {
        return new FiguresJson(new Size(figures.cores(), figures.memoryGb(), Numbers.decimal(figures.usableGb())), Speed.of(figures),
                Numbers.decimal(figures.throughput()), figures.throughputEstimated(), Watts.of(figures),
                new Rest(Numbers.decimal(figures.baseGhz()), Numbers.decimal(figures.allCoreGhz()), figures.spareSlots()));
    }
}
