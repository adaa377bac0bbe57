package sledwright.report.page;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import sledwright.domain.Catalog;
import sledwright.words.Manner;
import sledwright.words.Numbers;

/**
 * How a document writes what it says: its fixed texts in its language, figures as its locale does, days in words, which cannot be misread.
 */
public final class Wording implements Manner {

    private static final BigDecimal FIVE_DIGITS = BigDecimal.valueOf(10_000);
    private static final int MOST_DECIMALS = 2;

    /** The words of sentences have keys that begin so and go on with the words themselves. */
    private static final String SAID = "said.";
    private static final Pattern GAP = Pattern.compile("%(\\d+\\$)?s");
    private static final Pattern NO_WORD = Pattern.compile("[^A-Za-z0-9]+");

    private final Locale locale;
    private final NumberFormat money;
    private final NumberFormat figures;
    private final Phrases phrases;

    public Wording(Locale wanted, Currency currency) {
        this(wanted, Phrases.of(wanted), currency);
    }

    private Wording(Locale wanted, Phrases phrases, Currency currency) {
        // Digits that the fonts of documents have, whatever the locale.
        locale = new Locale.Builder().setLocale(wanted).setUnicodeLocaleKeyword("nu", "latn").build();
        this.phrases = phrases;
        money = MoneyFormat.of(locale, currency);
        figures = NumberFormat.getNumberInstance(locale);
        figures.setMaximumFractionDigits(MOST_DECIMALS);
        figures.setRoundingMode(RoundingMode.HALF_UP);
    }

    /** As a shop writes them. */
    public static Wording of(Catalog shop) {
        return new Wording(shop.stationery().locale(), shop.currency());
    }

    /** In English, with figures as the shop writes them. */
    public static Wording english(Catalog shop) {
        return new Wording(shop.stationery().locale(), Phrases.of(Locale.ENGLISH), shop.currency());
    }

    /** How the shop itself reads sentences in a document: their own words, with figures as the document writes them. */
    public Manner forShop() {
        return new Manner() {
            @Override
            public String measure(BigDecimal figure) {
                return Wording.this.measure(figure);
            }

            @Override
            public String sum(BigDecimal amount, String currency) {
                return Wording.this.sum(amount, currency);
            }
        };
    }

    public Locale locale() {
        return locale;
    }

    /** The tag of the language that the fixed texts are in. */
    public String language() {
        return phrases.language().getLanguage();
    }

    /** A fixed text, its gaps filled. */
    public String say(String key, Object... values) {
        return phrases.say(key, values);
    }

    /** A number of things: the text under {@code key.one} for one, with the number under {@code key.many} for any other. */
    public String counted(int number, String key) {
        return number == 1 ? say(key + ".one") : say(key + ".many", figure(number));
    }

    @Override
    public String words(String template) {
        return phrases.find(key(template)).orElse(template);
    }

    /** The key of a sentence's words: {@code said.a-price-of-at-most}. */
    static String key(String template) {
        return SAID + NO_WORD.matcher(GAP.matcher(template).replaceAll(" ")).replaceAll(" ").strip().toLowerCase(Locale.ROOT)
                .replace(' ', '-');
    }

    @Override
    public String list(List<String> items) {
        int all = items.size();
        return all < 2 ? String.join("", items)
                : say("list.last", String.join(", ", items.subList(0, all - 1)), items.get(all - 1));
    }

    /** Every fixed text by its key, for templates. */
    public Map<String, String> texts() {
        return phrases.all();
    }

    /** An amount in units of the currency, with the currency. */
    public String money(BigDecimal amount) {
        return MoneyFormat.withoutMarks(money.format(amount));
    }

    @Override
    public String measure(BigDecimal figure) {
        return figure.scale() <= 0 ? figure.toPlainString() : exact(figure);
    }

    @Override
    public String sum(BigDecimal amount, String currency) {
        return currency.equals(money.getCurrency().getCurrencyCode()) ? money(amount) : Manner.COMMAND_LINE.sum(amount, currency);
    }

    /** An amount with a sign, unless it is zero. */
    public String signedMoney(BigDecimal amount) {
        return amount.signum() > 0 ? "+" + money(amount) : money(amount);
    }

    /** A figure without its unit, with at most two decimals, half up. */
    public String figure(double figure) {
        return figure(BigDecimal.valueOf(figure));
    }

    public String figure(BigDecimal figure) {
        return format(figures, figure);
    }

    /** A rate with all of its decimals. */
    public String rate(BigDecimal percent) {
        return Numbers.rate(percent).in(this);
    }

    /** Four digits need no sign between them, which one could take for a decimal one. */
    private static String format(NumberFormat figures, BigDecimal figure) {
        NumberFormat format = (NumberFormat) figures.clone();
        format.setGroupingUsed(figure.abs().compareTo(FIVE_DIGITS) >= 0);
        return MoneyFormat.withoutMarks(format.format(figure));
    }

    /** Such as {@code 31 March 2025}. */
    @Override
    public String day(LocalDate day) {
        return DateTimeFormatter.ofPattern(say("day"), phrases.language()).format(day);
    }

    private String exact(BigDecimal figure) {
        NumberFormat exact = (NumberFormat) figures.clone();
        exact.setMinimumFractionDigits(figure.scale());
        exact.setMaximumFractionDigits(figure.scale());
        return format(exact, figure);
    }
}
