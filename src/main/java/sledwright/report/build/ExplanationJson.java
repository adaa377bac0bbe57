package sledwright.report.build;

import java.math.BigDecimal;
import java.util.List;
import sledwright.explain.Explanation;
import sledwright.explain.conflict.Conflict;
import sledwright.explain.conflict.Lacks;
import sledwright.explain.conflict.Relaxation;
import sledwright.report.text.Json;
import sledwright.words.Manner;
import sledwright.words.Sentence;

/** Why there is no build, or no more, as JSON: conflicts, ways out, what the catalogue lacks. */
public record ExplanationJson(List<ConflictJson> conflicts, List<RelaxationJson> relaxations, List<LackJson> catalogLacks,
                              List<String> notes) {

    /** Demands that cannot all be met. */
    public record ConflictJson(List<String> keys, List<Demanded> demands, List<String> rules, String message) {

        private static ConflictJson of(Conflict conflict) {
            return new ConflictJson(List.copyOf(conflict.keys()), conflict.members().stream().map(Demanded::of).toList(), conflict.rules(),
                    conflict.message());
        }
    }

    /** @param sku null where the demand is of no part */
    public record Demanded(String key, String sku, String words) {

        private static Demanded of(Conflict.Member member) {
            return new Demanded(member.key(), member.sku().orElse(null), member.words().toString());
        }
    }

    /** A way out, and what the order then costs. */
    public record RelaxationJson(List<String> keys, List<ChangeJson> changes, BigDecimal price, String message) {

        private static RelaxationJson of(Relaxation relaxation) {
            return new RelaxationJson(List.copyOf(relaxation.keys()), relaxation.changes().stream().map(ChangeJson::of).toList(),
                    relaxation.price(), relaxation.message());
        }
    }

    /** One value of the request that changes; null where there is none. */
    public record ChangeJson(String key, String sku, String from, String to) {

        private static ChangeJson of(Relaxation.Change change) {
            return new ChangeJson(change.key(), change.sku().orElse(null), Json.unlessEmpty(change.from()), Json.unlessEmpty(change.to()));
        }
    }

    /** What keeps a platform from being built whatever is asked. */
    public record LackJson(String platform, String message) {

        private static LackJson of(Lacks.Lack lack) {
            return new LackJson(lack.platform(), lack.what().message());
        }
    }

    public static ExplanationJson of(Explanation explanation) {
        return new ExplanationJson(explanation.conflicts().stream().map(ConflictJson::of).toList(),
                explanation.relaxations().stream().map(RelaxationJson::of).toList(),
                explanation.lacks().stream().map(LackJson::of).toList(), words(explanation.notes()));
    }

    /** For programs, and for customers, who have no options to give. */
    public static List<String> words(List<Sentence> sentences) {
        return sentences.stream().map(sentence -> sentence.in(Manner.PLAIN)).toList();
    }
}
