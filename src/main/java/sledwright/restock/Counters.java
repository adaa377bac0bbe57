package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Counters that differ in what orders are offered. Shadow prices with hindsight say which builds are worth their parts, but understate what
 * a part is worth to whom knows nothing; how much, simulation decides, class by class and build by build, always on the same courses.
 */
final class Counters {

    private static final double[] WEIGHTS = {0, 0.5, 0.8, 0.95, 1.05, 1.25, 1.6, 2.2, 3.5};
    /** Counters are compared on this many courses at most; those that clearly do worse on a few are not tried on the others. */
    private static final int COMPARED_ON = 300;
    private static final int GLANCED_AT = 60;
    private static final int FIRST_LOOK = 20;
    /** A change that makes no difference to this many courses with orders of the class makes none. */
    private static final int ALIKE = 40;
    /** A share of what is earned that is worth a change. */
    private static final double WORTH_A_CHANGE = 1e-5;
    /** This many counters beyond those that are wanted are looked at twice. */
    private static final int PROMISING = 2;
    /** How often some share of the classes starts over. */
    private static final int KICKS = 3;
    private static final double BEGUN_ANEW = 0.4;
    /** This many builds of each class that are not offered are tried. */
    private static final int MOST_TRIED = 6;

    private final Program program;
    private final Racks racks;
    private final List<Course> courses;
    private final List<Course> few;

    Counters(Racks racks, List<Course> courses) {
        program = racks.program();
        this.racks = racks;
        this.courses = courses.subList(0, Math.min(courses.size(), COMPARED_ON));
        few = courses.subList(0, Math.min(courses.size(), GLANCED_AT));
    }

    /**
     * Orders are offered the builds that earn more than their parts are worth to others, the best first.
     *
     * @param rowPrices what a unit of each row's limit counts
     * @param weight    of these
     */
    Counter at(double[] rowPrices, double weight) {
        List<List<Choice>> menus = new ArrayList<>();
        for (int k = 0; k < program.classes().size(); k++) {
            menus.add(menu(k, rowPrices, weight));
        }
        return new Counter(racks, menus);
    }

    private List<Choice> menu(int k, double[] rowPrices, double weight) {
        ToDoubleFunction<Choice> beyond = beyond(k, rowPrices, weight);
        return program.ways(k).stream().filter(choice -> beyond.applyAsDouble(choice) > 0)
                .sorted(Comparator.comparingDouble(choice -> -beyond.applyAsDouble(choice))).toList();
    }

    /** What an order earns beyond the worth of its parts to others. */
    private ToDoubleFunction<Choice> beyond(int k, double[] rowPrices, double weight) {
        Map<String, Double> scarcity = program.scarcity(k, rowPrices);
        Map<Choice, Double> known = new IdentityHashMap<>();
        return choice -> known.computeIfAbsent(choice,
                one -> program.gain(one) - weight * one.parts(sku -> scarcity.getOrDefault(sku, 0.0)));
    }

    /** Shadow prices that count for less and for more. */
    List<Counter> around(double[] rowPrices) {
        return Arrays.stream(WEIGHTS).mapToObj(weight -> at(rowPrices, weight)).toList();
    }

    /** The counters that earn the most with given purchases, the best first; of equals the first. */
    List<Counter> best(List<Counter> counters, int[] bought, int most) {
        Map<Counter, Double> glanced = new IdentityHashMap<>();
        counters.forEach(counter -> glanced.computeIfAbsent(counter, one -> one.mean(bought, few)));
        List<Counter> promising = counters.stream().distinct().sorted(Comparator.comparingDouble(counter -> -glanced.get(counter)))
                .limit(most + PROMISING).toList();
        Map<Counter, Double> earned = new IdentityHashMap<>();
        promising.forEach(counter -> earned.put(counter, counter.mean(bought, courses)));
        return promising.stream().sorted(Comparator.comparingDouble(counter -> -earned.get(counter))).limit(most).toList();
    }

    /**
     * What searches end at.
     *
     * @param best after one has taken over what another found, the best first
     * @param ends what each ended at by itself
     */
    record Suited(List<Counter> best, List<Counter> ends) {
    }

    /** What some counters are improved to, so that they suit purchases. */
    Suited suited(List<Counter> starts, double[] prices, int[] bought, int passes) {
        List<Counter> others = around(prices);
        if (starts.size() == 1) {
            List<Counter> improved = List.of(improved(starts.get(0), others, prices, bought, passes));
            return new Suited(improved, improved);
        }
        SplittableRandom all = new SplittableRandom(starts.size());
        List<SplittableRandom> luck = starts.stream().map(start -> all.split()).toList();
        List<Counter> ends = IntStream.range(0, starts.size()).parallel().mapToObj(i ->
                kicked(improved(starts.get(i), others, prices, bought, passes), others, prices, bought, luck.get(i))).toList();
        List<Counter> best = ends.parallelStream().map(one -> improved(one, beside(one, ends), prices, bought, passes)).toList();
        return new Suited(best(best, bought, starts.size()), ends);
    }

    private static List<Counter> beside(Counter one, List<Counter> all) {
        return all.stream().filter(other -> other != one).toList();
    }

    /** A counter that may be better since some classes have begun again with what others offer them. */
    private Counter kicked(Counter start, List<Counter> others, double[] prices, int[] bought, SplittableRandom luck) {
        Judged best = judged(start, bought);
        for (int kick = 0; kick < KICKS; kick++) {
            Counter anew = best.counter;
            for (int k = 0; k < program.classes().size(); k++) {
                if (luck.nextDouble() < BEGUN_ANEW) {
                    anew = anew.with(k, others.get(luck.nextInt(others.size())).menu(k));
                }
            }
            best = better(best, judged(improved(anew, others, prices, bought, 1), bought));
        }
        return best.counter;
    }

    /**
     * A counter that earns more with given purchases, changed class by class: what others offer it, then builds more and builds fewer.
     *
     * @param prices of the rows, which say what may be worth offering
     */
    private Counter improved(Counter start, List<Counter> others, double[] prices, int[] bought, int passes) {
        Judged best = judged(start, bought);
        int classes = program.classes().size();
        int unchanged = 0;
        for (int pass = 0; pass < passes; pass++) {
            double before = best.mean();
            // Once no class has changed since this one was looked at, nothing is left to find.
            for (int k = 0; k < classes && unchanged <= classes; k++) {
                Judged known = best;
                Set<List<Choice>> menus = new LinkedHashSet<>();
                if (pass == 0) {
                    int of = k;
                    others.forEach(other -> menus.add(other.menu(of)));
                }
                for (List<Choice> menu : menus) {
                    best = better(best, k, menu, bought);
                }
                best = changed(best, k, prices, bought);
                unchanged = best == known ? unchanged + 1 : 0;
            }
            if (best.mean() <= before * (1 + WORTH_A_CHANGE)) {
                break;
            }
        }
        return best.counter;
    }

    private Judged changed(Judged start, int k, double[] prices, int[] bought) {
        Judged best = start;
        for (Choice choice : best.counter.taken(k, bought, few)) {
            List<Choice> fewer = new ArrayList<>(best.counter.menu(k));
            fewer.removeIf(other -> other == choice);
            best = better(best, k, fewer, bought);
            best = better(best, k, first(choice, best.counter.menu(k)), bought);
        }
        ToDoubleFunction<Choice> beyond = beyond(k, prices, 1);
        List<Choice> offered = best.counter.menu(k);
        List<Choice> rest = program.ways(k).stream().filter(choice -> offered.stream().noneMatch(other -> other == choice))
                .sorted(Comparator.comparingDouble(choice -> -beyond.applyAsDouble(choice))).limit(MOST_TRIED).toList();
        for (Choice choice : rest) {
            List<Choice> last = new ArrayList<>(best.counter.menu(k));
            last.add(choice);
            best = better(best, k, last, bought);
            best = better(best, k, first(choice, best.counter.menu(k)), bought);
        }
        return best;
    }

    private static List<Choice> first(Choice choice, List<Choice> menu) {
        List<Choice> moved = new ArrayList<>(menu);
        moved.removeIf(other -> other == choice);
        moved.add(0, choice);
        return moved;
    }

    /** A counter and what it earns by course. */
    private record Judged(Counter counter, double[] margins) {

        double mean() {
            return Counter.mean(margins);
        }
    }

    private Judged judged(Counter counter, int[] bought) {
        return new Judged(counter, counter.margins(bought, courses));
    }

    /** A counter that offers a class something else, where that is better. */
    private Judged better(Judged known, int k, List<Choice> menu, int[] bought) {
        if (menu.equals(known.counter.menu(k))) {
            return known;
        }
        Counter other = known.counter.with(k, menu);
        double[] margins = other.ifBetter(bought, courses, FIRST_LOOK, known.margins, ALIKE, course -> course.has(k));
        return margins == null ? known : better(known, new Judged(other, margins));
    }

    private static Judged better(Judged known, Judged other) {
        return other.mean() > known.mean() + WORTH_A_CHANGE * Math.abs(known.mean()) ? other : known;
    }
}
