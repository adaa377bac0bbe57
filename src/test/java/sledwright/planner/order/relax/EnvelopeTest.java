package sledwright.planner.order.relax;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static sledwright.samples.Samples.lot;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Condition;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.Range;
import sledwright.planner.order.market.ScaledMoney;

class EnvelopeTest {

    private static final int CASES = 500;
    private static final int MOST = 30;

    /** Ten at 4.00, or any number at 5.00: every unit counts 4.00, up to ten as well as beyond. */
    @Test
    void aDiscountCountsFromTheFirstUnitOn() {
        OfferedLot source = source(20, Map.of(1, 500L, 10, 400L));
        Envelope envelope = Envelope.of(source, Range.ANY.upTo(20));
        assertThat(price(envelope, 3)).isEqualTo(3 * 400);
        assertThat(envelope.parting(source, 3)).isEqualTo(10);
        assertThat(envelope.parting(source, 12)).isZero();
    }

    /** Where ten are ruled out every unit costs 5.00, and where they are certain ten cost 40.00 and each further one 4.00. */
    @Test
    void aRangeHasAnEnvelopeOfItsOwn() {
        OfferedLot source = source(20, Map.of(1, 500L, 10, 400L));
        Envelope fewer = Envelope.of(source, Range.ANY.upTo(9));
        assertThat(price(fewer, 3)).isEqualTo(3 * 500);
        assertThat(fewer.parting(source, 3)).isZero();
        Envelope more = Envelope.of(source, Range.ANY.from(10).upTo(20));
        assertThat(more.least()).isEqualTo(10);
        assertThat(price(more, 10)).isEqualTo(10 * 400);
    }

    @Test
    void aLotThatSellsNoSuchNumberHasNone() {
        assertThat(Envelope.of(source(20, Map.of(12, 400L)), Range.ANY.from(1).upTo(11))).isNull();
    }

    /** Convex, nowhere above the price list, and on it wherever it does not part from it. */
    @Test
    void itIsTheHighestConvexFloorOfThePrices() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Map<Integer, Long> prices = new TreeMap<>();
            for (int i = random.nextInt(1, 4); i > 0; i--) {
                prices.put(random.nextInt(1, MOST), (long) random.nextInt(100, 1000));
            }
            OfferedLot source = source(MOST, prices);
            Envelope envelope = Envelope.of(source, Range.ANY.upTo(MOST));
            List<Envelope.Piece> pieces = envelope.pieces();
            for (int i = 1; i < pieces.size(); i++) {
                assertThat(pieces.get(i).price()).as("seed %d: pieces get dearer", seed).isGreaterThanOrEqualTo(pieces.get(i - 1).price());
            }
            for (int units = 0; units <= MOST; units++) {
                int asked = units;
                long listed = units == 0 ? 0 : source.steps().stream().filter(step -> step.least() <= asked && asked <= step.most())
                        .mapToLong(step -> step.price() * asked / ScaledMoney.ONE).findFirst().orElse(Long.MAX_VALUE);
                assertThat(price(envelope, units)).as("seed %d, %d units", seed, units).isLessThanOrEqualTo(listed + 1e-6);
                if (units > 0 && envelope.parting(source, units) == 0) {
                    assertThat(price(envelope, units)).as("seed %d, %d units", seed, units).isCloseTo(listed, within(1e-3));
                }
            }
        }
    }

    private static OfferedLot source(int available, Map<Integer, Long> prices) {
        return OfferedLot.of(lot("R16", "A", available, 0, Condition.NEW, prices), 0, new boolean[] {true}, 0, available);
    }

    /** Minor units. */
    private static double price(Envelope envelope, int units) {
        double price = 0;
        int left = units;
        for (Envelope.Piece piece : envelope.pieces()) {
            int some = Math.min(left, piece.units());
            price += ScaledMoney.minor(some * piece.price());
            left -= some;
        }
        return price;
    }
}
