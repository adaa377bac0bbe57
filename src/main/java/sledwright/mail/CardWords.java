package sledwright.mail;

import java.util.Map;
import java.util.regex.Pattern;

/** Network cards by ports and speed; controllers. */
final class CardWords implements MailRule {

    private static final Map<String, String> PORTS = Map.of("single", "1", "dual", "2", "quad", "4");

    private static final Pattern PORTS_FIRST = Forms.of("card.ports-first");
    private static final Pattern SPEED_FIRST = Forms.of("card.speed-first");
    private static final Pattern SPEED_ALONE = Forms.of("card.speed-alone");
    private static final Pattern BESIDE = Forms.of("card.beside");
    private static final Pattern CONTROLLER = Forms.of("card.controller");
    private static final Pattern NETWORK = Forms.of("card.network");

    @Override
    public void read(Passage passage, MailFindings findings) {
        if (passage.has(NETWORK)) {
            passage.each(PORTS_FIRST, hit -> tell(hit, hit.has("word") ? PORTS.get(hit.group("word")) : hit.plain("p"), findings));
            passage.each(SPEED_FIRST, hit -> tell(hit, hit.has("word") ? PORTS.get(hit.group("word")) : hit.plain("p"), findings));
            passage.each(SPEED_ALONE, hit -> {
                String path = kind(hit, findings);
                findings.wish(path + "port_gbit", hit.plain("g"), hit.at(), hit.words());
            });
        }
        passage.each(CONTROLLER, hit -> {
            hit.take();
            findings.wish(findings.nextCard() + "kind", "controller", hit.at(), hit.words());
        });
    }

    private static String kind(Passage.Hit hit, MailFindings findings) {
        hit.take();
        hit.takeBeside(BESIDE);
        String path = findings.nextCard();
        findings.wish(path + "kind", "network", hit.at(), hit.words());
        return path;
    }

    private static void tell(Passage.Hit hit, String ports, MailFindings findings) {
        String path = kind(hit, findings);
        findings.wish(path + "ports", ports, hit.at(), hit.words());
        findings.wish(path + "port_gbit", hit.has("g") ? hit.plain("g") : "1", hit.at(), hit.words());
        if (hit.has("n")) {
            findings.wish(path + "count", hit.plain("n"), hit.at(), hit.words());
        }
    }
}
