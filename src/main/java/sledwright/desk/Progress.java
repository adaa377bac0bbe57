package sledwright.desk;

import java.math.BigDecimal;
import java.util.Optional;

/** How far an answer has come. */
public sealed interface Progress {

    /**
     * What has been found.
     *
     * @param seconds  since the start
     * @param best     the best so far, in units of the currency; empty: nothing yet
     * @param bound    nothing better than this exists; empty: not known yet
     * @param currency ISO 4217
     * @param missing  machines that the best does not deliver
     */
    record Found(double seconds, Optional<BigDecimal> best, Optional<BigDecimal> bound, String currency, int missing) implements Progress {

        /** The distance between best and bound as a share of the best; empty where either is not known or the best is 0. */
        public Optional<Double> gap() {
            return best.filter(figure -> figure.signum() != 0)
                    .flatMap(figure -> bound
                    .map(least -> Math.max(0, figure.subtract(least).doubleValue()) / Math.abs(figure.doubleValue())));
        }
    }

    /** What is being done. */
    record Doing(String words) implements Progress {
    }
}
