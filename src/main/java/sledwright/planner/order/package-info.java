/**
 * Orders of several lines on one stock: column generation over the exact search for the bound, and an integer choice among what it found.
 *
 * <p>A {@link sledwright.planner.order.market.Column} is a way to build one machine of a line (all of them where the line is uniform). The
 * {@link sledwright.planner.order.relax.RestrictedMaster} mixes columns at the least price in a linear program; what units are worth to it
 * are the {@link sledwright.planner.order.relax.Duals} at which the exact search looks for columns of negative reduced cost, and from which
 * {@link sledwright.planner.order.relax.LowerBound} has what no order goes below. {@link sledwright.planner.order.fill.Tally} is an order
 * in the making, priced as it will be drawn.
 */
package sledwright.planner.order;
