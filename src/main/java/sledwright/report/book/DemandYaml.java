package sledwright.report.book;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.book.PastDemand;
import sledwright.book.PastDemand.AskedClass;
import sledwright.domain.CardWish;
import sledwright.domain.Condition;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.VolumeWish;
import sledwright.domain.Workload;
import sledwright.words.Numbers;

/** What was asked for, as the plan of a stock that 'restock' takes. Texts stand as in JSON, which is YAML, too. */
public final class DemandYaml {

    /** What is said where there is nothing to plan from, in the place of a plan. */
    public static final String NOTHING = "There is nothing to plan from: nobody has bought anything of which it is known what one costs.";

    private static final String NO_SUPPLY =
            "# supply is missing: the table of what suppliers offer; name it here, or with --set supply=FILE";
    private static final int HUNDRED = 100;

    private final List<String> lines = new ArrayList<>();

    private DemandYaml() {
    }

    /**
     * The plan.
     *
     * @param supply  the table of what suppliers offer; empty: whoever takes the plan names one
     * @param horizon how many months are looked ahead
     */
    public static String of(PastDemand demand, Path catalog, Optional<Path> supply, int horizon) {
        return new DemandYaml().plan(demand, List.of("catalog: %s".formatted(text(catalog.toAbsolutePath().normalize().toString())),
                supply.map(table -> "supply: %s".formatted(text(table.toAbsolutePath().normalize().toString()))).orElse(NO_SUPPLY)),
                horizon);
    }

    /**
     * The plan of a shop whose catalogue is known, with what suppliers offer in it.
     *
     * @param supply rows by their headings
     * @param budget most to spend; empty: any amount
     */
    public static String of(PastDemand demand, List<Map<String, String>> supply, int horizon, Optional<String> budget) {
        List<String> own = new ArrayList<>();
        own.add(supply.isEmpty() ? "supply: []" : "supply:");
        supply.forEach(row -> own.add(row.entrySet().stream().map(cell -> "%s: %s".formatted(text(cell.getKey()), text(cell.getValue())))
                .collect(Collectors.joining(", ", "  - { ", " }"))));
        budget.ifPresent(most -> own.add("budget: " + text(most)));
        return new DemandYaml().plan(demand, own, horizon);
    }

    private String plan(PastDemand demand, List<String> own, int horizon) {
        head(demand);
        if (!demand.isPlanned()) {
            demand.classes().forEach(this::add);
            add("# " + NOTHING);
            return written();
        }
        add("kind: restock");
        add("name: %s".formatted(text("demand of %s to %s".formatted(demand.from(), demand.until()))));
        own.forEach(this::add);
        add("horizon_months: %s".formatted(horizon));
        add("classes:");
        demand.classes().forEach(this::add);
        return written();
    }

    private String written() {
        return String.join("\n", lines) + "\n";
    }

    private void head(PastDemand demand) {
        int asked = demand.classes().stream().flatMap(one -> one.months().asked().stream()).mapToInt(Integer::intValue).sum();
        add("# %s from %s to %s, in %s".formatted(Numbers.counted(asked, "quote"), demand.from(), demand.until(),
                Numbers.counted(demand.classes().size(), "class", "classes")));
        if (!demand.unread().isEmpty()) {
            add("# not among them, since their requests cannot be read with today's catalogue: %s".formatted(demand.unread().stream()
                    .map(Object::toString).collect(Collectors.joining(", "))));
        }
    }

    private void add(AskedClass asked) {
        add("  # %s: asked for in %s, bought %s, lost %s, still open %s, without a build %s%s".formatted(plain(asked.name()),
                Numbers.counted(sum(asked.months().asked()), "quote"), sum(asked.months().bought()), asked.lost(), asked.open(),
                sum(asked.months().unmet()), asked.winRate().isEmpty() ? "" : "; bought of what was decided: %s %%"
                        .formatted(Math.round(HUNDRED * asked.winRate().getAsDouble()))));
        if (!asked.isPlanned()) {
            add(sum(asked.months().bought()) == 0 ? "  # no class, for nobody has bought it"
                    : "  # no class, for what one of them costs is not known: they were bought in orders or in another currency");
            return;
        }
        Request request = asked.request();
        add("  - name: " + text(asked.name()));
        add("    demand: { months: [%s] }".formatted(asked.orders().stream().map(Object::toString).collect(Collectors.joining(", "))));
        add("    price_accepted: " + asked.accepted().map(BigDecimal::toPlainString).orElseThrow());
        if (request.machines() > 1) {
            add("    machines: " + request.machines());
        }
        list("platforms", request.platforms());
        list("forbid", request.forbid());
        list("use", request.use());
        workload(request.require().work().workload());
        require(request);
        limit(request.limit(), asked);
        if (!request.equipment().extras().isEmpty()) {
            add("    extras: { %s }".formatted(new TreeMap<>(request.equipment().extras()).entrySet().stream()
                    .map(extra -> "%s: %s".formatted(text(extra.getKey()), extra.getValue())).collect(Collectors.joining(", "))));
        }
        if (request.equipment().enclosure() == EnclosureFrom.OWN) {
            add("    enclosure: own");
        }
    }

    private static int sum(List<Integer> months) {
        return months.stream().mapToInt(Integer::intValue).sum();
    }

    private void list(String key, Collection<String> skus) {
        if (!skus.isEmpty()) {
            add("    %s: [%s]".formatted(key, new TreeSet<>(skus).stream().map(DemandYaml::text).collect(Collectors.joining(", "))));
        }
    }

    private void workload(Workload workload) {
        if (!workload.equals(Workload.NONE)) {
            add("    workload: { parallel: %s, gb_per_unit: %s, gb_per_core: %s }".formatted(figure(workload.parallel()),
                    figure(workload.gbPerUnit()), figure(workload.gbPerCore())));
        }
    }

    private void require(Request request) {
        Requirements least = request.require();
        List<String> keys = new ArrayList<>();
        put(keys, "processors", least.processors());
        put(keys, "cores", least.cores());
        put(keys, "memory_gb", least.memoryGb());
        put(keys, "bandwidth_gbs", least.bandwidthGbs());
        put(keys, "throughput", least.throughput());
        put(keys, "work", least.work().least());
        put(keys, "base_ghz", least.baseGhz());
        put(keys, "all_core_ghz", least.allCoreGhz());
        put(keys, "gb_per_core", least.gbPerCore());
        put(keys, "gbs_per_core", least.gbsPerCore());
        put(keys, "spare_slots", least.spareSlots());
        if (least.mode() != MemoryMode.INDEPENDENT) {
            keys.add("memory_mode: " + least.mode());
        }
        if (least.populated().balanced()) {
            keys.add("balanced: true");
        }
        if (least.populated().onePart()) {
            keys.add("one_module_part: true");
        }
        if (!request.equipment().volumes().isEmpty()) {
            keys.add("storage: [%s]".formatted(request.equipment().volumes().stream().map(DemandYaml::volume)
                    .collect(Collectors.joining(", "))));
        }
        if (!request.equipment().cards().isEmpty()) {
            keys.add("cards: [%s]".formatted(request.equipment().cards().stream().map(DemandYaml::card).collect(Collectors.joining(", "))));
        }
        if (!keys.isEmpty()) {
            add("    require: { %s }".formatted(String.join(", ", keys)));
        }
    }

    private static String volume(VolumeWish volume) {
        return "{ name: %s, usable_gb: %s, level: %s, kind: %s, interface: %s, hot_spares: %s }".formatted(text(volume.name()),
                figure(volume.usableGb()), volume.level().label(), volume.kind().map(DriveKind::label).orElse("any"),
                volume.link().map(DriveInterface::label).orElse("any"), volume.hotSpares());
    }

    private static String card(CardWish card) {
        List<String> keys = new ArrayList<>();
        card.sku().ifPresent(sku -> keys.add("sku: " + text(sku)));
        card.kind().ifPresent(kind -> keys.add("kind: " + kind.label()));
        put(keys, "ports", card.ports());
        put(keys, "port_gbit", card.portGbit());
        keys.add("count: " + card.count());
        return "{ %s }".formatted(String.join(", ", keys));
    }

    private void limit(Limits limit, AskedClass asked) {
        List<String> keys = new ArrayList<>();
        limit.powerW().ifPresent(most -> put(keys, "power_w", most));
        asked.lead().ifPresent(days -> keys.add("lead_days: " + days));
        limit.inletC().ifPresent(site -> put(keys, "inlet_c", site));
        put(keys, "altitude_m", limit.altitudeM());
        limit.mainsV().ifPresent(site -> put(keys, "mains_v", site));
        if (!limit.conditions().isEmpty()) {
            keys.add("conditions: [%s]".formatted(limit.conditions().stream().sorted().map(Condition::label)
                    .collect(Collectors.joining(", "))));
        }
        if (!keys.isEmpty()) {
            add("    limit: { %s }".formatted(String.join(", ", keys)));
        }
    }

    private static void put(List<String> keys, String key, double figure) {
        if (figure > 0) {
            keys.add("%s: %s".formatted(key, figure(figure)));
        }
    }

    private static String figure(double figure) {
        return Numbers.decimal(figure).toPlainString();
    }

    private static String text(String words) {
        return '"' + plain(words) + '"';
    }

    /** Line feeds and quotation marks would end a text, and what the shop's customers wrote may hold any. */
    private static String plain(String words) {
        StringBuilder plain = new StringBuilder();
        words.codePoints().map(sign -> Character.isISOControl(sign) ? ' ' : sign).forEach(sign ->
                plain.append(sign == '"' || sign == '\\' ? "\\" : "").appendCodePoint(sign));
        return plain.toString();
    }

    private void add(String line) {
        lines.add(line);
    }
}
