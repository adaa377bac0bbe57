package sledwright.request;

import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Energy;
import sledwright.domain.Request;

/** A request that is ready to be answered from a catalogue. */
public sealed interface Job {

    Catalog catalog();

    Request request();

    /**
     * Builds are to be found.
     *
     * @param energy what electricity the customer reckons with; empty where the file does not say
     */
    record Quote(Catalog catalog, Request request, Optional<Energy> energy) implements Job {
    }

    /** A given build is to be judged; the request holds the targets it is judged by. */
    record Judge(Catalog catalog, Request request, Build build) implements Job {
    }

    /**
     * Machines that stand are to answer the request.
     *
     * @param build   each of them, as it stands
     * @param tradeIn the share of its selling price that a pulled part fetches
     */
    record Upgrade(Catalog catalog, Request request, Build build, double tradeIn) implements Job {
    }
}
