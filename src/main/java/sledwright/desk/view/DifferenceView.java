package sledwright.desk.view;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongFunction;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.explain.change.CatalogDifference;

/**
 * How two catalogues differ, and what that does to requests.
 *
 * @param amount minor units -> units of the currency
 */
public record DifferenceView(Side before, Side after, String currency, CatalogDifference difference, LongFunction<BigDecimal> amount,
        List<RequestMove> requests) {

    /** One of the two, with the day of its prices. */
    public record Side(String name, LocalDate pricedOn) {
    }

    /**
     * The best answer to a request.
     *
     * @param status  proved, best-found, impossible, or that the request cannot be read
     * @param price   of the best build; empty where there is none
     * @param build   its parts in words; empty where there is none
     * @param reasons why the request cannot be read
     */
    public record Answer(String status, Optional<BigDecimal> price, String build, List<String> reasons) {

        public static Answer of(QuoteView view) {
            Optional<BuildView> best = view.alternatives().stream().findFirst().map(QuoteView.Alternative::build);
            return new Answer(view.proof().status().label(), best.flatMap(BuildView::price), best.map(Answer::words).orElse(""), List.of());
        }

        public static Answer unreadable(List<String> faults) {
            return new Answer("unreadable", Optional.empty(), "", List.copyOf(faults));
        }

        private static String words(BuildView build) {
            Map<String, Integer> modules = build.heaviest().modules();
            return "%s, %s x %s, %s, %s%s".formatted(build.bare().platform(), build.bare().processors(),
                    build.bare().processorSku().orElse("no processor"), build.bare().cooling().orElse("no heat sink kit"),
                    modules.entrySet().stream().map(entry -> entry.getValue() + " x " + entry.getKey()).collect(Collectors.joining(", ")),
                    build.bare().supply().map(supply -> ", " + build.bare().supplies() + " x " + supply).orElse(""));
        }
    }

    /** A request before and after. */
    public record RequestMove(String file, String name, Answer before, Answer after) {

        public boolean changesBuild() {
            return !before.build().equals(after.build()) || !before.status().equals(after.status());
        }

        public boolean changesPrice() {
            return !before.price().equals(after.price());
        }
    }

    public DifferenceView {
        requests = List.copyOf(requests);
    }

    public static DifferenceView of(String before, String after, Catalog old, Catalog now, List<RequestMove> requests) {
        return new DifferenceView(new Side(before, old.pricedOn()), new Side(after, now.pricedOn()), now.currency().getCurrencyCode(),
                CatalogDifference.between(old, now), now::amount, requests);
    }
}
