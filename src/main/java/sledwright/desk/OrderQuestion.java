package sledwright.desk;

import java.util.List;

/**
 * What is asked of lines of machines.
 *
 * @param sets keys to answer with in place of the request's own, as {@code path=value}
 */
public record OrderQuestion(List<String> sets) {

    public OrderQuestion {
        sets = List.copyOf(sets);
    }
}
