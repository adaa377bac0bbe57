package sledwright.domain;

/**
 * Which builds an answer lists.
 *
 * @param alternatives most builds to answer with, the best included
 * @param step         share by which an alternative must beat each better-ranked one in some figure
 */
public record Shortlist(int alternatives, double step) {

    public static final Shortlist PLAIN = new Shortlist(5, 0.05);
}
