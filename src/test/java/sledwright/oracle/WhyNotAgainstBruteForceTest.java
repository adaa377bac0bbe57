package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import sledwright.domain.Card;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Extra;
import sledwright.domain.Lot;
import sledwright.domain.Part;
import sledwright.domain.Request;
import sledwright.explain.Explainer;
import sledwright.explain.whynot.WhyNot;
import sledwright.generator.time.Deadline;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;

/**
 * Why a part is not in the best build, against the list of every build that holds it, at every objective, with and without a limit of
 * the price: the best with it, and the price at which it comes level, probed on both sides.
 */
class WhyNotAgainstBruteForceTest {

    private static final int SEEDS = 150;
    private static final int EQUIPPED_SEEDS = 20;
    private static final int TOTAL_SEEDS = 30;
    /** Values are sums of fractions of a minor unit; closer than this they are equal. */
    private static final double SAME = 1e-4;

    private final Map<WhyNot.Verdict, AtomicInteger> verdicts = new HashMap<>();
    private int levels;

    @Test
    void theBestWithAPartAndThePriceAtWhichItComesLevel() {
        Disagreement.none(SEEDS, RandomCase.Size.LISTABLE, that -> judge(that, that.catalog().parts().stream().map(Part::sku).toList()));
        assertThat(verdicts.keySet()).contains(WhyNot.Verdict.BEATEN, WhyNot.Verdict.BARRED, WhyNot.Verdict.CHOSEN);
        assertThat(levels).as("prices that were found").isGreaterThan(SEEDS);
    }

    @Test
    void theBestWithAPartByPriceAndEnergy() {
        Disagreement.none(TOTAL_SEEDS, seed -> LeastTotalAgainstBruteForceTest.counting(RandomCase.of(seed, RandomCase.Size.LISTABLE)),
                that -> judge(that, that.catalog().parts().stream().map(Part::sku).toList()));
        assertThat(levels).as("prices that were found").isGreaterThan(TOTAL_SEEDS);
    }

    /** Drives, cards, extras, enclosures and their supplies, each asked about beside all the others. */
    @Test
    void theBestWithADriveACardAnExtraOrAnEnclosure() {
        Disagreement.none(EQUIPPED_SEEDS, RandomEquipment::of, that -> {
            Catalog catalog = that.catalog();
            return judge(that, catalog.parts().stream().filter(part -> part instanceof Drive || part instanceof Card || part instanceof Extra
                    || catalog.isOfEnclosuresAlone(part.sku())).map(Part::sku).toList());
        });
        assertThat(verdicts.keySet()).contains(WhyNot.Verdict.BEATEN, WhyNot.Verdict.BARRED, WhyNot.Verdict.CHOSEN);
        assertThat(levels).as("prices that were found").isGreaterThan(EQUIPPED_SEEDS / 4);
    }

    private String judge(RandomCase that, List<String> skus) {
        Search search = new Search(that.catalog());
        Findings findings = search.run(that.request(), Deadline.never());
        if (findings.status() != Status.PROVED) {
            return "";
        }
        List<WhyNot> answers = new Explainer(that.catalog(), search, Deadline.never()).explain(findings, skus).whyNot();
        List<String> wrong = new ArrayList<>();
        for (WhyNot answer : answers) {
            verdicts.computeIfAbsent(answer.verdict(), verdict -> new AtomicInteger()).incrementAndGet();
            wrong.addAll(judge(answer, that, findings).stream().map(words -> "%s: %s%n%s".formatted(answer.sku(), words, answer)).toList());
        }
        return String.join("\n", wrong);
    }

    private List<String> judge(WhyNot answer, RandomCase that, Findings findings) {
        List<Candidate> with = BruteForce.allHolding(answer.sku(), that);
        List<String> wrong = new ArrayList<>();
        switch (answer.verdict()) {
            case UNSETTLED -> check(wrong, isTangled(answer.sku(), that), "is unsettled");
            case CHOSEN -> check(wrong, with.stream().anyMatch(build -> !isBehind(build, findings, that.request())), "is in no best build");
            case BARRED -> {
                check(wrong, with.isEmpty(), "is held by " + with.stream().findFirst());
                check(wrong, !answer.rules().isEmpty(), "is barred by no rule");
            }
            case BEATEN -> {
                Optional<Candidate> best = with.stream().min(Candidate.order(that.request()));
                WhyNot.Offer offer = answer.offer().orElseThrow();
                check(wrong, best.isPresent() && (best.get().price() == minor(offer.price()) || isTangled(answer.sku(), that)), "is best had in " + best);
                level(wrong, offer, answer, that, findings);
            }
        }
        return wrong;
    }

    /** Whether the search may leave its best unproved where it asks for the part. */
    private static boolean isTangled(String sku, RandomCase that) {
        return Agreement.isTangled(that.with(that.request().withUse(Set.of(sku))));
    }

    private void level(List<String> wrong, WhyNot.Offer offer, WhyNot answer, RandomCase that, Findings findings) {
        String sku = answer.sku();
        if (isTangled(sku, that)) {
            return;
        }
        if (offer.breakEven().isPresent()) {
            levels++;
            long level = minor(offer.breakEven().get());
            check(wrong, isAsGood(sku, level, that, findings), "is not as good at " + level);
            check(wrong, !isAsGood(sku, level + 1, that, findings), "is as good at " + (level + 1));
            long now = that.lots().get(sku).stream().filter(lot -> !lot.onHand()).flatMap(lot -> lot.breaks().stream())
                    .mapToLong(Lot.PriceBreak::unitPrice).max().orElse(0);
            check(wrong, level <= now, "is level above what it costs today: " + level);
        } else if (answer.message().contains("Even for nothing")) {
            check(wrong, !isAsGood(sku, 0, that, findings), "is as good for nothing");
        } else if (!answer.message().contains("Time ran out")) {
            check(wrong, isAsGood(sku, 100_000_000, that, findings), "is not as good at any price");
        }
    }

    private static void check(List<String> wrong, boolean holds, String words) {
        if (!holds) {
            wrong.add(words);
        }
    }

    private static long minor(BigDecimal amount) {
        return amount.movePointRight(2).longValueExact();
    }

    /** Whether some order that holds the part is as good as what was found, were every lot of it sold at one price. */
    private static boolean isAsGood(String sku, long unitPrice, RandomCase that, Findings findings) {
        Map<String, List<Lot>> lots = new HashMap<>(that.lots());
        lots.computeIfPresent(sku, (same, all) -> all.stream().map(lot -> new Lot(lot.sku(), lot.lot(), lot.supplier(), lot.condition(),
                lot.stock(), List.of(new Lot.PriceBreak(lot.breaks().get(0).minQuantity(), unitPrice, OptionalLong.empty())),
                lot.onHand())).toList());
        Catalog catalog = that.catalog();
        RandomCase priced = that.with(catalog.platforms(), catalog.processors(), catalog.modules(), lots);
        return BruteForce.allHolding(sku, priced).stream().anyMatch(build -> !isBehind(build, findings, that.request()));
    }

    private static boolean isBehind(Candidate build, Findings findings, Request request) {
        double aim = build.aim(request);
        if (request.objective().isMoney()) {
            return aim > findings.best() + SAME;
        }
        return aim < findings.best() - 1e-7 || aim < findings.best() + 1e-7 && build.price() > findings.ranked().get(0).price().total();
    }
}
