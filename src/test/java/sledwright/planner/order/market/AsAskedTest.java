package sledwright.planner.order.market;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import sledwright.domain.CardKind;
import sledwright.domain.CardWish;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.VolumeWish;
import sledwright.samples.Equipped;
import sledwright.samples.FitoutSketch;

/** A machine that was found for one line holds nothing that another has not asked for. */
class AsAskedTest {

    private static final VolumeWish DATA = new VolumeWish("data", 400, RaidLevel.LEVEL_5, Optional.empty(), Optional.empty(), 0);

    private static Request asks(List<VolumeWish> volumes, CardKind... cards) {
        return Request.named("any").withEquipment(new Equipment(volumes, List.of(cards).stream()
                .map(kind -> new CardWish(Optional.empty(), Optional.of(kind), 0, 0, 1)).toList(), Map.of(), EnclosureFrom.NEW));
    }

    private static boolean suits(Request request, Consumer<FitoutSketch> holds) {
        return AsAsked.allows(Equipped.machine().with(holds).build(), request);
    }

    private static void driven(FitoutSketch fitout) {
        fitout.volume("data", RaidLevel.LEVEL_5, "front", 3, Equipped.SSD, 0).card("X1", Equipped.CONTROLLER).driver("X1");
    }

    @Test
    void volumesThatNobodyAskedForDoNotSuit() {
        assertThat(suits(asks(List.of(DATA)), AsAskedTest::driven)).isTrue();
        assertThat(suits(asks(List.of(), CardKind.CONTROLLER), AsAskedTest::driven)).isFalse();
    }

    @Test
    void aControllerThatIsNotAskedForDrivesOrIsToBeUsed() {
        assertThat(suits(asks(List.of()), fitout -> fitout.card("X1", Equipped.CONTROLLER))).isFalse();
        assertThat(suits(asks(List.of(), CardKind.CONTROLLER), fitout -> fitout.card("X1", Equipped.CONTROLLER))).isTrue();
        assertThat(suits(asks(List.of()).withUse(Set.of("CTL-8")), fitout -> fitout.card("X1", Equipped.CONTROLLER))).isTrue();
        assertThat(suits(asks(List.of()).withUse(Set.of("NET-2X10")), fitout -> fitout.card("X1", Equipped.NET))).isFalse();
        assertThat(suits(asks(List.of(), CardKind.NETWORK), fitout -> { })).isFalse();
    }

    @Test
    void whatDrivesBesideTheAskedCardsLeavesThese() {
        assertThat(suits(asks(List.of(DATA), CardKind.NETWORK), fitout -> {
            driven(fitout);
            fitout.card("X2", Equipped.NET).extra(Equipped.RISER, 1);
        })).isTrue();
        assertThat(suits(asks(List.of(DATA), CardKind.CONTROLLER), fitout -> {
            driven(fitout);
            fitout.card("X2", Equipped.NET).extra(Equipped.RISER, 1);
        })).isFalse();
    }

    @Test
    void extrasAreWhatIsCalledForAndNoMore() {
        assertThat(suits(asks(List.of()), fitout -> { })).isTrue();
        assertThat(suits(asks(List.of()), fitout -> fitout.extra(Equipped.RAILS, 1))).isFalse();
        assertThat(suits(asks(List.of()), fitout -> fitout.extra(Equipped.RISER, 1))).isFalse();
        assertThat(suits(asks(List.of()), fitout -> fitout.extra(Equipped.FANS, 2))).isFalse();
    }
}
