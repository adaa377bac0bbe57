package sledwright.planner.upgrade;

import java.util.Locale;
import java.util.Optional;

/**
 * One thing to do at the bench with one part.
 *
 * @param from where it is now; empty: it comes from the shelf or from where it was laid aside
 * @param to   where it goes; empty: out of the machine
 */
public record BenchStep(Action action, Part part, String sku, Optional<String> from, Optional<String> to) {

    /** What is done. */
    public enum Action {
        /** It leaves the machine. */
        TAKE_OUT,
        /** It is out of the machine for a while. */
        LAY_ASIDE,
        /** It goes from one place to another. */
        MOVE,
        /** It goes in, new or back from where it was laid. */
        PUT_IN;

        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** What kind of part it is. */
    public enum Part {
        SUPPLY, MODULE, HEAT_SINK, PROCESSOR, DRIVE, CARD,
        /** What a drive hangs on its driver by; the step names the drive and the drivers. */
        CABLE,
        EXTRA;

        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }
}
