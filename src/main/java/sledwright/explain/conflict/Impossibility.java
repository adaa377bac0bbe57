package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import sledwright.domain.Request;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.Unproved;
import sledwright.explain.ask.UnsettledException;
import sledwright.explain.ask.WhatIf;
import sledwright.generator.Doubts;
import sledwright.rules.Order;
import sledwright.rules.stock.InStock;
import sledwright.words.Sentence;

/** Why a request is impossible, and what would be possible. */
public final class Impossibility {

    /** How many conflicts and corrections are listed. */
    public static final int ENOUGH = 5;

    private final WhatIf asked;
    private final List<Demand> demands;
    private final Oracle oracle;
    private final Feasibility feasibility;
    private final MinimalSets<Demand> sets;
    private final List<Doubts> doubts = new ArrayList<>();

    private Impossibility(WhatIf asked, List<Demand> demands, Oracle oracle, Feasibility feasibility) {
        this.asked = asked;
        this.demands = demands;
        this.oracle = oracle;
        this.feasibility = feasibility;
        sets = MinimalSets.of(likelyFirst(demands), feasibility, ENOUGH);
    }

    /** @param request cannot be met */
    public static Impossibility of(Request request, Oracle oracle) {
        return of(WhatIf.of(request, Optional.empty()), oracle);
    }

    private static Impossibility of(WhatIf asked, Oracle oracle) {
        List<Demand> demands = Demands.of(asked, oracle.catalog());
        return new Impossibility(asked, demands, oracle, new Feasibility(asked, demands, oracle));
    }

    /** @param request cannot be met by machines that stand already: how many there are, and on which platform, is no choice */
    public static Impossibility ofStanding(Request request, Oracle oracle) {
        WhatIf asked = WhatIf.of(request, Optional.empty());
        List<Demand> demands = Demands.of(asked, oracle.catalog()).stream()
                .filter(demand -> !demand.isOf(ChoiceDemands.MACHINES) && !demand.isOf(ChoiceDemands.PLATFORMS)).toList();
        return new Impossibility(asked, demands, oracle, new Feasibility(asked, demands, oracle, false));
    }

    /** @param request cannot be met with the part in any machine; that one holds it is beyond question */
    public static Impossibility with(String sku, Request request, Oracle oracle) {
        return of(WhatIf.of(request, Optional.of(sku)), oracle);
    }

    /** The price is part of most conflicts, and those are found soonest that lie among the first demands. */
    private static List<Demand> likelyFirst(List<Demand> demands) {
        return demands.stream().sorted(Comparator.comparing(demand -> !LimitDemands.isPrice(demand))).toList();
    }

    /** The conflicts, those of few demands first. */
    public List<Conflict> conflicts() {
        List<Conflict> told = new ArrayList<>();
        Set<List<Demand>> known = new HashSet<>();
        sets.conflicts().stream().sorted(Comparator.comparingInt(Set::size)).limit(ENOUGH).map(this::inOrder).forEach(conflict -> {
            try {
                List<Demand> needed = feasibility.isEven() ? conflict : needed(conflict);
                // What was unmet beside fewer demands may be met by what the others bring.
                if (known.add(needed) && (feasibility.isEven() || !isPossible(needed))) {
                    told.add(conflict(needed));
                }
            } catch (UnsettledException open) {
                doubts.add(open.doubts());
            }
        });
        return told;
    }

    /** The corrections, those that open the cheapest build first. */
    public List<Relaxation> relaxations() {
        List<Relaxation> told = new ArrayList<>();
        Set<List<Demand>> known = new HashSet<>();
        sets.corrections().stream().map(this::inOrder).forEach(correction -> {
            try {
                List<Demand> changed = feasibility.isEven() ? correction : worthwhile(correction);
                if (!changed.isEmpty() && known.add(changed)) {
                    relaxation(changed).ifPresent(told::add);
                }
            } catch (UnsettledException open) {
                doubts.add(open.doubts());
            }
        });
        told.sort(Comparator.comparing(Relaxation::price).thenComparingInt(relaxation -> relaxation.changes().size()));
        return told.stream().limit(ENOUGH).toList();
    }

    /** What has to be said about the two lists; ask when they are made. */
    public List<Sentence> notes() {
        if (!doubts.isEmpty() || !sets.complete() && sets.conflicts().size() < ENOUGH) {
            List<Doubts> all = new ArrayList<>(doubts);
            all.add(sets.doubts());
            return List.of(Unproved.sentence("Time ran out before every conflict and every way out was found.",
                    "Not every conflict and every way out could be found.", Doubts.ofAll(all)));
        }
        return sets.complete() && sets.conflicts().size() <= ENOUGH && sets.corrections().size() <= ENOUGH ? List.of()
                : List.of(Sentence.plain("There are further conflicts or ways out; these are the first that were found."));
    }

    /** What each platform lacks where nothing is possible whatever is asked; where only the platforms are in the way, what these lack. */
    public List<Lacks.Lack> lacks() {
        boolean ofAll = sets.conflicts().stream().anyMatch(Set::isEmpty);
        Optional<Set<Demand>> platforms = sets.conflicts().stream().filter(conflict -> asked.held().isPresent()
                && conflict.stream().allMatch(demand -> demand.isOf(ChoiceDemands.PLATFORMS))).findFirst();
        if (!ofAll && platforms.isEmpty()) {
            return List.of();
        }
        Lacks lacks = new Lacks(feasibility.terms(Set.of()), asked.request().equipment(), oracle.catalog());
        return lacks.on(oracle.catalog().platforms().stream()
                .filter(platform -> ofAll || asked.request().platforms().contains(platform.sku())).toList());
    }

    /**
     * What is left of a conflict without demands that do not matter: a part that is held, or that stands already, may be served by what
     * another demand brings.
     */
    private List<Demand> needed(List<Demand> conflict) {
        List<Demand> left = new ArrayList<>(conflict);
        // What was needed beside one demand need not be without it.
        for (Optional<Demand> idle = idle(left); idle.isPresent(); idle = idle(left)) {
            left.remove(idle.get());
        }
        return left;
    }

    /** One without which the others cannot be met, either. */
    private Optional<Demand> idle(List<Demand> conflict) {
        return conflict.stream().filter(demand -> {
            Set<Demand> others = new HashSet<>(conflict);
            others.remove(demand);
            return !isPossible(others);
        }).findFirst();
    }

    private boolean isPossible(Collection<Demand> kept) {
        return oracle.isPossible(feasibility.terms(Set.copyOf(kept)));
    }

    private List<Demand> inOrder(Set<Demand> some) {
        return demands.stream().filter(some::contains).toList();
    }

    private Conflict conflict(List<Demand> conflict) {
        List<Conflict.Member> members = conflict.stream()
                .map(demand -> new Conflict.Member(demand.key(), demand.sku(), demand.words())).toList();
        List<String> rules = conflict.stream().flatMap(demand -> demand.rules().stream()).distinct().toList();
        if (conflict.isEmpty()) {
            return new Conflict(members, rules, Sentence.plain("No build can be made of this catalogue, whatever is asked."));
        }
        return new Conflict(members, rules, conflict.size() == 1 ? alone(conflict.get(0)) : together(conflict));
    }

    private Sentence alone(Demand demand) {
        if (demand.isOf(ChoiceDemands.FORBID) && demand.sku().equals(asked.held())) {
            return Sentence.of("The request forbids %s.", demand.sku().get());
        }
        Sentence alone = reaches(List.of(demand)).get(0);
        Sentence reach = asked.held().map(held -> Sentence.of("with %s, %s", held, alone)).orElse(alone).capital();
        return demand.isOf(InStock.STOCK) ? Sentence.of("%s.", reach)
                : Sentence.of("%s; the request asks for %s.", reach, demand.words());
    }

    private Sentence together(List<Demand> conflict) {
        return Sentence.of(conflict.size() == 2 ? "%s exclude each other: %s." : "%s exclude one another: %s.",
                Sentence.list(conflict.stream().map(Demand::words).toList()), Sentence.joined("; ", reaches(conflict))).capital();
    }

    /** How far the demand that explains best can go beside the others; where stock is among these, what it lacks as well. */
    private List<Sentence> reaches(List<Demand> conflict) {
        Demand last = conflict.get(conflict.size() - 1);
        Demand told = LimitDemands.isPrice(last) ? last : conflict.get(0);
        List<Sentence> reaches = new ArrayList<>();
        for (Demand demand : conflict) {
            if (demand == told || demand.isOf(InStock.STOCK)) {
                Set<Demand> others = new HashSet<>(conflict);
                others.remove(demand);
                Sentence reach = demand.nearest().on(feasibility.narrowed(others), oracle).reach();
                reaches.add(others.isEmpty() ? reach : Sentence.of("with %s, %s", kept(demand, others), reach));
            }
        }
        return reaches;
    }

    /** The demands beside one that gives way. */
    private static Sentence kept(Demand given, Set<Demand> others) {
        if (others.size() == 1) {
            return others.iterator().next().words();
        }
        return Sentence.plain(given.isOf(InStock.STOCK) ? "the others and any stock" : "the others");
    }

    /** What of a correction has to change; nothing where what is left cannot be met by itself, but only with what another demand brings. */
    private List<Demand> worthwhile(List<Demand> correction) {
        List<Demand> changed = new ArrayList<>(correction);
        if (!isPossible(beside(changed))) {
            return List.of();
        }
        for (Demand demand : correction) {
            Set<Demand> kept = beside(changed);
            kept.add(demand);
            if (isPossible(kept)) {
                changed.remove(demand);
            }
        }
        return changed;
    }

    private Set<Demand> beside(List<Demand> correction) {
        Set<Demand> kept = new HashSet<>(demands);
        correction.forEach(kept::remove);
        return kept;
    }

    /**
     * Gives way in one demand after the other as little as can be, while those still to come are given up; nothing where that takes a
     * part that must be there along, and less would do.
     */
    private Optional<Relaxation> relaxation(List<Demand> correction) {
        WhatIf terms = feasibility.narrowed(beside(correction));
        Set<String> use = terms.request().use();
        List<Demand> brought = demands.stream().filter(demand -> demand.isOf(ChoiceDemands.USE) && !correction.contains(demand)
                && !use.contains(demand.sku().orElseThrow())).toList();
        List<Relaxation.Change> changes = new ArrayList<>();
        List<Sentence> advice = new ArrayList<>();
        for (Demand demand : demands) {
            if (!correction.contains(demand) && !brought.contains(demand)) {
                continue;
            }
            Optional<WhatIf> served = ChoiceDemands.using(demand, terms).filter(oracle::isPossible);
            if (served.isPresent()) {
                terms = served.get();
                continue;
            }
            if (brought.contains(demand) && isMoreThanEnough(demand, correction)) {
                return Optional.empty();
            }
            if (!feasibility.isEven() && oracle.cheapest(terms).isEmpty()) {
                // What gave way in part may be harder to have than nothing of it.
                return Optional.empty();
            }
            Concession concession = nearest(demand, terms, brought);
            terms = concession.terms();
            boolean ofList = demand.isOf(ChoiceDemands.FORBID) || demand.isOf(ChoiceDemands.USE);
            if (ofList) {
                changes.removeIf(change -> change.key().equals(demand.key()));
            }
            changes.add(new Relaxation.Change(demand.key(), ofList ? Optional.empty() : demand.sku(), demand.asked(), concession.to()));
            advice.add(concession.advice());
        }
        String used = ChoiceDemands.list(terms.request().use());
        changes.replaceAll(change -> change.key().equals(ChoiceDemands.USE) ? change.to(used) : change);
        Order order = oracle.cheapest(terms).orElseThrow();
        long price = order.price().total();
        // The price of machines that stand is what is spent on them, less what is pulled.
        return Optional.of(new Relaxation(changes, oracle.catalog().amount(price), Sentence.of(
                price < 0 ? "%s: what is pulled then fetches %s more than is spent." : "%s: builds from %s.",
                Sentence.list(advice), order.words(Math.abs(price))).capital()));
    }

    /** Whether, without a part that was asked for, not all of a correction has to change. */
    private boolean isMoreThanEnough(Demand part, List<Demand> correction) {
        return correction.stream().anyMatch(demand -> {
            Set<Demand> kept = beside(correction);
            kept.remove(part);
            kept.add(demand);
            return isPossible(kept);
        });
    }

    /** As much of a demand as goes with parts that must be there and that it was to bring; where nothing does, as much as is possible. */
    private Concession nearest(Demand demand, WhatIf terms, List<Demand> brought) {
        if (EquipmentDemands.isOne(demand)) {
            WhatIf with = terms;
            for (Demand part : brought) {
                with = ChoiceDemands.using(part, with).orElseThrow();
            }
            Concession nearest = demand.nearest().on(with, oracle);
            if (brought.isEmpty() || oracle.isPossible(nearest.terms())) {
                return nearest;
            }
        }
        return demand.nearest().on(terms, oracle);
    }
}
