package sledwright.explain.conflict;

import java.util.Optional;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.UnsettledException;
import sledwright.explain.ask.WhatIf;

/** Something that a request asks for, or a circumstance that it meets, and that could be otherwise. */
public interface Demand {

    /** The key of the request, such as {@code limit.price}; of a circumstance, its name. */
    String key();

    /** The part that is meant where the key holds a list of them. */
    default Optional<String> sku() {
        return Optional.empty();
    }

    /** The identifier of the rule that a build breaks which does not grant this; empty where that is no matter of one build. */
    String rule();

    /** The value as a request file writes it. */
    String asked();

    /** What is asked for, to stand in a list: {@code a price of at most 900.00 EUR}. */
    String words();

    /** The terms without this. */
    WhatIf without(WhatIf terms);

    /**
     * The nearest to what is asked that can be had.
     *
     * @param terms without this; something can be had on them, and nothing with it
     * @throws UnsettledException when time runs out
     */
    Concession nearest(Oracle oracle, WhatIf terms);
}
