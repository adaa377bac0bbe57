package sledwright.report.page;

import java.math.BigDecimal;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Currency;
import java.util.Locale;
import sledwright.domain.Catalog;

/** Money, figures and days as a document writes them: figures as its locale does, days in words, which cannot be misread. */
public final class Wording {

    private static final int MOST_DECIMALS = 6;

    private final NumberFormat money;
    private final NumberFormat figures;

    public Wording(Locale locale, Currency currency) {
        money = NumberFormat.getCurrencyInstance(locale);
        money.setCurrency(currency);
        money.setMinimumFractionDigits(Math.max(0, currency.getDefaultFractionDigits()));
        money.setMaximumFractionDigits(Math.max(0, currency.getDefaultFractionDigits()));
        figures = NumberFormat.getNumberInstance(locale);
        figures.setMaximumFractionDigits(MOST_DECIMALS);
    }

    /** As a shop writes them. */
    public static Wording of(Catalog shop) {
        return new Wording(shop.stationery().locale(), shop.currency());
    }

    /** An amount in units of the currency, with the currency. */
    public String money(BigDecimal amount) {
        return money.format(amount);
    }

    /** A figure without its unit, to a millionth. */
    public String figure(double figure) {
        return figures.format(figure);
    }

    public String figure(BigDecimal figure) {
        return figures.format(figure);
    }

    /** Such as {@code 31 March 2025}. */
    public String day(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH).format(day);
    }
}
