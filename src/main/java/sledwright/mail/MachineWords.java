package sledwright.mail;

import java.util.regex.Pattern;

/** How many machines. */
final class MachineWords implements MailRule {

    private static final Pattern COUNTED = Forms.of("machine.counted");
    private static final Pattern IN_GROUPS = Forms.of("machine.in-groups");
    private static final Pattern GROUPS_OF = Forms.of("machine.groups-of");
    private static final Pattern RANGE = Forms.of("machine.range");
    private static final Pattern REPLACED = Forms.of("machine.replaced");
    private static final Pattern LABELLED = Forms.of("machine.labelled");

    @Override
    public void read(Passage passage, MailFindings findings) {
        passage.each(GROUPS_OF, hit -> ask(hit, findings));
        passage.each(IN_GROUPS, hit -> ask(hit, findings));
        passage.each(RANGE, hit -> {
            // "Twenty-four" is one number.
            if (hit.has("to") || Character.isDigit(hit.group("n").charAt(0))) {
                ask(hit, findings);
            }
        });
        passage.each(COUNTED, hit -> {
            if (REPLACED.matcher(hit.before()).find()) {
                ask(hit, findings);
            } else {
                tell(hit, findings);
            }
        });
        passage.each(LABELLED, hit -> tell(hit, findings));
    }

    /** So many of each rack or site are not yet so many in all. */
    private static void ask(Passage.Hit hit, MailFindings findings) {
        hit.take();
        findings.machinesUnsaid(hit.at(), hit.clause(), "how many machines in all?");
    }

    private static void tell(Passage.Hit hit, MailFindings findings) {
        hit.take();
        findings.wish("machines", hit.plain("n"), hit.at(), hit.clause());
    }
}
