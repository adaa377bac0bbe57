package sledwright.report.catalog;

import java.util.List;
import sledwright.report.text.Json;

/** A shop that was just written, as JSON. */
public record NewShopJson(String catalog, List<String> files) {

    public static String of(String folder, List<String> files) {
        return Json.of(new NewShopJson(folder, files));
    }
}
