package sledwright.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

class SentenceTest {

    /** Writes what it is asked to write so that it can be distinguished from what a sentence writes itself. */
    private static final Manner MARKED = new Manner() {
        @Override
        public String measure(BigDecimal figure) {
            return "[" + figure + "]";
        }

        @Override
        public String sum(BigDecimal amount, String currency) {
            return "[" + currency + " " + amount + "]";
        }

        @Override
        public String advice(Advice advice) {
            return "[" + advice.name() + "]";
        }
    };

    private static final Sum PRICE = new Sum(new BigDecimal("1189.00"), "EUR");

    @Test
    void figuresAreWrittenInTheMannerOfThePlace() {
        Sentence sentence = Sentence.of("%s of %s costs %s for %d: %s", "M16-2.5", Numbers.plain(16.5), PRICE, 12, Advice.MORE_TIME);
        assertThat(sentence).hasToString("M16-2.5 of 16.5 costs 1189.00 EUR for 12: Maybe allow more time: --time-limit");
        assertThat(sentence.in(MARKED)).isEqualTo("M16-2.5 of [16.5] costs [EUR 1189.00] for 12: [MORE_TIME]");
    }

    @Test
    void aSentenceInASentenceKeepsItsFigures() {
        Sentence inner = Sentence.of("at %s", PRICE);
        assertThat(Sentence.of("%s, %s (%s %%)", inner, inner, Numbers.plain(2)).in(MARKED))
                .isEqualTo("at [EUR 1189.00], at [EUR 1189.00] ([2] %)");
        assertThat(Sentence.joined("; ", List.of(inner, "x", Numbers.plain(1.25))).in(MARKED)).isEqualTo("at [EUR 1189.00]; x; [1.25]");
    }

    @Test
    void whatIsFilledInIsNoTemplate() {
        assertThat(Sentence.of("%s|%s", "50%s", "%%")).hasToString("50%s|%%");
        assertThat(Sentence.of("%2$s before %1$s", "a", "b")).hasToString("b before a");
        assertThat(Sentence.plain("100% %d")).hasToString("100% %d");
    }

    @Test
    void listsAndCapitalsAreLikeThoseOfWords() {
        assertThat(Sentence.list(List.of())).hasToString("");
        assertThat(Sentence.list(List.of("a"))).hasToString("a");
        assertThat(Sentence.list(List.of("a", PRICE))).hasToString("a and 1189.00 EUR");
        assertThat(Sentence.list(List.of("a", "b", "c"))).hasToString(Sentences.list(List.of("a", "b", "c")));
        assertThat(Sentence.of("a price of %s", PRICE).capital().in(MARKED)).isEqualTo("A price of [EUR 1189.00]");
        assertThat(Sentence.of("%s", PRICE).capital().in(MARKED)).isEqualTo("[EUR 1189.00]");
    }

    @Test
    void sentencesAreEqualThatReadTheSame() {
        assertThat(Sentence.of("It is %s.", Numbers.plain(3.5))).isEqualTo(Sentence.plain("It is 3.5."))
                .hasSameHashCodeAs(Sentence.plain("It is 3.5.")).isNotEqualTo(Sentence.plain("It is 3.6."));
    }

    @Test
    void aValueWithoutAGapIsAMistake() {
        assertThatThrownBy(() -> Sentence.of("no gap", 1)).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("no gap");
    }
}
