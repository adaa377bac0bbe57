package sledwright.planner.order;

/**
 * How far an order has come.
 *
 * @param seconds since the start
 * @param best    figure of the best order so far, minor units
 * @param bound   none is below; NaN: not known yet
 * @param missing machines that it does not deliver
 */
public record OrderProgress(double seconds, double best, double bound, int missing) {
}
