package sledwright.explain.conflict;

import java.util.ArrayList;
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
        sets.conflicts().stream().sorted(Comparator.comparingInt(Set::size)).limit(ENOUGH).map(this::inOrder).forEach(conflict -> {
            try {
                told.add(conflict(feasibility.narrows() ? conflict : needed(conflict)));
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
                List<Demand> changed = feasibility.narrows() ? correction : worthwhile(correction);
                if (!changed.isEmpty() && known.add(changed)) {
                    told.add(relaxation(changed));
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
            return oracle.cheapest(feasibility.terms(others)).isEmpty();
        }).findFirst();
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
        if (oracle.cheapest(feasibility.terms(beside(changed))).isEmpty()) {
            return List.of();
        }
        for (Demand demand : correction) {
            Set<Demand> kept = beside(changed);
            kept.add(demand);
            if (oracle.cheapest(feasibility.terms(kept)).isPresent()) {
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

    /** Gives way in one demand after the other as little as can be, while those still to come are given up. */
    private Relaxation relaxation(List<Demand> correction) {
        WhatIf terms = feasibility.narrowed(beside(correction));
        List<Relaxation.Change> changes = new ArrayList<>();
        List<Sentence> advice = new ArrayList<>();
        for (Demand demand : correction) {
            Concession concession = demand.nearest().on(terms, oracle);
            terms = concession.terms();
            boolean ofList = demand.isOf(ChoiceDemands.FORBID) || demand.isOf(ChoiceDemands.USE);
            if (ofList) {
                changes.removeIf(change -> change.key().equals(demand.key()));
            }
            changes.add(new Relaxation.Change(demand.key(), ofList ? Optional.empty() : demand.sku(), demand.asked(), concession.to()));
            advice.add(concession.advice());
        }
        Order order = oracle.cheapest(terms).orElseThrow();
        return new Relaxation(changes, oracle.catalog().amount(order.price().total()), Sentence.of("%s: builds from %s.",
                Sentence.list(advice), order.words(order.price().total())).capital());
    }
}
