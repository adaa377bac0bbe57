package sledwright.planner.order.relax;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import sledwright.domain.CoolingKit;
import sledwright.domain.Equipment;
import sledwright.domain.Platform;
import sledwright.domain.Supply;
import sledwright.generator.Recent;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.Variants;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.processor.SocketMatch;

/**
 * What the search has answered. What was best and has not become dearer is best still where nothing that a line can use has become cheaper;
 * and what could not be built cannot be built at any price.
 */
final class Answers {

    /** Answers kept to each question. */
    private static final int KEPT = 24;

    /** Questions that answers are kept to. */
    private static final int MOST_QUESTIONS = 200;

    /** Or as many for each line. */
    private static final int MOST_OF_LINE = 2;

    private final Market market;
    private final List<int[]> usable;
    private final List<List<Bay>> bays;
    private final Map<Question, Deque<Answer>> answered;

    /**
     * @param traits that all machines are to have
     */
    record Question(int line, int machines, Set<Trait> traits) {
    }

    /**
     * @param worth of everything that the line can use
     * @param common what was taken beyond that for what machines have in common and what cuts count
     * @param most  units of parts that it might take at most
     * @param takes what the column took
     */
    private record Answer(long[] worth, Map<Object, Long> common, Map<Integer, Integer> most, long takes, Pricer.Best best) {

        /** Whether it was looked for among all that may be now, and is one of these. */
        boolean isWithin(Map<Integer, Integer> now) {
            return most.entrySet().stream().allMatch(part -> now.getOrDefault(part.getKey(), Integer.MAX_VALUE) <= part.getValue())
                    && (best.column() == null || best.column().isWithin(now));
        }
    }

    Answers(Market market, Variants variants) {
        this.market = market;
        Map<List<Object>, int[]> known = new HashMap<>();
        usable = IntStream.range(0, market.lines().size()).mapToObj(line -> known.computeIfAbsent(
                List.of(variants.platforms(line), isEquipped(line)), key -> usable(variants.platforms(line), isEquipped(line)))).toList();
        bays = IntStream.range(0, market.lines().size()).mapToObj(line -> market.bays().stream().filter(bay -> market.suits(bay, line))
                .toList()).toList();
        answered = Collections.synchronizedMap(new Recent<>(Math.max(MOST_QUESTIONS, MOST_OF_LINE * market.lines().size())));
    }

    /** Whether a line asks for drives or cards; a controller may come with drives. */
    private boolean isEquipped(int line) {
        Equipment asked = market.line(line).request().equipment();
        return !asked.volumes().isEmpty() || !asked.cards().isEmpty();
    }

    private int[] usable(List<Platform> platforms, boolean equipped) {
        return IntStream.range(0, market.parts())
                .filter(part -> isUsable(market.sku(part), equipped)
                || platforms.stream().anyMatch(platform -> isUsable(market.sku(part), platform))).toArray();
    }

    /** Extras come with what is fitted, whatever is asked. */
    private boolean isUsable(String sku, boolean equipped) {
        return market.catalog().extra(sku).isPresent()
                || equipped && (market.catalog().drive(sku).isPresent() || market.catalog().card(sku).isPresent());
    }

    private boolean isUsable(String sku, Platform platform) {
        return platform.sku().equals(sku)
                || platform.cooling().stream().map(CoolingKit::sku).anyMatch(sku::equals)
                || platform.power().supplies().stream().map(Supply::sku).anyMatch(sku::equals)
                || market.catalog().processor(sku).filter(processor -> SocketMatch.allows(platform, processor)).isPresent()
                || market.catalog().module(sku).filter(module -> MemoryGeneration.allows(platform.memory(), module)).isPresent();
    }

    /**
     * The answer to a question at some prices: one that still holds, or a new one. Questions about different lines may be asked at once.
     *
     * @param most units of parts that machines take together at most, where that is fewer than there are
     */
    Pricer.Best of(Question question, Map<Integer, Integer> most, Duals duals, Supplier<Pricer.Best> search) {
        long[] worth = worth(question.line, most, duals);
        Map<Object, Long> common = new HashMap<>();
        duals.trait().forEach((trait, value) -> {
            if (trait.line() == question.line && !(trait instanceof Trait.Stands)) {
                common.put(trait, value);
            }
        });
        duals.cut().forEach((cut, value) -> {
            if (cut.counts(question.line, cut.part())) {
                common.put(cut, value);
            }
        });
        Deque<Answer> answers = answered.computeIfAbsent(question, asked -> new ArrayDeque<>());
        for (Answer answer : answers) {
            if (answer.isWithin(most) && holds(answer, question.line, worth, common, duals)) {
                return answer.best;
            }
        }
        Pricer.Best best = search.get();
        answers.addFirst(new Answer(worth, common, most, best.column() == null ? 0
                : duals.of(best.column(), market.poolOf(question.line)), best));
        if (answers.size() > KEPT) {
            answers.removeLast();
        }
        return best;
    }

    private boolean holds(Answer answer, int line, long[] worth, Map<Object, Long> common, Duals duals) {
        if (answer.best.column() == null) {
            return answer.best.least() == Long.MAX_VALUE;
        }
        if (answer.common.entrySet().stream().anyMatch(before -> common.getOrDefault(before.getKey(), 0L) < before.getValue())
                || duals.of(answer.best.column(), market.poolOf(line)) != answer.takes) {
            return false;
        }
        for (int i = 0; i < worth.length; i++) {
            if (worth[i] < answer.worth[i]) {
                return false;
            }
        }
        return true;
    }

    private long[] worth(int line, Map<Integer, Integer> most, Duals duals) {
        int[] parts = usable.get(line);
        List<Bay> places = bays.get(line);
        long[] worth = new long[parts.length + 2 * places.size()];
        for (int i = 0; i < parts.length; i++) {
            // What cannot be had is dear.
            worth[i] = most.getOrDefault(parts[i], 1) == 0 ? Long.MAX_VALUE : duals.part()[market.poolOf(line)][parts[i]];
        }
        for (int i = 0; i < places.size(); i++) {
            worth[parts.length + 2 * i] = duals.place(line, places.get(i));
            worth[parts.length + 2 * i + 1] = duals.kilowatt()[places.get(i).id()];
        }
        return worth;
    }
}
