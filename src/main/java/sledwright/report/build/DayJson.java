package sledwright.report.build;

import java.time.LocalDate;
import java.util.List;
import sledwright.desk.view.AnswerDay;
import sledwright.words.Sentence;

/**
 * The day of an answer as JSON, and what the shop should know before it offers it.
 *
 * @param validUntil null where the shop names no day
 */
public record DayJson(String today, String pricedOn, String validUntil, List<String> warnings) {

    public static DayJson of(AnswerDay day) {
        return new DayJson(day.today().toString(), day.pricedOn().toString(), day.validUntil().map(LocalDate::toString).orElse(null),
                day.warnings().stream().map(Sentence::toString).toList());
    }
}
