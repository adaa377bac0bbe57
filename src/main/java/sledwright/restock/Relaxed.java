package sledwright.restock;

/**
 * The answer of a relaxation for the whole budget, and what it was found with, which serves on.
 *
 * @param program    over the builds that were known then
 * @param hindsight  of the courses that it was found on
 * @param relaxation what it was asked
 */
record Relaxed(Program program, Hindsight hindsight, HindsightRelaxation relaxation, HindsightRelaxation.Answer answer) {
}
