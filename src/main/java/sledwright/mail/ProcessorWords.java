package sledwright.mail;

import java.math.BigDecimal;
import java.util.Map;
import java.util.regex.Pattern;

/** Cores, processors, clocks, throughput, and what there is for each core. */
final class ProcessorWords implements MailRule {

    private static final String CORES = "require.cores";
    private static final String PROCESSORS = "require.processors";
    private static final Map<String, String> SOCKETS = Map.of("single", "1", "dual", "2", "twin", "2", "quad", "4");

    private static final Pattern CHIPS_WITH_CORES = Forms.of("processor.chips-with-cores");
    private static final Pattern PRODUCT = Forms.of("processor.product");
    private static final Pattern NAMED_PRODUCT = Forms.of("processor.named-product");
    private static final Pattern CHIPS_EACH = Forms.of("processor.chips-each");
    private static final Pattern SOCKETS_WITH_CORES = Forms.of("processor.sockets-with-cores");
    private static final Pattern CHIP_OF_CORES = Forms.of("processor.chip-of-cores");
    private static final Pattern NAMED_SOCKETS = Forms.of("processor.named-sockets");
    private static final Pattern SOCKETS_COUNTED = Forms.of("processor.sockets-counted");
    private static final Pattern RANGE = Forms.of("processor.range");
    private static final Pattern FEW = Forms.of("processor.few");
    private static final Pattern LABELLED = Forms.of("processor.labelled");
    private static final Pattern MOST_BEFORE = Forms.of("most-before");

    private static final Pattern GB_PER_CORE = Forms.of("processor.gb-per-core");
    private static final Pattern MEMORY_OF_CORES = Forms.of("processor.memory-of-cores");
    private static final Pattern GBS = Forms.of("processor.gbs");
    private static final Pattern BANDWIDTH = Forms.of("processor.bandwidth");
    private static final Pattern MOST = Forms.of("most");
    private static final Pattern FOR_EACH_CORE = Forms.of("processor.for-each-core");
    private static final Pattern GHZ = Forms.of("processor.ghz");
    private static final Pattern BASE = Forms.of("processor.base");
    private static final Pattern SAYS_BASE = Forms.of("processor.says-base");
    private static final Pattern ALL_CORE = Forms.of("processor.all-core");
    private static final Pattern THROUGHPUT = Forms.of("processor.throughput");
    private static final Pattern THREADS = Forms.of("processor.threads");

    @Override
    public void read(Passage passage, MailFindings findings) {
        passage.each(GB_PER_CORE, hit -> figure(hit, "require.gb_per_core", findings));
        passage.each(MEMORY_OF_CORES, hit -> {
            hit.take();
            findings.unread(hit.at(), hit.words(), "so much memory for each core, or for each machine?");
        });
        passage.each(GBS, hit -> {
            boolean each = hit.has("core") || hit.clauseHas(FOR_EACH_CORE);
            hit.takeBeside(BANDWIDTH);
            figure(hit, each ? "require.gbs_per_core" : "require.bandwidth_gbs", findings);
        });
        passage.each(GHZ, hit -> clock(hit, findings));
        passage.each(THROUGHPUT, hit -> figure(hit, "require.throughput", findings));
        passage.each(THREADS, hit -> {
            hit.take();
            findings.unread(hit.at(), hit.words(), "threads are no wish; how many cores?");
        });
        passage.each(CHIPS_WITH_CORES, hit -> product(hit, hit.has("one") ? BigDecimal.ONE : hit.number("n"), findings));
        passage.each(CHIPS_EACH, hit -> each(hit, findings));
        passage.each(PRODUCT, hit -> product(hit, hit.number("n"), findings));
        passage.each(NAMED_PRODUCT, hit -> product(hit, new BigDecimal(SOCKETS.get(hit.group("word"))), findings));
        passage.each(SOCKETS_WITH_CORES, hit -> inAllOrEach(hit, findings));
        passage.each(CHIP_OF_CORES, hit -> {
            hit.take();
            findings.unread(hit.at(), hit.words(), "how many of these processors?");
        });
        passage.each(NAMED_SOCKETS, hit -> {
            hit.take();
            findings.wish(PROCESSORS, SOCKETS.get(hit.group("word")), hit.at(), hit.words());
        });
        passage.each(SOCKETS_COUNTED, hit -> {
            if (MOST_BEFORE.matcher(hit.before()).find()) {
                hit.take();
                hit.takeBeside(MOST);
                findings.unread(hit.at(), hit.clause(), "exactly so many, or fewer, too?");
            } else {
                figure(hit, PROCESSORS, findings);
            }
        });
        cores(passage, findings);
    }

    private static void cores(Passage passage, MailFindings findings) {
        passage.each(RANGE, hit -> {
            // "Twenty-four" is one number.
            if (hit.has("to") || hit.has("between") || Character.isDigit(hit.group("n").charAt(0)) && !hit.has("and")) {
                hit.take();
                findings.wish(CORES, hit.plain("n"), hit.at(), hit.words(), "the least of them");
            }
        });
        passage.each(FEW, hit -> least(hit, hit.has("m") ? "m" : "n", findings));
        passage.each(LABELLED, hit -> least(hit, "n", findings));
    }

    private static void least(Passage.Hit hit, String group, MailFindings findings) {
        hit.take();
        if (MOST_BEFORE.matcher(hit.before()).find()) {
            hit.takeBeside(MOST);
            findings.unread(hit.at(), hit.clause(), "there is no wish for the most cores");
        } else if (hit.number(group).stripTrailingZeros().scale() > 0) {
            findings.unread(hit.at(), hit.words(), "cores are whole");
        } else {
            findings.wish(CORES, hit.plain(group), hit.at(), hit.words());
        }
    }

    private static void product(Passage.Hit hit, BigDecimal chips, MailFindings findings) {
        hit.take();
        findings.wish(PROCESSORS, Numerals.plain(chips), hit.at(), hit.words());
        findings.wish(CORES, Numerals.plain(chips.multiply(hit.number("m"))), hit.at(), hit.words(), "%s times %s"
                .formatted(Numerals.plain(chips), hit.plain("m")));
    }

    /** "Two processors with 12 cores each"; without the "each" it may be meant of both together, and behind a comma of each machine. */
    private static void each(Passage.Hit hit, MailFindings findings) {
        BigDecimal chips = hit.has("word") ? new BigDecimal(SOCKETS.get(hit.group("word"))) : hit.number("n");
        if (hit.has("every") || hit.has("each") && !hit.has("comma") || hit.has("with") && chips.equals(BigDecimal.ONE)) {
            product(hit, chips, findings);
        } else if (hit.has("with") || hit.has("each")) {
            inAllOrEach(hit, findings);
        }
    }

    private static void inAllOrEach(Passage.Hit hit, MailFindings findings) {
        hit.take();
        findings.unread(hit.at(), hit.words(), "so many cores in all, or in each processor?");
    }

    private static void clock(Passage.Hit hit, MailFindings findings) {
        boolean base = hit.clauseHas(SAYS_BASE);
        boolean all = hit.clauseHas(ALL_CORE);
        if (base == all) {
            hit.take();
            findings.unread(hit.at(), hit.words(), "the base clock, or the clock with all cores busy?");
            return;
        }
        hit.takeBeside(ALL_CORE);
        hit.takeBeside(BASE);
        figure(hit, base ? "require.base_ghz" : "require.all_core_ghz", findings);
    }

    private static void figure(Passage.Hit hit, String key, MailFindings findings) {
        hit.take();
        findings.wish(key, hit.plain("n"), hit.at(), hit.words());
    }
}
