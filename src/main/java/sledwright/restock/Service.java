package sledwright.restock;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Serves courses of orders, each from the same stock, by what a counter offers: the first build on an order's list that can still be put
 * together in time, or none.
 */
final class Service {

    /** In which courses are served, side by side. Fixed, so that sums come out the same on any machine. */
    static final int PARTS = 4;
    /** Stands for the build of an order that is turned away. */
    static final int NONE = -1;

    /**
     * What an order of a class finds on its list after some arrivals; ways that the stock does not suffice for even at first are left out.
     *
     * @param ways  on the list
     * @param rows  what each draws, as {@link Take#row} has it
     * @param gains of each, minor units
     */
    record Offered(int[] ways, int[][] rows, double[] gains) {
    }

    /** Looks on while courses are served. */
    interface Watch {
        /**
         * Receives what a course came to.
         *
         * @param part   the courses of one part come one after the other
         * @param course which one
         * @param taken  by order, the way on the list of its class, or {@link #NONE}
         * @param left   units by pool
         */
        void see(int part, int course, int[] taken, int[] left);
    }

    private final Racks racks;
    private final Racks.Stand stand;
    /** By class, and by class and arrivals. */
    private final Racks.Way[][] ways;
    private final Offered[][] offered;

    /**
     * @param ways  by class, what its orders are offered
     * @param known another service; where it offers the same from the same stock, nothing is worked out anew
     */
    Service(Racks racks, Racks.Way[][] ways, Racks.Stand stand, Optional<Service> known) {
        this.racks = racks;
        this.ways = ways;
        this.stand = stand;
        Optional<Service> alike = known.filter(one -> one.stand == stand);
        offered = new Offered[ways.length][];
        Arrays.setAll(offered, k -> alike.filter(one -> one.ways[k] == ways[k]).map(one -> one.offered[k])
                .orElseGet(() -> offered(ways[k])));
    }

    private Offered[] offered(Racks.Way[] ways) {
        int[][][] rows = Arrays.stream(ways).map(way -> racks.draws(way, stand)).toArray(int[][][]::new);
        Offered[] offered = new Offered[racks.states()];
        for (int arrived = 0; arrived < offered.length; arrived++) {
            int by = arrived;
            int[] there = IntStream.range(0, ways.length)
                    .filter(w -> rows[w][by] != null && Take.isThere(rows[w][by], stand.units())).toArray();
            offered[by] = new Offered(there, Arrays.stream(there).mapToObj(w -> rows[w][by]).toArray(int[][]::new),
                    Arrays.stream(there).mapToDouble(w -> ways[w].gain()).toArray());
        }
        return offered;
    }

    Racks.Stand stand() {
        return stand;
    }

    /** What each course earns, minor units: its orders, less losses on those turned away, less what bought units lose. */
    double[] margins(List<Course> courses, Watch watch) {
        double[] margins = new double[courses.size()];
        IntStream.range(0, Math.min(courses.size(), PARTS)).parallel().forEach(part -> {
            int[] left = stand.units().clone();
            int[][] shortOf = Arrays.stream(ways).map(of -> new int[of.length]).toArray(int[][]::new);
            for (int s = part; s < margins.length; s += PARTS) {
                int[] visits = racks.visits(courses.get(s));
                int[] taken = new int[visits.length];
                System.arraycopy(stand.units(), 0, left, 0, left.length);
                margins[s] = course(visits, left, taken, shortOf) - stand.loss() + stand.spared(left);
                watch.see(part, s, taken, left);
            }
        });
        return margins;
    }

    /**
     * @param taken   receives what each order is filled with
     * @param shortOf see {@link Take#isTaken}
     */
    private double course(int[] visits, int[] left, int[] taken, int[][] shortOf) {
        double earned = 0;
        double[] turnedAway = racks.turnedAway();
        // Stock only dwindles until more arrives, so a way that failed need not be tried again before.
        int[] first = new int[ways.length];
        int[] arrived = new int[ways.length];
        for (int i = 0; i < visits.length; i++) {
            int k = visits[i] >> Racks.CLASS_FROM;
            int by = visits[i] & Racks.ARRIVED;
            earned -= turnedAway[k];
            Offered list = offered[k][by];
            int at = arrived[k] == by ? first[k] : 0;
            while (at < list.rows.length && !Take.isTaken(list.rows[at], left, shortOf[k], list.ways[at])) {
                at++;
            }
            arrived[k] = by;
            first[k] = at;
            taken[i] = NONE;
            if (at < list.rows.length) {
                earned += list.gains[at];
                taken[i] = list.ways[at];
            }
        }
        return earned;
    }
}
