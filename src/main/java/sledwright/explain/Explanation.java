package sledwright.explain;

import java.util.List;
import sledwright.explain.conflict.Conflict;
import sledwright.explain.conflict.Lacks;
import sledwright.explain.conflict.Relaxation;
import sledwright.explain.whynot.WhyNot;
import sledwright.words.Sentence;

/**
 * What is said beside an answer.
 *
 * @param whyNot      an answer for each part that was asked about
 * @param conflicts   filled where no valid build exists
 * @param relaxations filled where no valid build exists; those that open the cheapest builds first
 * @param lacks       what each platform lacks where no build can be made, whatever is asked
 * @param notes       sentences about what is missing here, such as what there was no time for
 */
public record Explanation(List<WhyNot> whyNot, List<Conflict> conflicts, List<Relaxation> relaxations, List<Lacks.Lack> lacks,
                          List<Sentence> notes) {

    /** Nothing to say. */
    public static final Explanation NONE = new Explanation(List.of(), List.of(), List.of(), List.of(), List.of());

    public Explanation {
        whyNot = List.copyOf(whyNot);
        conflicts = List.copyOf(conflicts);
        relaxations = List.copyOf(relaxations);
        lacks = List.copyOf(lacks);
        notes = List.copyOf(notes);
    }
}
