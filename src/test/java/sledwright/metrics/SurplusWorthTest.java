package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.require;

import org.junit.jupiter.api.Test;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;

class SurplusWorthTest {

    /** 3 machines of (800 x 4 cores + 50 x 32 GB + 10 x 53.6 GB/s + 2 x 100) = 3 x 5536. */
    @Test
    void everyUnitBeyondTheRequiredFigureOnEveryMachine() {
        Requirements least = require().cores(16).memoryGb(96).bandwidthGbs(100).throughput(300).make();
        assertThat(SurplusWorth.of(request(3, least, new Worth(800, 50, 10, 2)), 20, 128, 153.6, 400)).isEqualTo(16_608);
    }

    @Test
    void whereNothingIsRequiredEveryUnitCounts() {
        assertThat(SurplusWorth.of(request(1, Requirements.NONE, new Worth(800, 50, 10, 2)), 20, 128, 153.6, 400)).isEqualTo(24_736);
    }

    @Test
    void nothingIsWorthNothing() {
        assertThat(SurplusWorth.of(Request.named("sample"), 20, 128, 153.6, 400)).isZero();
    }

    private static Request request(int machines, Requirements least, Worth worth) {
        return new Request("sample", machines, least, Limits.NONE, new Goal(Objective.BEST_VALUE, worth, Licence.NONE), Shortlist.PLAIN, PartChoice.ANY);
    }
}
