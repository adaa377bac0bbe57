package sledwright.desk;

import java.util.List;

/**
 * What is asked of a build.
 *
 * @param sets keys to answer with in place of the request's own, as {@code path=value}
 */
public record CheckQuestion(List<String> sets) {

    public CheckQuestion {
        sets = List.copyOf(sets);
    }
}
