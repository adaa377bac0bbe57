package sledwright.web.api;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import sledwright.desk.CompareQuestion;
import sledwright.desk.Desk;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Reply;
import sledwright.desk.RestockQuestion;
import sledwright.desk.Terms;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.Audience;
import sledwright.desk.view.CompareAnswer;
import sledwright.desk.view.UpgradeAnswer;
import sledwright.desk.view.ForCustomers;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.QuoteAnswer;
import sledwright.input.Source;
import sledwright.report.check.CheckJson;
import sledwright.report.compare.CompareJson;
import sledwright.report.order.OrderJson;
import sledwright.report.quote.QuoteJson;
import sledwright.report.restock.RestockJson;
import sledwright.report.upgrade.UpgradeJson;
import sledwright.web.http.RefusedException;

/**
 * A question that can be asked over HTTP, as the command of its name asks it.
 *
 * @param words     what it answers
 * @param kind      of the request that is its body
 * @param keys      its options
 * @param seconds   time that it has where nobody says otherwise
 * @param takesLong whether it may work for minutes
 */
public record Inquiry(String name, String words, String kind, List<OptionKey> keys, int seconds, boolean takesLong, Asking asking) {

    /** Asks at a desk; what comes back is the command's JSON. */
    interface Asking {
        Reply<String> ask(Desk desk, Source source, QueryOptions options, Terms terms);
    }

    private static final int SECONDS = 30;
    private static final int RESTOCK_SECONDS = 180;

    private static final OptionKey SET = OptionKey.texts("set",
            "Answer as if the request had this value, such as require.cores=24. May stand several times.");
    private static final OptionKey SEED = OptionKey.figure("seed", "Where chance decides, decide as before with the same number.");
    private static final OptionKey TIME_LIMIT = OptionKey.figure("time-limit", "Give the best found within this time, in seconds.");

    private static final OptionKey FOR = OptionKey.text("for",
            "Whom the answer is for: the customer has no supplier, lot, cost, margin or stock count, the shop has all. Otherwise shop.");

    private static final OptionKey TODAY = OptionKey.text("today",
            "Answer as on this day, such as 2026-11-18: dates of delivery, how long an offer holds, how old prices are.");
    private static final OptionKey STALE = OptionKey.flag("stale-prices",
            "Give a customer prices that are older than the shop's stale_after_days, too.");

    /** All of them. */
    public static final List<Inquiry> ALL = List.of(
            new Inquiry("quote", "Ranked builds, the best first.", "quote", taking(
                    OptionKey.texts("why-not", "Say why this part is not in the best build. May stand several times."), FOR, STALE,
                    OptionKey.flag("steps", "Say what more or less of each requirement and what each wish costs, and at which prices of its"
                            + " parts the best build stays the best.")), SECONDS, false, Inquiry::quote),
            new Inquiry("check", "Every rule that a build breaks.", "build", taking(), SECONDS, false, (desk, source, options, terms) ->
                    desk.check(source, options.texts("set")).map(CheckJson::of)),
            new Inquiry("compare", "What money buys.", "quote", taking(FOR, STALE,
                    OptionKey.texts("figure", "Compare this figure. May stand several times; otherwise all."),
                    OptionKey.texts("over", "Weigh this cost: price, or total, which needs energy. May stand several times."),
                    OptionKey.texts("platform", "Compare builds on this platform. May stand several times."),
                    OptionKey.flag("by-platform", "A curve for each platform instead of one for all."),
                    OptionKey.figure("together", "Also list the builds of which each beats every cheaper one by this share."),
                    OptionKey.text("years", "Years of energy in the total cost."),
                    OptionKey.text("price-per-kwh", "What a kWh costs."),
                    OptionKey.text("duty", "Mean share of the load, from 0 to 1.")), SECONDS, false, Inquiry::compare),
            new Inquiry("order", "Several lines of machines from one stock.", "order", taking(FOR, STALE), SECONDS, true,
                    Inquiry::order),
            new Inquiry("upgrade", "The least to spend so that a machine which stands reaches a target.", "upgrade", taking(FOR, STALE),
                    SECONDS, false, Inquiry::upgrade),
            new Inquiry("restock", "What to buy for expected orders.", "restock", taking(
                    OptionKey.flag("levels", "Say for each part that is used at how many units to buy again.")), RESTOCK_SECONDS, true,
                    (desk, source, options, terms) -> desk
                            .restock(source, new RestockQuestion(options.texts("set"), options.flag("levels")), terms)
                            .map(RestockJson::of)));

    private static List<OptionKey> taking(OptionKey... own) {
        return Stream.concat(Stream.of(own), Stream.of(SET, SEED, TIME_LIMIT, TODAY)).toList();
    }

    private static Audience audience(QueryOptions options) {
        return audience(options, Audience.SHOP);
    }

    /** @param otherwise who reads where nobody is named */
    static Audience audience(QueryOptions options, Audience otherwise) {
        String word = options.text("for").orElse(otherwise.toString());
        return Arrays.stream(Audience.values()).filter(one -> one.toString().equals(word)).findFirst()
                .orElseThrow(() -> RefusedException.of(400, "for", word, "must be customer or shop"));
    }

    /** What is shown of an answer; stale prices are no customer's unless that is asked for. */
    private static <V> V shown(V view, AnswerDay day, UnaryOperator<V> forCustomers, QueryOptions options) {
        if (audience(options) == Audience.SHOP) {
            return view;
        }
        if (day.stale() && !options.flag("stale-prices")) {
            throw RefusedException.of(409, "for", "customer", day.refusal());
        }
        return forCustomers.apply(view);
    }

    private static Reply<String> quote(Desk desk, Source source, QueryOptions options, Terms terms) {
        boolean shop = audience(options) == Audience.SHOP;
        if (!shop && (options.flag("steps") || !options.texts("why-not").isEmpty())) {
            throw RefusedException.of(400, options.flag("steps") ? "steps" : "why-not", "", "is not for the customer's eyes");
        }
        return desk.quote(source, new QuoteQuestion(options.texts("set"), options.texts("why-not"), options.flag("steps")), terms)
                .map(QuoteAnswer::view).map(view -> QuoteJson.of(shown(view, view.day(), ForCustomers::of, options)));
    }

    private static Reply<String> order(Desk desk, Source source, QueryOptions options, Terms terms) {
        return desk.order(source, options.texts("set"), terms)
                .map(OrderAnswer::view).map(view -> OrderJson.of(shown(view, view.day(), ForCustomers::of, options)));
    }

    private static Reply<String> upgrade(Desk desk, Source source, QueryOptions options, Terms terms) {
        return desk.upgrade(source, options.texts("set"), terms).map(UpgradeAnswer::view)
                .map(view -> UpgradeJson.of(shown(view, view.day(), ForCustomers::of, options)));
    }

    private static Reply<String> compare(Desk desk, Source source, QueryOptions options, Terms terms) {
        List<String> sets = new ArrayList<>(options.texts("set"));
        options.text("years").ifPresent(given -> sets.add("energy.years=" + given));
        options.text("price-per-kwh").ifPresent(given -> sets.add("energy.price_per_kwh=" + given));
        options.text("duty").ifPresent(given -> sets.add("energy.duty=" + given));
        return desk.compare(source, new CompareQuestion(sets, options.texts("figure"), options.texts("over"), options.texts("platform"),
                options.flag("by-platform"), options.figure("together")), terms).map(CompareAnswer::view)
                .map(view -> CompareJson.of(shown(view, view.day(), ForCustomers::of, options)));
    }
}
