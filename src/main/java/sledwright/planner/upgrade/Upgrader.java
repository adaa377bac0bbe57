package sledwright.planner.upgrade;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.Objective;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Doubts;
import sledwright.generator.Exact;
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

/** Finds the least that must be spent so that installed machines answer a request. */
public final class Upgrader {

    private final Catalog shop;
    private final Request request;
    private final Installed installed;
    private final Catalog catalog;
    private final Request asked;
    private final UpgradeSearch search;
    private final Planner planner = new Planner();

    /**
     * @param request its machines are the installed ones; its platforms are those to choose from where machines are bought whole
     */
    public Upgrader(Catalog shop, Request request, Installed installed) {
        this.shop = shop;
        this.request = request;
        this.installed = installed;
        catalog = UpgradeStock.of(shop, request, installed);
        asked = request.withPlatforms(Set.of(installed.build().platform().sku())).withOnHand(Map.of()).withObjective(Objective.CHEAPEST)
                .withAlternatives(1, request.step());
        search = new UpgradeSearch(shop, installed, catalog, new Search(catalog));
    }

    /** The shop's stock with the installed parts in it, at prices that make what an order costs what the customer spends. */
    public Catalog catalog() {
        return catalog;
    }

    /** The search of that stock. */
    public Exact search() {
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
        Optional<Plan> plan = outcome.ranked().stream().findFirst().map(judged -> plan(judged.order()));
        Findings whole = search.ofTheShop().run(wholeRequest(), deadline);
        return new Upgrade(request, installed, breaches(), search.misses(asked), new Upgrade.Proof(outcome.status(),
                Double.isFinite(outcome.bound()) ? OptionalLong.of(Math.round(outcome.bound())) : OptionalLong.empty(),
                doubts(outcome.status(), outcome.doubts()), doubts(whole.status(), whole.doubts())), plan,
                whole.ranked().stream().findFirst().map(order -> new Whole(order, installed.creditOfMachines())));
    }

    private static Doubts doubts(Status status, Doubts found) {
        return status != Status.BEST_FOUND ? Doubts.NONE : found.none() ? Doubts.of(Doubts.Cause.TIME) : found;
    }

    /** The machines bought whole: the old ones fetch their credit, so the limit of what is spent leaves so much more for the price. */
    private Request wholeRequest() {
        Request cheapest = request.withObjective(Objective.CHEAPEST).withAlternatives(1, request.step());
        return UpgradeSearch.raised(cheapest, installed.creditOfMachines());
    }

    private List<Violation> breaches() {
        return Rulebook.judge(Machine.of(installed.build(), Request.named(request.name()), shop.throughputFactors()));
    }

    private Plan plan(Order found) {
        return search.isAsItStands(found) ? asItStands(found) : change(found);
    }

    private Plan asItStands(Order found) {
        Order order = Order.of(found.machines(), found.picks().stream().map(this::atShopPrice).toList(), request, found.catalog());
        Refit none = new Refit(installed.machines(), installed.build(), List.of(), false);
        return new Plan(order, new Spend(0, 0, found.price().licence(), 0), List.of(none), new TreeMap<>(), PutIn.NOTHING);
    }

    private Lot free(String sku) {
        return Lot.own(sku, Lot.INSTALLED, installed.units(sku), 0);
    }

    private Plan change(Order found) {
        List<Build> machines = arranged(found);
        List<Pick> picks = found.picks().stream().map(this::atShopPrice).toList();
        PutIn putIn = PutIn.of(picks, shop);
        SortedMap<String, Integer> pulled = pulled(found);
        Labour labour = shop.labour();
        Spend spend = new Spend(picks.stream().mapToLong(Pick::total).sum(),
                labour.perMachine() * installed.machines() + putIn.labour(labour), found.price().licence(),
                pulled.entrySet().stream().mapToLong(part -> installed.credit(part.getKey()) * part.getValue()).sum());
        if (spend.total() != found.price().total()) {
            throw new DefectException("The search finds %s to spend, the plan comes to %s".formatted(found.price().total(), spend));
        }
        Map<Build, Integer> alike = new LinkedHashMap<>();
        machines.forEach(build -> alike.merge(build, 1, Integer::sum));
        List<Refit> refits = alike.entrySet().stream()
                .map(group -> new Refit(group.getValue(), group.getKey(), Bench.steps(installed.build(), group.getKey()),
                        Bench.remakes(installed.build(), group.getKey()))).toList();
        return new Plan(Order.of(machines, picks, request, shop), spend, refits, pulled, putIn);
    }

    private SortedMap<String, Integer> pulled(Order found) {
        SortedMap<String, Integer> pulled = new TreeMap<>();
        installed.build().partCounts().keySet().forEach(sku -> pulled.put(sku, installed.units(sku)));
        found.picks().stream().filter(UpgradeSearch::isInstalled).forEach(pick -> pulled.merge(pick.sku(), -pick.quantity(), Integer::sum));
        pulled.values().removeIf(units -> units == 0);
        return pulled;
    }

    /** The same units at what the shop asks for them; the customer's own are free. */
    private Pick atShopPrice(Pick pick) {
        Lot lot = UpgradeSearch.isInstalled(pick) ? free(pick.sku())
                : pick.lot().onHand() ? Lot.onHand(pick.sku(), pick.lot().available())
                : shop.lots(pick.sku()).stream().filter(offer -> offer.lot().equals(pick.lot().lot())).findFirst().orElseThrow();
        return new Pick(lot, pick.quantity());
    }

    /** The found machines, with as many modules, drives and cards where they stand as can be. */
    private List<Build> arranged(Order found) {
        boolean mirrored = request.require().mode() == MemoryMode.MIRRORED;
        Map<Build, Build> known = new HashMap<>();
        List<Build> dealt = OwnParts.dealt(found.machines(), installed.build());
        if (dealt.stream().distinct().anyMatch(build -> !judge(build).isEmpty())) {
            // A part that every machine must hold may be dealt away.
            dealt = found.machines();
        }
        List<Build> machines = dealt.stream()
                .map(build -> known.computeIfAbsent(build, key ->
                        FitoutPlan.of(SlotPlan.of(key, installed.build(), mirrored), installed.build()))).toList();
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
