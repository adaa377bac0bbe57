package sledwright.generator.fitout;

import java.util.List;
import java.util.Map;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
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

    /** All that the plans of cards in a chassis depend on; volumes do not matter to them, but whether there are any. */
    record Cards(Content offered, Fittings.Chassis chassis) implements Kept.Key<List<CardPlan>> {

        @Override
        public long bytes(List<CardPlan> plans) {
            return BYTES_OF_SET * plans.size();
        }
    }

    /** All that draws of drives depend on. */
    record Draws(Content offered) implements Kept.Key<Map<Drive.Kind, DriveDraws>> {

        @Override
        public long bytes(Map<Drive.Kind, DriveDraws> draws) {
            return BYTES_OF_DRAWS;
        }
    }

    static Cards cards(Catalog catalog, Request request, Shelf shelf, Fittings.Chassis chassis, boolean drivesAsked) {
        return new Cards(new Content(List.of(request.machines(), request.equipment().cards(), request.equipment().extras(), request.use(),
                catalog.labour(), drivesAsked, shelf.fittings())), chassis);
    }

    /** @param wanted parts that must be held, and in how many machines at least */
    static Draws draws(Catalog catalog, Request request, Shelf shelf, Map<String, Integer> wanted, boolean everyWeight) {
        return new Draws(new Content(List.of(request.machines(), wanted, catalog.labour(), everyWeight, shelf.fittings())));
    }

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
        return BYTES_OF_SET * (1 + sets.size());
    }
}
