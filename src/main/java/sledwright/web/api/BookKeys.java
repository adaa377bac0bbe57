package sledwright.web.api;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The keys that questions about the book take: the options of the commands by their long names. */
final class BookKeys {

    private static final OptionKey TODAY = OptionKey.text("today", "The day that counts as today, such as 2026-11-18.");
    private static final OptionKey BY = OptionKey.text("by", "Who does it, where nobody is logged in. Otherwise who runs the server.");
    private static final OptionKey TIME = OptionKey.figure("time-limit", "Keep the best found within this time, in seconds.");
    private static final OptionKey SET = OptionKey.texts("set",
            "Answer as if the request had this value, such as require.cores=24. May stand several times.");
    private static final OptionKey CHOICE = OptionKey.figure("option", "The option of the quote that it is about from now on.");
    private static final OptionKey REASON = OptionKey.text("reason", "Why.");

    static final List<OptionKey> SAVE = with(OptionKey.text("customer", "Who asks; needed."),
            OptionKey.text("note", "What the shop wants to remember of it."),
            OptionKey.text("once", "A name of the asker's own. The same asked again by it, as where the answer was lost, is kept once."),
            SET, TIME);
    static final List<OptionKey> LIST = List.of(OptionKey.text("customer", "Quotes for customers with this in their names."),
            OptionKey.text("state", "Quotes that are draft, sent, accepted, declined, expired, withdrawn, picked or delivered."),
            OptionKey.text("words", "Quotes in which all of these words stand: in names, note or parts."),
            OptionKey.text("part", "Quotes that take this part from the shop."),
            OptionKey.text("since", "Quotes of this day and later."), OptionKey.text("until", "Quotes of this day and earlier."), TODAY);
    static final List<OptionKey> SHOW = List.of(OptionKey.figure("version", "This version of it. Otherwise the last."),
            OptionKey.text("format", "json, text, csv, html, pdf or eml; of an order xlsx, too. Otherwise json."),
            OptionKey.text("for", "customer or shop. Otherwise the customer has html and pdf, the shop the rest."), TODAY);
    static final List<OptionKey> HISTORY = List.of(TODAY);
    static final List<OptionKey> SHEET = List.of(OptionKey.text("format", "json, text, csv, html, pdf or svg. Otherwise json."), TIME,
            TODAY);

    private static final OptionKey MONTHS = OptionKey.figure("months", "How many months up to today; needed.");
    private static final OptionKey SEED = OptionKey.figure("seed", "Where chance decides, decide as before with the same number.");
    static final List<OptionKey> LOST = List.of(MONTHS, OptionKey.text("format", "json, text, csv or xlsx. Otherwise json."), TODAY);
    static final List<OptionKey> DEMAND = List.of(MONTHS, OptionKey.text("format", "json or csv. Otherwise json."), TODAY);
    static final List<OptionKey> ALLOCATE = with(TIME, SEED);
    static final List<OptionKey> APPLY = with(OptionKey.text("proposal",
            "The draw that was seen, by the header Sledwright-Proposal of its answer. Otherwise stock is drawn now."), TIME, SEED);

    private static final OptionKey VERSION = OptionKey.figure("version", "The version that was seen. Refused where there is a later one.");
    private static final OptionKey WOULD_PAY = OptionKey.text("would-pay", "What the customer would have paid for all its machines.");

    /** Step -> keys. */
    static final Map<String, List<OptionKey>> STEPS = new TreeMap<>(Map.of(
            "send", step(CHOICE, OptionKey.flag("hold", "Hold its parts until its last day."),
                    OptionKey.flag("stale-prices", "Also with prices that are older than the shop's stale_after_days."), REASON, TIME),
            "accept", step(CHOICE, REASON, TIME),
            "decline", step(REASON, WOULD_PAY), "withdraw", step(REASON), "pick", step(REASON), "deliver", step(REASON),
            "revise", step(SET, TIME),
            "copy", step(OptionKey.text("customer", "Who asks. Otherwise the customer of the quote."), SET, TIME),
            "hold", step(CHOICE, OptionKey.text("until", "The last day. Otherwise that of the quote."), TIME), "release", step()));

    private BookKeys() {
    }

    private static List<OptionKey> step(OptionKey... own) {
        return Stream.concat(with(own).stream(), Stream.of(VERSION)).toList();
    }

    private static List<OptionKey> with(OptionKey... own) {
        return Stream.concat(Stream.of(own), Stream.of(BY, TODAY)).toList();
    }

    /** Those of every step, each once. */
    static List<OptionKey> ofSteps() {
        Map<String, OptionKey> all = new TreeMap<>();
        STEPS.values().forEach(keys -> keys.forEach(key -> all.putIfAbsent(key.name(), key)));
        return new ArrayList<>(all.values());
    }
}
