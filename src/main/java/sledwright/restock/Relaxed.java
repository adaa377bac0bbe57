package sledwright.restock;

/**
 * A relaxation and what it works with, which serves on.
 *
 * @param program    over the builds that were known then
 * @param hindsight  of the courses that it is of
 * @param relaxation what is asked
 * @param start      purchases to begin with
 * @param answer     for the whole budget; null before it is asked
 */
record Relaxed(Program program, Hindsight hindsight, HindsightRelaxation relaxation, double[] start, HindsightRelaxation.Answer answer) {

    Relaxed with(HindsightRelaxation.Answer other) {
        return new Relaxed(program, hindsight, relaxation, start, other);
    }
}
