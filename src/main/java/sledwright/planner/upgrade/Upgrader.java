package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Labour;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.Objective;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.DefectException;
import sledwright.planner.Outcome;
import sledwright.planner.Planner;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.rules.stock.Budget;

/** Finds the least that must be spent so that installed machines answer a request. */
public final class Upgrader {

    private final Catalog shop;
    private final Request request;
    private final Installed installed;
    private final Catalog catalog;
    private final Request asked;
    private final Search search;
    private final Planner planner;

    /**
     * @param request its machines are the installed ones; its platforms are those to choose from where machines are bought whole
     * @param seed    the same seed plans the same
     */
    public Upgrader(Catalog shop, Request request, Installed installed, long seed) {
        this.shop = shop;
        this.request = request;
        this.installed = installed;
        catalog = UpgradeStock.of(shop, request, installed);
        asked = UpgradeStock.asked(request, installed);
        search = new Search(catalog);
        planner = new Planner(seed);
    }

    /** The shop's stock with the installed parts in it, at prices that make what an order costs what the customer spends. */
    public Catalog catalog() {
        return catalog;
    }

    /** The search of that stock. */
    public Search search() {
        return search;
    }

    /** The request as that stock answers it. */
    public Findings findings(Deadline deadline) {
        return search.run(asked, deadline);
    }

    /**
     * The answer.
     *
     * @throws DefectException when what was found breaks a rule, or is not worth what the search says
     */
    public Upgrade answer(Findings findings, Deadline deadline) {
        Outcome outcome = planner.plan(findings);
        List<Violation> misses = misses();
        Optional<Plan> change = outcome.ranked().stream().findFirst().map(judged -> plan(judged.order()));
        Optional<Plan> plan = misses.isEmpty()
                ? Optional.of(change.filter(other -> other.spend().total() < licence()).orElseGet(this::asItStands))
                : change;
        Findings whole = search.on(shop).run(wholeRequest(), deadline);
        OptionalLong bound = bound(outcome, misses.isEmpty());
        boolean proved = plan.isPresent() && bound.isPresent() && bound.getAsLong() >= plan.get().spend().total();
        return new Upgrade(request, installed, breaches(), misses,
                proved ? Status.PROVED : plan.isEmpty() ? outcome.status() : Status.BEST_FOUND, bound, plan,
                whole.ranked().stream().findFirst().map(order -> new Whole(order, installed.creditOfMachine() * installed.machines())),
                whole.status() != Status.BEST_FOUND);
    }

    private OptionalLong bound(Outcome outcome, boolean asItStands) {
        long least = Double.isFinite(outcome.bound()) ? Math.round(outcome.bound()) : Long.MAX_VALUE;
        long known = asItStands && (least < Long.MAX_VALUE || outcome.status() == Status.IMPOSSIBLE) ? Math.min(least, licence()) : least;
        return known == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(known);
    }

    /** The machines bought whole: the old ones fetch their credit, so the limit of what is spent leaves so much more for the price. */
    private Request wholeRequest() {
        Limits limit = request.limit();
        OptionalLong most = limit.price().isEmpty() ? limit.price()
                : OptionalLong.of(limit.price().getAsLong() + installed.creditOfMachine() * installed.machines());
        return request.withObjective(Objective.CHEAPEST).withAlternatives(1, request.step()).withLimit(limit.withPrice(most));
    }

    private List<Violation> breaches() {
        return Rulebook.judge(Machine.of(installed.build(), Request.named(request.name()), shop.throughputFactors()));
    }

    /** What the machines as they stand do not keep of the request. */
    private List<Violation> misses() {
        List<Violation> broken = new ArrayList<>(Rulebook.judge(Machine.of(installed.build(), asked, shop.throughputFactors())));
        if (!Budget.allows(request.limit(), licence())) {
            broken.addAll(new Budget().judge(asItStands().order()));
        }
        return broken;
    }

    /** The software of the machines as they stand, minor units. */
    private long licence() {
        return request.licence().of(installed.build().cores(), installed.build().processors().size()) * installed.machines();
    }

    private Plan asItStands() {
        List<Build> machines = Collections.nCopies(installed.machines(), installed.build());
        List<Pick> picks = installed.build().partCounts().keySet().stream().map(sku -> new Pick(free(sku), installed.units(sku))).toList();
        Order order = Order.of(machines, picks, request, shop.with(shop.lots(), new Labour(0, 0)));
        return new Plan(order, new Spend(0, 0, licence(), 0), List.of(new Refit(installed.machines(), installed.build(), List.of())),
                new TreeMap<>(), 0);
    }

    private Lot free(String sku) {
        return Lot.own(sku, Lot.INSTALLED, installed.units(sku), 0);
    }

    private Plan plan(Order found) {
        List<Build> machines = arranged(found);
        List<Pick> picks = found.picks().stream().map(this::atShopPrice).toList();
        int modulesPutIn = picks.stream().filter(pick -> shop.module(pick.sku()).isPresent() && !isInstalled(pick))
                .mapToInt(Pick::quantity).sum();
        SortedMap<String, Integer> pulled = pulled(found);
        Labour labour = shop.labour();
        Spend spend = new Spend(picks.stream().mapToLong(Pick::total).sum(),
                labour.perMachine() * installed.machines() + labour.perModule() * modulesPutIn, found.price().licence(),
                pulled.entrySet().stream().mapToLong(part -> installed.credit(part.getKey()) * part.getValue()).sum());
        if (spend.total() != found.price().total()) {
            throw new DefectException("The search finds %d to spend, the plan comes to %s".formatted(found.price().total(), spend));
        }
        Map<Build, Integer> alike = new LinkedHashMap<>();
        machines.forEach(build -> alike.merge(build, 1, Integer::sum));
        List<Refit> refits = alike.entrySet().stream()
                .map(group -> new Refit(group.getValue(), group.getKey(), Bench.steps(installed.build(), group.getKey()))).toList();
        return new Plan(Order.of(machines, picks, request, shop), spend, refits, pulled, modulesPutIn);
    }

    private static boolean isInstalled(Pick pick) {
        return pick.lot().lot().equals(Lot.INSTALLED);
    }

    private SortedMap<String, Integer> pulled(Order found) {
        SortedMap<String, Integer> pulled = new TreeMap<>();
        installed.build().partCounts().keySet().forEach(sku -> pulled.put(sku, installed.units(sku)));
        found.picks().stream().filter(Upgrader::isInstalled).forEach(pick -> pulled.merge(pick.sku(), -pick.quantity(), Integer::sum));
        pulled.values().removeIf(units -> units == 0);
        return pulled;
    }

    /** The same units at what the shop asks for them; the customer's own are free. */
    private Pick atShopPrice(Pick pick) {
        Lot lot = isInstalled(pick) ? free(pick.sku())
                : pick.lot().onHand() ? Lot.onHand(pick.sku(), pick.lot().available())
                : shop.lots(pick.sku()).stream().filter(offer -> offer.lot().equals(pick.lot().lot())).findFirst().orElseThrow();
        return new Pick(lot, pick.quantity());
    }

    /** The found machines, with as many modules where they stand as can be. */
    private List<Build> arranged(Order found) {
        boolean mirrored = request.require().mode() == MemoryMode.MIRRORED;
        Map<Build, Build> known = new HashMap<>();
        List<Build> dealt = OwnModules.dealt(found.machines(), installed.build());
        if (dealt.stream().distinct().anyMatch(build -> !judge(build).isEmpty())) {
            // A part that every machine must hold may be dealt away.
            dealt = found.machines();
        }
        List<Build> machines = dealt.stream()
                .map(build -> known.computeIfAbsent(build, key -> SlotPlan.of(key, installed.build(), mirrored))).toList();
        List<Violation> broken = known.values().stream().flatMap(build -> judge(build).stream()).toList();
        if (!broken.isEmpty()) {
            throw new DefectException("Moving as little as can be breaks the rules:\n%s".formatted(
                    broken.stream().map(violation -> violation.rule() + " " + violation.message()).collect(Collectors.joining("\n"))));
        }
        return machines;
    }

    private List<Violation> judge(Build build) {
        return Rulebook.judge(Machine.of(build, asked, shop.throughputFactors()));
    }
}
