package sledwright.planner.order.market;

import java.util.List;
import java.util.stream.IntStream;

/**
 * How many more units of a part a pool could have if the others took theirs from whichever lots leave it most. By Hall's theorem it is what
 * the lots of some pools have beyond what these need, the least of it over all sets of pools. Least numbers of units are not looked at.
 */
final class Room {

    /** Of more pools not all sets are looked at. */
    private static final int MOST_POOLS = 10;

    private Room() {
    }

    /**
     * @param sources the open lots of the part
     * @param need    units that each pool takes already
     */
    static int of(List<OfferedLot> sources, int[] need, int pool) {
        int[] others = IntStream.range(0, need.length).filter(other -> other != pool && need[other] > 0).toArray();
        if (others.length > MOST_POOLS) {
            return 0;
        }
        long least = Long.MAX_VALUE;
        for (int set = 0; set < 1 << others.length; set++) {
            boolean[] pools = new boolean[need.length];
            pools[pool] = true;
            long taken = need[pool];
            for (int i = 0; i < others.length; i++) {
                if ((set >> i & 1) == 1) {
                    pools[others[i]] = true;
                    taken += need[others[i]];
                }
            }
            long has = sources.stream().filter(source -> accepted(source, pools)).mapToLong(OfferedLot::most).sum();
            least = Math.min(least, has - taken);
        }
        return (int) Math.max(0, Math.min(Integer.MAX_VALUE, least));
    }

    private static boolean accepted(OfferedLot source, boolean[] pools) {
        return IntStream.range(0, pools.length).anyMatch(pool -> pools[pool] && source.pools()[pool]);
    }
}
