package sledwright.web.page;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.eclipse.jetty.util.Fields;
import sledwright.desk.Terms;
import sledwright.desk.view.CheckView;
import sledwright.input.Faults;
import sledwright.input.Source;
import sledwright.input.Value;
import sledwright.input.YamlReader;
import sledwright.report.ask.HandPiece;
import sledwright.report.text.Json;
import sledwright.web.api.DeskReplies;
import sledwright.web.http.RefusedException;
import sledwright.web.shop.ShopState;

/** Judges a build that is put together by hand on the page. */
final class HandWork {

    private static final String BESIDE = "beside";
    private static final String CAME = "came";
    /** What a build that is changed was before -> what it is called. */
    private static final Map<String, String> ORIGINS = new TreeMap<>(Map.of("proved", "the proved build", "found", "the best build found",
            "file", "the build as it was opened"));

    private HandWork() {
    }

    /** The build's board with every rule that it breaks; {@code beside} of the query is the price that it is compared with. */
    static String board(Source source, Fields query, ShopState shop, Terms terms) {
        CheckView view = DeskReplies.of(shop.desk().check(source, List.of()));
        return HandPiece.of(view, shop.catalog(), tree(source), beside(query).map(price -> new HandPiece.Origin(origin(query), price)));
    }

    private static Optional<BigDecimal> beside(Fields query) {
        String price = query.getValue(BESIDE);
        if (price == null || price.isEmpty()) {
            return Optional.empty();
        }
        if (!price.matches("[0-9]{1,15}([.][0-9]{1,3})?")) {
            throw RefusedException.of(400, BESIDE, price, "must be a price");
        }
        return Optional.of(new BigDecimal(price));
    }

    private static String origin(Fields query) {
        String came = query.getValue(CAME);
        if (came == null || !ORIGINS.containsKey(came)) {
            throw RefusedException.of(400, CAME, String.valueOf(came), "must be one of " + String.join(", ", ORIGINS.keySet()));
        }
        return ORIGINS.get(came);
    }

    /** The file as JSON, for the page to change. */
    private static String tree(Source source) {
        Value.Group group = YamlReader.read(source, new Faults()).orElseThrow();
        Map<String, Object> build = map(group);
        build.remove("catalog");
        return Json.onOneLine(Json.of(build));
    }

    private static Map<String, Object> map(Value.Group group) {
        Map<String, Object> map = new LinkedHashMap<>();
        group.values().forEach((key, value) -> {
            if (!(value instanceof Value.Nothing)) {
                map.put(key, plain(value));
            }
        });
        return map;
    }

    private static Object plain(Value value) {
        if (value instanceof Value.Group group) {
            return map(group);
        }
        if (value instanceof Value.Series series) {
            return series.items().stream().map(HandWork::plain).toList();
        }
        return value instanceof Value.Scalar scalar ? scalar.text() : "";
    }
}
