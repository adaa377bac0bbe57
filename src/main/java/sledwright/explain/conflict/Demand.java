package sledwright.explain.conflict;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.UnsettledException;
import sledwright.explain.ask.WhatIf;
import sledwright.rules.Rule;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.words.Sentence;

/**
 * Something that a request asks for, or a circumstance that it meets, and that could be otherwise. Which rules hold a build to it, the
 * rules say themselves.
 *
 * @param key     of the request, such as {@code limit.price}; of a circumstance, its name
 * @param sku     the part that is meant where the key holds a list of them
 * @param asked   the value as a request file writes it
 * @param words   what is asked for, to stand in a list: {@code a price of at most 900.00 EUR}
 * @param without the terms without this
 * @param nearest how near to it one can come
 */
public record Demand(String key, Optional<String> sku, String asked, Sentence words, UnaryOperator<WhatIf> without, Nearest nearest) {

    /** The nearest to what is asked that is possible. */
    interface Nearest {

        /**
         * @param terms without the demand; something is possible on them, and nothing with it
         * @throws UnsettledException when time runs out
         */
        Concession on(WhatIf terms, Oracle oracle);
    }

    static Demand of(String key, String asked, String words, UnaryOperator<WhatIf> without, Nearest nearest) {
        return of(key, asked, Sentence.plain(words), without, nearest);
    }

    static Demand of(String key, String asked, Sentence words, UnaryOperator<WhatIf> without, Nearest nearest) {
        return new Demand(key, Optional.empty(), asked, words, without, nearest);
    }

    /** The identifiers of the rules that a build breaks which does not grant this; none where that is no matter of one build. */
    public List<String> rules() {
        return Rulebook.answeringTo(key).stream().map(Rule::id).toList();
    }

    /** Whether some breaches of the request are none of this. */
    boolean isKeptBeside(List<Violation> broken) {
        List<String> own = rules();
        return broken.stream().noneMatch(breach -> own.contains(breach.rule()) && sku.map(breach.where()::equals).orElse(true));
    }

    /** Sets of demands are asked for them many times; words take long. */
    @Override
    public int hashCode() {
        return 31 * key.hashCode() + sku.hashCode();
    }

    boolean isOf(String other) {
        return key.equals(other);
    }
}
