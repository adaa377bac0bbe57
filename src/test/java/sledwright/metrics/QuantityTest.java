package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class QuantityTest {

    @Test
    void figuresAreToAMillionth() {
        assertThat(Quantity.rounded(0.1 + 0.2)).isEqualTo(0.3);
        assertThat(Quantity.rounded(1.0000004)).isEqualTo(1);
        assertThat(Quantity.rounded(1.0000006)).isEqualTo(1.000001);
    }

    @Test
    void aTargetThatIsMetExactlyIsMet() {
        assertThat(Quantity.reaches(230.4, 230.4)).isTrue();
        assertThat(Quantity.reaches(0.1 + 0.2, 0.3)).isTrue();
        assertThat(Quantity.reaches(0.3, 0.1 + 0.2)).isTrue();
        assertThat(Quantity.reaches(230.3999, 230.4)).isFalse();
        assertThat(Quantity.reaches(230.399999, 230.4)).isFalse();
    }

    @Test
    void aLimitThatIsMetExactlyIsKept() {
        assertThat(Quantity.within(287, 287)).isTrue();
        assertThat(Quantity.within(0.1 + 0.2, 0.3)).isTrue();
        assertThat(Quantity.within(287.000001, 287)).isFalse();
    }

    /** 5 % better than 200 is 210; with no step anything more than 200 is better. */
    @Test
    void betterByAShare() {
        assertThat(210.0).isGreaterThanOrEqualTo(Quantity.betterThan(200, 0.05));
        assertThat(209.999999).isLessThan(Quantity.betterThan(200, 0.05));
        assertThat(200.000001).isGreaterThanOrEqualTo(Quantity.betterThan(200, 0));
        assertThat(200.0).isLessThan(Quantity.betterThan(200, 0));
    }

    @Test
    void lessByAShare() {
        assertThat(190.0).isLessThanOrEqualTo(Quantity.lessThan(200, 0.05));
        assertThat(190.000001).isGreaterThan(Quantity.lessThan(200, 0.05));
        assertThat(199.999999).isLessThanOrEqualTo(Quantity.lessThan(200, 0));
        assertThat(200.0).isGreaterThan(Quantity.lessThan(200, 0));
    }

    @Test
    void nothingIsBeatenByAnythingAndNotByItself() {
        assertThat(0.0).isLessThan(Quantity.betterThan(0, 0.05));
        assertThat(0.000001).isGreaterThanOrEqualTo(Quantity.betterThan(0, 0.05));
    }
}
