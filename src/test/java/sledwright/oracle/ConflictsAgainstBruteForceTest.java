package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Card;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.DeliverBy;
import sledwright.domain.Drive;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Extra;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryWish;
import sledwright.domain.Part;
import sledwright.domain.Request;
import sledwright.domain.VolumeWish;
import sledwright.explain.Explainer;
import sledwright.explain.Explanation;
import sledwright.explain.ask.Oracle;
import sledwright.explain.conflict.Conflict;
import sledwright.explain.conflict.Impossibility;
import sledwright.explain.conflict.Relaxation;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.upgrade.Upgrader;
import sledwright.rules.card.AskedCards;
import sledwright.rules.target.Target;

/** What is said of quotes and upgrades that cannot be, against every set of parts: each conflict is one, each correction does what it says. */
class ConflictsAgainstBruteForceTest {

    private static final int SEEDS = 120;
    private static final int EQUIPPED_SEEDS = 20;
    private static final int QUOTES = 40;
    private static final int EQUIPPED_QUOTES = 12;
    private static final int HELD = 12;

    @Test
    void whatIsSaidOfUpgradesHolds() {
        judge(SEEDS, UpgradeCase::random, ConflictsAgainstBruteForceTest::said);
    }

    @Test
    void whatIsSaidOfUpgradesWithDrivesCardsAndExtrasHolds() {
        judge(EQUIPPED_SEEDS, seed -> UpgradeCase.equipped(seed),
                ConflictsAgainstBruteForceTest::said, 1117);
    }

    @Test
    void whatIsSaidOfQuotesHolds() {
        judge(QUOTES, seed -> Optional.of(new ListedQuote(RandomCase.of(seed, RandomCase.Size.LISTABLE), false, Optional.empty())), ConflictsAgainstBruteForceTest::said);
    }

    @Test
    void whatIsSaidOfQuotesWithDrivesCardsAndExtrasHolds() {
        judge(EQUIPPED_QUOTES, seed -> Optional.of(new ListedQuote(RandomEquipment.of(seed), false, Optional.empty())),
                ConflictsAgainstBruteForceTest::said, 1183, 1238, 1254, 2520, 3000);
    }

    /** What is said of parts that no machine can have. */
    @Test
    void whatIsSaidOfPartsThatCannotBeInHolds() {
        judge(HELD, seed -> Optional.of(RandomEquipment.of(seed)).map(that -> new ListedQuote(that, false, Optional.of(any(that)))),
                one -> {
                    Search search = new Search(one.catalog());
                    String sku = one.held().orElseThrow();
                    if (search.runHolding(sku, one.request(), Deadline.never()).status() != Status.IMPOSSIBLE) {
                        return Optional.empty();
                    }
                    Impossibility why = Impossibility.with(sku, one.request(), new Oracle(one.catalog(), search, Deadline.never()));
                    return Optional.of(new Explanation(List.of(), why.conflicts(), why.relaxations(), why.lacks(), why.notes()));
                }, 1203, 1475);
    }

    private static String any(RandomCase that) {
        List<Part> parts = that.catalog().parts().stream().sorted(Comparator.comparing(part -> !(part instanceof Drive || part instanceof Card || part instanceof Extra))).toList();
        return parts.get(new SplittableRandom(that.seed()).nextInt(parts.size() * 2 / 3)).sku();
    }

    /** Empty where it is possible. */
    private static Optional<Explanation> said(UpgradeCase one) {
        Upgrader upgrader = new Upgrader(one.catalog(), one.request(), one.installed());
        Findings findings = upgrader.findings(Deadline.never());
        return findings.status() != Status.IMPOSSIBLE ? Optional.empty()
                : Optional.of(Explainer.ofStanding(findings, upgrader.catalog(), upgrader.search(), Deadline.never()));
    }

    private static Optional<Explanation> said(ListedQuote one) {
        Search search = new Search(one.catalog());
        Findings findings = search.run(one.request(), Deadline.never());
        return findings.status() != Status.IMPOSSIBLE ? Optional.empty()
                : Optional.of(new Explainer(one.catalog(), search, Deadline.never()).explain(findings, List.of()));
    }

    /** @param known seeds that went wrong once */
    private static <T extends Listed<T>> void judge(int seeds, LongFunction<Optional<T>> random, Function<T, Optional<Explanation>> explained, long... known) {
        int[] told = new int[3];
        List<Long> failing = new ArrayList<>();
        List<Throwable> why = new ArrayList<>();
        LongStream.concat(Seeds.chosen(seeds), LongStream.of(known)).forEach(seed -> random.apply(seed).ifPresent(one -> {
            try {
                explained.apply(one).filter(said -> one.least().isPresent()).ifPresent(said -> {
                    told[0]++;
                    assertThat(said.conflicts()).as(one.text()).isNotEmpty();
                    said.conflicts().forEach(conflict -> isMinimal(one, conflict));
                    told[1] += said.conflicts().size();
                    said.relaxations().forEach(relaxation -> works(one, relaxation));
                    told[2] += said.relaxations().size();
                });
            } catch (RuntimeException | AssertionError wrong) {
                failing.add(seed);
                why.add(wrong);
            }
        }));
        if (!why.isEmpty()) {
            throw new AssertionError("seeds " + failing, why.get(0));
        }
        assertThat(Arrays.stream(told).min().orElseThrow()).as(Arrays.toString(told)).isGreaterThan(seeds / 30);
    }

    private static void isPossible(Listed<?> one, boolean expected, String about) {
        one.least().ifPresent(least -> assertThat(least != Long.MAX_VALUE).as(about).isEqualTo(expected));
    }

    private static <T extends Listed<T>> void isMinimal(T one, Conflict conflict) {
        String about = conflict.message() + "\n" + one.text();
        isPossible(keeping(one, conflict.members()), false, about);
        for (Conflict.Member member : conflict.members()) {
            List<Conflict.Member> others = new ArrayList<>(conflict.members());
            others.remove(member);
            isPossible(keeping(one, others), true, "without %s: %s".formatted(member.key(), about));
        }
    }

    /** The case in which no more than these demands count. */
    private static <T extends Listed<T>> T keeping(T one, List<Conflict.Member> kept) {
        Set<String> keys = kept.stream().map(Conflict.Member::key).collect(Collectors.toSet());
        T left = one;
        Equipment asked = one.request().equipment();
        left = left.with(left.request().withEquipment(keeping(asked, one, kept, keys)));
        for (String key : List.of("require.memory_gb", "require.bandwidth_gbs", "require.throughput", "require.work", "require.cores",
                "require.base_ghz", "require.all_core_ghz", "require.gb_per_core", "require.gbs_per_core", "require.spare_slots", "require.processors",
                "require.memory_mode", "require.balanced", "require.one_module_part", "limit.power_w", "limit.lead_days", "limit.by", "limit.inlet_c", "limit.altitude_m", "limit.mains_v", "limit.conditions",
                "limit.price", "limit.price_with_tax", "stock")) {
            left = keys.contains(key) ? left : changed(left, key, "");
        }
        if (one instanceof ListedQuote) {
            boolean housed = one.catalog().enclosures().stream().anyMatch(enclosure -> one.held().filter(enclosure::lists).isPresent());
            for (String key : housed ? List.of("machines", "platforms") : List.of("machines", "platforms", "enclosure")) {
                left = keys.contains(key) ? left : changed(left, key, "");
            }
        }
        Request plain = left.request().withForbid(skus(kept, "forbid", one.request().forbid()));
        // A part that nothing brings any more which was asked for is in nobody's way.
        return left.with(plain.withUse(one.request().use().stream().filter(sku -> one.held().equals(Optional.of(sku)) || !skus(kept, "use", Set.of(sku)).isEmpty()).filter(sku ->
                isAskedFor(sku, plain.equipment(), one.catalog()) || !isAskedFor(sku, asked, one.catalog())).collect(Collectors.toSet())));
    }

    /** What may bring a part that is held beyond question stays: a volume of any size, a card, an extra; for a riser all that may need a card. */
    private static Equipment keeping(Equipment asked, Listed<?> one, List<Conflict.Member> kept, Set<String> keys) {
        boolean riser = one.held().filter(sku -> isRiser(sku, one.catalog())).isPresent();
        Optional<Drive> drive = one.held().flatMap(one.catalog()::drive);
        Optional<Card> card = one.held().flatMap(one.catalog()::card);
        List<VolumeWish> volumes = new ArrayList<>();
        for (VolumeWish wish : asked.volumes()) {
            boolean whole = riser || !skus(kept, "require.storage", Set.of(wish.name())).isEmpty();
            int spares = riser || !skus(kept, "require.storage.hot_spares", Set.of(wish.name())).isEmpty() ? wish.hotSpares() : 0;
            if (whole || drive.filter(held -> wish.takes(held.likeness())).isPresent()) {
                volumes.add((whole ? wish : wish.with(0)).withHotSpares(spares));
            }
        }
        return new Equipment(volumes, keptCards(asked, kept, wish -> riser || card.filter(wish::takes).isPresent()),
                asked.extras().entrySet().stream().filter(extra -> one.held().equals(Optional.of(extra.getKey())) || !skus(kept, "extras", Set.of(extra.getKey())).isEmpty())
                        .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue)), asked.enclosure());
    }

    /** Entries have no names: they are told apart by their words, and of entries alike so many stay as are named. */
    private static List<CardWish> keptCards(Equipment asked, List<Conflict.Member> kept, Predicate<CardWish> always) {
        List<String> named = new ArrayList<>(kept.stream().filter(member -> member.key().equals("require.cards")).map(member -> member.words().toString()).toList());
        return gathered(asked.cards()).stream().filter(wish -> always.test(wish) || named.remove(AskedCards.words(wish).toString())).toList();
    }

    /** Entries of one part are named together. */
    private static List<CardWish> gathered(List<CardWish> wishes) {
        Map<Object, CardWish> gathered = new LinkedHashMap<>();
        wishes.forEach(wish -> gathered.merge(wish.sku().<Object>map(sku -> sku).orElseGet(Object::new), wish, (one, other) -> one.with(one.count() + other.count())));
        return new ArrayList<>(gathered.values());
    }

    /** The first entry of these words asks for another number, none where that is empty. */
    private static List<CardWish> changedCards(List<CardWish> before, String words, String to) {
        List<CardWish> cards = gathered(before);
        CardWish wish = cards.stream().filter(one -> AskedCards.words(one).toString().equals(words)).findFirst().orElseThrow();
        cards.remove(wish);
        if (!to.isEmpty()) {
            cards.add(wish.with(Integer.parseInt(to)));
        }
        return cards;
    }

    private static boolean isRiser(String sku, Catalog catalog) {
        return catalog.platforms().stream().anyMatch(platform -> platform.expansion().slots().stream()
                .anyMatch(slot -> slot.riser().equals(Optional.of(sku))));
    }

    private static boolean isAskedFor(String sku, Equipment by, Catalog catalog) {
        boolean riser = isRiser(sku, catalog);
        boolean housing = catalog.enclosures().stream().anyMatch(enclosure -> enclosure.sku().equals(sku)
                || enclosure.supplies().stream().anyMatch(supply -> supply.sku().equals(sku)));
        return catalog.drive(sku).map(drive -> by.volumes().stream().anyMatch(wish -> wish.takes(drive.likeness())))
                .or(() -> catalog.card(sku).map(card -> by.cards().stream().anyMatch(wish -> wish.takes(card))))
                .orElse(by.extras().containsKey(sku) || riser && by.cards().size() + by.volumes().size() > 0 || housing && by.enclosure() == EnclosureFrom.NEW);
    }

    private static Set<String> skus(List<Conflict.Member> kept, String key, Set<String> all) {
        return all.stream().filter(sku -> kept.stream().anyMatch(member -> member.key().equals(key)
                && member.sku().equals(Optional.of(sku)))).collect(Collectors.toSet());
    }

    /** Does what a correction says, as a user would, and leaves out one change after the other. */
    private static <T extends Listed<T>> void works(T one, Relaxation relaxation) {
        String about = relaxation.message() + "\n" + relaxation + "\n" + one.text();
        T done = one;
        for (Relaxation.Change change : relaxation.changes()) {
            done = changed(done, change, change.to());
        }
        long spend = minor(one.catalog(), relaxation.price());
        done.least().ifPresent(least -> assertThat(least).as(about).isEqualTo(spend));
        for (Relaxation.Change left : relaxation.changes()) {
            T fewer = one;
            for (Relaxation.Change change : relaxation.changes()) {
                fewer = change == left ? fewer : changed(fewer, change, change.to());
            }
            isPossible(fewer, false, "without %s: %s".formatted(left.key(), about));
            nearer(left).ifPresent(to -> {
                T near = one;
                for (Relaxation.Change change : relaxation.changes()) {
                    near = changed(near, change, change == left ? to : change.to());
                }
                isPossible(near, false, "%s nearer: %s".formatted(left.key(), about));
            });
        }
    }

    private static long minor(Catalog catalog, BigDecimal amount) {
        return amount.movePointRight(catalog.currency().getDefaultFractionDigits()).longValueExact();
    }

    /** A little nearer to what was asked. */
    private static Optional<String> nearer(Relaxation.Change change) {
        if (change.to().isEmpty()) {
            return Optional.empty();
        }
        return switch (change.key()) {
            case "require.cores", "require.spare_slots", "require.cards", "extras" -> Optional.of(String.valueOf(Integer.parseInt(change.to()) + 1));
            case "limit.lead_days" -> Optional.of(String.valueOf(Integer.parseInt(change.to()) - 1));
            case "limit.by" -> Optional.of(LocalDate.parse(change.to()).minusDays(1).toString());
            case "limit.price", "limit.price_with_tax" -> Optional.of(new BigDecimal(change.to()).subtract(new BigDecimal("0.01")).toPlainString());
            case "limit.power_w" -> Optional.of(new BigDecimal(change.to()).subtract(new BigDecimal("0.001")).toPlainString());
            case "require.memory_gb", "require.bandwidth_gbs", "require.throughput", "require.work", "require.base_ghz", "require.all_core_ghz",
                    "require.gb_per_core", "require.gbs_per_core", "limit.inlet_c", "limit.altitude_m", "require.storage" ->
                    Optional.of(new BigDecimal(change.to()).add(new BigDecimal("0.001")).toPlainString());
            default -> Optional.empty();
        };
    }

    private static <T extends Listed<T>> T changed(T one, Relaxation.Change change, String to) {
        Equipment before = one.request().equipment();
        String name = change.sku().orElse("");
        return switch (change.key()) {
            case "require.storage" -> one.with(one.request().withEquipment(new Equipment(before.volumes().stream()
                    .filter(wish -> !to.isEmpty() || !wish.name().equals(name)).map(wish -> wish.name().equals(name) ? wish.with(Double.parseDouble(to)) : wish)
                    .toList(), before.cards(), before.extras(), before.enclosure())));
            case "require.storage.hot_spares" -> one.with(one.request().withEquipment(new Equipment(before.volumes().stream()
                    .map(wish -> wish.name().equals(name) ? wish.withHotSpares(Integer.parseInt(to)) : wish).toList(), before.cards(), before.extras(), before.enclosure())));
            case "require.cards" -> one.with(one.request().withEquipment(new Equipment(before.volumes(),
                    changedCards(before.cards(), change.from(), to), before.extras(), before.enclosure())));
            case "extras" -> {
                Map<String, Integer> extras = new HashMap<>(before.extras());
                extras.put(name, to.isEmpty() ? 0 : Integer.parseInt(to));
                extras.values().removeIf(units -> units == 0);
                yield one.with(one.request().withEquipment(new Equipment(before.volumes(), before.cards(), extras, before.enclosure())));
            }
            default -> changed(one, change.key(), to);
        };
    }

    /** The case with one key at another value, as a request file writes it; empty: without the key. */
    private static <T extends Listed<T>> T changed(T one, String key, String to) {
        Request r = one.request();
        var limit = r.limit();
        return switch (key) {
            case "stock" -> one.plentiful();
            case "machines" -> to.isEmpty() ? one.ofFewer() : one.with(r.withMachines(Integer.parseInt(to)));
            case "platforms" -> one.with(r.withPlatforms(list(to)));
            case "enclosure" -> one.with(r.withEquipment(r.equipment().withEnclosure(EnclosureFrom.OWN)));
            case "forbid" -> one.with(r.withForbid(list(to)));
            case "use" -> one.with(r.withUse(list(to)));
            case "limit.price" -> {
                OptionalLong most = to.isEmpty() ? OptionalLong.empty() : OptionalLong.of(minor(one.catalog(), new BigDecimal(to)));
                yield one.with(r.withLimit(limit.taxed().map(tax -> limit.withTaxed(tax.withBeside(most))).orElseGet(() -> limit.withPrice(most))));
            }
            case "limit.price_with_tax" -> one.with(r.withLimit(limit.taxed().map(tax -> to.isEmpty() ? limit.withPrice(tax.beside())
                    : limit.withTaxed(tax.withMost(minor(one.catalog(), new BigDecimal(to))))).orElse(limit)));
            case "limit.by" -> one.with(r.withLimit(limit.withBy(limit.by().filter(asked -> !to.isEmpty()).map(asked ->
                    DeliverBy.of(LocalDate.parse(to), asked.day().minusDays(asked.days()))))));
            case "limit.power_w" -> one.with(r.withLimit(limit.withPowerW(number(to))));
            case "limit.lead_days" -> one.with(r.withLimit(limit.withLeadDays(to.isEmpty() ? OptionalInt.empty()
                    : OptionalInt.of(Integer.parseInt(to)))));
            case "limit.inlet_c" -> one.with(r.withLimit(limit.withInletC(number(to))));
            case "limit.altitude_m" -> one.with(r.withLimit(limit.withAltitudeM(number(to).orElse(0))));
            case "limit.mains_v" -> one.with(r.withLimit(limit.withMainsV(number(to))));
            case "limit.conditions" -> one.with(r.withLimit(limit.withConditions(Arrays.stream(Condition.values())
                    .filter(condition -> list(to).contains(condition.label())).collect(Collectors.toSet()))));
            case "require.processors" -> one.with(r.withRequire(r.require().withProcessors(to.isEmpty() ? 0 : Integer.parseInt(to))));
            case "require.balanced" -> one.with(r.withRequire(r.require().withPopulated(
                    new MemoryWish(to.equals("true"), r.require().populated().onePart()))));
            case "require.one_module_part" -> one.with(r.withRequire(r.require().withPopulated(
                    new MemoryWish(r.require().populated().balanced(), to.equals("true")))));
            case "require.memory_mode" -> one.with(r.withRequire(r.require().withMode(to.isEmpty() ? MemoryMode.INDEPENDENT
                    : Arrays.stream(MemoryMode.values()).filter(mode -> mode.label().equals(to)).findFirst().orElseThrow())));
            default -> one.with(r.withRequire(target(key).asking(r.require(), to.isEmpty() ? 0 : Double.parseDouble(to))));
        };
    }

    private static OptionalDouble number(String text) {
        return text.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
    }

    private static Set<String> list(String text) {
        return text.isEmpty() || text.equals("[]") ? Set.of() : Set.of(text.substring(1, text.length() - 1).split(", "));
    }

    private static Target target(String key) {
        return Target.ALL.stream().filter(target -> target.key().equals(key)).findFirst().orElseThrow();
    }
}
