package sledwright.report.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.OrderView.Cause;
import sledwright.desk.view.OrderView.Contents;
import sledwright.desk.view.OrderView.Cost;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Housed;
import sledwright.desk.view.OrderView.OrderProof;
import sledwright.desk.view.OrderView.Scarce;
import sledwright.desk.view.OrderView.Shortage;
import sledwright.desk.view.OrderView.Sled;
import sledwright.desk.view.Payment;
import sledwright.desk.view.Sale;
import sledwright.desk.view.Topic;
import sledwright.domain.Enclosure;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.OrderLine;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.Doubts;
import sledwright.planner.order.OrderOutcome.End;
import sledwright.planner.order.OrderStatus;
import sledwright.report.text.Screen;
import sledwright.samples.Samples;

/** What an order says that is not often said: views are made up, so that no clock decides. */
class OrderTextTest {

    private static final Cost COST = cost("0");
    private static final Supply FEED = Samples.supply("FEED", 2, 1, 200, 0, Map.of());
    private static final FilledEnclosure FRAME =
            new FilledEnclosure(new Enclosure("FRAME", "frame of one bay", Set.of("BOX"), 1, 60, 0, List.of(FEED)), FEED, List.of());

    private static Cost cost(String charge) {
        return new Cost(amount("80.00"), amount("20.00"), amount("0.00"), amount("0.00"), amount("100.00"), amount(charge), amount("0"));
    }

    private static BigDecimal amount(String text) {
        return new BigDecimal(text);
    }

    private static final Payment PAYS = new Payment(COST.total(), Optional.empty(), false, COST.total(), Optional.empty());
    private static final AnswerDay DAY = new AnswerDay(LocalDate.EPOCH, LocalDate.EPOCH, Optional.empty(), false, List.of());

    private static String text(OrderStatus status, int missing, String charge, Optional<BigDecimal> bound, Optional<BigDecimal> gap, Optional<Shortage> shortage) {
        return text(status, End.TIME, missing, charge, bound, gap, shortage);
    }

    private static String text(OrderStatus status, End ended, int missing, String charge, Optional<BigDecimal> bound, Optional<BigDecimal> gap, Optional<Shortage> shortage) {
        return text(status, ended, missing, charge, bound, gap, shortage, Screen.PLAIN);
    }

    private static String text(OrderStatus status, End ended, int missing, String charge, Optional<BigDecimal> bound, Optional<BigDecimal> gap, Optional<Shortage> shortage,
                               Screen screen) {
        Filled line = new Filled(new OrderLine("web", Request.named("web").withMachines(3), 1, false), missing, amount("100.00"), List.of(), Optional.empty());
        Housed frame = new Housed(1, FRAME, List.of(new Sled(1, "web", 1, 1, 250.5)), amount("12.00"), List.of());
        OrderView view = new OrderView(new Topic("order", 3, "EUR"),
                new OrderProof(status, Optional.of(amount("100.00").add(amount(charge))), bound, gap, ended, Doubts.NONE), cost(charge), new Sale(PAYS, Optional.empty()),
                new Contents(List.of(line), List.of(frame), List.of(), List.of(), List.of(new Scarce("M32", amount("14.20")))), shortage, DAY);
        return OrderText.of(view, screen).replaceAll("\\s+", " ");
    }

    @Test
    void whatIsNotProvedIsSaidToBeSo() {
        assertThat(text(OrderStatus.BEST_FOUND, 0, "0", Optional.of(amount("99.50")), Optional.of(amount("0.5")), Optional.empty()))
                .contains("best found, not proved: no order of all these machines costs less than 99.50 EUR, 0.5 % below. The time was over. Maybe allow more time: --time-limit");
        assertThat(text(OrderStatus.BEST_FOUND, 0, "7.00", Optional.of(amount("99.50")), Optional.empty(), Optional.empty()))
                .contains("best found, not proved: no order of all these machines comes to less than 99.50 EUR. The time");
        assertThat(text(OrderStatus.BEST_FOUND, 0, "0", Optional.empty(), Optional.empty(), Optional.empty()))
                .contains("best found, not proved: how much cheaper an order could be is not known");
    }

    /** Readers of a page have no options to give. */
    @Test
    void aPageIsToldOfNoOption() {
        assertThat(text(OrderStatus.BEST_FOUND, End.TIME, 0, "0", Optional.of(amount("99.50")), Optional.empty(), Optional.empty(), Screen.PAGE))
                .contains("less than 99.50 EUR. The time was over. More time may settle it.").doesNotContain("--");
        assertThat(text(OrderStatus.SHORT, End.TIME, 1, "0", Optional.empty(), Optional.empty(),
                Optional.of(new Shortage(true, false, List.of(), List.of(), Optional.empty())), Screen.PAGE))
                .contains("found out about what is lacking. More time may settle it.").doesNotContain("--time");
    }

    @Test
    void thatNothingIsLeftToTryIsSaid() {
        assertThat(text(OrderStatus.BEST_FOUND, End.NOTHING_LEFT, 0, "0", Optional.of(amount("99.50")), Optional.empty(), Optional.empty()))
                .contains("costs less than 99.50 EUR. The search ended before the time was over, since it has nothing left to try");
    }

    @Test
    void whatIsDeliveredOfAShortOrderHasABound() {
        Optional<Shortage> shortage = Optional.of(new Shortage(true, true, List.of(), List.of(), Optional.empty()));
        assertThat(text(OrderStatus.SHORT, End.PROVED, 1, "0", Optional.of(amount("100.00")), Optional.empty(), shortage))
                .contains("proved: no order that delivers as much costs less");
        assertThat(text(OrderStatus.SHORT, End.PROVED, 1, "7.00", Optional.of(amount("107.00")), Optional.empty(), shortage))
                .contains("proved: no order that delivers as much comes to less");
        assertThat(text(OrderStatus.SHORT, 1, "0", Optional.of(amount("99.50")), Optional.empty(), shortage))
                .contains("no order that delivers as much costs less than 99.50 EUR. The time was over");
        assertThat(text(OrderStatus.SHORT, 1, "7.00", Optional.of(amount("99.50")), Optional.empty(), shortage))
                .contains("no order that delivers as much comes to less than 99.50 EUR");
        assertThat(text(OrderStatus.SHORT, End.NOTHING_LEFT, 1, "0", Optional.empty(), Optional.empty(), shortage))
                .contains("how much cheaper an order that delivers as much could be is not known. The search ended before the time was over");
    }

    @Test
    void whatIsInTheWayIsNamed() {
        Shortage shortage = new Shortage(true, false, List.of(new Cause("suppliers_max", Optional.empty(), "The order allows 1 supplier.")), List.of(), Optional.empty());
        assertThat(text(OrderStatus.SHORT, 1, "0", Optional.empty(), Optional.empty(), Optional.of(shortage)))
                .contains("What is in the way - The order allows 1 supplier. The time was over before all was found out about what is lacking. Maybe allow more time: --time-limit");
    }

    @Test
    void furtherPartNumbersAreCounted() {
        assertThat(text(OrderStatus.PROVED, 0, "7.00", Optional.empty(), Optional.empty(), Optional.empty()))
                .contains("what is brought down: 107.00 EUR (the price, with 7.00 for further part numbers of memory module in a machine)");
    }

    @Test
    void oneBayIsFilled() {
        assertThat(text(OrderStatus.PROVED, 0, "0", Optional.empty(), Optional.empty(), Optional.empty()))
                .contains("Enclosure 1: FRAME (frame of one bay), fed by 2 x FEED 1 of 1 bay filled, 250.5 W of load. Enclosure and supplies: 12.00 EUR");
    }

    @Test
    void whatIsScarceIsNamed() {
        assertThat(text(OrderStatus.PROVED, 0, "0", Optional.empty(), Optional.empty(), Optional.empty()))
                .contains("What is scarce, by the bound's linear relaxation - One more M32 would save about 14.20 EUR.");
    }

    @Test
    void waitingDoesNotAlwaysHelp() {
        assertThat(text(OrderStatus.SHORT, 1, "0", Optional.empty(), Optional.empty(), Optional.of(new Shortage(true, true, List.of(), List.of(), Optional.empty()))))
                .contains("No order of all these machines was found with parts that come later, either.");
    }
}
