package sledwright.input;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The words that a file may have in some place, in their order, and what each stands for. */
public final class Vocabulary<T> {

    private final Map<String, T> byWord = new LinkedHashMap<>();
    private final boolean anyCase;

    private Vocabulary(List<T> all, Function<T, String> word, boolean anyCase) {
        all.forEach(one -> byWord.put(word.apply(one), one));
        this.anyCase = anyCase;
    }

    /** Words that are written as they stand here. */
    public static <T> Vocabulary<T> of(List<T> all, Function<T, String> word) {
        return new Vocabulary<>(all, word, false);
    }

    /** Words that count whatever their case. */
    public static <T> Vocabulary<T> ofAnyCase(List<T> all, Function<T, String> word) {
        return new Vocabulary<>(all, word, true);
    }

    public Collection<String> words() {
        return byWord.keySet();
    }

    /** What a word stands for; empty where it is none of them. */
    public Optional<T> find(String text) {
        T found = byWord.get(text);
        if (found == null && anyCase) {
            for (Map.Entry<String, T> one : byWord.entrySet()) {
                if (one.getKey().equalsIgnoreCase(text)) {
                    return Optional.of(one.getValue());
                }
            }
        }
        return Optional.ofNullable(found);
    }
}
