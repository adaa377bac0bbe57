package sledwright.web.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.report.chart.SvgChart;

/**
 * A file of the page, from the program itself; only these are served.
 *
 * @param type its media type
 */
record Asset(String type, byte[] bytes) {

    static final String FOLDER = "/assets/";

    /** Where charts have their colours on dark ground. */
    private static final String CHARTS = "/* charts */";

    private static final String SCRIPT = "text/javascript; charset=utf-8";
    private static final Map<String, String> TYPES = Stream.concat(
            Stream.of("ask.js", "form.js", "request.js", "mail.js", "work.js", "server.js", "keep.js", "book.js", "catalogue.js",
                    "customer.js", "link.js", "fresh.js", "stream.js", "promises.js", "stock.js", "board.js", "order.js", "login.js")
                    .map(name -> Map.entry(name, SCRIPT)), Stream.of(Map.entry("icon.svg", "image/svg+xml")))
            .collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, Map.Entry::getValue));

    /** Address -> file. */
    static Map<String, Asset> all() {
        Map<String, Asset> all = new HashMap<>();
        TYPES.forEach((name, type) -> all.put(FOLDER + name, new Asset(type, read(name))));
        String style = new String(read("ask.css"), StandardCharsets.UTF_8).replace(CHARTS, SvgChart.DARK_STYLE);
        all.put(FOLDER + "ask.css", new Asset("text/css; charset=utf-8", style.getBytes(StandardCharsets.UTF_8)));
        return Map.copyOf(all);
    }

    private static byte[] read(String name) {
        try (InputStream in = Asset.class.getResourceAsStream("/sledwright/web/" + name)) {
            return in.readAllBytes();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
