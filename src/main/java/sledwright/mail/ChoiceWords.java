package sledwright.mail;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;

/** What the machine does, what the best is best in, and in which condition parts may be. */
final class ChoiceWords implements MailRule {

    private static final List<String> OBJECTIVES = List.of("least-total", "cheapest", "most-cores", "most-memory", "most-bandwidth",
            "most-throughput", "best-value");
    private static final Map<Condition, Pattern> WORDS = Map.of(Condition.NEW, Forms.of("choice.new"), Condition.REFURBISHED,
            Forms.of("choice.refurbished"), Condition.USED, Forms.of("choice.used"));
    private static final Pattern CONDITION = Forms.of("choice.condition");

    private final Map<String, Pattern> workloads = new LinkedHashMap<>();

    ChoiceWords(Catalog shop) {
        shop.workloads().keySet().forEach(name -> workloads.put(name, Numerals.form("\\b" + name.replace("-", "(?:-| )")
                + "s?\\b")));
    }

    @Override
    public void read(Passage passage, MailFindings findings) {
        workloads.forEach((name, form) -> passage.each(form, hit -> {
            hit.take();
            findings.wish("workload", name, hit.at(), hit.words());
        }));
        OBJECTIVES.forEach(name -> passage.each(Forms.of("choice.objective." + name), hit -> {
            hit.take();
            findings.wish("objective", name, hit.at(), hit.words());
        }));
    }

    /** After all else, for "new" and "used" are said of much. */
    static void conditions(Passage passage, MailFindings findings) {
        passage.each(CONDITION, hit -> {
            Set<Condition> named = EnumSet.noneOf(Condition.class);
            WORDS.forEach((condition, words) -> {
                if (words.matcher(hit.group("list")).find()) {
                    named.add(condition);
                }
            });
            boolean ofParts = hit.has("only") || hit.has("parts") || hit.has("not") || named.size() > 1
                    || hit.group("list").startsWith("brand");
            if (named.equals(EnumSet.of(Condition.NEW)) && !ofParts) {
                // A new server is one that the customer does not have yet.
                return;
            }
            hit.take();
            if (hit.has("not")) {
                findings.conditions().not(named, hit.at(), hit.words());
            } else if (hit.has("fine")) {
                findings.conditions().also(named, hit.at(), hit.words());
            } else {
                findings.conditions().only(named, hit.at(), hit.words());
            }
        });
    }
}
