package sledwright.report.page;

import static org.assertj.core.api.Assertions.assertThat;
import java.math.BigDecimal;
import java.util.Currency;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.words.Measure;
import sledwright.words.Numbers;
import sledwright.words.Sentence;
import sledwright.words.Sum;

class WordingTest {

    private static Wording of(String locale, String currency) {
        return new Wording(Locale.forLanguageTag(locale), Currency.getInstance(currency));
    }

    /** As the Unicode Common Locale Data Repository has them, which the JDK carries; read off by hand. */
    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', value = {
        "en, EUR, 1234.50, \"\u20ac1,234.50\"",
        "de, EUR, 1234.50, \"1.234,50\u00a0\u20ac\"",
        "fr, EUR, 1234.50, \"1\u202f234,50\u00a0\u20ac\"",
        "de-CH, CHF, 1234.50, \"CHF\u00a01\u2019234.50\"",
        "en, JPY, 1234, \"\u00a51,234\"",
        "en-US, USD, 0.60, $0.60",
        "pl, PLN, 12345.6, \"12\u00a0345,60\u00a0z\u0142\""})
    void moneyIsWrittenAsTheLocaleDoes(String locale, String currency, BigDecimal amount, String written) {
        assertThat(of(locale, currency).money(amount)).isEqualTo(written);
    }

    /** Neither sign is in the fonts of papers. */
    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', value = {
        "ja, JPY, 12001, \"JPY\u00a012,001\"",
        "th-TH, THB, 12001, \"THB\u00a012,001.00\"",
        "hy, AMD, 12001, \"12\u00a0001,00\u00a0AMD\"",
        "bn-BD, BDT, 12001, \"12,001.00\u00a0BDT\"",
        "fa-IR, IRR, 12001, \"IRR\u00a012,001.00\"",
        "ar-EG, KWD, -120, \"-KWD\u00a0120.000\"",
        "he-IL, ILS, -40218, \"-40,218.00\u00a0\u20aa\"",
        "he-IL, ILS, 40218, \"40,218.00\u00a0\u20aa\""})
    void amountsHaveOnlyLettersOfTheFonts(String locale, String currency, BigDecimal amount, String written) {
        assertThat(of(locale, currency).money(amount)).isEqualTo(written);
        assertThat(of(locale, currency).figure(-1.5)).hasSize(4);
    }

    @Test
    void digitsAreThoseThatTheFontsHave() {
        assertThat(of("ar-EG", "EUR").money(new BigDecimal("1234.50"))).contains("1").doesNotContain("\u0661");
        assertThat(of("hi", "EUR").figure(12.5)).isEqualTo("12.5");
    }

    @Test
    void figuresHaveTwoDecimalsAndNoSignInFourDigits() {
        Wording german = of("de", "EUR");
        assertThat(german.figure(21.333333)).isEqualTo("21,33");
        assertThat(german.figure(0.125)).isEqualTo("0,13");
        assertThat(german.figure(2400)).isEqualTo("2400");
        assertThat(german.figure(24000)).isEqualTo("24.000");
    }

    @Test
    void signs() {
        assertThat(of("en", "EUR").signedMoney(new BigDecimal("0.79"))).isEqualTo("+\u20ac0.79");
        assertThat(of("en", "EUR").signedMoney(new BigDecimal("-0.79"))).isEqualTo("-\u20ac0.79");
        assertThat(of("en", "EUR").signedMoney(new BigDecimal("0.00"))).isEqualTo("\u20ac0.00");
    }

    @Test
    void numbersInSentencesButNoNames() {
        Wording german = of("de", "EUR");
        Sum most = new Sum(new BigDecimal("4096.30"), "EUR");
        Sentence sentence = Sentence.of("Raise the price from %s to %s: %s GB/s of %s (%s GHz), %d MT/s; %s and %s.", new Measure(new BigDecimal("900.00")),
                most, Numbers.plain(42.66), "B1-06", Numbers.plain(2.4), 1066, "M1.5", "12.50");
        assertThat(sentence.in(german))
                .isEqualTo("Raise the price from 900,00 to 4.096,30\u00a0\u20ac: 42,66 GB/s of B1-06 (2,4 GHz), 1066 MT/s; M1.5 and 12.50.");
        assertThat(Sentence.of("%s and %s", new Sum(new BigDecimal("3"), "JPY"), Numbers.plain(24000)).in(german)).isEqualTo("3 JPY und 24000");
    }
}
