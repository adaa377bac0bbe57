package sledwright.mail;

import java.math.BigDecimal;
import java.util.regex.Pattern;

/** Where the machine stands and what it may draw there; whose enclosure a sled sits in. */
final class SiteWords implements MailRule {

    private static final Pattern WARMTH = Forms.of("site.warmth");
    private static final Pattern OF_AIR = Forms.of("site.of-air");
    private static final Pattern HEIGHT = Forms.of("site.height");
    private static final Pattern OF_HEIGHT = Forms.of("site.of-height");
    private static final Pattern VOLTS = Forms.of("site.volts");
    private static final Pattern OF_MAINS = Forms.of("site.of-mains");
    private static final Pattern WATTS = Forms.of("site.watts");
    private static final Pattern OF_LOAD = Forms.of("site.of-load");
    private static final Pattern OF_SUPPLIES = Forms.of("site.of-supplies");
    private static final Pattern SUPPLY = Forms.of("site.supply");
    private static final Pattern OWN_ENCLOSURE = Forms.of("site.own-enclosure");
    private static final Pattern NEW_ENCLOSURE = Forms.of("site.new-enclosure");
    private static final BigDecimal LEAST_MAINS = BigDecimal.valueOf(90);

    @Override
    public void read(Passage passage, MailFindings findings) {
        passage.each(WARMTH, hit -> tell(hit, OF_AIR, "limit.inlet_c", findings));
        passage.each(HEIGHT, hit -> {
            if (passage.has(OF_HEIGHT)) {
                tell(hit, OF_HEIGHT, "limit.altitude_m", findings);
            }
        });
        passage.each(VOLTS, hit -> {
            if (hit.number("n").compareTo(LEAST_MAINS) >= 0 && !hit.clauseHas(OF_SUPPLIES)) {
                tell(hit, OF_MAINS, "limit.mains_v", findings);
            }
        });
        passage.each(WATTS, hit -> {
            if (hit.clauseHas(OF_LOAD) && !hit.clauseHas(SUPPLY)) {
                tell(hit, OF_LOAD, "limit.power_w", findings);
            }
        });
        enclosure(passage, OWN_ENCLOSURE, "own", findings);
        enclosure(passage, NEW_ENCLOSURE, "new", findings);
    }

    private static void tell(Passage.Hit hit, Pattern beside, String key, MailFindings findings) {
        hit.take();
        hit.takeBeside(beside);
        findings.wish(key, hit.plain("n"), hit.at(), hit.clause());
    }

    private static void enclosure(Passage passage, Pattern form, String whose, MailFindings findings) {
        passage.each(form, hit -> {
            hit.take();
            findings.wish("enclosure", whose, hit.at(), hit.words());
        });
    }
}
