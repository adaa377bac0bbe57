package sledwright.mail;

import java.util.regex.Pattern;

/** How many machines. */
final class MachineWords implements MailRule {

    private static final Pattern COUNTED = Forms.of("machine.counted");
    private static final Pattern LABELLED = Forms.of("machine.labelled");

    @Override
    public void read(Passage passage, MailFindings findings) {
        passage.each(COUNTED, hit -> tell(hit, findings));
        passage.each(LABELLED, hit -> tell(hit, findings));
    }

    private static void tell(Passage.Hit hit, MailFindings findings) {
        hit.take();
        findings.wish("machines", hit.plain("n"), hit.at(), hit.clause());
    }
}
