package sledwright.mail;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import sledwright.domain.Catalog;

/** What it may cost: of all machines or of each, before tax or with it; and what a kWh costs. */
final class MoneyWords implements MailRule {

    /** How people write currencies beside their codes. */
    private static final Map<String, String> WORDS = Map.of("EUR", "eur|euros?|\u20ac", "USD", "usd|us\\$|dollars?|\\$",
            "GBP", "gbp|pounds?|\u00a3",
            "CHF", "chf|sfr\\.?|francs?");

    private static final Pattern LIMITS = Forms.of("money.limits");
    private static final Pattern EACH = Forms.of("money.each");
    private static final Pattern GROSS = Forms.of("money.gross");
    private static final Pattern RATE = Forms.of("money.rate");
    private static final Pattern NET = Forms.of("money.net");
    private static final Pattern HEDGED = Forms.of("money.hedged");
    private static final Pattern PLAIN = Forms.of("money.plain");
    private static final Pattern SPEAKS_OF_ENERGY = Forms.of("money.speaks-of-energy");
    private static final Pattern YEARS = Forms.of("money.years");

    private static final BigDecimal LEAST_PRICE = BigDecimal.valueOf(100);

    private final Optional<BigDecimal> tax;
    private final String code;
    private final Pattern amount;
    private final Pattern foreign;
    private final Pattern energy;

    MoneyWords(Catalog shop) {
        tax = shop.stationery().tax().percent();
        code = shop.currency().getCurrencyCode();
        String own = "(?:" + WORDS.getOrDefault(code, Pattern.quote(code.toLowerCase(java.util.Locale.ROOT))) + ")";
        String others = WORDS.entrySet().stream().filter(word -> !word.getKey().equals(code)).map(Map.Entry::getValue).sorted()
                .reduce((one, other) -> one + "|" + other).orElseThrow();
        // Of "1 500" only the half would be read; it is listed.
        amount = Numerals.form("(?:" + own + " ?{n}(?!\\s\\d{3}(?!\\d))|(?<!\\d\\s){m} ?" + own + "(?!\\p{L}))");
        foreign = Numerals.form("(?:(?:" + others + ") ?{n}|{m} ?(?:" + others + ")(?!\\p{L}))");
        energy = Numerals.form("(?:" + own + " ?{n}|{m} ?" + own + "(?!\\p{L}))(?: ?/ ?| per | a )kwh");
    }

    @Override
    public void read(Passage passage, MailFindings findings) {
        passage.each(energy, hit -> {
            hit.take();
            findings.wish("energy.price_per_kwh", hit.plain(hit.has("n") ? "n" : "m"), hit.at(), hit.words());
        });
        if (passage.has(SPEAKS_OF_ENERGY)) {
            passage.each(YEARS, hit -> {
                hit.take();
                findings.wish("energy.years", hit.plain("n"), hit.at(), hit.words());
            });
        }
        passage.each(amount, hit -> price(hit, hit.has("n") ? "n" : "m", passage, findings));
        passage.each(foreign, hit -> {
            String clause = hit.clause();
            hit.take();
            hit.takeBeside(LIMITS);
            findings.unread(hit.at(), clause, "the shop's prices are in " + code);
        });
        passage.each(PLAIN, hit -> {
            // "No more than four" are drives or days.
            if (hit.number("n").compareTo(LEAST_PRICE) >= 0) {
                price(hit, "n", passage, findings);
            }
        });
    }

    private void price(Passage.Hit hit, String group, Passage passage, MailFindings findings) {
        String clause = hit.clause();
        boolean each = hit.clauseHas(EACH);
        boolean beside = hit.clauseHas(GROSS);
        // "450 EUR (incl. VAT)": the tax stands in a clause of its own.
        boolean gross = beside || !hit.clauseHas(NET) && passage.has(GROSS);
        boolean otherTax = gross && passage.first(RATE, "rate").filter(rate -> isOther(Numerals.value(rate))).isPresent();
        boolean limits = hit.clauseHas(LIMITS) || each;
        String before = hit.before();
        String written = hit.group(group);
        BigDecimal price = hit.number(group);
        hit.take();
        if (gross && !beside) {
            passage.skip(GROSS);
        }
        for (Pattern form : new Pattern[] {GROSS, NET, LIMITS, EACH}) {
            hit.takeBeside(form);
        }
        if (Numerals.isDoubtful(written)) {
            findings.unread(hit.at(), clause, "does the point divide thousands?");
        } else if (HEDGED.matcher(before).find()) {
            findings.unread(hit.at(), clause, "what is the most it may cost?");
        } else if (!limits) {
            findings.unread(hit.at(), clause, "is this the most it may cost?");
        } else if (otherTax) {
            findings.unread(hit.at(), clause, "the shop's tax is another; what is the most before tax?");
        } else {
            String key = gross ? "limit.price_with_tax" : "limit.price";
            if (each) {
                findings.priceOfEach(key, price, hit.at(), clause);
            } else {
                findings.wish(key, Numerals.plain(price), hit.at(), clause);
            }
        }
    }

    private boolean isOther(BigDecimal rate) {
        return tax.filter(own -> own.compareTo(rate) == 0).isEmpty();
    }
}
