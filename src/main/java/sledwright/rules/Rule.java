package sledwright.rules;

import java.util.List;

/**
 * A rule of the rulebook: its identifier, its law in one sentence, and the judgement that tells every breach in finished
 * sentences. Each rule also has a static {@code allows}, the bare predicate, which the search prunes with.
 *
 * @param <S> what it judges: a {@link Machine}, an enclosure with its sleds as a {@link Housing}, or a whole {@link Order} because stock
 *            and
 *            budget are shared
 */
public abstract class Rule<S> {

    private final String id;
    private final String law;

    protected Rule(String id, String law) {
        this.id = id;
        this.law = law;
    }

    /** The identifier, the same in code, tests, reports and JSON. */
    public final String id() {
        return id;
    }

    /** The law in one sentence. */
    public final String law() {
        return law;
    }

    /** Every way in which the subject breaks the rule; empty: it is kept. */
    public abstract List<Violation> judge(S subject);

    /** A breach of this rule, as a finished sentence. */
    protected final Violation broken(String where, String message, Object... numbers) {
        return new Violation(id, where, String.format(java.util.Locale.ROOT, message, numbers));
    }

    @Override
    public final String toString() {
        return id;
    }
}
