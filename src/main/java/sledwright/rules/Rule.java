package sledwright.rules;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Limits;
import sledwright.domain.PartKind;
import sledwright.words.Sentence;

/**
 * A rule of the rulebook: its identifier, its law in one sentence, and the judgement that states every breach in finished
 * sentences. It also has {@code allows}, the bare predicate, which the search prunes with, and declares what explanations and orders
 * need to know of it.
 *
 * @param <S> what it judges: a {@link Machine}, an enclosure with its sleds as a {@link Housing}, or a whole {@link Order} because stock
 *            and
 *            budget are shared
 */
public abstract class Rule<S> {

    private final String id;
    private final String law;
    private final Set<PartKind> bars;
    private final Set<String> answersTo;

    /** A rule that no part breaks by itself. */
    protected Rule(String id, String law, String... answersTo) {
        this(id, law, Set.of(), answersTo);
    }

    /**
     * @param bars      the kinds of part of which one can break it whatever the rest of the machine is
     * @param answersTo the keys of a request that it holds a build to, such as {@code limit.price}, or the circumstance; none: the parts
     *                  alone decide
     */
    protected Rule(String id, String law, Set<PartKind> bars, String... answersTo) {
        this.id = id;
        this.law = law;
        this.bars = bars;
        this.answersTo = Set.of(answersTo);
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

    /** Every way in which the enclosure of machines breaks a rule of theirs that also looks at what they stand in. */
    public List<Violation> judgeAround(Housing housing) {
        return List.of();
    }

    /** The keys of a request that it holds a build to, such as {@code limit.price}, or the circumstance; empty: the parts alone decide. */
    public Set<String> answersTo() {
        return answersTo;
    }

    /** The kinds of part of which one can break it whatever the rest of the machine is. */
    public final Set<PartKind> bars() {
        return bars;
    }

    /**
     * The values of a key that it answers to between which no build changes from breaking it to keeping it, where they are not to be read
     * from the builds themselves.
     */
    public Stream<Double> turningPoints(String key, Limits site, Catalog catalog) {
        return Stream.empty();
    }

    /** A breach of this rule, as a finished sentence. */
    protected final Violation broken(String where, String message, Object... numbers) {
        return new Violation(id, where, Sentence.of(message, numbers));
    }

    @Override
    public final String toString() {
        return id;
    }
}
