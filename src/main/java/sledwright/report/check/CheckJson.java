package sledwright.report.check;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import sledwright.desk.view.CheckView;
import sledwright.report.build.BuildJson;
import sledwright.report.build.ViolationJson;
import sledwright.report.text.Json;

/** A verdict as JSON. */
public record CheckJson(String build, String currency, boolean valid, List<ViolationJson> violations, @JsonUnwrapped BuildJson judged) {

    public static String of(CheckView view) {
        return Json.of(new CheckJson(view.name(), view.currency(), view.valid(), ViolationJson.all(view.violations()),
                BuildJson.of(view.build())));
    }
}
