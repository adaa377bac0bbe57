package sledwright.report;

import static org.assertj.core.api.Assertions.assertThat;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CatalogView;
import sledwright.desk.view.CheckView;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Build;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;
import sledwright.explain.Explanation;
import sledwright.explain.ask.Unproved;
import sledwright.explain.conflict.Conflict;
import sledwright.explain.conflict.Lacks;
import sledwright.explain.conflict.Relaxation;
import sledwright.explain.whynot.WhyNot;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.report.catalog.CatalogText;
import sledwright.report.check.CheckText;
import sledwright.report.page.Wording;
import sledwright.report.quote.QuoteJson;
import sledwright.report.quote.QuoteText;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.rules.Order;
import sledwright.rules.Violation;
import sledwright.samples.Answers;
import sledwright.samples.Samples;
import sledwright.words.Sentence;

class TextTest {

    private static String text(Findings findings) {
        return text(findings, Screen.PLAIN);
    }

    private static String text(Findings findings, Screen screen) {
        return QuoteText.of(QuoteView.of(Answers.outcome(findings), Answers.SHOP, Explanation.NONE), screen);
    }

    private static Findings one(Request request, Status status, double best, double bound) {
        return new Findings(request, status, best, bound, List.of(Answers.order(request, Answers.cool())),
                status == Status.BEST_FOUND ? Doubts.of(Doubts.Cause.TIME) : Doubts.NONE);
    }

    @Test
    void aQuoteIsReadFromTopToBottom() {
        assertThat(text(Answers.proved())).isEqualTo("""
                render node: 1 machine, cheapest
                proved: no cheaper valid build exists

                Alternatives
                #     EUR  processor  memory               days
                1  594.00  2 x P10    8 x 16 GB = 128 GB      2
                2  852.00  2 x P12    16 x 16 GB = 256 GB     4

                #  cores  MT/s  set by      GB/s  throughput  load W  wall W
                1     20  2400  processor  153.6         400     287   328.1
                2     24  2400  processor  153.6      ~499.2     391   440.3
                ~ an estimate: cores x all-core clock x the generation's factor
                2 - For 258.00 EUR more than the best: 4 more cores (24; 64.50 EUR a core), 128
                    GB more usable memory (256; 2.02 EUR a GB) and 99.2 more throughput (499.2),
                    but 104 W more load (391).

                The best build
                BOX (BOX), 2 x P10 (10 cores, 2.2 GHz, 2.6 GHz all cores), heat sink LOW, 2 x
                PAIR

                Parts to pick
                part    lot  from               condition    days  units    each     EUR
                BOX     B1   sample shop        new             0      1  200.00  200.00
                P10     C1   sample shop        new             0      2   50.00  100.00
                LOW     H1   sample shop        new             0      2   10.00   20.00
                PAIR    W1   sample shop        new             0      2   40.00   80.00
                R16     M1   sample shop        refurbished     2      8   20.00  160.00
                labour       per machine                               1   30.00   30.00
                labour       per memory module                         8    0.50    4.00
                total                                           2                 594.00

                Slots (first slot: outermost)
                channel  slot 1   slot 2     slot 3
                1A       1A1 R16  1A2 empty  1A3 empty
                1B       1B1 R16  1B2 empty  1B3 empty
                1C       1C1 R16  1C2 empty  1C3 empty
                1D       1D1 R16  1D2 empty  1D3 empty
                2A       2A1 R16  2A2 empty  2A3 empty
                2B       2B1 R16  2B2 empty  2B3 empty
                2C       2C1 R16  2C2 empty  2C3 empty
                2D       2D1 R16  2D2 empty  2D3 empty

                Why
                - The memory runs at 2400 MT/s: P10 drives no faster memory.
                - Met exactly, with nothing to spare: number of cores (20) and usable memory
                  (128 GB).
                - The next tightest requirement is memory bandwidth: 153.6 GB/s against 120 GB/s
                  asked, 33.6 GB/s to spare (28 %).
                - The tightest limit is the load: 287 W of 420 W, 133 W to spare.
                - The last to arrive is R16, in 2 days.
                - The machine costs 594.00 EUR, 1.49 EUR for each unit of throughput.
                - The memory bandwidth is 153.6 GB/s; the price comes to 3.87 EUR for each GB/s.
                - The usable memory is 128 GB; the price comes to 4.64 EUR for each GB.
                - The number of cores is 20; the price comes to 29.70 EUR for each core.
                """);
    }

    @Test
    void eightyColumnsAreEnough() {
        Findings several = Answers.findings(Answers.ASKED, Status.PROVED, Answers.order(Answers.ASKED, Answers.sled()),
                Answers.order(Answers.ASKED, Answers.hot()));
        Findings rich = Answers.findings(Answers.rich(), Status.PROVED, Answers.order(Answers.rich(), Answers.cool()));
        for (Findings findings : List.of(Answers.proved(), Answers.unequal(), several, rich)) {
            assertThat(text(findings).lines()).allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(80));
        }
        assertThat(text(Answers.proved(), new Screen(20, false))).isEqualTo(text(Answers.proved()));
    }

    @Test
    void aWideScreenTakesOneTable() {
        assertThat(text(Answers.proved(), new Screen(120, false))).contains(
                "1  594.00  2 x P10    8 x 16 GB = 128 GB      2     20  2400  processor  153.6         400     287   328.1\n");
    }

    @Test
    void thePlatformIsAColumnWhereSeveralCompete() {
        assertThat(text(Answers.findings(Answers.ASKED, Status.PROVED, Answers.order(Answers.ASKED, Answers.sled()),
                Answers.order(Answers.ASKED, Answers.hot())))).contains("""
                #     EUR  platform  processor  memory               days
                1  442.00  SLED      1 x P10    4 x 32 GB = 128 GB      0
                2  852.00  BOX       2 x P12    16 x 16 GB = 256 GB     4
                """);
    }

    @Test
    void coveredSlotsAndEmptySocketsAreMarked() {
        String hot = text(Answers.findings(Answers.ASKED, Status.PROVED, Answers.order(Answers.ASKED, Answers.hot())));
        assertThat(hot).contains("1C       1C1 R16   1C2 R16   1C3 empty\n", "1D       1D1 R16B  1D2 R16B  1D3 covered\n");
        String sled = text(Answers.findings(Answers.ASKED, Status.PROVED, Answers.order(Answers.ASKED, Answers.sled())));
        assertThat(sled).contains("2A       2A1 no processor  2A2 no processor  2A3 no processor\n");
    }

    @Test
    void machinesThatDifferAreTold() {
        assertThat(text(Answers.unequal())).contains("Alternatives (prices for all 3 machines, figures of one)",
                "3 machines, each BOX", "Slots of the heaviest machine (first slot: outermost)", """
                The machines differ in part numbers
                - 2 machines: 8 x R16B
                - 1 machine: 8 x R16
                """);
    }

    /** The heavier machine runs its memory faster: 8 channels at 2400 and at 2133 MT/s. */
    @Test
    void figuresAreThoseThatEachMachineReaches() {
        Build fast = Samples.machine().channels(4, Samples.module("R16H", 16).powerW(6).make()).build();
        Build slow = Samples.machine().channels(4, Samples.module("R16S", 16).mts(2133).make()).build();
        BuildView view = BuildView.of(Order.of(List.of(fast, slow), List.of(), Answers.ASKED.withMachines(2), Answers.SHOP), false);
        assertThat(view.heaviest().figures().bandwidthGbs()).isEqualTo(153.6);
        assertThat(view.figures().bandwidthGbs()).isEqualTo(136.512);
        assertThat(view.figures().speed().mts()).isEqualTo(2133);
        assertThat(view.figures().loadW()).isEqualTo(303);
    }

    @Test
    void usableMemoryIsAColumnWhereTheModeCostsSome() {
        Request mirrored = Answers.ASKED.withRequire(Samples.require().mode(MemoryMode.MIRRORED).make());
        assertThat(text(one(mirrored, Status.PROVED, 59400, 59400))).contains("#  cores  usable GB  MT/s", "1     20         64  2400");
        assertThat(text(Answers.proved())).doesNotContain("usable GB  ");
    }

    @Test
    void aBestValueRequestShowsWhatItRanksBy() {
        Request value = new Request("host", 1, Samples.require().cores(16).memoryGb(100).make(), Limits.NONE,
                new Goal(Objective.BEST_VALUE, new Worth(1000, 50, 0, 0), Licence.NONE), Shortlist.PLAIN, PartChoice.ANY);
        // 594.00 less 4 cores at 10.00 and 28 GB at 0.50; 852.00 less 8 cores and 156 GB.
        Findings findings = new Findings(value, Status.PROVED, 54000, 54000,
                List.of(Answers.order(value, Answers.cool()), Answers.order(value, Answers.hot())), Doubts.NONE);
        assertThat(text(findings)).contains("price less worth of the best: 540.00 EUR", """
                #     EUR  less worth  processor  memory               days
                1  594.00      540.00  2 x P10    8 x 16 GB = 128 GB      2
                2  852.00      694.00  2 x P12    16 x 16 GB = 256 GB     4
                """);
        assertThat(QuoteJson.of(QuoteView.of(Answers.outcome(findings), Answers.SHOP, Explanation.NONE))).contains("\"price_less_worth\": 694.00");
    }

    @Test
    void theStatusIsSaidInWords() {
        assertThat(text(one(Answers.ASKED, Status.BEST_FOUND, 59400, 56430)))
                .contains("best found in time: no valid build is below 564.30 EUR (gap 5.00 %)");
        assertThat(text(one(Answers.ASKED, Status.BEST_FOUND, 59400, Double.NaN)))
                .contains("best found in time: how much better a build could be is not known");
        assertThat(text(one(Answers.ASKED.withObjective(Objective.MOST_BANDWIDTH), Status.BEST_FOUND, 153.6, 307.2)))
                .contains("no valid build is above 307.2 (gap 100.00 %)", "memory bandwidth of the best: 153.6 GB/s");
        assertThat(text(one(Answers.ASKED.withObjective(Objective.MOST_MEMORY), Status.PROVED, 128, 128)))
                .contains("proved: no valid build has more usable memory", "usable memory of the best: 128 GB");
        assertThat(text(one(Answers.ASKED.withObjective(Objective.BEST_VALUE), Status.PROVED, -1250, -1250)))
                .contains("proved: no valid build has a lower price less worth", "price less worth of the best: -12.50 EUR");
        assertThat(text(new Findings(Answers.ASKED, Status.BEST_FOUND, Double.NaN, Double.NaN, List.of(), Doubts.of(Doubts.Cause.TIME))))
                .contains("nothing found before the time limit, and not proved that nothing exists.");
    }

    /** Readers of a page have no options to give. */
    @Test
    void aPageIsToldOfNoOption() {
        Findings none = new Findings(Answers.ASKED, Status.BEST_FOUND, Double.NaN, Double.NaN, List.of(), Doubts.of(Doubts.Cause.TIME));
        assertThat(text(none, Screen.PAGE).replaceAll("\\s+", " "))
                .contains("not proved that nothing exists. More time may settle it.").doesNotContain("--");
        assertThat(Unproved.sentence("Not all was found.", "", none.doubts()).in(Wording.of(Answers.SHOP).forShop()))
                .isEqualTo("Not all was found. More time may settle it.");
        Explanation open = new Explanation(List.of(), List.of(), List.of(), List.of(),
                List.of(Unproved.sentence("Not all was found.", "", none.doubts())));
        assertThat(QuoteJson.of(QuoteView.of(Answers.outcome(none), Answers.SHOP, open))).contains("Not all was found. More time may settle it.").doesNotContain("--time-limit");
    }

    @Test
    void aListOfAlternativesThatTimeCutShortIsCalledSo() {
        Findings cut = new Findings(Answers.ASKED, Status.PROVED, 59400, 59400, Answers.proved().ranked(), Doubts.of(Doubts.Cause.TIME));
        assertThat(text(cut).replaceAll("\\s+", " "))
                .contains("The time limit ended the search for alternatives: better ones may be missing. Maybe allow more time: --time-limit");
        assertThat(text(Answers.proved())).doesNotContain("time limit");
    }

    /** More time does not help where a platform takes more populations than are listed, or where not every way to share out is tried. */
    @Test
    void whatMoreTimeWouldNotProveIsSaid() {
        Doubts large = new Doubts(Set.of(Doubts.Cause.SIZE), new TreeSet<>(Set.of("WIDE")));
        Doubts larger = new Doubts(Set.of(Doubts.Cause.SIZE), new TreeSet<>(Set.of("WIDE", "WIDER")));
        String none = text(new Findings(Answers.ASKED, Status.BEST_FOUND, Double.NaN, Double.NaN, List.of(), large)).replaceAll("\\s+", " ");
        assertThat(none).contains("nothing found, and not proved that nothing exists WIDE takes more populations of memory than are listed,"
                + " so builds on it may be missing. More time does not help; name other platforms, or forbid some modules.").doesNotContain("--time-limit");
        String found = text(new Findings(Answers.ASKED, Status.BEST_FOUND, 59400, 56430, Answers.proved().ranked(), larger)).replaceAll("\\s+", " ");
        assertThat(found).contains("best found: no valid build is below 564.30 EUR (gap 5.00 %)",
                "WIDE and WIDER take more populations of memory than are listed, so builds on them may be missing.").doesNotContain("--time-limit");
        String cut = text(new Findings(Answers.ASKED, Status.PROVED, 59400, 59400, Answers.proved().ranked(), Doubts.of(Doubts.Cause.SHARING)))
                .replaceAll("\\s+", " ");
        assertThat(cut).contains("Better alternatives may be missing. Alike modules that differ in watts or ranks can be shared out in more ways than were tried."
                + " More time does not help.").doesNotContain("--time-limit");
    }

    @Test
    void anImpossibleRequestShowsWhatConflictsAndWhatWouldDo() {
        Explanation explanation = new Explanation(List.of(new WhyNot("R32", WhyNot.Verdict.BEATEN, List.of(Sentence.plain("It is dearer.")), List.of(), Optional.empty())),
                List.of(new Conflict(List.of(new Conflict.Member("limit.price", Optional.empty(), Sentence.plain("a price")),
                        new Conflict.Member("use", Optional.of("R16"), Sentence.plain("R16 in every machine"))), List.of("budget", "cores"), Sentence.plain("20 cores cost more than 100.00 EUR."))),
                List.of(new Relaxation(List.of(new Relaxation.Change("limit.price", Optional.empty(), "100.00", "594.00")), new BigDecimal("594.00"), Sentence.plain("With 594.00 EUR a build exists."))),
                List.of(new Lacks.Lack("BOX", new Violation("in-stock", "", Sentence.plain("No lot offers BOX.")))), List.of());
        assertThat(QuoteText.of(QuoteView.of(Answers.outcome(Answers.findings(Answers.ASKED, Status.IMPOSSIBLE)), Answers.SHOP, explanation), Screen.PLAIN))
                .isEqualTo("""
                render node: 1 machine, cheapest
                impossible: no valid build exists

                What conflicts, whatever else gives way
                - 20 cores cost more than 100.00 EUR.

                What the catalogue lacks
                - BOX: No lot offers BOX.

                Ways out, all else as asked
                - With 594.00 EUR a build exists.

                Why not R32
                - It is dearer.
                """);
    }

    @Test
    void colourOnlyRepeatsTheWords() {
        String coloured = text(Answers.proved(), new Screen(80, true));
        assertThat(coloured).contains("\u001b[32mproved: no cheaper valid build exists\u001b[0m");
        assertThat(coloured.replaceAll("\u001b\\[[0-9]+m", "")).isEqualTo(text(Answers.proved()));
    }

    @Test
    void aNameCannotSteerTheTerminal() {
        Request named = Request.named("\u001b[2Jnode");
        assertThat(text(one(named, Status.PROVED, 1, 1))).startsWith("\\u001B[2Jnode: 1 machine").doesNotContain("\u001b");
    }

    @Test
    void aVerdictListsEveryBreach() {
        CheckView view = CheckView.of(Answers.order(Answers.ASKED, Answers.hot()), true, List.of(
                new Violation("blocked-slot", "1D3", Sentence.plain("DEEP covers slot 1D3, which holds R16, and this sentence is long enough to fold.")),
                new Violation("cores", "", Sentence.plain("The cores are 20; the request asks for 24."))));
        assertThat(CheckText.of(view, Screen.PLAIN)).startsWith("""
                render node
                invalid: 2 breaches of rules

                rule          where  what is wrong
                blocked-slot  1D3    DEEP covers slot 1D3, which holds R16, and this sentence is
                                     long enough to fold.
                cores                The cores are 20; the request asks for 24.

                The build
                BOX (BOX), 2 x P12 (12 cores, 2.2 GHz, 2.6 GHz all cores), heat sink DEEP, 2 x
                PAIR

                cores             24 (2 x P12)
                memory            16 x 16 GB = 256 GB
                memory speed      2400 MT/s, set by processor
                memory bandwidth  153.6 GB/s
                throughput        ~499.2 (an estimate)
                load              391 W, 440.3 W from the wall
                spare slots       6
                lead time         4 days
                price             852.00 EUR

                Parts to pick
                """);
    }

    @Test
    void aValidBuildIsCalledSo() {
        String text = CheckText.of(CheckView.of(Answers.order(Answers.ASKED, Answers.cool()), true, List.of()), Screen.PLAIN);
        assertThat(text).startsWith("render node\nvalid: every rule holds\n\nThe build\n");
        assertThat(CheckText.of(CheckView.of(Answers.order(Answers.ASKED, Answers.cool()), false, List.of()), Screen.PLAIN))
                .contains("price             none: stock does not hold all parts\n").doesNotContain("total");
    }

    @Test
    void aCatalogueIsCounted() {
        assertThat(CatalogText.of(CatalogView.of(Answers.SHOP), Screen.PLAIN)).isEqualTo("""
                sample
                no faults; prices of 2025-01-01 in EUR

                platforms         2
                sled enclosures   0
                processors        2
                memory modules    3
                drives            0
                cards             0
                extras            0
                cooling kits      3
                power supplies    1
                lots             10
                units in stock   83

                Parts without an offer, which cannot be bought
                TALL
                """);
    }

    @Test
    void longNamesFold() {
        TextTable table = new TextTable().column("part", TextTable.Fit.LEFT).column("from", TextTable.Fit.FLEXIBLE).column("EUR", TextTable.Fit.RIGHT)
                .row("A", "a shop with a long name and another", "1.00").row("B", "unbreakable-name-of-a-shop", "10.00");
        assertThat(table.lines(28)).containsExactly(
                "part  from               EUR",
                "A     a shop with a     1.00",
                "      long name and",
                "      another",
                "B     unbreakable-nam  10.00",
                "      e-of-a-shop");
    }
}
