package sledwright.generator.fitout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.Card;
import sledwright.domain.CardHeight;
import sledwright.domain.CardKind;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveSupport;
import sledwright.domain.RaidLevel;

/** Which cards are put where, what of it is kept, and how little has to be looked at for that. */
class CardPlansTest {

    private static final DriveSupport STRONG = Chest.serving(8, RaidLevel.values());
    private static final DriveSupport OF_SAS = new DriveSupport(Set.of(DriveInterface.SAS), 4, Set.of(RaidLevel.LEVEL_0));

    /** Price, watts, cards and what drives of each plan. */
    private static List<String> words(List<CardPlan> plans) {
        return plans.stream().map(plan -> "%d at %d W: %s%s%s".formatted(plan.price(), plan.microwatts() / 1_000_000,
                plan.cards().values().stream().map(Card::sku).sorted().toList(),
                plan.driver().map(driver -> driver.equals("onboard") ? " on board" : " on " + plan.cards().get(driver).sku()).orElse(""),
                plan.mustDrive() ? " must" : "")).toList();
    }

    /** Price, watts, cards by slot, extras and driver of each plan. */
    private static List<String> seated(List<CardPlan> plans) {
        return plans.stream().map(plan -> "%d at %d W: %s%s%s%s".formatted(plan.price(), plan.microwatts() / 1_000_000,
                plan.cards().entrySet().stream().map(card -> card.getKey() + " " + card.getValue().sku()).toList(),
                plan.extras().isEmpty() ? "" : " " + plan.extras(), plan.driver().map(driver -> " on " + driver).orElse(""),
                plan.mustDrive() ? " must" : "")).toList();
    }

    private static Chest oneSlot() {
        return new Chest().slot("X1");
    }

    @Test
    void aCardThatAnotherMatchesInPriceAndShapeIsNotLookedAt() {
        Chest chest = oneSlot().network("DEAR", 70, 7).network("CHEAP", 50, 10).network("LIGHT", 60, 5).network("AGAIN", 50, 10).asksFor(1, CardKind.NETWORK);
        assertThat(words(chest.cardPlans(false))).containsExactlyInAnyOrder("50 at 10 W: [CHEAP]", "60 at 5 W: [LIGHT]");
        assertThat(chest.looks()).isEqualTo(3);
    }

    /** One may be wanted for its weight, for what it drives, because it is to be used, or another entry may take it as well. */
    @Test
    void aCardThatIsMatchedIsLookedAtWhereItMayBeOfUse() {
        assertThat(looks(oneSlot().network("DEAR", 70, 10).network("CHEAP", 50, 10).asksFor(1, CardKind.NETWORK).everyWeight())).isEqualTo(3);
        assertThat(looks(oneSlot().network("DEAR", 70, 10).network("CHEAP", 50, 10).asksFor(1, CardKind.NETWORK).uses("DEAR"))).isEqualTo(3);
        assertThat(looks(oneSlot().controller("DEAR", 70, OF_SAS).controller("CHEAP", 50, OF_SAS).asksFor(1, CardKind.CONTROLLER))).isEqualTo(3);
        assertThat(looks(oneSlot().slot("X2").network("DEAR", 70, 10).network("CHEAP", 50, 10).asksFor(1, CardKind.NETWORK).asksFor(1, "DEAR"))).isEqualTo(5);
        assertThat(looks(oneSlot().slot("X2").network("DEAR", 70, 10).network("CHEAP", 50, 10).network("OTHER", 50, 10).asksFor(1, CardKind.NETWORK)
                .controller("CTL", 10, OF_SAS).asksFor(1, "CTL"))).isEqualTo(3);
    }

    private static int looks(Chest chest) {
        chest.cardPlans(false);
        return chest.looks();
    }

    @Test
    void aCardThatFitsNoSlotIsNotLookedAt() {
        Chest chest = new Chest().slot("X1", Chest.shape(CardHeight.LOW, 170, 25), Optional.empty()).network("SHORT", 70, 5)
                .card("LONG", 10, CardKind.NETWORK, Chest.shape(CardHeight.LOW, 200, 5), Optional.empty()).asksFor(1, CardKind.NETWORK);
        assertThat(words(chest.cardPlans(false))).containsExactly("70 at 5 W: [SHORT]");
        assertThat(chest.looks()).isEqualTo(2);
    }

    @Test
    void noMoreCardsAreLookedAtThanThereAreSlotsOrUnits() {
        assertThat(looks(oneSlot().slot("X2").network("N", 5, 5).asksFor(2, "N"))).isEqualTo(2);
        assertThat(looks(oneSlot().slot("X2").network("N", 5, 5).asksFor(3, "N"))).isEqualTo(1);
        assertThat(looks(oneSlot().network("N", 5, 5).network("M", 5, 5).asksFor(1, "N").asksFor(1, "M"))).isEqualTo(2);
        Card rare = new Card("RARE", "RARE", CardKind.NETWORK, Chest.shape(CardHeight.LOW, 160, 5), 2, 10, Optional.empty());
        assertThat(looks(oneSlot().slot("X2").card(rare).offer("RARE", 1, Map.of(1, 5L)).asksFor(1, "RARE").asksFor(1, "RARE"))).isEqualTo(2);
        assertThat(looks(oneSlot().card(rare).offer("RARE", 1, Map.of(1, 5L)).asksFor(1, "RARE").machines(2))).isEqualTo(1);
        assertThat(looks(oneSlot().card(rare).offer("RARE", 2, Map.of(1, 5L)).asksFor(1, "RARE").machines(2))).isEqualTo(2);
    }

    @Test
    void allMachinesArePaidForWithLabourForEachCard() {
        assertThat(words(oneSlot().slot("X2").network("N", 50, 5).asksFor(2, "N").machines(3).labour(0, 7).cardPlans(false)))
                .containsExactly("342 at 10 W: [N, N]");
    }

    @Test
    void aControllerMoreMayDriveWhereThereAreDrives() {
        Chest chest = oneSlot().slot("X2").controller("CTL", 90, STRONG).network("N", 50, 5).asksFor(1, "N");
        assertThat(words(chest.cardPlans(false))).containsExactly("50 at 5 W: [N]");
        assertThat(words(chest.cardPlans(true))).containsExactlyInAnyOrder("50 at 5 W: [N]", "140 at 15 W: [CTL, N] on CTL must");
    }

    @Test
    void aControllerMoreThatTheBoardOrAnAskedOneOutdoesIsDropped() {
        assertThat(words(oneSlot().slot("X2").controller("CTL", 90, STRONG).controller("WEAK", 95, OF_SAS).controller("SAME", 95, STRONG).asksFor(1, "CTL")
                .cardPlans(true))).containsExactlyInAnyOrder("90 at 10 W: [CTL] on CTL", "185 at 20 W: [CTL, WEAK] on WEAK must");
        assertThat(words(oneSlot().controller("SMALL", 9, Chest.serving(4, RaidLevel.LEVEL_1)).onboard(Chest.serving(4, RaidLevel.LEVEL_1)).cardPlans(true)))
                .containsExactly("0 at 0 W: [] on board");
        assertThat(words(oneSlot().controller("MORE", 9, Chest.serving(5, RaidLevel.LEVEL_1)).onboard(Chest.serving(4, RaidLevel.LEVEL_1)).cardPlans(true)))
                .containsExactlyInAnyOrder("0 at 0 W: [] on board", "9 at 10 W: [MORE] on MORE must");
    }

    @Test
    void ofControllersThatDriveAsMuchTheCheaperIsKept() {
        assertThat(words(oneSlot().controller("DEAR", 90, STRONG).controller("CHEAP", 80, STRONG).asksFor(1, CardKind.CONTROLLER).cardPlans(true)))
                .containsExactly("80 at 10 W: [CHEAP] on CHEAP");
        assertThat(words(oneSlot().controller("CHEAP", 80, STRONG).controller("DEAR", 90, STRONG).asksFor(1, CardKind.CONTROLLER).cardPlans(true)))
                .containsExactly("80 at 10 W: [CHEAP] on CHEAP");
    }

    /** One that must drive is of no use without drives, so a dearer one that need not stays beside it. */
    @Test
    void aCheaperPairThatMustDriveStandsForNothingElse() {
        Card card = new Card("CTL", "CTL", CardKind.CONTROLLER, Chest.shape(CardHeight.LOW, 160, 10), 0, 0, Optional.of(STRONG));
        assertThat(words(oneSlot().slot("X2").card(card).offer("CTL", 9, Map.of(1, 90L, 2, 40L)).asksFor(1, "CTL").cardPlans(true)))
                .containsExactlyInAnyOrder("90 at 10 W: [CTL] on CTL", "80 at 20 W: [CTL, CTL] on CTL must");
    }

    @Test
    void aControllerThatIsToBeUsedNeedNotDrive() {
        Chest chest = oneSlot().slot("X2").controller("ASKED", 90, STRONG).controller("USED", 80, OF_SAS).controller("IDLE", 5, OF_SAS).asksFor(1, "ASKED").uses("USED");
        assertThat(words(chest.cardPlans(false))).containsExactlyInAnyOrder("90 at 10 W: [ASKED] on ASKED",
                "170 at 20 W: [ASKED, USED] on ASKED", "170 at 20 W: [ASKED, USED] on USED");
        Chest board = oneSlot().controller("USED", 80, OF_SAS).onboard(STRONG).uses("USED");
        assertThat(words(board.cardPlans(false))).containsExactlyInAnyOrder("0 at 0 W: [] on board", "80 at 10 W: [USED] on board",
                "80 at 10 W: [USED] on USED");
    }

    @Test
    void theDriverIsTheSlotInWhichItSits() {
        assertThat(seated(new Chest().slot("X1", Chest.shape(CardHeight.LOW, 160, 25), Optional.empty()).slot("X2").network("N", 50, 5)
                .card("CTL", 90, CardKind.CONTROLLER, Chest.shape(CardHeight.FULL, 312, 20), Optional.of(STRONG)).asksFor(1, "N").asksFor(1, "CTL").cardPlans(true)))
                .containsExactly("140 at 25 W: [X1 N, X2 CTL] on X2");
    }

    @Test
    void whatIsToBeUsedIsKeptBesideWhatIsCheaper() {
        assertThat(words(oneSlot().network("CHEAP", 50, 5).network("DEAR", 70, 5).asksFor(1, CardKind.NETWORK).uses("DEAR").cardPlans(false)))
                .containsExactlyInAnyOrder("50 at 5 W: [CHEAP]", "70 at 5 W: [DEAR]");
        assertThat(words(oneSlot().network("CHEAP", 50, 5).network("DEAR", 40, 5).asksFor(1, CardKind.NETWORK).uses("DEAR").cardPlans(false)))
                .containsExactly("40 at 5 W: [DEAR]");
    }

    @Test
    void everyWeightIsKeptWhereItIsOfUse() {
        assertThat(words(oneSlot().network("CHEAP", 50, 5).network("HEAVY", 70, 9).network("SAME", 60, 5).asksFor(1, CardKind.NETWORK).everyWeight().cardPlans(false)))
                .containsExactlyInAnyOrder("50 at 5 W: [CHEAP]", "70 at 9 W: [HEAVY]");
    }

    /** A riser that is free and takes no watts is still a part more. */
    @Test
    void aSlotWithoutARiserComesFirst() {
        Chest chest = new Chest().slot("X1", Chest.shape(CardHeight.LOW, 312, 25), Optional.of("R")).slot("X2", Chest.shape(CardHeight.FULL, 160, 25), Optional.empty())
                .extra("R", 0, 0);
        chest.card("LONG", 50, CardKind.NETWORK, Chest.shape(CardHeight.LOW, 312, 5), Optional.empty());
        chest.card("HIGH", 50, CardKind.NETWORK, Chest.shape(CardHeight.FULL, 160, 5), Optional.empty());
        assertThat(seated(chest.asksFor(1, CardKind.NETWORK).cardPlans(false))).containsExactly("50 at 5 W: [X2 HIGH]");
        assertThat(seated(oneSlot().slot("X2", Chest.shape(CardHeight.FULL, 312, 75), Optional.of("R")).extra("R", 0, 0).network("N", 5, 5).asksFor(1, "N")
                .cardPlans(false))).containsExactly("5 at 5 W: [X1 N]");
        assertThat(seated(oneSlot().slot("X2", Chest.shape(CardHeight.FULL, 312, 75), Optional.of("R")).extra("R", 9, 1).network("N", 5, 5).asksFor(1, "N")
                .cardPlans(false))).containsExactly("5 at 5 W: [X1 N]");
    }

    @Test
    void theRisersThatCardsNeedAreBoughtAndNoOthers() {
        Chest chest = new Chest().extra("R1", 1, 1).extra("R2", 2, 1).extra("R3", 3, 1);
        chest.slot("X1", Chest.shape(CardHeight.LOW, 160, 25), Optional.of("R1")).slot("X2", Chest.shape(CardHeight.FULL, 160, 25), Optional.of("R2"))
                .slot("X3", Chest.shape(CardHeight.LOW, 312, 25), Optional.of("R3"));
        chest.card("HIGH", 50, CardKind.NETWORK, Chest.shape(CardHeight.FULL, 160, 5), Optional.empty());
        chest.card("LONG", 60, CardKind.OTHER, Chest.shape(CardHeight.LOW, 312, 5), Optional.empty());
        assertThat(seated(chest.asksFor(1, "HIGH").cardPlans(false))).containsExactly("52 at 6 W: [X2 HIGH] {R2=1}");
        assertThat(seated(chest.asksFor(1, "LONG").cardPlans(false))).containsExactly("115 at 12 W: [X2 HIGH, X3 LONG] {R2=1, R3=1}");
    }

    /** The card that fits the slot behind the riser alone goes there, and the other moves out of its way. */
    @Test
    void cardsMakeWayForEachOther() {
        Chest chest = new Chest().extra("R", 4, 1).slot("X1", Chest.shape(CardHeight.FULL, 312, 75), Optional.of("R"))
                .slot("X2", Chest.shape(CardHeight.LOW, 160, 25), Optional.empty()).network("N", 50, 5);
        chest.card("LONG", 60, CardKind.OTHER, Chest.shape(CardHeight.FULL, 312, 5), Optional.empty());
        assertThat(seated(chest.asksFor(1, "N").asksFor(1, "LONG").cardPlans(false))).containsExactly("114 at 11 W: [X1 LONG, X2 N] {R=1}");
    }
}
