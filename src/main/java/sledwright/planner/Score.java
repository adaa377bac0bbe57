package sledwright.planner;

import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;

/**
 * The levels of a score. The hard level counts breaches of rules. Of the soft levels each decides only between plans that
 * agree in all before it: one for each {@link Criterion}, in order.
 */
final class Score {

    static final int HARD_LEVELS = 1;
    /** As many as there are criteria; an annotation wants a constant. */
    static final int SOFT_LEVELS = 7;

    static final BendableLongScore BREACH = BendableLongScore.ofHard(HARD_LEVELS, SOFT_LEVELS, 0, 1);

    private Score() {
    }

    /** A unit on the level of a criterion. */
    static BendableLongScore unitOf(Criterion criterion) {
        return BendableLongScore.ofSoft(HARD_LEVELS, SOFT_LEVELS, criterion.ordinal(), 1);
    }
}
