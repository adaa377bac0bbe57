package sledwright.explain;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.domain.Availability;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.explain.conflict.Conflict;
import sledwright.explain.conflict.Demand;
import sledwright.explain.conflict.Demands;
import sledwright.explain.conflict.Feasibility;
import sledwright.explain.conflict.Impossibility;
import sledwright.explain.conflict.Relaxation;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.rules.stock.InStock;

/** Requests on the demo catalogue that cannot be met. Every claim is held against a search that remembers nothing. */
class ImpossibleRequestsTest {

    private static Job.Quote job(String scenario, List<String> sets) {
        return (Job.Quote) RequestReader.read(Source.of(Path.of("scenarios", scenario + ".yaml")), sets, Optional.empty(), Set.of(Kind.QUOTE));
    }

    private static Findings search(Job.Quote job) {
        return new Search(job.catalog()).run(job.request().withAlternatives(1, 0), Deadline.never());
    }

    private static boolean isPossible(Job.Quote job, WhatIf terms) {
        return new Oracle(job.catalog(), new Search(job.catalog()), Deadline.never()).cheapest(terms).isPresent();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "too-much-for-the-money |",
        "render-node | limit.price=300",
        "render-node | require.cores=44; limit.power_w=300",
        "render-node | limit.power_w=100; limit.price=100000",
        "render-node | require.spare_slots=40; limit.price=100000",
        "render-node | require.gb_per_core=200; limit.price=100000",
        "render-node | limit.conditions=[new]; limit.price=100000",
        "render-node | require.memory_mode=mirrored; require.memory_gb=5000; limit.price=100000",
        "render-node | use=[S2-10, S2-12]",
        "render-farm | limit.price=300",
        "scarce-batch | machines=60",
        "small-web-node | limit.price=1",
        "in-memory-database | limit.lead_days=0",
        "hot-mountain-site | limit.inlet_c=45", "hot-mountain-site | limit.inlet_c=36", "hot-mountain-site | limit.altitude_m=4000; limit.inlet_c=33",
        "low-line-mains | require.cores=128",
        "mirrored-ledger | require.memory_gb=2000; require.spare_slots=30",
        "parts-on-hand | require.cores=100",
        "sled-upgrade | forbid=[S2-18, S2-16, FINCH-S4]; limit.lead_days=3",
        "flow-simulation | require.gbs_per_core=60; limit.conditions=[new]",
        "licence-by-core | require.base_ghz=3.7; require.all_core_ghz=4.5",
        "rank-sparing-archive | require.memory_gb=4000; require.processors=1",
    })
    void whatIsSaidHolds(String scenario, String changes) {
        List<String> sets = changes == null ? List.of() : List.of(changes.split("; "));
        Job.Quote job = job(scenario, sets);
        Search search = new Search(job.catalog());
        Findings findings = search.run(job.request(), Deadline.never());
        assertThat(findings.status()).isEqualTo(Status.IMPOSSIBLE);
        Explanation said = new Explainer(job.catalog(), search, Deadline.never()).explain(findings, List.of());
        assertThat(said.conflicts()).isNotEmpty().hasSizeLessThanOrEqualTo(Impossibility.ENOUGH);
        assertThat(said.relaxations()).isNotEmpty().hasSizeLessThanOrEqualTo(Impossibility.ENOUGH);
        said.conflicts().forEach(conflict -> isMinimal(job, conflict));
        said.relaxations().forEach(relaxation -> works(job, scenario, sets, relaxation));
        assertThat(said.relaxations()).extracting(Relaxation::price).isSorted();
    }

    private static void isMinimal(Job.Quote job, Conflict conflict) {
        List<Demand> demands = Demands.of(WhatIf.of(job.request(), Optional.empty()), job.catalog());
        Feasibility feasibility = new Feasibility(WhatIf.of(job.request(), Optional.empty()), demands,
                new Oracle(job.catalog(), new Search(job.catalog()), Deadline.never()));
        Set<Demand> members = new HashSet<>(demands);
        members.removeIf(demand -> conflict.members().stream()
                .noneMatch(member -> member.key().equals(demand.key()) && member.sku().equals(demand.sku())));
        assertThat(members).hasSameSizeAs(conflict.members());
        assertThat(isPossible(job, feasibility.terms(members))).as(conflict.message()).isFalse();
        for (Demand demand : members) {
            Set<Demand> others = new HashSet<>(members);
            others.remove(demand);
            assertThat(isPossible(job, feasibility.terms(others))).as("%s without %s", conflict.message(), demand.key()).isTrue();
        }
    }

    /** Applies what is advised as a user would, and leaves out one change after the other. */
    private static void works(Job.Quote job, String scenario, List<String> sets, Relaxation relaxation) {
        if (relaxation.keys().contains(InStock.STOCK)) {
            return;
        }
        List<String> changes = relaxation.changes().stream()
                .map(change -> change.key() + "=" + (change.to().isEmpty() ? "null" : change.to())).toList();
        Findings changed = search(job(scenario, joined(sets, changes)));
        assertThat(changed.status()).as(relaxation.message()).isEqualTo(Status.PROVED);
        Job.Quote cheapest = job(scenario, joined(joined(sets, changes), List.of("objective=cheapest")));
        assertThat(cheapest.catalog().amount(Math.round(search(cheapest).best()))).as(relaxation.message()).isEqualTo(relaxation.price());
        assertThat(relaxation.message()).contains(relaxation.price().toPlainString());
        for (String change : changes) {
            List<String> fewer = new ArrayList<>(changes);
            fewer.remove(change);
            assertThat(search(job(scenario, joined(sets, fewer))).status()).as("%s without %s", relaxation.message(), change)
                    .isEqualTo(Status.IMPOSSIBLE);
        }
        for (Relaxation.Change change : relaxation.changes()) {
            beyond(change).ifPresent(further -> {
                List<String> more = joined(joined(sets, changes), List.of(change.key() + "=" + further));
                assertThat(search(job(scenario, more)).status()).as("%s with %s at %s", relaxation.message(), change.key(), further)
                        .isEqualTo(Status.IMPOSSIBLE);
            });
        }
    }

    /** A little nearer to what was asked. */
    private static Optional<String> beyond(Relaxation.Change change) {
        return switch (change.key()) {
            case "require.cores", "require.spare_slots", "machines" -> Optional.of(String.valueOf(Integer.parseInt(change.to()) + 1));
            case "limit.lead_days" -> Optional.of(String.valueOf(Integer.parseInt(change.to()) - 1));
            case "limit.price" -> Optional.of(new java.math.BigDecimal(change.to()).subtract(new java.math.BigDecimal("0.01")).toPlainString());
            case "limit.power_w" -> Optional.of(new java.math.BigDecimal(change.to()).subtract(new java.math.BigDecimal("0.001")).toPlainString());
            case "limit.inlet_c", "limit.altitude_m", "require.memory_gb", "require.bandwidth_gbs", "require.throughput", "require.base_ghz",
                    "require.all_core_ghz", "require.gb_per_core", "require.gbs_per_core" -> change.to().isEmpty() ? Optional.empty()
                    : Optional.of(new java.math.BigDecimal(change.to()).add(new java.math.BigDecimal("0.001")).toPlainString());
            default -> Optional.empty();
        };
    }

    private static List<String> joined(List<String> some, List<String> more) {
        List<String> all = new ArrayList<>(some);
        all.addAll(more);
        return all;
    }

    @Test
    void unlimitedStockWithTheUnitsThatAreMissingIsEnough() {
        Job.Quote job = job("scarce-batch", List.of("machines=60"));
        Search search = new Search(job.catalog());
        Explanation said = new Explainer(job.catalog(), search, Deadline.never()).explain(search.run(job.request(), Deadline.never()), List.of());
        Relaxation stock = said.relaxations().stream().filter(way -> way.keys().equals(List.of("stock"))).findFirst().orElseThrow();
        var lots = new java.util.HashMap<>(job.catalog().lots());
        var matcher = java.util.regex.Pattern.compile("(\\d+) more units? of (\\S+?)(,| and|:)").matcher(stock.message());
        while (matcher.find()) {
            int more = Integer.parseInt(matcher.group(1));
            lots.computeIfPresent(matcher.group(2), (sku, offers) -> {
                var first = offers.stream().min(java.util.Comparator.comparingInt(sledwright.domain.Lot::leadDays)).orElseThrow();
                var grown = new sledwright.domain.Lot(first.sku(), first.lot(), first.supplier(), first.condition(),
                        new Availability(first.available() + more, first.leadDays()), first.breaks(), first.onHand());
                return offers.stream().map(lot -> lot == first ? grown : lot).toList();
            });
        }
        assertThat(new Search(job.catalog().withLots(lots)).run(job.request(), Deadline.never()).status()).isEqualTo(Status.PROVED);
        assertThat(new Search(job.catalog()).run(job.request(), Deadline.never()).status()).isEqualTo(Status.IMPOSSIBLE);
    }

    @Test
    void timeThatIsUpIsSaid() {
        Job.Quote job = job("too-much-for-the-money", List.of());
        Search search = new Search(job.catalog());
        Findings findings = search.run(job.request(), Deadline.never());
        Explanation said = new Explainer(job.catalog(), search, Deadline.in(java.time.Duration.ZERO)).explain(findings, List.of("S2-10"));
        assertThat(said.conflicts()).isEmpty();
        assertThat(said.relaxations()).isEmpty();
        assertThat(said.notes()).singleElement().asString().startsWith("Time ran out");
    }
}
