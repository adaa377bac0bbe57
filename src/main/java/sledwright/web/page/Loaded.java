package sledwright.web.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.input.Faults;
import sledwright.input.Source;
import sledwright.input.Value;
import sledwright.input.YamlReader;
import sledwright.report.text.Json;
import sledwright.web.http.RefusedException;

/** A request as a flat list of keys and values, which the form takes apart from a file. What a key means is not asked here. */
final class Loaded {

    private final Map<String, List<String>> values = new LinkedHashMap<>();

    private Loaded() {
    }

    private record Taken(List<List<String>> wishes) {
    }

    /** @throws RefusedException when it is no YAML, or no request for a quote */
    static String json(Source source) {
        Faults faults = new Faults();
        Value.Group group = YamlReader.read(source, faults).orElse(null);
        if (group == null || faults.size() > 0) {
            throw RefusedException.of(faults.all());
        }
        Loaded loaded = new Loaded();
        group.values().forEach((key, value) -> loaded.take(key, value));
        List<String> kind = loaded.values.remove("kind");
        if (kind != null && !kind.equals(List.of("quote"))) {
            throw RefusedException.of(400, "kind", String.join(", ", kind),
                    "must be quote here; other files are answered under Orders, stock, bench");
        }
        loaded.values.remove("catalog");
        List<List<String>> wishes = new ArrayList<>();
        loaded.values.forEach((key, texts) -> texts.forEach(text -> wishes.add(List.of(key, text))));
        return Json.of(new Taken(wishes));
    }

    private void take(String path, Value value) {
        if (value instanceof Value.Group group) {
            group.values().forEach((key, inner) -> take(path + "." + key, inner));
        } else if (value instanceof Value.Series series) {
            List<String> plain = new ArrayList<>();
            for (int i = 0; i < series.items().size(); i++) {
                Value item = series.items().get(i);
                if (item instanceof Value.Scalar scalar) {
                    plain.add(scalar.text());
                } else {
                    take(path + "." + i, item);
                }
            }
            if (!plain.isEmpty()) {
                values.put(path, plain);
            }
        } else if (value instanceof Value.Scalar scalar) {
            values.put(path, List.of(scalar.text()));
        }
    }
}
