package sledwright.generator.fitout;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Part;
import sledwright.domain.Request;
import sledwright.generator.draw.Shelf;
import sledwright.generator.keep.Kept;

/**
 * All that the sets of a chassis depend on, lots and all: requests that differ in cores, memory or a limit, and accept the same lots, share
 * them. Explanations ask for many of these.
 */
record FittingsKey(Offered offered, Fittings.Chassis chassis) implements Kept.Key<List<Fitted>> {

    /** A set with its plans, and the tables of draws that sets share. */
    private static final long BYTES_OF_SET = 2_000;
    private static final long BYTES_OF_DRAWS = 50_000;

    /** What there is and what is asked for; its hash is worked out once for all chassis of a request. */
    static final class Offered {

        private final List<Object> all;
        private final int hash;

        private Offered(List<Object> all) {
            this.all = all;
            hash = all.hashCode();
        }

        /** @param wanted parts that must be held, and in how many machines at least */
        static Offered of(Catalog catalog, Request request, Shelf shelf, Map<String, Integer> wanted) {
            List<Object> all = new ArrayList<>(List.of(request.machines(), request.equipment(), request.use(), wanted, catalog.labour()));
            Stream.of(catalog.drives(), catalog.cards(), catalog.extras()).forEach(parts -> {
                all.add(parts);
                parts.stream().map(part -> shelf.lots(part.sku())).forEach(all::add);
            });
            return new Offered(all);
        }

        @Override
        public boolean equals(Object other) {
            return other == this || other instanceof Offered same && hash == same.hash && all.equals(same.all);
        }

        @Override
        public int hashCode() {
            return hash;
        }
    }

    @Override
    public long bytes(List<Fitted> sets) {
        return BYTES_OF_DRAWS + BYTES_OF_SET * sets.size();
    }
}
