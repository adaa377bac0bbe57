package sledwright.mail;

import java.math.BigDecimal;
import java.util.regex.Pattern;

/** Memory, and how it is fitted. */
final class MemoryWords implements MailRule {

    private static final String KEY = "require.memory_gb";
    private static final BigDecimal TB = BigDecimal.valueOf(1024);

    private static final Pattern MODULES = Forms.of("memory.modules");
    private static final Pattern NAMED = Forms.of("memory.named");
    private static final Pattern LABELLED = Forms.of("memory.labelled");
    private static final Pattern LABELLED_MODULES = Forms.of("memory.labelled-modules");
    private static final Pattern USABLE = Forms.of("memory.usable");
    private static final Pattern BARE = Forms.of("memory.bare");
    private static final Pattern ABOUT_MEMORY = Forms.of("memory.about-memory");
    private static final Pattern DRIVES = Forms.of("memory.drives");

    private static final Pattern MIRRORED = Forms.of("memory.mirrored");
    private static final Pattern SPARING = Forms.of("memory.sparing");
    private static final Pattern BALANCED = Forms.of("memory.balanced");
    private static final Pattern ONE_PART = Forms.of("memory.one-part");
    private static final Pattern SLOTS = Forms.of("memory.slots");
    private static final Pattern FREE = Forms.of("memory.free");

    @Override
    public void read(Passage passage, MailFindings findings) {
        passage.each(MODULES, hit -> product(hit, findings));
        passage.each(LABELLED_MODULES, hit -> product(hit, findings));
        passage.each(NAMED, hit -> memory(hit, hit.has("m") ? "m" : "n", findings));
        passage.each(LABELLED, hit -> memory(hit, "n", findings));
        mode(passage, MIRRORED, "mirrored", findings);
        mode(passage, SPARING, "rank-sparing", findings);
        if (!passage.has(DRIVES)) {
            passage.each(USABLE, hit -> memory(hit, "n", findings));
        }
        passage.each(BALANCED, hit -> is(hit, "require.balanced", findings));
        passage.each(ONE_PART, hit -> is(hit, "require.one_module_part", findings));
        passage.each(SLOTS, hit -> {
            if (hit.clauseHas(FREE)) {
                hit.take();
                findings.wish("require.spare_slots", hit.plain(hit.has("n") ? "n" : "m"), hit.at(), hit.words());
            }
        });
    }

    /** A capacity that stands by itself is memory where the sentence speaks of cores, channels or modules and its clause of no drives. */
    static void bare(Passage passage, MailFindings findings) {
        passage.each(BARE, hit -> {
            if (passage.has(ABOUT_MEMORY) && !hit.openClauseHas(DRIVES)) {
                memory(hit, "n", findings);
            } else {
                hit.take();
                findings.unread(hit.at(), hit.words(), "of memory, or of drives?");
            }
        });
    }

    private static void mode(Passage passage, Pattern form, String value, MailFindings findings) {
        passage.each(form, hit -> {
            hit.take();
            findings.wish("require.memory_mode", value, hit.at(), hit.words());
        });
    }

    private static void is(Passage.Hit hit, String key, MailFindings findings) {
        hit.take();
        findings.wish(key, "true", hit.at(), hit.words());
    }

    private static void product(Passage.Hit hit, MailFindings findings) {
        hit.take();
        findings.wish(KEY, Numerals.plain(gb(hit, hit.number("n").multiply(hit.number("m")))), hit.at(), hit.words(),
                "%s times %s; of which modules is left open".formatted(hit.plain("n"), hit.plain("m")));
    }

    private static void memory(Passage.Hit hit, String group, MailFindings findings) {
        hit.take();
        if (Numerals.isDoubtful(hit.group(group))) {
            findings.unread(hit.at(), hit.words(), "does the point divide thousands?");
        } else {
            boolean tb = hit.group("u").startsWith("t");
            findings.wish(KEY, Numerals.plain(gb(hit, hit.number(group))), hit.at(), hit.words(), tb ? "1 TB is 1024 GB of memory" : "");
        }
    }

    private static BigDecimal gb(Passage.Hit hit, BigDecimal figure) {
        return hit.group("u").startsWith("t") ? figure.multiply(TB) : figure;
    }
}
