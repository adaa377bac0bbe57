package sledwright.generator.fitout;

import java.util.List;
import java.util.Map;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.generator.draw.Shelf;
import sledwright.generator.keep.Content;
import sledwright.generator.keep.Kept;

/**
 * All that the sets of a chassis depend on, lots and all: requests that differ in cores, memory or a limit, and accept the same lots, share
 * them. Explanations ask for many of these.
 */
record FittingsKey(Content offered, Fittings.Chassis chassis) implements Kept.Key<List<Fitted>> {

    /** A set with its plans, and the tables of draws that sets share. */
    private static final long BYTES_OF_SET = 2_000;
    private static final long BYTES_OF_DRAWS = 50_000;

    /**
     * What there is and what is asked for.
     *
     * @param wanted parts that must be held, and in how many machines at least
     */
    static Content offered(Catalog catalog, Request request, Shelf shelf, Map<String, Integer> wanted) {
        return new Content(List.of(request.machines(), request.equipment(), request.use(), wanted, catalog.labour(), shelf.fittings()));
    }

    @Override
    public long bytes(List<Fitted> sets) {
        return BYTES_OF_DRAWS + BYTES_OF_SET * sets.size();
    }
}
