package sledwright.desk;

import java.util.List;

/**
 * What is asked of a plan to restock.
 *
 * @param sets   keys to answer with in place of the request's own, as {@code path=value}
 * @param levels whether to say of each part at how many units to buy again
 */
public record RestockQuestion(List<String> sets, boolean levels) {

    public RestockQuestion {
        sets = List.copyOf(sets);
    }
}
