package sledwright.report.ask;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sledwright.desk.Desk;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.desk.view.CheckView;
import sledwright.desk.view.QuoteAnswer;
import sledwright.input.Source;

/** A proved build, written down as a file, is read as the same build and breaks no rule. */
class BuildFileTextTest {

    @ParameterizedTest
    @ValueSource(strings = {"file-server", "accelerator-node", "small-web-node"})
    void whatWasProvedIsValidAsAFile(String request) {
        Desk desk = Desk.at(Path.of("catalogs/heronfold-yard"));
        QuoteAnswer answer = ((Reply.Answered<QuoteAnswer>) desk.quote(Source.of(Path.of("scenarios", request + ".yaml")),
                new QuoteQuestion(List.of("alternatives=1"), List.of(), false), Terms.within(Duration.ofSeconds(30)))).answer();
        var build = answer.view().alternatives().get(0).build();
        String file = BuildFileText.of(build);
        Reply<CheckView> reply = desk.check(Source.of("a page", file.getBytes(StandardCharsets.UTF_8)), List.of());
        assertThat(reply).as(file).isInstanceOf(Reply.Answered.class);
        CheckView judged = ((Reply.Answered<CheckView>) reply).answer();
        assertThat(judged.violations()).as(file).isEmpty();
        assertThat(judged.build().heaviest()).isEqualTo(build.heaviest());
    }
}
