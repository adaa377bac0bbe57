package sledwright.mail;

import java.math.BigDecimal;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/** Memory, and how it is fitted. */
final class MemoryWords implements MailRule {

    private static final String KEY = "require.memory_gb";
    private static final BigDecimal TB = BigDecimal.valueOf(1024);

    private static final Pattern MODULES = Forms.of("memory.modules");
    private static final Pattern STICKS = Forms.of("memory.sticks");
    private static final Pattern STICKS_OF = Forms.of("memory.sticks-of");
    private static final Pattern TIMES = Forms.of("memory.times");
    private static final Pattern MOST_BEFORE = Forms.of("most-before");
    private static final Pattern MOST = Forms.of("most");
    private static final Pattern RANGE = Forms.of("memory.range");
    private static final Pattern NAMED_RANGE = Forms.of("memory.named-range");
    private static final Pattern LABELLED_RANGE = Forms.of("memory.labelled-range");
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
        for (Pattern form : new Pattern[] {MODULES, STICKS, STICKS_OF, TIMES}) {
            passage.each(form, hit -> product(hit, findings));
        }
        passage.each(NAMED_RANGE, hit -> range(hit, findings));
        // "32 GB RAM 2 x 480 GB SSD": what stands before the word is meant by it, not what follows.
        passage.each(NAMED, hit -> memory(hit, hit.has("m") ? "m" : "n", findings));
        passage.each(LABELLED_MODULES, hit -> product(hit, findings));
        passage.each(LABELLED_RANGE, hit -> range(hit, findings));
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
        passage.each(RANGE, hit -> bare(hit, passage, one -> range(one, findings), findings));
        passage.each(BARE, hit -> bare(hit, passage, one -> memory(one, "n", findings), findings));
    }

    private static void bare(Passage.Hit hit, Passage passage, Consumer<Passage.Hit> read, MailFindings findings) {
        if (passage.has(ABOUT_MEMORY) && !hit.openClauseHas(DRIVES)) {
            read.accept(hit);
        } else {
            hit.take();
            findings.unread(hit.at(), hit.words(), "of memory, or of drives?");
        }
    }

    /** The least of two capacities. "Sixty-four" is one number, and "32 and 64 GB" are two. */
    private static void range(Passage.Hit hit, MailFindings findings) {
        if (!hit.has("to") && !hit.has("between") && (hit.has("and") || !Character.isDigit(hit.group("n").charAt(0)))) {
            return;
        }
        hit.take();
        if (Numerals.isDoubtful(hit.group("n"))) {
            findings.unread(hit.at(), hit.words(), "does the point divide thousands?");
        } else {
            BigDecimal least = gb(hit.has("v") ? hit.group("v") : hit.group("u"), hit.number("n"));
            findings.wish(KEY, Numerals.plain(least), hit.at(), hit.words(), "the least of them");
        }
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
        findings.wish(KEY, Numerals.plain(gb(hit.group("u"), hit.number("n").multiply(hit.number("m")))), hit.at(), hit.words(),
                "%s times %s; of which modules is left open".formatted(hit.plain("n"), hit.plain("m")));
    }

    private static void memory(Passage.Hit hit, String group, MailFindings findings) {
        hit.take();
        if (Numerals.isDoubtful(hit.group(group))) {
            findings.unread(hit.at(), hit.words(), "does the point divide thousands?");
        } else if (MOST_BEFORE.matcher(hit.before()).find()) {
            hit.takeBeside(MOST);
            findings.unread(hit.at(), hit.clause(), "there is no wish for the most memory; how much at least?");
        } else {
            boolean tb = hit.group("u").startsWith("t");
            findings.wish(KEY, Numerals.plain(gb(hit.group("u"), hit.number(group))), hit.at(), hit.words(),
                    tb ? "1 TB is 1024 GB of memory" : "");
        }
    }

    private static BigDecimal gb(String unit, BigDecimal figure) {
        return unit.startsWith("t") ? figure.multiply(TB) : figure;
    }
}
