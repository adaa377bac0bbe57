package sledwright.explain.audit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import sledwright.catalog.OfferRow;
import sledwright.catalog.PlacedCatalog;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Drive;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Processor;
import sledwright.input.Located;
import sledwright.input.Place;
import sledwright.metrics.Throughput;
import sledwright.words.Numbers;

/**
 * A price far from those of its like: memory by price per GB within generation, type, capacity and condition, drives by price per GB
 * within interface, kind, capacity and condition, processors by price per unit of throughput within generation and condition. Prices
 * spread by factors, so their logarithms are compared: one is odd when its modified z-score, 0.6745 x (its distance from the median) /
 * MAD, is above 3.5 (Iglewicz and Hoaglin, "How to Detect and Handle Outliers", 1993; from memory) and it is also at least three times or
 * at most a third of the median, since like prices can lie so close that a few percent would stand out. Fewer than eight priced lots have
 * no trend. A lot is judged by its price for the fewest units.
 */
final class PricesOffTrend implements Audit.Check {

    static final int LEAST_LOTS = 8;
    private static final double HIGHEST_SCORE = 3.5;
    /** Of a normal distribution, the MAD is this share of the standard deviation. */
    private static final double MAD_OF_NORMAL = 0.6745;
    private static final double LEAST_FACTOR = 3;

    private record Like(String kind, String generation, String form, boolean isNew) {
    }

    private record Priced(Located<OfferRow> row, double log, String unit) {
    }

    @Override
    public void look(PlacedCatalog placed, BiConsumer<Place, String> odd) {
        Map<Like, List<Priced>> groups = new LinkedHashMap<>();
        for (Located<OfferRow> row : firstBreaks(placed.offers())) {
            Optional<Part> part = placed.catalog().part(row.value().sku());
            OptionalDouble worth = part.map(known -> worth(known, placed.catalog())).orElse(OptionalDouble.empty());
            if (worth.isPresent() && row.value().price().unitPrice() == 0) {
                odd.accept(row.place(), "lot %s sells %s for nothing.".formatted(row.value().lot(), row.value().sku()));
            } else if (worth.isPresent()) {
                groups.computeIfAbsent(like(part.get(), row.value()), like -> new ArrayList<>())
                        .add(new Priced(row, Math.log(row.value().price().unitPrice() / worth.getAsDouble()),
                                part.get() instanceof Processor ? "a unit of throughput" : "a GB"));
            }
        }
        groups.forEach((like, priced) -> look(like, priced, placed.catalog(), odd));
    }

    private static List<Located<OfferRow>> firstBreaks(List<Located<OfferRow>> offers) {
        Map<List<String>, Located<OfferRow>> first = new LinkedHashMap<>();
        offers.forEach(row -> first.merge(List.of(row.value().sku(), row.value().lot()), row,
                (one, other) -> one.value().price().minQuantity() <= other.value().price().minQuantity() ? one : other));
        return List.copyOf(first.values());
    }

    private static OptionalDouble worth(Part part, Catalog catalog) {
        if (part instanceof MemoryModule module) {
            return OptionalDouble.of(module.capacityGb());
        }
        if (part instanceof Drive drive) {
            return OptionalDouble.of(drive.capacityGb());
        }
        if (part instanceof Processor processor) {
            double throughput = Throughput.of(processor, catalog.throughputFactors()).value();
            return throughput > 0 ? OptionalDouble.of(throughput) : OptionalDouble.empty();
        }
        return OptionalDouble.empty();
    }

    private static Like like(Part part, OfferRow offer) {
        boolean isNew = offer.condition() == Condition.NEW;
        if (part instanceof MemoryModule module) {
            return new Like("memory", module.generation(), module.type().label() + " of " + module.capacityGb() + " GB", isNew);
        }
        if (part instanceof Drive drive) {
            return new Like("drives", drive.link().label(), "%s of %s GB".formatted(drive.kind().label(),
                    Numbers.plain(drive.capacityGb())), isNew);
        }
        return new Like("processors", ((Processor) part).generation(), "", isNew);
    }

    private static void look(Like like, List<Priced> priced, Catalog catalog, BiConsumer<Place, String> odd) {
        if (priced.size() < LEAST_LOTS) {
            return;
        }
        double median = median(priced.stream().map(Priced::log).toList());
        double mad = median(priced.stream().map(each -> Math.abs(each.log() - median)).toList());
        for (Priced each : priced) {
            double distance = Math.abs(each.log() - median);
            if (distance >= Math.log(LEAST_FACTOR) && MAD_OF_NORMAL * distance > HIGHEST_SCORE * mad) {
                OfferRow offer = each.row().value();
                odd.accept(each.row().place(), "lot %s sells %s at %s %s %s; the median of %s like lots (%s) is %s: is the price right?"
                        .formatted(offer.lot(), offer.sku(), amount(each.log(), catalog), catalog.currency(), each.unit(), priced.size(),
                        words(like), amount(median, catalog)));
            }
        }
    }

    private static String words(Like like) {
        return "%s, %s%s, %s".formatted(like.kind(), like.generation(), like.form().isEmpty() ? "" : " " + like.form(), like.isNew() ? "new"
                : "second-hand");
    }

    private static String amount(double log, Catalog catalog) {
        return BigDecimal.valueOf(Math.exp(log)).movePointLeft(catalog.currency().getDefaultFractionDigits())
                .setScale(3, RoundingMode.HALF_UP)
                .toPlainString();
    }

    static double median(List<Double> figures) {
        List<Double> sorted = new ArrayList<>(figures);
        Collections.sort(sorted);
        int middle = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(middle) : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
    }
}
