package sledwright.explain;

import java.util.List;

/**
 * What is said beside an answer.
 *
 * @param whyNot      an answer for each part that was asked about
 * @param conflicts   filled where no valid build exists
 * @param relaxations filled where no valid build exists
 */
public record Explanation(List<WhyNot> whyNot, List<Conflict> conflicts, List<Relaxation> relaxations) {

    /** Nothing to say. */
    public static final Explanation NONE = new Explanation(List.of(), List.of(), List.of());

    public Explanation {
        whyNot = List.copyOf(whyNot);
        conflicts = List.copyOf(conflicts);
        relaxations = List.copyOf(relaxations);
    }
}
