package sledwright.desk.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.compare.Comparison;
import sledwright.compare.Cost;
import sledwright.compare.Curve;
import sledwright.compare.CurveAxes;
import sledwright.compare.Point;
import sledwright.compare.Together;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.Energy;
import sledwright.generator.Axis;
import sledwright.generator.Doubts;
import sledwright.generator.Status;
import sledwright.rules.Order;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * A comparison, for every format alike. Money is in units of the currency.
 *
 * @param topic    each cost is of all its machines
 * @param builds   each build that is on some curve or among those together, once, the cheapest first
 * @param together numbers of the builds of all figures at once
 */
public record CompareView(Topic topic, Scope scope, CompareProof proof, List<CurveView> curves, List<BuildView> builds,
                          Optional<TogetherView> together, AnswerDay day) {

    /** The same of a request whose customer pays something else than the price. */
    public CompareView with(Discount granted) {
        return new CompareView(topic, new Scope(scope.energy(), scope.pricePerKwh(), scope.byPlatform(), granted), proof, curves, builds,
                together, day);
    }

    /** That prices here are not what the customer pays; empty where they are. */
    public Optional<Sentence> beforeDiscount() {
        return scope.discount().isNone() ? Optional.empty() : Optional.of(scope.discount().percent()
                .map(percent -> Sentence.of("Prices are before the discount of %s %%.", Numbers.rate(percent)))
                .orElse(Sentence.plain("Prices are those of the list; a price was agreed for one build, which no point counts.")));
    }

    /** More digits than the currency has, for what a unit costs. */
    private static final int DIGITS_OF_A_UNIT = 2;

    /**
     * What is compared.
     *
     * @param energy   what electricity costs are counted by; its price in minor units
     * @param discount what a customer pays in the place of a price; no price here counts it
     */
    public record Scope(Optional<Energy> energy, Optional<BigDecimal> pricePerKwh, boolean byPlatform, Discount discount) {
    }

    /** @param doubts what keeps it from being proved */
    public record CompareProof(Status status, Doubts doubts) {
    }

    /**
     * A curve with the words that its figure goes by.
     *
     * @param shortened the points that a page has room for, each with what it costs and brings against the one shown before it
     * @param bound what a build costs at least that gives more than the last proved point; empty where all are proved, or nothing is known
     */
    public record CurveView(CurveAxes axes, Status status, int proved, Optional<BigDecimal> bound, List<PointView> points,
                            Shortened shortened) {

        /** The figure with its unit, such as {@code usable memory, GB}. */
        public String figureWords() {
            return axes.figure().noun() + axes.figure().unitAfter(", ");
        }
    }

    /**
     * @param build   number of the build, from 1
     * @param cost    the price, or the total
     * @param perUnit cost of each unit of the figure; of the load, of each watt saved against the first point
     * @param extra   what it costs more than the point before; empty for the first
     */
    public record PointView(int build, PriceAndEnergy paid, BigDecimal cost, double figure, Optional<BigDecimal> perUnit,
                            Optional<Extra> extra, PointMarks marks) {
    }

    /** @param energy empty where no electricity is counted */
    public record PriceAndEnergy(BigDecimal price, Optional<BigDecimal> energy) {

        public BigDecimal total() {
            return price.add(energy.orElse(BigDecimal.ZERO));
        }
    }

    /**
     * What is said of a point.
     *
     * @param foremost whether no point of another platform's curve beats it
     */
    public record PointMarks(boolean knee, boolean bestPerUnit, boolean foremost, boolean proved) {
    }

    /**
     * Some points of a curve: the first, the last, the marked, and each that is better by a share than the one before.
     *
     * @param share 0 where all points are there
     * @param left  how many are left out
     */
    public record Shortened(List<PointView> points, double share, int left) {
    }

    /** A step up the curve: so much more cost for so much more of the figure (of the load: less), and what each unit of that costs. */
    public record Extra(BigDecimal cost, double figure, BigDecimal perUnit) {
    }

    /** @param builds numbers, from 1 */
    public record TogetherView(double share, boolean complete, boolean full, List<Integer> builds) {
    }

    public CompareView {
        curves = List.copyOf(curves);
        builds = List.copyOf(builds);
    }

    /** What was asked about: {@code total cost} or {@code price}. */
    public List<Cost> costs() {
        return curves.stream().map(curve -> curve.axes().cost()).distinct().toList();
    }

    public List<Axis> axes() {
        return curves.stream().map(curve -> curve.axes().figure()).distinct().toList();
    }

    /** The curves of a figure over a cost, one for each platform or one for all. */
    public List<CurveView> curves(Axis axis, Cost cost) {
        return curves.stream().filter(curve -> curve.axes().figure() == axis && curve.axes().cost() == cost).toList();
    }

    /** Whether no build is valid. */
    public boolean isImpossible() {
        return proof.status() == Status.IMPOSSIBLE;
    }

    public BuildView build(int number) {
        return builds.get(number - 1);
    }

    public static CompareView of(Comparison comparison, Catalog catalog) {
        return new Maker(comparison, catalog).view();
    }

    private static final class Maker {

        private final Comparison comparison;
        private final Catalog catalog;
        private final List<BuildView> builds;
        private final Map<Order, Integer> numbers = new IdentityHashMap<>();

        Maker(Comparison comparison, Catalog catalog) {
            this.comparison = comparison;
            this.catalog = catalog;
            builds = number();
        }

        /** Equal builds may have been found more than once. */
        private List<BuildView> number() {
            Map<BuildView, List<Order>> alike = new LinkedHashMap<>();
            Stream.concat(comparison.curves().stream().flatMap(curve -> curve.points().stream().map(Point::order)),
                            comparison.together().stream().flatMap(all -> all.builds().stream()))
                    .sorted((one, other) -> Long.compare(one.price().total(), other.price().total()))
                    .forEach(order -> alike.computeIfAbsent(BuildView.of(order, true), same -> new ArrayList<>()).add(order));
            int number = 0;
            for (List<Order> same : alike.values()) {
                number++;
                for (Order order : same) {
                    numbers.put(order, number);
                }
            }
            return List.copyOf(alike.keySet());
        }

        CompareView view() {
            return new CompareView(Topic.of(comparison.request(), catalog), new Scope(comparison.energy(), comparison.energy()
                    .map(energy -> perUnit(energy.pricePerKwh())), comparison.byPlatform(), Discount.NONE),
                    new CompareProof(comparison.status(), comparison.doubts()), comparison.curves().stream().map(this::curve).toList(),
                    builds, comparison.together().map(this::together),
                    AnswerDay.of(catalog, numbers.keySet().stream().flatMap(order -> order.picks().stream())));
        }

        private TogetherView together(Together all) {
            return new TogetherView(all.share(), all.complete(), all.builds().size() == Together.MOST,
                    all.builds().stream().map(numbers::get).toList());
        }

        private CurveView curve(Curve curve) {
            List<Integer> all = IntStream.range(0, curve.points().size()).boxed().toList();
            ShortList few = ShortList.of(curve, comparison.request().step());
            Optional<BigDecimal> bound = curve.bound().isPresent()
                    ? Optional.of(catalog.amount((long) Math.ceil(curve.bound().getAsDouble())))
                    : Optional.empty();
            return new CurveView(curve.axes(), curve.status(), curve.proved(), bound, points(curve, all),
                    new Shortened(points(curve, few.points()), few.share(), all.size() - few.points().size()));
        }

        /** Points of a curve, each compared with the one before it in the list. */
        private List<PointView> points(Curve curve, List<Integer> list) {
            List<PointView> points = new ArrayList<>();
            for (int i : list) {
                Point point = curve.points().get(i);
                OptionalDouble unit = curve.costPerUnit(i);
                Optional<Extra> extra = points.isEmpty() ? Optional.empty() : Optional.of(extra(curve, list.get(points.size() - 1), i));
                points.add(new PointView(numbers.get(point.order()),
                        new PriceAndEnergy(catalog.amount(point.price()),
                        comparison.energy().map(energy -> catalog.amount(point.energy()))), catalog.amount(curve.cost(i)), point.figure(),
                        unit.isPresent() ? Optional.of(perUnit(unit.getAsDouble())) : Optional.empty(), extra,
                        new PointMarks(curve.knee().equals(OptionalInt.of(i)), curve.bestPerUnit().equals(OptionalInt.of(i)),
                                comparison.isForemost(curve, point), i < curve.proved())));
            }
            return List.copyOf(points);
        }

        private Extra extra(Curve curve, int before, int point) {
            return new Extra(catalog.amount(curve.extraCost(before, point)), curve.extraFigure(before, point),
                    perUnit(curve.costPerExtra(before, point)));
        }

        private BigDecimal perUnit(double minor) {
            int digits = catalog.currency().getDefaultFractionDigits();
            return BigDecimal.valueOf(minor).movePointLeft(digits).setScale(digits + DIGITS_OF_A_UNIT, RoundingMode.HALF_UP);
        }
    }
}
