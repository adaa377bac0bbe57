package sledwright.mail;

import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import sledwright.domain.Condition;

/** Which conditions of parts a mail accepts, put together from all of its sentences. */
final class Conditions {

    static final String KEY = "limit.conditions";

    private final Set<Condition> only = EnumSet.noneOf(Condition.class);
    private final Set<Condition> also = EnumSet.noneOf(Condition.class);
    private final Set<Condition> not = EnumSet.noneOf(Condition.class);
    private final Set<String> words = new LinkedHashSet<>();
    private int at = Integer.MAX_VALUE;

    void only(Set<Condition> some, int place, String said) {
        only.addAll(some);
        said(place, said);
    }

    void also(Set<Condition> some, int place, String said) {
        also.addAll(some);
        said(place, said);
    }

    void not(Set<Condition> some, int place, String said) {
        not.addAll(some);
        said(place, said);
    }

    private void said(int place, String said) {
        words.add(said);
        at = Math.min(at, place);
    }

    boolean isEmpty() {
        return words.isEmpty();
    }

    int at() {
        return at;
    }

    /** One for each that is accepted; none: nothing was said of it, or nothing is left. */
    List<MailWish> wishes() {
        if (isEmpty()) {
            return List.of();
        }
        Set<Condition> left = EnumSet.noneOf(Condition.class);
        // Whom used parts please, refurbished ones do, too; the other way round not.
        boolean refurbished = also.equals(EnumSet.of(Condition.REFURBISHED));
        left.addAll(!only.isEmpty() ? only : refurbished ? EnumSet.of(Condition.NEW) : EnumSet.allOf(Condition.class));
        left.addAll(also);
        left.removeAll(not);
        return left.stream().map(one -> new MailWish(KEY, one.label(), words(), "")).toList();
    }

    String words() {
        return String.join("; ", words);
    }
}
