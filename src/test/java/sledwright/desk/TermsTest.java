package sledwright.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class TermsTest {

    /** Reading counts, but something has to be left to answer in. */
    @Test
    void whatIsGoneOfTheTimeIsNotThereAnyMoreButHalfOfIt() {
        Terms terms = Terms.within(Duration.ofSeconds(10)).withSeed(7);
        assertThat(terms.after(Duration.ofSeconds(3)).time()).isEqualTo(Duration.ofSeconds(7));
        assertThat(terms.after(Duration.ofSeconds(30)).time()).isEqualTo(Duration.ofSeconds(5));
        assertThat(terms.after(Duration.ZERO)).isEqualTo(terms);
    }
}
