package sledwright.report.build;

import java.util.List;
import sledwright.rules.Violation;

/** A broken rule as JSON. */
public record ViolationJson(String rule, String where, String message) {

    public static List<ViolationJson> all(List<Violation> violations) {
        return violations.stream().map(one -> new ViolationJson(one.rule(), one.where(), one.message())).toList();
    }
}
