package sledwright.report.restock;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalLong;
import sledwright.desk.view.RestockView;
import sledwright.explain.Explanation;
import sledwright.explain.conflict.Conflict;
import sledwright.report.text.Json;
import sledwright.restock.Levels;
import sledwright.restock.RestockPlan;
import sledwright.words.Numbers;

/** A restocking plan as JSON. */
public record RestockJson(@JsonUnwrapped Head head, @JsonUnwrapped Earned earned, List<BuyJson> buy, List<ClassJson> classes,
                          List<CurvePoint> curve, List<PartJson> parts, List<LevelJson> levels) {

    /** What was asked, and whether it was answered in full; {@code budget} is null where there is none. */
    public record Head(String request, String currency, long seed, int courses, boolean complete, BigDecimal budget, BigDecimal cost) {
    }

    /** What the plan is expected to earn, and no plan beyond. */
    public record Earned(Expected expectedMargin, Expected without, Expected gain, Bound bound) {
    }

    /** A mean and half the width of its confidence interval. */
    public record Expected(BigDecimal mean, BigDecimal halfWidth) {

        private static Expected of(RestockPlan.Expected expected, RestockView view) {
            return new Expected(view.amount(expected.mean()), view.amount(expected.halfWidth()));
        }
    }

    /** No plan earns more than {@code most}. */
    public record Bound(BigDecimal most, @JsonUnwrapped Shortfalls below, BigDecimal gap, BigDecimal roundedGap, int builds,
                        boolean noOtherBuild) {

        private static Bound of(RestockPlan plan, RestockView view) {
            RestockPlan.Bound bound = plan.bound();
            return new Bound(view.amount(bound.most()), new Shortfalls(view.amount(bound.rounded()), view.amount(bound.roundedInSample()),
                    view.amount(bound.hindsight()), view.amount(bound.inSample())), Numbers.decimal(bound.gap()),
                    Numbers.decimal(bound.roundedGap()), plan.effort().builds(), plan.effort().closed());
        }
    }

    /** What whole quantities earn on the courses of the bound. */
    public record Shortfalls(BigDecimal roundedInHindsight, BigDecimal roundedAsOrdersCome, BigDecimal planInHindsight,
                             BigDecimal planAsOrdersCome) {
    }

    /** One purchase. */
    public record BuyJson(String sku, String supplier, String condition, int quantity, @JsonUnwrapped Terms terms, String why) {

        private static BuyJson of(RestockPlan.Buy buy, RestockView view) {
            return new BuyJson(buy.offer().sku(), buy.offer().supplier(), buy.offer().condition().label(), buy.quantity(),
                    new Terms(view.amount(buy.offer().unitCost()), view.amount(buy.cost()), buy.offer().leadDays()), buy.why());
        }
    }

    /** What a purchase costs, and when it is here. */
    public record Terms(BigDecimal unitCost, BigDecimal cost, int leadDays) {
    }

    /** A class of demand; {@code pays} and {@code costs} are null where no build of it is known. */
    public record ClassJson(String name, BigDecimal orders, @JsonUnwrapped Filled served, BigDecimal pays, BigDecimal costs,
                            boolean possible, List<String> conflicts) {

        private static ClassJson of(RestockPlan.ClassOutlook outlook, RestockView view) {
            RestockPlan.Filled filled = outlook.filled();
            return new ClassJson(outlook.name(), Numbers.decimal(outlook.orders()), new Filled(Numbers.decimal(filled.with()),
                    Numbers.decimal(filled.halfWidth()), Numbers.decimal(filled.without())), optional(outlook.revenue(), view),
                    optional(outlook.cost(), view), outlook.impossible().isEmpty(), outlook.impossible().map(Explanation::conflicts)
                    .orElse(List.of()).stream().map(Conflict::message).toList());
        }
    }

    /** How many of a class's orders are filled. */
    public record Filled(BigDecimal filled, BigDecimal filledHalfWidth, BigDecimal filledWithout) {
    }

    /** What another budget would bring. */
    public record CurvePoint(BigDecimal budget, BigDecimal spent, Expected expectedMargin) {

        private static CurvePoint of(RestockPlan.CurvePoint point, RestockView view) {
            return new CurvePoint(view.amount(point.budget()), view.amount(point.spent()), Expected.of(point.margin(), view));
        }
    }

    /** What becomes of a part. */
    public record PartJson(String sku, @JsonUnwrapped Units units, @JsonUnwrapped Value value, boolean dead) {

        private static PartJson of(RestockPlan.PartOutlook part, RestockView view) {
            RestockPlan.Units units = part.units();
            RestockPlan.Value value = part.value();
            return new PartJson(part.sku(),
                    new Units(units.standing(), units.bought(), Numbers.decimal(units.used()), Numbers.decimal(units.left())),
                    new Value(view.amount(value.lost()), view.amount(value.worth()), view.amount(value.oneMore()),
                            optional(value.mostPrice(), view)), part.isDead());
        }
    }

    /** Units of a part. */
    public record Units(int onShelf, int bought, BigDecimal used, BigDecimal left) {
    }

    /** @param payAtMost null where no class is worth a unit */
    public record Value(BigDecimal leftLoses, BigDecimal worth, BigDecimal oneMore, BigDecimal payAtMost) {
    }

    /** When to order a part again. */
    public record LevelJson(@JsonUnwrapped Ordered ordered, @JsonUnwrapped Use use, int reorderPoint, int lot,
                            @JsonUnwrapped Service service) {

        private static LevelJson of(Levels.Level level) {
            return new LevelJson(new Ordered(level.offer().sku(), level.offer().supplier(), level.offer().leadDays()),
                    new Use(Numbers.decimal(level.perMonth()), Numbers.decimal(level.deviation())), level.point(), level.lot(),
                    new Service(Numbers.decimal(level.service().safetyStock()), Numbers.decimal(level.service().cycleService()),
                            Numbers.decimal(level.service().expectedShortage()), Numbers.decimal(level.service().fillRate())));
        }
    }

    /** From whom, and how long it takes. */
    public record Ordered(String sku, String supplier, int leadDays) {
    }

    /** Units that orders take. */
    public record Use(BigDecimal perMonth, BigDecimal deviation) {
    }

    /** How well a level serves. */
    public record Service(BigDecimal safetyStock, BigDecimal cycleService, BigDecimal expectedShortage, BigDecimal fillRate) {
    }

    public static String of(RestockView view) {
        RestockPlan plan = view.plan();
        RestockPlan.Earned earned = plan.earned();
        return Json.of(new RestockJson(new Head(plan.request().name(), view.currency(), view.seed(), plan.effort().courses(),
                !plan.effort().late(), optional(plan.request().budget(), view), view.amount(plan.cost())),
                new Earned(Expected.of(earned.with(), view), Expected.of(earned.without(), view), Expected.of(earned.gain(), view),
                        Bound.of(plan, view)),
                plan.buys().stream().map(buy -> BuyJson.of(buy, view)).toList(),
                plan.classes().stream().map(outlook -> ClassJson.of(outlook, view)).toList(),
                earned.curve().stream().map(point -> CurvePoint.of(point, view)).toList(),
                plan.parts().stream().map(part -> PartJson.of(part, view)).toList(),
                view.levels().stream().map(LevelJson::of).toList()));
    }

    private static BigDecimal optional(OptionalLong minor, RestockView view) {
        return minor.isPresent() ? view.amount(minor.getAsLong()) : null;
    }
}
