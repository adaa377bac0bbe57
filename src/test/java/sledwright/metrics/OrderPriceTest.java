package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.machine;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Condition;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Lot;
import sledwright.domain.Pick;

class OrderPriceTest {

    private static final Build TWO_SOCKETS = machine().channels(4, R16).build();
    private static final Build ONE_SOCKET = machine().processors(P10).channels(4, R16).build();

    @Test
    void partsAreThePicks() {
        Lot byTheDozen = lot("R16", "A", 20, 0, Condition.NEW, Map.of(1, 2_000L, 12, 1_500L));
        assertThat(OrderPrice.of(List.of(), List.of(new Pick(byTheDozen, 11)), new Labour(0, 0), Licence.NONE).total()).isEqualTo(22_000);
        assertThat(OrderPrice.of(List.of(), List.of(new Pick(byTheDozen, 12), new Pick(Lot.onHand("R16", 4), 4)), new Labour(0, 0),
                Licence.NONE).total()).isEqualTo(18_000);
    }

    /** 40.00 a machine and 1.50 a module: 40 + 8 x 1.50, and 40 + 4 x 1.50. */
    @Test
    void labourIsByMachineAndModule() {
        Labour labour = new Labour(4_000, 150);
        assertThat(OrderPrice.ofLabour(labour, 8)).isEqualTo(5_200);
        assertThat(OrderPrice.of(List.of(TWO_SOCKETS, ONE_SOCKET), List.of(), labour, Licence.NONE)).isEqualTo(new OrderPrice(0, 9_800, 0));
    }

    /** 2.00 a core and 5.00 a processor: 20 x 2 + 2 x 5, and 10 x 2 + 5. */
    @Test
    void licenceIsByCoreAndProcessorOfEveryMachine() {
        OrderPrice price = OrderPrice.of(List.of(TWO_SOCKETS, ONE_SOCKET), List.of(), new Labour(0, 0), new Licence(200, 500));
        assertThat(price).isEqualTo(new OrderPrice(0, 0, 7_500));
    }

    @Test
    void theTotalIsAllOfIt() {
        assertThat(new OrderPrice(100, 20, 3).total()).isEqualTo(123);
    }

    /** Platform, processors, a kit for each of them, both supplies, eight modules. */
    @Test
    void everyPartOfAMachineIsCounted() {
        assertThat(TWO_SOCKETS.partCounts()).isEqualTo(Map.of("BOX", 1, "P10", 2, "LOW", 2, "PAIR", 2, "R16", 8));
        assertThat(ONE_SOCKET.partCounts()).isEqualTo(Map.of("BOX", 1, "P10", 1, "LOW", 1, "PAIR", 2, "R16", 4));
    }

    /** 1.23 for three cores is 0.41 each; 1.24 for three is 0.413, for 1.5 GB 0.827. */
    @Test
    void aShareForEachUnit() {
        assertThat(new OrderPrice(100, 20, 3).perUnit(3)).hasValue(41);
        assertThat(new OrderPrice(100, 20, 4).perUnit(3)).hasValue(41);
        assertThat(new OrderPrice(100, 20, 4).perUnit(1.5)).hasValue(83);
        assertThat(new OrderPrice(100, 20, 4).perUnit(0)).isEmpty();
    }
}
