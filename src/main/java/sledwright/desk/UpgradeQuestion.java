package sledwright.desk;

import java.util.List;

/**
 * What is asked of machines that stand.
 *
 * @param sets keys to answer with in place of the request's own, as {@code path=value}
 */
public record UpgradeQuestion(List<String> sets) {

    public UpgradeQuestion {
        sets = List.copyOf(sets);
    }
}
