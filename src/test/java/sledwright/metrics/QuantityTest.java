package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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

    @Test
    void millionthsAreWhole() {
        assertThat(Quantity.micro(0.1 + 0.2)).isEqualTo(300_000);
        assertThat(Quantity.micro(-1.5)).isEqualTo(-1_500_000);
        assertThat(Quantity.micro(9.2e12)).isEqualTo(9_200_000_000_000_000_000L);
        assertThatThrownBy(() -> Quantity.micro(9.3e12)).isInstanceOf(ArithmeticException.class).hasMessageContaining("9.3E12");
        assertThatThrownBy(() -> Quantity.micro(-9.3e12)).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Quantity.micro(Double.NaN)).isInstanceOf(ArithmeticException.class);
        // 2^63 millionths are one more than 64 bits hold.
        assertThatThrownBy(() -> Quantity.micro(0x1p63 / 1e6)).isInstanceOf(ArithmeticException.class);
    }

    /** Half a millionth is the edge, and counts as met: 0.0000005 is what a figure of a millionth may be off by. */
    @Test
    void theEdgeCounts() {
        assertThat(Quantity.reaches(0, 0.5e-6)).isTrue();
        assertThat(Quantity.reaches(0, Math.nextUp(0.5e-6))).isFalse();
        assertThat(Quantity.within(0.5e-6, 0)).isTrue();
        assertThat(Quantity.within(Math.nextUp(0.5e-6), 0)).isFalse();
    }

    /** A third of 64 GB on two cores: 21.333333 GB, of which a half is half a millionth short of what is asked. */
    @Test
    void halfAMillionthGoesUp() {
        assertThat(Quantity.rounded(21.333333 / 2)).isEqualTo(10.666667);
        assertThat(Quantity.rounded(0.0000005)).isEqualTo(0.000001);
        assertThat(Quantity.rounded(0.0000015)).isEqualTo(0.000002);
        assertThat(Quantity.rounded(64.0 / 3)).isEqualTo(21.333333);
    }
}
