package sledwright.generator.fitout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sledwright.domain.DriveInterface;
import sledwright.domain.RaidLevel;

/** What volumes are made of: what of it is kept, in which order, and how little has to be looked at for that. */
class VolumePlansTest {

    private static final DriveInterface NVME = DriveInterface.NVME;
    private static final DriveInterface SATA = DriveInterface.SATA;

    /** Price, watts of the heaviest machine and drives of each volume. */
    private static List<String> words(List<VolumePlan> plans) {
        return plans.stream().map(plan -> "%d at %d W: %s".formatted(plan.price(), plan.microwatts() / 1_000_000, plan.choices().stream()
                .map(choice -> "%s %d x %.0f %s".formatted(choice.wish().name(), choice.all(), choice.kind().capacityGb(), choice.group().name())).toList()))
                .toList();
    }

    private static Chest chest() {
        return new Chest().bays("front", 8, RaidLevel.values());
    }

    @Test
    void theCheapestComeFirstAndOfTheRestOnlyWhatIsLighter() {
        assertThat(words(chest().drive("D1", NVME, 400, 50, 3).drive("D2", NVME, 800, 60, 2).drive("D3", NVME, 1600, 40, 9).drive("D4", NVME, 3200, 70, 2)
                .asksFor("v", 300, RaidLevel.LEVEL_0, 0).volumePlans(Chest.NO_CARDS)))
                .containsExactly("40 at 9 W: [v 1 x 1600 front]", "50 at 3 W: [v 1 x 400 front]", "60 at 2 W: [v 1 x 800 front]");
    }

    /** One drive of 20 and 6 W against two of 10 and 3 W each: of equals the one of fewer drives. */
    @Test
    void ofEqualsThatOfFewerDrivesIsKept() {
        assertThat(words(chest().drive("BIG", NVME, 800, 20, 6).drive("SMALL", NVME, 400, 10, 3).asksFor("v", 800, RaidLevel.LEVEL_0, 0)
                .volumePlans(Chest.NO_CARDS))).containsExactly("20 at 6 W: [v 1 x 800 front]");
        assertThat(words(chest().drive("SMALL", NVME, 400, 10, 3).drive("BIG", NVME, 800, 20, 6).asksFor("v", 800, RaidLevel.LEVEL_0, 0)
                .volumePlans(Chest.NO_CARDS))).containsExactly("20 at 6 W: [v 1 x 800 front]");
        assertThat(words(chest().drive("ONE", NVME, 400, 10, 3).drive("OTHER", NVME, 401, 10, 3).asksFor("v", 400, RaidLevel.LEVEL_0, 0)
                .volumePlans(Chest.NO_CARDS))).containsExactly("10 at 3 W: [v 1 x 400 front]");
    }

    @Test
    void hotSparesAndLabourAreOfEveryMachine() {
        assertThat(words(chest().drive("D", NVME, 400, 10, 3).asksFor("v", 400, RaidLevel.LEVEL_1, 1).machines(2).labour(7, 0).volumePlans(Chest.NO_CARDS)))
                .containsExactly("102 at 9 W: [v 3 x 400 front]");
    }

    /** Four cost less than three: so much more is taken, and no more is looked at than that pays for. */
    @Test
    void moreDrivesAreTakenWhereTheirPriceFalls() {
        Chest falling = chest().drive("D", NVME, 400, 3).offer("D", 99, Map.of(1, 10L, 4, 5L)).asksFor("v", 1200, RaidLevel.LEVEL_0, 0);
        assertThat(words(falling.volumePlans(Chest.NO_CARDS))).containsExactly("20 at 12 W: [v 4 x 400 front]", "30 at 9 W: [v 3 x 400 front]");
        Chest even = chest().drive("D", NVME, 400, 10, 3).asksFor("v", 1200, RaidLevel.LEVEL_0, 0);
        assertThat(words(even.volumePlans(Chest.NO_CARDS))).containsExactly("30 at 9 W: [v 3 x 400 front]");
        assertThat(even.looks()).isEqualTo(2);
    }

    @Test
    void whatDrivesHasPortsForAllVolumesAndGroupsHaveBays() {
        Chest two = new Chest().bays("front", 3).bays("rear", 2, RaidLevel.LEVEL_1).drive("S", SATA, 400, 10, 3).drive("N", NVME, 400, 30, 3)
                .asksFor("a", 400, RaidLevel.LEVEL_1, 0).asksFor("b", 400, RaidLevel.LEVEL_1, 0);
        assertThat(words(two.volumePlans(Chest.drivenBy(Chest.serving(4, RaidLevel.LEVEL_1), false)))).hasSize(1)
                .allMatch(plan -> plan.startsWith("40 at 12 W") && plan.contains("front") && plan.contains("rear"));
        assertThat(words(two.volumePlans(Chest.drivenBy(Chest.serving(3, RaidLevel.LEVEL_1), false)))).hasSize(1)
                .allMatch(plan -> plan.startsWith("80 at 12 W"));
        assertThat(words(two.volumePlans(Chest.NO_CARDS))).isEmpty();
    }

    @Test
    void aControllerThatIsThereForNothingElseHasSomethingToDrive() {
        Chest both = chest().drive("S", SATA, 400, 10, 3).drive("N", NVME, 400, 5, 1).asksFor("v", 400, RaidLevel.LEVEL_1, 0);
        assertThat(words(both.volumePlans(Chest.drivenBy(Chest.serving(8, RaidLevel.values()), true)))).containsExactly("20 at 6 W: [v 2 x 400 front]");
        assertThat(words(both.volumePlans(Chest.drivenBy(Chest.serving(8, RaidLevel.values()), false)))).containsExactly("10 at 2 W: [v 2 x 400 front]");
    }

    @Test
    void whatIsToBeUsedIsKeptBesideWhatIsCheaper() {
        assertThat(words(chest().drive("D1", NVME, 400, 10, 3).drive("D2", NVME, 800, 60, 5).asksFor("v", 300, RaidLevel.LEVEL_0, 0).uses("D2")
                .volumePlans(Chest.NO_CARDS))).containsExactly("10 at 3 W: [v 1 x 400 front]", "60 at 5 W: [v 1 x 800 front]");
        assertThat(words(chest().drive("D1", NVME, 400, 10, 3).drive("D2", NVME, 800, 5, 2).asksFor("v", 300, RaidLevel.LEVEL_0, 0).uses("D2")
                .volumePlans(Chest.NO_CARDS))).containsExactly("5 at 2 W: [v 1 x 800 front]");
    }

    @Test
    void everyWeightIsKeptWhereItIsOfUse() {
        assertThat(words(chest().drive("D1", NVME, 400, 10, 3).drive("D2", NVME, 800, 60, 5).drive("D3", NVME, 1600, 50, 5).asksFor("v", 300, RaidLevel.LEVEL_1, 0)
                .everyWeight().volumePlans(Chest.NO_CARDS))).containsExactly("20 at 6 W: [v 2 x 400 front]", "100 at 10 W: [v 2 x 1600 front]");
    }

    /** Two machines, drives of one kind that differ in watts: the deal between machines leaves a range, which adds up over kinds. */
    @Test
    void whatAnotherDealCouldSaveAddsUp() {
        Chest uneven = new Chest().bays("front", 2, RaidLevel.values()).drive("A1", NVME, 400, 5).offer("A1", 3, Map.of(1, 10L)).drive("A2", NVME, 400, 3).offer("A2", 1, Map.of(1, 10L))
                .drive("B1", NVME, 800, 9).offer("B1", 3, Map.of(1, 10L)).drive("B2", NVME, 800, 5).offer("B2", 1, Map.of(1, 10L))
                .asksFor("a", 400, RaidLevel.LEVEL_0, 0).asksFor("b", 800, RaidLevel.LEVEL_0, 0).machines(2);
        assertThat(uneven.volumePlans(Chest.NO_CARDS)).extracting(VolumePlan::price, VolumePlan::microwatts, VolumePlan::range, VolumePlan::uneven)
                .containsExactly(tuple(40L, 14_000_000L, 6_000_000L, 2));
    }

    /** Of kinds and groups for several volumes most are left aside by the prices and watts that nothing goes below. */
    @Test
    void whatIsDearAndHeavyIsHardlyLookedAt() {
        Chest many = new Chest().bays("front", 8, RaidLevel.values()).bays("rear", 8, RaidLevel.values());
        for (int i = 1; i <= 8; i++) {
            many.drive("D" + i, NVME, 400 + i, 10L * (9 - i), 9 - i);
        }
        many.asksFor("a", 300, RaidLevel.LEVEL_5, 1).asksFor("b", 300, RaidLevel.LEVEL_1, 0).asksFor("c", 300, RaidLevel.LEVEL_0, 0);
        assertThat(words(many.volumePlans(Chest.NO_CARDS))).containsExactly("70 at 7 W: [a 4 x 408 front, b 2 x 408 front, c 1 x 408 front]");
        // The one kind in two groups for each of three volumes, and no other kind.
        assertThat(many.looks()).isEqualTo(1 + 2 + 4 + 8);
    }
}
