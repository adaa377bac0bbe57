package sledwright.mail;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import sledwright.domain.Catalog;
import sledwright.domain.Part;

/** Part numbers: to be used, not to be used, brought by the customer; platforms and extras. */
final class PartWords implements MailRule {

    private static final Pattern TOKEN = Forms.of("part.token");
    private static final Pattern LIKE_A_NUMBER = Forms.of("part.like-a-number");
    private static final Pattern REFUSING = Forms.of("part.refusing");
    private static final Pattern NOT = Forms.of("part.not");
    private static final Pattern STANDARD = Forms.of("part.standard");
    private static final Pattern OWN = Forms.of("part.own");
    private static final Pattern OWNING = Forms.of("part.owning");

    private final Catalog shop;
    private final Map<String, String> skus = new HashMap<>();

    PartWords(Catalog shop) {
        this.shop = shop;
        for (Part part : shop.parts()) {
            skus.put(small(part.sku()), part.sku());
        }
        shop.platforms().forEach(platform -> skus.put(small(platform.sku()), platform.sku()));
    }

    private static String small(String sku) {
        return sku.toLowerCase(java.util.Locale.ROOT);
    }

    @Override
    public void read(Passage passage, MailFindings findings) {
        passage.each(TOKEN, hit -> {
            String sku = skus.get(hit.group("sku"));
            if (sku != null) {
                part(sku, hit, findings);
            } else if (looksLikeOne(hit)) {
                hit.take("sku");
                findings.unread(hit.at(), hit.words(), "no part of the catalogue has this number");
            }
        });
    }

    /** Part numbers are written in capitals; standards are no part numbers. */
    private static boolean looksLikeOne(Passage.Hit hit) {
        String[] words = hit.words().split("\\s");
        for (String word : words) {
            if (small(word).equals(hit.group("sku")) && LIKE_A_NUMBER.matcher(word).matches() && !STANDARD.matcher(word).matches()) {
                return true;
            }
        }
        return false;
    }

    private void part(String sku, Passage.Hit hit, MailFindings findings) {
        String before = hit.before();
        boolean refused = NOT.matcher(before).find() || joined(before, hit.allBefore());
        boolean owned = OWN.matcher(before).find();
        if (owned) {
            hit.takeBeside(OWNING);
        }
        hit.take("sku");
        String words = hit.words();
        if (refused) {
            hit.takeBeside(REFUSING);
            findings.wish("forbid", sku, hit.at(), words);
        } else if (owned) {
            takeCount(hit);
            findings.wish("on_hand." + sku, hit.has("n") ? hit.plain("n") : "1", hit.at(), words);
        } else if (shop.platform(sku).isPresent()) {
            findings.wish("platforms", sku, hit.at(), words);
        } else if (shop.extra(sku).isPresent()) {
            takeCount(hit);
            findings.wish("extras." + sku, hit.has("n") ? hit.plain("n") : "1", hit.at(), words);
        } else if (shop.card(sku).isPresent()) {
            takeCount(hit);
            findings.card(shop.card(sku).get(), hit.has("n") ? hit.plain("n") : "", hit.at(), words);
        } else {
            takeCount(hit);
            boolean processors = hit.has("n") && shop.processor(sku).isPresent();
            findings.use(sku, hit.has("n") && !processors, hit.at(), words);
            if (processors) {
                findings.wish("require.processors", hit.plain("n"), hit.at(), words);
            }
        }
    }

    private static void takeCount(Passage.Hit hit) {
        if (hit.has("n")) {
            hit.take();
        }
    }

    /** Behind another part that is not wanted. */
    private static boolean joined(String before, String all) {
        return before.matches("(?s).*" + Passage.GONE + "\\s*(?:or|nor)\\s*$") && NOT_AT_ALL.matcher(all).find();
    }

    private static final Pattern NOT_AT_ALL = Forms.of("part.not-at-all");
}
