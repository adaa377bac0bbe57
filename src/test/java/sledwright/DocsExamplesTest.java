package sledwright;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.FACTORS;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.PAIR;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.processor;
import static sledwright.samples.Samples.require;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Condition;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;
import sledwright.metrics.Bandwidth;
import sledwright.metrics.CheapestDraw;
import sledwright.metrics.Figures;
import sledwright.metrics.MemorySpeed;
import sledwright.metrics.OrderPrice;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.Quantity;
import sledwright.metrics.SurplusWorth;
import sledwright.metrics.Throughput;
import sledwright.metrics.UsableMemory;
import sledwright.samples.MachineSketch;
import sledwright.words.Numbers;

/** Every number of the worked examples in docs/model.md, computed by the program. */
class DocsExamplesTest {

    private static final Build EXAMPLE = machine().channels(4, R16).build();
    private static final Figures FIGURES = Figures.of(EXAMPLE, Request.named("example"), FACTORS);

    private static String text;

    @BeforeAll
    static void read() throws IOException {
        // Where a line happens to break does not matter.
        text = Files.readString(Path.of("docs", "model.md")).replaceAll("\\s+", " ");
    }

    @Test
    void memorySpeed() {
        says("The example runs at **%d MT/s**, set by the %s.", FIGURES.speed().mts(), FIGURES.speed().setBy().label());
        MachineSketch third = machine().channels(4, R16, R16).slot("1A3", R16);
        MemorySpeed slowed = MemorySpeed.of(third.build());
        says("takes the whole machine to **%d MT/s**, set by %s.", slowed.mts(), slowed.setBy().label());
        MemoryModule faster = module("R16-2666", 16).mts(2666).make();
        says("the machine still runs at **%d MT/s**.", MemorySpeed.of(machine().channels(4, faster).build()).mts());
    }

    @Test
    void balancedBandwidth() {
        says("2400 x 8 / 1000 = **%s GB/s**", number(Bandwidth.ofChannelGbs(2400)));
        says("a socket gives 4 x 19.2 = **%s GB/s**, the machine **%s GB/s**.", number(Bandwidth.ofSocketGbs(2400, 16, 16, 16, 16)),
                number(FIGURES.bandwidthGbs()));
    }

    @Test
    void unbalancedBandwidth() {
        int[] channelsGb = {32, 16, 16, 8};
        double[] widths = {4, 3, 1};
        double[] spans = {8, 8, 16};
        double seconds = 0;
        for (int k = 0; k < spans.length; k++) {
            double gbs = widths[k] * Bandwidth.ofChannelGbs(2400);
            seconds += spans[k] * widths[k] / gbs;
            says("| %d | %.0f | %.0f | %.0f GB | %s GB/s | %.4f s |", k + 1, spans[k], widths[k], spans[k] * widths[k], number(gbs),
                    spans[k] * widths[k] / gbs);
        }
        String gbs = number(Bandwidth.ofSocketGbs(2400, channelsGb));
        says("Together 72 GB in %.4f s: **%s GB/s**.", seconds, gbs);
        assertThat(number(72 / seconds)).isEqualTo(gbs);
        says("19.2 x 72 / 32 = **%s GB/s**.", gbs);
        assertThat(Bandwidth.ofSocketGbs(2400, 64, 64, 0, 0)).isEqualTo(Bandwidth.ofSocketGbs(2400, 32, 32, 32, 32) / 2);
    }

    @Test
    void usableMemory() {
        says("| independent | all | %s GB |", number(UsableMemory.gb(EXAMPLE, MemoryMode.INDEPENDENT)));
        says("where it says nothing | %s GB |", number(UsableMemory.gb(EXAMPLE, MemoryMode.MIRRORED)));
        says("each populated channel | %s GB |", number(UsableMemory.gb(EXAMPLE, MemoryMode.RANK_SPARING)));
        Build doubled = machine().channels(4, R16, R16).build();
        says("256 - 64 = **%s GB**", number(UsableMemory.gb(doubled, MemoryMode.RANK_SPARING)));
    }

    @Test
    void throughput() {
        says("2 x 200 = **%s**", number(FIGURES.throughput()));
        Processor bare = processor("EST").noThroughput().make();
        Throughput estimate = Throughput.of(bare, Map.of("G1", 8.0));
        assertThat(estimate.estimated()).isTrue();
        says("10 x 2.6 x 8 = %s each, **%s** together.", number(estimate.value()), number(estimate.times(2)));
    }

    @Test
    void power() {
        says("85 + 2 x 85 + 8 x 4 = **%s W**", number(FIGURES.loadW()));
        double share = 100 * FIGURES.loadW() / 2 / PAIR.watts();
        double percent = PowerDraw.efficiencyPercent(PAIR.efficiency(), share);
        says("carries %s of 750 W, a share of %.2f %%.", number(FIGURES.loadW() / 2), share);
        says("82 + %.2f / 10 x 6 = %.2f %%.", share - 10, percent);
        says("287 / %.4f = **%.1f W** from the wall.", percent / 100, FIGURES.wallW().orElseThrow());
        says("carries 287 W alone and may carry %s.", number(PowerDraw.deliverableW(PAIR, Limits.NONE)));
    }

    @Test
    void slotsAndCores() {
        says("24 - 8 = **%d**", FIGURES.spareSlots());
        says("128 / 20 = **%s GB** and 153.6 / 20 = **%s GB/s**", number(FIGURES.gbPerCore()), number(FIGURES.gbsPerCore()));
        assertThat(FIGURES.cores()).isEqualTo(2 * P10.cores());
    }

    @Test
    void price() {
        List<Lot> lots = List.of(lot("R16", "A", 6, 0, Condition.USED, Map.of(1, 2_150L, 6, 1_900L)), lot("R16", "B", 9, 2_000));
        says("Eight of B cost %s;", euro(CheapestDraw.prices(lots.subList(1, 2), 8)[8]));
        says("are **%s**.", euro(CheapestDraw.prices(lots, 8)[8]));
        assertThat(CheapestDraw.picks(lots, 8)).extracting(pick -> pick.lot().lot() + pick.quantity()).containsExactly("A6", "B2");
        says("38 + 8 x 0.60 = **%s**", euro(OrderPrice.ofLabour(new Labour(3_800, 60), EXAMPLE.modules().size())));
    }

    @Test
    void bestValue() {
        Request asked = new Request("example", 1, require().cores(16).memoryGb(96).make(), Limits.NONE,
                new Goal(Objective.BEST_VALUE, new Worth(800, 50, 0, 0), Licence.NONE), Shortlist.PLAIN, PartChoice.ANY);
        double cents = SurplusWorth.of(asked, FIGURES.cores(), FIGURES.usableGb(), FIGURES.bandwidthGbs(), FIGURES.throughput());
        says("4 x 8 + 32 x 0.50 = **%s**", euro(Math.round(cents)));
    }

    @Test
    void alternatives() {
        double step = Shortlist.PLAIN.step();
        says("| throughput | 400 | %s |", number(Quantity.betterThan(FIGURES.throughput(), step)));
        says("| cores | 20 | %s |", number(Quantity.betterThan(FIGURES.cores(), step)));
        says("| bandwidth | 153.6 GB/s | %s GB/s |", number(Quantity.betterThan(FIGURES.bandwidthGbs(), step)));
        says("| usable memory | 128 GB | %s GB |", number(Quantity.betterThan(FIGURES.usableGb(), step)));
        says("| load | 287 W | at most %s W |", number(Quantity.lessThan(FIGURES.loadW(), step)));
        says("%s where the request says nothing", number(step));
    }

    /** The text holds the sentence with the computed numbers in it. */
    private static void says(String sentence, Object... numbers) {
        assertThat(text).contains(String.format(Locale.ROOT, sentence, numbers));
    }

    private static String number(double figure) {
        return Numbers.plain(figure).toString();
    }

    private static String euro(long cents) {
        return "%d.%02d".formatted(cents / 100, cents % 100);
    }
}
