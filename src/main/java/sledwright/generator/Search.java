package sledwright.generator;

import sledwright.domain.Catalog;
import sledwright.domain.Request;

/** The exact search over the builds of one machine. One instance serves many requests on one catalogue, one at a time. */
public final class Search {

    public Search(Catalog catalog) {
    }

    /** The best build for a request and its alternatives, proven unless the deadline comes first. */
    public Findings run(Request request, Deadline deadline) {
        throw new UnsupportedOperationException("not yet");
    }
}
