package sledwright.generator.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.generator.Pieces;
import sledwright.samples.Samples;

/** What memory costs at least: worked examples, and that nothing that can be bought goes below. */
class PriceFloorTest {

    private static final Offset<Double> SAME = within(1e-6);
    private static final int ANY = PriceFloor.ANY_SLOTS;
    private static final MemoryModule M16 = Samples.module("M16", 16).make();
    private static final MemoryModule M32 = Samples.module("M32", 32).make();
    private static final MemoryModule M64 = Samples.module("M64", 64).make();

    /** Four of 16 GB at 16 each (1 a GB), two of 32 GB at 48 (1.5 a GB), two of 64 GB at 192 (3 a GB). */
    private static PriceFloor floor(double worthOfGb) {
        List<MemoryModule> modules = List.of(M32, M16, M64);
        return new PriceFloor(Pieces.shelf(Request.named("floor"), modules, Pieces.lot(M16, 4, 16), Pieces.lot(M32, 2, 48), Pieces.lot(M64, 2, 192)), modules, worthOfGb);
    }

    @Test
    void gigabytesFromTheCheapestOn() {
        PriceFloor floor = floor(0);
        assertThat(floor.price(0, 0, ANY)).isZero();
        assertThat(floor.price(40, 1, ANY)).isEqualTo(40, SAME);
        assertThat(floor.price(64, 1, ANY)).isEqualTo(64, SAME);
        assertThat(floor.price(96, 1, ANY)).isEqualTo(64 + 48, SAME);
        assertThat(floor.price(256, 1, ANY)).isEqualTo(64 + 96 + 384, SAME);
        assertThat(floor.price(257, 1, ANY)).isInfinite();
    }

    @Test
    void modulesFromTheCheapestOn() {
        PriceFloor floor = floor(0);
        assertThat(floor.price(1, 3, ANY)).isEqualTo(48, SAME);
        assertThat(floor.price(1, 5.5, ANY)).isEqualTo(64 + 72, SAME);
        assertThat(floor.price(1, 8, ANY)).isEqualTo(64 + 96 + 384, SAME);
        assertThat(floor.price(1, 8.5, ANY)).isInfinite();
    }

    /** In two slots 128 GB take both of 64 GB; a charge of eight times the middling price, 48, for a slot comes closest to their 384. */
    @Test
    void slotsMakeItDearer() {
        PriceFloor floor = floor(0);
        assertThat(floor.price(128, 1, ANY)).isEqualTo(160, SAME);
        assertThat(floor.price(128, 1, 2)).isEqualTo(charged(128, 2), SAME).isGreaterThan(300).isLessThanOrEqualTo(384);
        assertThat(floor.price(128, 1, 3)).isEqualTo(charged(128, 3), SAME).isLessThanOrEqualTo(288);
        assertThat(floor.price(128, 1, 100)).isEqualTo(160, SAME);
    }

    /** The greatest over the charges of the price at charged prices, less the charge for all slots. */
    private static double charged(double gb, int slots) {
        double best = 0;
        for (double part : new double[] {0, 0.1, 0.3, 0.6, 1, 2, 4, 8}) {
            double charge = part * 48;
            List<double[]> offers = new ArrayList<>(List.of(new double[] {16, 4, 16}, new double[] {32, 2, 48}, new double[] {64, 2, 192}));
            offers.sort(Comparator.comparingDouble(offer -> (offer[2] + charge) / offer[0]));
            double price = -charge * slots;
            double left = gb;
            for (double[] offer : offers) {
                double taken = Math.min(left, offer[0] * offer[1]);
                price += taken * (offer[2] + charge) / offer[0];
                left -= taken;
            }
            best = Math.max(best, price);
        }
        return best;
    }

    @Test
    void whatMoneyBuys() {
        PriceFloor floor = floor(0);
        assertThat(floor.mostGb(0, ANY)).isZero();
        assertThat(floor.mostGb(40, ANY)).isEqualTo(40, SAME);
        assertThat(floor.mostGb(64 + 48, ANY)).isEqualTo(96, SAME);
        assertThat(floor.mostGb(543, ANY)).isEqualTo(256 - 1 / 3.0, SAME);
        assertThat(floor.mostGb(544, ANY)).isEqualTo(256, SAME);
        assertThat(floor.mostGb(Double.POSITIVE_INFINITY, ANY)).isEqualTo(256, SAME);
        assertThat(floor.mostGb(300, 2)).isGreaterThanOrEqualTo(96).isLessThan(floor.mostGb(300, ANY));
    }

    /** What costs nothing is had without money, and with any. */
    @Test
    void whatCostsNothingIsHadWithoutMoney() {
        List<MemoryModule> modules = List.of(M32, M16, M64);
        PriceFloor floor = new PriceFloor(Pieces.shelf(Request.named("free"), modules, Pieces.lot(M16, 4, 0), Pieces.lot(M32, 2, 0), Pieces.lot(M64, 2, 192)), modules, 0);
        assertThat(floor.mostGb(0, ANY)).isEqualTo(128, SAME);
        assertThat(floor.mostGb(96, ANY)).isEqualTo(128 + 32, SAME);
        assertThat(floor.mostGb(0, 6)).isGreaterThanOrEqualTo(128);
        assertThat(floor.mostGb(-1, ANY)).isEqualTo(128, SAME);
        PriceFloor all = new PriceFloor(Pieces.shelf(Request.named("all free"), modules, Pieces.lot(M16, 4, 0)), modules, 0);
        assertThat(all.mostGb(0, 4)).isEqualTo(64, SAME);
        assertThat(all.mostGb(7, ANY)).isEqualTo(64, SAME);
    }

    /** At a worth of 2 a GB, those at 1 and 1.5 are worth their price and those at 3 are not. */
    @Test
    void priceLessWorthTakesWhatIsWorthIt() {
        PriceFloor floor = floor(2);
        assertThat(floor.priceLessWorth(0, 500, ANY)).isEqualTo(160 - 2 * 128, SAME);
        assertThat(floor.priceLessWorth(0, 80, ANY)).isEqualTo(64 + 24 - 2 * 80, SAME);
        assertThat(floor.priceLessWorth(30, 40, ANY)).isEqualTo(40 - 80, SAME);
        assertThat(floor.priceLessWorth(150, 500, ANY)).isEqualTo(160 + 66 - 300, SAME);
        assertThat(floor.priceLessWorth(64, 64, ANY)).isEqualTo(64 - 128, SAME);
        assertThat(floor.priceLessWorth(300, 500, ANY)).isInfinite();
        // Two slots: both of the 32 GB modules at 48 less 64 are 32 below nothing; four of the 16 GB would be 64 below.
        assertThat(floor.priceLessWorth(0, 500, 2)).isEqualTo(-32, SAME);
        assertThat(floor(1).priceLessWorth(0, 500, ANY)).isEqualTo(0, SAME);
        assertThat(floor(1.5).priceLessWorth(0, 500, ANY)).isEqualTo(-32, SAME);
    }

    @Test
    void lotsCountAtTheLowestPriceThatTheyReach() {
        Lot lot = Pieces.lot(M16, 4, Map.of(1, 20L, 4, 10L, 9, 1L));
        PriceFloor floor = new PriceFloor(Pieces.shelf(Request.named("breaks"), List.of(M16), lot), List.of(M16), 0);
        assertThat(floor.price(16, 1, ANY)).isEqualTo(10, SAME);
        PriceFloor none = new PriceFloor(Pieces.shelf(Request.named("none"), List.of(M16)), List.of(M16), 0);
        assertThat(none.price(1, 1, ANY)).isInfinite();
        assertThat(none.mostGb(100, 4)).isZero();
    }

    /** Whatever can be bought of whole modules costs no less, and is no more for its money. */
    @Test
    void nothingThatCanBeBoughtGoesBelow() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<MemoryModule> modules = List.of(M16, M32, M64);
            int[] units = {random.nextInt(1, 5), random.nextInt(1, 5), random.nextInt(1, 4)};
            long[] prices = {random.nextInt(-20, 60), random.nextInt(-30, 90), random.nextInt(-50, 150)};
            // A quarter of the lots costs nothing.
            Arrays.setAll(prices, i -> Math.max(0, prices[i]));
            double worth = random.nextInt(0, 4);
            PriceFloor floor = new PriceFloor(Pieces.shelf(Request.named("any"), modules, Pieces.lot(M16, units[0], prices[0]), Pieces.lot(M32, units[1], prices[1]),
                    Pieces.lot(M64, units[2], prices[2])), modules, worth);
            for (int a = 0; a <= units[0]; a++) {
                for (int b = 0; b <= units[1]; b++) {
                    for (int c = 0; c <= units[2]; c++) {
                        double gb = 16 * a + 32 * b + 64 * c;
                        double price = a * prices[0] + b * prices[1] + c * prices[2];
                        String where = "seed %d: %d, %d, %d".formatted(seed, a, b, c);
                        for (int slots : new int[] {ANY, a + b + c, a + b + c + 2}) {
                            assertThat(floor.price(gb, a + b + c, slots)).as(where).isLessThanOrEqualTo(price + 1e-6);
                            assertThat(floor.mostGb(price, slots)).as(where).isGreaterThanOrEqualTo(gb - 1e-6);
                            assertThat(floor.priceLessWorth(gb / 2, gb + 8, slots)).as(where).isLessThanOrEqualTo(price - worth * gb + 1e-6);
                        }
                    }
                }
            }
        }
    }

    /** Two machines of two sockets of six slots, half of whose memory can be used, 5 of labour for a module. */
    @Test
    void whatAnOptionCosts() {
        MemoryOption.Extent extent = new MemoryOption.Extent(2, 2, 6, 4, 64, 0.5, 5);
        MemoryFloor coarse = new MemoryFloor(extent, floor(2), false);
        // 16 GB of use are 64 GB in two machines; a width of 1 takes four modules.
        assertThat(coarse.leastPrice(16, 1)).isEqualTo(64 + 4 * 5, SAME);
        assertThat(coarse.leastPrice(16, 1 + 1e-12)).isEqualTo(64 + 4 * 5, SAME);
        assertThat(coarse.leastPrice(16, 1.5)).isEqualTo(64 + 96 + 384 + 8 * 5, SAME);
        assertThat(coarse.leastPrice(16, 1)).isEqualTo(64 + 4 * 5, SAME);
        assertThat(coarse.leastPrice(24, 1)).isEqualTo(64 + 48 + 4 * 5, SAME);
        assertThat(coarse.leastPrice(0, 0)).isEqualTo(64 + 4 * 5, SAME);
        assertThat(coarse.leastPrice(65, 1)).isInfinite();
        assertThat(coarse.mostUsableGbFor(64)).isEqualTo(16, SAME);
        assertThat(coarse.leastPriceLessWorth(0, 1, 1000)).isEqualTo(160 - 256 + 20, SAME);
        assertThat(coarse.leastPriceLessWorth(0, 1, 20)).isEqualTo(64 + 24 - 160 + 20, SAME);
        assertThat(coarse.leastPriceLessWorth(24, 1, 1000)).isEqualTo(160 - 256 + 20, SAME);
        assertThat(coarse.leastPriceLessWorth(40, 1, 1000)).isEqualTo(160 + 96 - 320 + 20, SAME);
        // More GB than four of the largest modules hold take more modules, and labour.
        MemoryOption.Extent small = new MemoryOption.Extent(1, 1, 6, 4, 16, 1, 5);
        assertThat(new MemoryFloor(small, floor(0), false).leastPrice(64, 1)).isEqualTo(64 + 4 * 5, SAME);
        // Two slots hold 128 GB only as two of 64 GB.
        MemoryOption.Extent tight = new MemoryOption.Extent(1, 1, 2, 2, 64, 1, 0);
        assertThat(new MemoryFloor(tight, floor(0), true).leastPrice(128, 1)).isEqualTo(charged(128, 2), SAME);
        assertThat(new MemoryFloor(tight, floor(0), false).leastPrice(128, 1)).isEqualTo(160, SAME);
        MemoryOption.Extent several = new MemoryOption.Extent(2, 2, 1, 2, 64, 1, 0);
        assertThat(new MemoryFloor(several, floor(0), true).leastPrice(64, 1)).isEqualTo(charged(128, 4), SAME);
    }
}
