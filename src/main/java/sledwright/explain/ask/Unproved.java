package sledwright.explain.ask;

import java.util.ArrayList;
import java.util.List;
import sledwright.generator.Doubts;
import sledwright.generator.Doubts.Cause;
import sledwright.words.Advice;
import sledwright.words.Sentence;
import sledwright.words.Sentences;

/** Says what keeps an answer from being proved. */
public final class Unproved {

    private Unproved() {
    }

    /** What more time does not do away with. */
    public static List<String> whateverTheTime(Doubts doubts) {
        List<String> sentences = new ArrayList<>();
        if (!doubts.tooLarge().isEmpty()) {
            boolean one = doubts.tooLarge().size() == 1;
            sentences.add(("%s %s more populations of memory than are listed, so builds on %s may be missing."
                    + " More time does not help; name other platforms, or forbid some modules.")
                    .formatted(Sentences.list(List.copyOf(doubts.tooLarge())), one ? "takes" : "take", one ? "it" : "them"));
        }
        if (doubts.causes().contains(Cause.SHARING)) {
            sentences.add("Alike modules that differ in watts or ranks can be shared out in more ways than were tried."
                    + " More time does not help.");
        }
        if (doubts.causes().contains(Cause.EFFICIENCY)) {
            sentences.add("A supply whose efficiency rises faster than its load may take less from the wall for more load,"
                    + " so a heavier build may cost less to run. More time does not help.");
        }
        return sentences;
    }

    /**
     * Why something is not known.
     *
     * @param late      how to say it where time ran out: {@code Time ran out before an answer was found.}
     * @param otherwise how to say it where more time would not help
     */
    public static Sentence sentence(String late, String otherwise, Doubts doubts) {
        return doubts.late() || doubts.none() ? Sentence.of("%s %s", late, Advice.MORE_TIME)
                : Sentence.plain(otherwise + " " + String.join(" ", whateverTheTime(doubts)));
    }
}
