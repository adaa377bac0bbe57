package sledwright.report.catalog;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.desk.view.CatalogView;
import sledwright.explain.audit.Warning;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/**
 * What a catalogue holds, as JSON.
 *
 * @param counts what -> how many of it
 */
public record CatalogJson(@JsonUnwrapped Head head, Map<String, Long> counts, List<EnclosureJson> enclosures, List<String> unsold,
                          List<WarningJson> warnings) {

    /** Which catalogue, and of which day. */
    public record Head(String catalog, String currency, String pricedOn) {
    }

    /** An enclosure and the sleds that it takes. */
    public record EnclosureJson(String sku, String name, int bays, List<String> takes, List<FeedJson> supplies) {

        private static EnclosureJson of(CatalogView.Housed enclosure) {
            return new EnclosureJson(enclosure.sku(), enclosure.name(), enclosure.bays(), enclosure.takes(),
                    enclosure.feeds().stream().map(FeedJson::of).toList());
        }
    }

    /** Supplies of an enclosure, and what they leave for its sleds. */
    public record FeedJson(String sku, int count, int redundant, BigDecimal sledsW) {

        private static FeedJson of(CatalogView.Feed feed) {
            return new FeedJson(feed.sku(), feed.count(), feed.redundant(), Numbers.decimal(feed.sledsW()));
        }
    }

    /** What is odd about a line of a file. */
    public record WarningJson(String check, String file, int line, String message) {

        private static WarningJson of(Warning warning) {
            return new WarningJson(warning.check(), warning.place().file(), warning.place().line(), warning.message());
        }
    }

    public static String of(CatalogView view) {
        Map<String, Long> counts = new LinkedHashMap<>();
        view.counts().forEach((what, count) -> counts.put(what.replace(' ', '_'), count));
        return Json.of(new CatalogJson(new Head(view.name(), view.currency(), view.pricedOn().toString()), counts,
                view.enclosures().stream().map(EnclosureJson::of).toList(), view.unsold(),
                view.warnings().stream().map(WarningJson::of).toList()));
    }
}
