package sledwright.planner.upgrade;

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
        TAKE_OUT("take-out"),
        /** It is out of the machine for a while. */
        LAY_ASIDE("lay-aside"),
        /** It goes from one place to another. */
        MOVE("move"),
        /** It goes in, new or back from where it was laid. */
        PUT_IN("put-in");

        private final String label;

        Action(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }

    /** What kind of part it is. */
    public enum Part {
        SUPPLY("supply"), MODULE("module"), HEAT_SINK("heat sink"), PROCESSOR("processor"), DRIVE("drive"), CARD("card"),
        /** What a drive hangs on its driver by; the step names the drive and the drivers. */
        CABLE("cable"),
        EXTRA("extra");

        private final String label;

        Part(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }
}
