package sledwright.explain.whynot;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Fitout;
import sledwright.domain.Lot;
import sledwright.domain.Objective;
import sledwright.domain.Part;
import sledwright.domain.Request;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.Unproved;
import sledwright.explain.ask.UnsettledException;
import sledwright.explain.conflict.Conflict;
import sledwright.explain.conflict.Impossibility;
import sledwright.explain.conflict.Lacks;
import sledwright.explain.price.BreakEven;
import sledwright.explain.price.PriceShares;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.metrics.CheapestDraw;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.rules.stock.InStock;
import sledwright.words.Numbers;
import sledwright.words.Sentence;
import sledwright.words.Sum;

/** Works out why a part is not in the best build. */
public record WhyNotAnswer(String sku, Findings findings, Search search, Deadline deadline, Oracle oracle) {

    private static final int TOLD = 3;

    public WhyNot find() {
        if (findings.ranked().isEmpty()) {
            return findings.status() == Status.IMPOSSIBLE
                    ? plain(WhyNot.Verdict.BARRED, Sentence.of("No valid build exists, with %s or without it.", sku))
                    : unsettled(findings.doubts());
        }
        if (findings.ranked().get(0).needed().containsKey(sku)) {
            return plain(WhyNot.Verdict.CHOSEN, Sentence.of("%s is in the best build.", sku));
        }
        try {
            Findings with = search.runHolding(sku, findings.request().withAlternatives(1, findings.request().step()), deadline);
            if (with.status() == Status.IMPOSSIBLE) {
                return barred();
            }
            return with.ranked().isEmpty() ? unsettled(with.doubts()) : beaten(with);
        } catch (UnsettledException open) {
            return unsettled(open.doubts());
        }
    }

    private Catalog catalog() {
        return oracle.catalog();
    }

    private WhyNot plain(WhyNot.Verdict verdict, Sentence sentence) {
        return new WhyNot(sku, verdict, List.of(sentence), List.of(), Optional.empty());
    }

    private WhyNot unsettled(Doubts doubts) {
        return plain(WhyNot.Verdict.UNSETTLED, Unproved.sentence("Time ran out before an answer was found.",
                "No answer could be proved.", doubts));
    }

    private WhyNot beaten(Findings with) {
        Order best = findings.ranked().get(0);
        Order order = with.ranked().get(0);
        long extra = order.price().total() - best.price().total();
        List<Sentence> sentences = new ArrayList<>();
        sentences.add(Sentence.of("The best build with it is %s%s: %s.", parts(order), machines(order), standing(with, extra, best)));
        Map<String, Long> difference = PriceShares.difference(order, best);
        if (!difference.isEmpty()) {
            sentences.add(Sentence.of("In %s against the best: %s.", catalog().currency(), PriceShares.words(difference, catalog())));
        }
        if (with.status() == Status.BEST_FOUND) {
            sentences.add(Unproved.sentence("Time ran out before it was proved that no better build holds it.",
                    "It is not proved that no better build holds it.", with.doubts()));
        }
        Optional<BreakEven.Found> level = Optional.empty();
        try {
            level = new BreakEven(sku, findings, catalog(), search, deadline).find();
            sentences.add(level.map(this::atWhichPrice).orElse(Sentence.plain("Its price does not matter for that.")));
        } catch (UnsettledException open) {
            sentences.add(Unproved.sentence("Time ran out before the price was found at which it would win.",
                    "The price at which it would win could not be found.", open.doubts()));
        }
        Map<String, BigDecimal> amounts = new LinkedHashMap<>();
        difference.forEach((kind, amount) -> amounts.put(kind, catalog().amount(amount)));
        OptionalLong unitPrice = level.map(BreakEven.Found::unitPrice).orElse(OptionalLong.empty());
        WhyNot.Offer offer = new WhyNot.Offer(catalog().amount(order.price().total()), catalog().amount(extra), amounts,
                unitPrice.isPresent() ? Optional.of(catalog().amount(unitPrice.getAsLong())) : Optional.empty(),
                unitPrice.isPresent() ? BreakEven.bought(level.get().order(), sku) : 0);
        return new WhyNot(sku, WhyNot.Verdict.BEATEN, sentences, List.of(), Optional.of(offer));
    }

    /** In how many machines it is, where not in all; enclosures are around all of them. */
    private String machines(Order order) {
        long holding = order.machines().stream().filter(this::holds).count();
        int all = order.machines().size();
        return holding == all ? "" : " (in %s of %s)".formatted(holding, Numbers.counted(all, "machine"));
    }

    private boolean holds(Build build) {
        return build.partCounts().containsKey(sku)
                || build.fitout().housed().filter(around -> around.partCounts().containsKey(sku)).isPresent();
    }

    private String parts(Order order) {
        Build build = order.machines().stream().filter(this::holds).findFirst().orElseThrow();
        Fitout fitout = build.fitout();
        String equipment = Stream.of(counted(fitout.drives()), counted(fitout.cards().values())).filter(words -> !words.isEmpty())
                .map(", "::concat).collect(Collectors.joining());
        String housed = fitout.housed().map(around -> ", in %s x %s with %s each".formatted(around.count(), around.enclosure().sku(),
                around.supply().count() + " x " + around.supply().sku())).orElse("");
        return "%s with %s x %s and %s%s%s".formatted(build.platform().sku(), build.processors().size(), build.processor().sku(),
                counted(build.modules().values()), equipment, housed);
    }

    private static String counted(Collection<? extends Part> parts) {
        return parts.stream().collect(Collectors.groupingBy(Part::sku, TreeMap::new, Collectors.counting())).entrySet().stream()
                .map(group -> group.getValue() + " x " + group.getKey()).collect(Collectors.joining(" + "));
    }

    private Sentence standing(Findings with, long extra, Order best) {
        Sentence money = extra == 0 ? Sentence.plain("at the price of the best")
                : Sentence.of("%s %s", best.words(Math.abs(extra)), extra > 0 ? "dearer" : "cheaper");
        Objective objective = findings.request().objective();
        return switch (objective) {
            case CHEAPEST -> Sentence.of("%s, %s", with.ranked().get(0).words(Math.round(with.best())), money);
            case BEST_VALUE -> Sentence.of("price less worth %s against %s, %s", best.words(Math.round(with.best())),
                    best.words(Math.round(findings.best())), money);
            case LEAST_TOTAL -> Sentence.of("price and energy %s against %s, %s", best.words(Math.round(with.best())),
                    best.words(Math.round(findings.best())), money);
            case MOST_THROUGHPUT -> figure("throughput", "", with, money);
            case MOST_BANDWIDTH -> figure("bandwidth", " GB/s", with, money);
            case MOST_MEMORY -> figure("usable memory", " GB", with, money);
            case MOST_WORK -> figure("work", "", with, money);
            case MOST_CORES -> figure("number of cores", "", with, money);
        };
    }

    private Sentence figure(String noun, String unit, Findings with, Sentence money) {
        Sentence reached = Sentence.of("%s%s", Numbers.plain(with.best()), unit);
        Sentence best = Sentence.of("%s%s", Numbers.plain(findings.best()), unit);
        return reached.equals(best) ? Sentence.of("the same %s of %s, %s", noun, best, money)
                : Sentence.of("%s %s against %s, %s", noun, reached, best, money);
    }

    private Sentence atWhichPrice(BreakEven.Found level) {
        if (level.unitPrice().isEmpty()) {
            return Sentence.plain("Even for nothing it would not be in the best build.");
        }
        Order order = level.order();
        int units = BreakEven.bought(order, sku);
        return Sentence.of("At %s each (%s; now %s) a build with it is as good as the best.",
                order.words(level.unitPrice().getAsLong()), Numbers.counted(units, "unit"), now(units));
    }

    /** What each of a given number of units costs today. */
    private Sum now(int units) {
        Request request = findings.request();
        List<Lot> lots = catalog().lots(sku).stream().filter(lot -> Rulebook.accepts(lot, request.limit())).toList();
        long price = CheapestDraw.prices(lots, units)[units];
        return new Sum(catalog().amount(price).divide(BigDecimal.valueOf(units), catalog().amount(0).scale(), RoundingMode.HALF_UP),
                catalog().currency().getCurrencyCode());
    }

    private WhyNot barred() {
        Impossibility impossibility = Impossibility.with(sku, findings.request(), oracle);
        List<Conflict> conflicts = impossibility.conflicts();
        Set<String> rules = new LinkedHashSet<>();
        List<Sentence> sentences = new ArrayList<>(List.of(Sentence.plain("No valid build holds it.")));
        List<Violation> bars = bars(impossibility.lacks());
        bars.stream().limit(TOLD).forEach(bar -> sentences.add(Sentence.of("%s: %s", bar.rule(), bar.sentence())));
        bars.forEach(bar -> rules.add(bar.rule()));
        conflicts.stream().filter(conflict -> !conflict.keys().isEmpty()).limit(TOLD).forEach(conflict -> {
            // Where fewer machines are possible, the lots are what is in the way.
            List<String> broken = conflict.rules().isEmpty() ? List.of(InStock.ID) : conflict.rules();
            sentences.add(Sentence.of("%s: %s", String.join(", ", broken), conflict.sentence()));
            rules.addAll(broken);
        });
        impossibility.relaxations().stream().limit(TOLD)
                .forEach(relaxation -> sentences.add(Sentence.of("A way out: %s", relaxation.sentence())));
        sentences.addAll(impossibility.notes());
        return new WhyNot(sku, WhyNot.Verdict.BARRED, sentences, List.copyOf(rules), Optional.empty());
    }

    /** One breach for each rule, in the words of the first platform that meets it, with the number of platforms it holds on. */
    private static List<Violation> bars(List<Lacks.Lack> lacks) {
        Map<String, List<Violation>> byRule = new LinkedHashMap<>();
        lacks.forEach(lack -> byRule.computeIfAbsent(lack.what().rule(), rule -> new ArrayList<>()).add(lack.what()));
        return byRule.values().stream().map(bars -> {
            Violation first = bars.get(0);
            return bars.size() == 1 ? first : new Violation(first.rule(), first.where(), Sentence.of(
                    "%s The same rule bars it on %s.", first.sentence(), Numbers.counted(bars.size() - 1, "other platform")));
        }).toList();
    }
}
