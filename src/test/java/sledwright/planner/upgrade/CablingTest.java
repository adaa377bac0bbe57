package sledwright.planner.upgrade;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.RaidLevel;
import sledwright.domain.Volume;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;
import sledwright.samples.Equipped;

class CablingTest {

    private static final Drive SSD = Equipped.SSD;

    private static Fitout fitout(String driver, Map<String, Card> cards, Drive... drives) {
        List<Volume> volumes = drives.length == 0 ? List.of() : List.of(new Volume("data", RaidLevel.LEVEL_0, "front", List.of(drives), List.of()));
        return new Fitout(volumes, Optional.ofNullable(driver), new TreeMap<>(cards), Map.of(), Optional.empty());
    }

    private static BenchStep connect(String to) {
        return new BenchStep(Action.PUT_IN, Part.CABLE, SSD.sku(), Optional.empty(), Optional.of(to));
    }

    private static BenchStep move(String from, String to) {
        return new BenchStep(Action.MOVE, Part.CABLE, SSD.sku(), Optional.of(from), Optional.of(to));
    }

    @Test
    void aDriveThatIsNewIsConnectedAndOneThatStaysIsNot() {
        Fitout board = fitout(Fitout.ONBOARD, Map.of(), SSD);
        assertThat(new Cabling(board, board).steps()).isEmpty();
        assertThat(new Cabling(board, fitout(Fitout.ONBOARD, Map.of(), SSD, SSD, SSD)).steps()).containsExactly(connect("onboard"), connect("onboard"));
        assertThat(new Cabling(fitout(null, Map.of(), SSD), board).steps()).as("nothing drove it").containsExactly(connect("onboard"));
        assertThat(new Cabling(board, fitout(Fitout.ONBOARD, Map.of())).steps()).isEmpty();
        assertThat(new Cabling(fitout("X1", Map.of("X1", Equipped.NET), SSD), board).steps()).as("a network card drives nothing").containsExactly(connect("onboard"));
        assertThat(new Cabling(fitout("X9", Map.of(), SSD), board).steps()).as("no card is there").containsExactly(connect("onboard"));
    }

    @Test
    void aDriveThatStaysFollowsItsDriver() {
        Fitout board = fitout(Fitout.ONBOARD, Map.of(), SSD);
        Fitout card = fitout("X1", Map.of("X1", Equipped.CONTROLLER), SSD, SSD);
        assertThat(new Cabling(board, card).steps()).containsExactly(move("onboard", "X1"), connect("X1"));
        assertThat(new Cabling(card, fitout("X2", Map.of("X2", Equipped.CONTROLLER), SSD, SSD)).steps()).as("the controller takes its cables along").isEmpty();
        assertThat(new Cabling(card, fitout(Fitout.ONBOARD, Map.of("X1", Equipped.CONTROLLER), SSD)).steps()).containsExactly(move("X1", "onboard"));
    }

    @Test
    void aDriveThatHangsOnItsBaysHasNoSuchCable() {
        assertThat(new Cabling(fitout(null, Map.of(), Equipped.NVME), fitout("X1", Map.of("X1", Equipped.CONTROLLER), Equipped.NVME, Equipped.NVME)).steps()).isEmpty();
    }
}
