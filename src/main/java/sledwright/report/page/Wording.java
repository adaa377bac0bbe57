package sledwright.report.page;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Currency;
import java.util.Locale;
import sledwright.domain.Catalog;
import sledwright.words.Manner;

/** Money, figures and days as a document writes them: figures as its locale does, days in words, which cannot be misread. */
public final class Wording implements Manner {

    private static final BigDecimal FIVE_DIGITS = BigDecimal.valueOf(10_000);
    private static final int MOST_DECIMALS = 2;

    private final Locale locale;
    private final NumberFormat money;
    private final NumberFormat figures;

    public Wording(Locale wanted, Currency currency) {
        // Digits that the fonts of documents have, whatever the locale.
        locale = new Locale.Builder().setLocale(wanted).setUnicodeLocaleKeyword("nu", "latn").build();
        money = NumberFormat.getCurrencyInstance(locale);
        money.setCurrency(currency);
        money.setMinimumFractionDigits(Math.max(0, currency.getDefaultFractionDigits()));
        money.setMaximumFractionDigits(Math.max(0, currency.getDefaultFractionDigits()));
        figures = NumberFormat.getNumberInstance(locale);
        figures.setMaximumFractionDigits(MOST_DECIMALS);
        figures.setRoundingMode(RoundingMode.HALF_UP);
        money.setRoundingMode(RoundingMode.HALF_UP);
    }

    /** As a shop writes them. */
    public static Wording of(Catalog shop) {
        return new Wording(shop.stationery().locale(), shop.currency());
    }

    public Locale locale() {
        return locale;
    }

    /** An amount in units of the currency, with the currency. */
    public String money(BigDecimal amount) {
        return money.format(amount);
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

    /** Four digits need no sign between them, which one could take for a decimal one. */
    private static String format(NumberFormat figures, BigDecimal figure) {
        NumberFormat format = (NumberFormat) figures.clone();
        format.setGroupingUsed(figure.abs().compareTo(FIVE_DIGITS) >= 0);
        return format.format(figure);
    }

    /** Such as {@code 31 March 2025}. */
    public String day(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH).format(day);
    }

    private String exact(BigDecimal figure) {
        NumberFormat exact = (NumberFormat) figures.clone();
        exact.setMinimumFractionDigits(figure.scale());
        exact.setMaximumFractionDigits(figure.scale());
        return format(exact, figure);
    }
}
