package sledwright.planner.allot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.generator.time.Deadline;
import sledwright.rules.Order;
import sledwright.samples.Folders;

class AllotterTest {

  private static final Catalog SHOP = CatalogReader.read(Folders.SHOP);

  /** One that has {@code REED-S} with {@code H1-08} and modules {@code M16} alone, in lots of its own. */
  private static Catalog shop(Lot... modules) {
    Map<String, List<Lot>> lots = new HashMap<>();
    for (String sku : List.of("REED-S", "H1-08", "WREN-HS-1", "WREN-HS-2", "RS-750")) {
      lots.put(sku, SHOP.lots(sku).stream().map(lot -> lot.with(40, lot.breaks())).toList());
    }
    List.of(modules).forEach(lot -> lots.computeIfAbsent(lot.sku(), sku -> new ArrayList<>()).add(lot));
    return SHOP.withLots(lots);
  }

  private static Lot lot(String sku, String name, int units, int days, long price) {
    return new Lot(sku, name, "Marsh Trade", Condition.USED, new Availability(units, days),
            List.of(new Lot.PriceBreak(1, price, OptionalLong.empty())), false);
  }

  private static Promise promise(String name, int modules, int days, Map<String, Integer> kept) {
    Requirements require = new Requirements(new ProcessorNeeds(1, 8, 0, 0, 0), new MemoryNeeds(16.0 * modules, 0, 0, 0, 0, Requirements.NONE.mode()));
    Request request =
        Request.named("promise").withPlatforms(Set.of("REED-S")).withRequire(require).withAlternatives(1, 0.05)
            .withEquipment(Equipment.NONE.withEnclosure(EnclosureFrom.OWN))
            .withLimit(Limits.NONE.withLeadDays(OptionalInt.of(days)).withPowerW(OptionalDouble.of(2000)));
    Map<LotName, Integer> units = new TreeMap<>();
    kept.forEach((lot, some) -> units.put(new LotName("M16", lot), some));
    Map<String, Integer> parts = new HashMap<>(Map.of("REED-S", 1, "H1-08", 1, "M16", modules));
    List.of("WREN-HS-1", "WREN-HS-2", "RS-750").forEach(sku -> parts.put(sku, 2));
    return new Promise(name, request, parts, units, false);
  }

  private static AllotmentOutcome run(Catalog shop, Supplier<List<AllotmentChange>> news, Promise... promises) {
    return new Allotter(shop, List.of(promises), 0, news, words -> { }).run(Deadline.in(Duration.ofSeconds(60)));
  }

  private static AllotmentOutcome run(Catalog shop, Promise... promises) {
    return run(shop, List::of, promises);
  }

  private static Map<String, Integer> modules(AllotmentOutcome outcome, int promise) {
    Map<String, Integer> modules = new TreeMap<>();
    outcome.outcomes().get(promise).filling().orElseThrow().units().forEach((lot, units) -> {
      if (lot.sku().startsWith("M")) {
        modules.put(lot.sku() + " " + lot.lot(), units);
      }
    });
    return modules;
  }

  /** The lot that both were promised from is short: who can wait does. */
  @Test
  void theOneThatCanWaitWaits() {
    Catalog shop = shop(lot("M16", "L1", 2, 0, 20_00), lot("M16", "L2", 9, 7, 20_00));
    List<String> doing = new ArrayList<>();
    AllotmentOutcome outcome = new Allotter(shop, List.of(promise("a", 2, 9, Map.of("L1", 2)), promise("b", 2, 3, Map.of("L1", 2))), 0, List::of, doing::add)
        .run(Deadline.in(Duration.ofSeconds(60)));
    assertThat(doing).startsWith("each promise in turn takes the cheapest that is left", "what no draw goes below, and ways that fit together",
        "choosing among the ways that were found");
    assertThat(outcome.found().broken()).isZero();
    assertThat(outcome.greedy().broken()).isEqualTo(1);
    assertThat(modules(outcome, 0)).containsExactlyEntriesOf(Map.of("M16 L2", 2));
    assertThat(modules(outcome, 1)).containsExactlyEntriesOf(Map.of("M16 L1", 2));
    assertThat(outcome.outcomes().get(0).moved()).isGreaterThanOrEqualTo(2);
    assertThat(isLeastBroken(outcome) && isLeastChanged(outcome)).isTrue();
    assertThat(outcome.gap()).contains(0.0);
  }

  /** The last can only be kept when both before it take what comes later and costs more: no change of one or two of them keeps it. */
  @Test
  void severalMakeRoomForOne() {
    Catalog shop = shop(lot("M16", "L1", 1, 0, 20_00), lot("M16", "L2", 1, 4, 20_00), lot("M16", "L3", 1, 8, 30_00), lot("M16", "L4", 1, 8, 31_00));
    AllotmentOutcome outcome = run(shop, promise("a", 1, 9, Map.of("L1", 1)), promise("b", 1, 9, Map.of("L2", 1)), promise("c", 2, 5, Map.of()));
    assertThat(outcome.greedy().broken()).isEqualTo(1);
    assertThat(outcome.found().broken()).isZero();
    assertThat(isLeastBroken(outcome) && isLeastChanged(outcome)).isTrue();
    assertThat(modules(outcome, 2)).containsExactlyInAnyOrderEntriesOf(Map.of("M16 L1", 1, "M16 L2", 1));
  }

  /** Three units that are cheap in twos serve one and a half promises on paper: the bound is below what can be done, and that is tried. */
  @Test
  void whereTheBoundIsNotReachedRoomIsMade() {
    Lot inTwos = lot("M16", "L1", 3, 0, 40_00).with(3, List.of(new Lot.PriceBreak(1, 40_00, OptionalLong.empty()), new Lot.PriceBreak(2, 10_00, OptionalLong.empty())));
    List<String> doing = new ArrayList<>();
    AllotmentOutcome outcome = new Allotter(shop(inTwos, lot("M16", "L2", 9, 0, 25_00)), List.of(promise("a", 2, 9, Map.of("L2", 1)), promise("b", 2, 9, Map.of("L2", 1))), 0, List::of,
        doing::add).run(Deadline.in(Duration.ofSeconds(60)));
    assertThat(doing).contains("making room for promises that are not kept as they were told");
    assertThat(outcome.found().broken()).isZero();
    assertThat(outcome.bound().cost()).isLessThan(outcome.found().cost()).isGreaterThan(outcome.found().cost() - 16_00);
  }

  /** The same where one of them cannot be kept: those that can give their units back for it, and take them again. */
  @Test
  void roomIsMadeInVainWhereUnitsAreTooFew() {
    Lot inTwos = lot("M16", "L1", 3, 0, 40_00).with(3, List.of(new Lot.PriceBreak(1, 40_00, OptionalLong.empty()), new Lot.PriceBreak(2, 10_00, OptionalLong.empty())));
    AllotmentOutcome outcome = run(shop(inTwos, lot("M16", "L2", 1, 0, 25_00)), promise("a", 2, 9, Map.of("L2", 1)), promise("b", 2, 9, Map.of("L2", 1)), promise("c", 2, 9, Map.of()));
    assertThat(outcome.found().broken()).isEqualTo(1);
    assertThat(isLeastBroken(outcome)).isTrue();
  }

  /** What was ordered for somebody comes when it was to come, though whoever orders it today waits longer. */
  @Test
  void whatIsKeptIsOnItsWay() {
    Catalog shop = shop(lot("M16", "L1", 9, 30, 20_00));
    assertThat(run(shop, promise("a", 2, 3, Map.of("L1", 2))).found().broken()).isZero();
    AllotmentOutcome late = run(shop, promise("a", 2, 3, Map.of("L1", 1)));
    assertThat(late.found().broken()).isEqualTo(1);
    assertThat(isLeastBroken(late)).isTrue();
  }

  /** Other modules serve where those of the promise are gone; of two promises only one has to change. */
  @Test
  void asFewMachinesChangeAsPossible() {
    Catalog shop = shop(lot("M16", "L1", 2, 0, 20_00), lot("M08", "L3", 9, 0, 1_00));
    AllotmentOutcome outcome = run(shop, promise("a", 1, 9, Map.of("L1", 1)), promise("b", 1, 9, Map.of("L1", 1)), promise("c", 1, 9, Map.of("L1", 1)));
    assertThat(outcome.found().broken()).isZero();
    assertThat(outcome.found().changed()).isEqualTo(1);
    assertThat(isLeastChanged(outcome)).isTrue();
    assertThat(outcome.outcomes()).filteredOn(AllotmentOutcome.Outcome::changed).singleElement()
        .satisfies(changed -> assertThat(changed.filling().orElseThrow().order().orElseThrow().figures().usableGb()).isEqualTo(16));
  }

  @Test
  void whatIsPickedStaysAndCountsWhateverTheListSays() {
    Catalog shop = shop(lot("M16", "L1", 3, 0, 20_00));
    Promise picked = promise("a", 2, 9, Map.of("L1", 2));
    AllotmentOutcome outcome =
        run(shop, new Promise("a", picked.request(), Map.of(), picked.kept(), true), promise("b", 1, 9, Map.of()), promise("c", 1, 9, Map.of("L1", 1)));
    assertThat(outcome.outcomes().get(0).filling().orElseThrow().units()).isEqualTo(picked.kept());
    assertThat(outcome.found().broken()).isEqualTo(1);
    assertThat(outcome.left().get(new LotName("M16", "L1")).available()).isZero();
  }

  /** Somebody takes of a lot, picks a promise or no longer wants one while it is being decided. */
  @Test
  void whatHappensMeanwhileIsTakenIn() {
    Catalog shop = shop(lot("M16", "L1", 4, 0, 20_00), lot("M16", "L2", 9, 0, 25_00));
    AtomicBoolean told = new AtomicBoolean();
    AllotmentOutcome outcome = run(shop, () -> told.getAndSet(true) ? List.of()
            : List.of(new AllotmentChange.OfLot(new LotName("M16", "L1"), 2), new AllotmentChange.Picked("b"), new AllotmentChange.Over("c")),
        promise("a", 1, 9, Map.of("L1", 1)), promise("b", 2, 9, Map.of("L1", 2)), promise("c", 1, 9, Map.of("L1", 1)));
    assertThat(outcome.outcomes()).extracting(one -> one.promise().name()).containsExactly("a", "b");
    assertThat(modules(outcome, 0)).containsExactlyEntriesOf(Map.of("M16 L2", 1));
    assertThat(modules(outcome, 1)).containsExactlyEntriesOf(Map.of("M16 L1", 2));
  }

  /** The same while OptaPlanner still chooses, which is when it is asked from another thread: it goes on with what there is from then on. */
  @Test
  void whatHappensWhileItIsChosenChangesTheChoice() {
    Lot[] lots = IntStream.rangeClosed(1, 6).mapToObj(i -> lot("M16", "L" + i, 6, 0, 20_00 + 10 * i)).toArray(Lot[]::new);
    Promise[] promises = IntStream.rangeClosed(1, 24).mapToObj(i -> promise("p" + i, 1 + i % 2, 9, Map.of("L" + (1 + i % 6), 1 + i % 2))).toArray(Promise[]::new);
    Thread own = Thread.currentThread();
    AtomicBoolean told = new AtomicBoolean();
    AllotmentOutcome outcome = run(shop(lots), () -> Thread.currentThread() == own || told.getAndSet(true) ? List.of()
        : List.of(new AllotmentChange.OfLot(new LotName("M16", "L1"), 2), new AllotmentChange.Picked("p1"), new AllotmentChange.Over("p2")), promises);
    assertThat(told).isTrue();
    assertThat(outcome.outcomes()).hasSize(23).extracting(one -> one.promise().name()).contains("p1").doesNotContain("p2");
    assertThat(modules(outcome, 0)).containsExactlyEntriesOf(Map.of("M16 L2", 2));
    // 35 units are promised to the others and p1, and 32 are left.
    assertThat(outcome.found().broken()).isEqualTo(2);
    assertThat(isLeastBroken(outcome)).isTrue();
    assertThat(outcome.outcomes().stream().flatMap(one -> one.filling().stream()).mapToInt(way -> way.units().getOrDefault(new LotName("M16", "L1"), 0)).sum())
        .isEqualTo(2);
  }

  /** Against every way to share lots out, some of which come too late for some. */
  @Test
  void noWayToShareOutIsBetter() {
    long first = Long.getLong("sledwright.seed", 1);
    // The last two could cost less only where two promises change at once.
    long[] seeds = LongStream.concat(LongStream.range(first, first + Integer.getInteger("sledwright.seeds", 6)), LongStream.of(7_700_084, 7_700_243)).toArray();
    for (long seed : seeds) {
      Random random = new Random(seed);
      Lot[] lots = new Lot[3];
      for (int i = 0; i < lots.length; i++) {
        lots[i] = lot("M16", "L" + i, 1 + random.nextInt(4), random.nextInt(3), 1_00 * (1 + random.nextInt(30)));
        if (seed % 3 == 0) {
          lots[i] = inPacks(lots[i], new Random(-seed * 10 - i));
        }
      }
      Promise[] promises = new Promise[2 + random.nextInt(3)];
      for (int i = 0; i < promises.length; i++) {
        promises[i] = promise("p" + i, 1 + random.nextInt(2), random.nextInt(3), Map.of());
      }
      AllotmentOutcome outcome = run(shop(lots), promises);
      long[] best = best(lots, promises, 0, IntStream.range(0, lots.length).map(i -> lots[i].available()).toArray());
      long beside = outcome.outcomes().stream().flatMap(one -> one.filling().stream()).flatMap(filling -> filling.order().stream())
          .mapToLong(AllotterTest::beside).sum();
      assertThat(new long[] {outcome.found().broken(), outcome.found().changed(), outcome.found().cost() - beside}).as("seed %s", seed).isEqualTo(best);
      assertThat(outcome.greedy().compareTo(outcome.found())).as("seed %s", seed).isNotNegative();
      assertThat(outcome.bound().broken()).as("seed %s", seed).isLessThanOrEqualTo(outcome.found().broken());
      assertThat(outcome.bound().cost()).as("seed %s", seed).isLessThanOrEqualTo(outcome.found().cost() + 1e-6);
    }
  }

  private static long beside(Order order) {
    return order.price().total() - order.picks().stream().filter(pick -> pick.sku().equals("M16")).mapToLong(pick -> pick.total()).sum();
  }

  /** The same lot, sold from a number of units on, or cheaper from there. */
  private static Lot inPacks(Lot lot, Random random) {
    long price = lot.dearest();
    Lot.PriceBreak cheaper = new Lot.PriceBreak(2, price - price * random.nextInt(60) / 100, OptionalLong.empty());
    return switch (random.nextInt(3)) {
      case 0 -> lot;
      case 1 -> lot.with(lot.available(), List.of(cheaper));
      default -> lot.with(lot.available(), List.of(lot.breaks().get(0), cheaper));
    };
  }

  /** Fewest broken, then fewest that hold more modules than was told, then the least that modules cost. */
  private static long[] best(Lot[] lots, Promise[] promises, int next, int[] left) {
    if (next == promises.length) {
      return new long[3];
    }
    long[] best = best(lots, promises, next + 1, left);
    best[0]++;
    int told = promises[next].parts().get("M16");
    for (int units = told; units <= told + 2; units++) {
      for (int[] split : splits(units, lots.length)) {
        long cost = 0;
        boolean fits = true;
        int[] rest = left.clone();
        for (int i = 0; i < lots.length; i++) {
          rest[i] -= split[i];
          cost += split[i] * lots[i].breakFor(split[i]).unitPrice();
          fits &= rest[i] >= 0 && lots[i].sells(split[i]) && (split[i] == 0 || lots[i].leadDays() <= promises[next].request().limit().mostDays().orElseThrow());
        }
        long[] after = fits ? best(lots, promises, next + 1, rest) : null;
        if (after != null) {
          long[] with = {after[0], after[1] + (units > told ? 1 : 0), after[2] + cost};
          best = Arrays.compare(with, best) < 0 ? with : best;
        }
      }
    }
    return best;
  }

  private static List<int[]> splits(int units, int lots) {
    List<int[]> splits = new ArrayList<>();
    for (int a = 0; a <= units; a++) {
      for (int b = 0; a + b <= units; b++) {
        splits.add(new int[] {a, b, units - a - b});
      }
    }
    assertThat(lots).isEqualTo(3);
    return splits;
  }

    /** Whether no allotment leaves fewer machines undelivered. */
    private static boolean isLeastBroken(AllotmentOutcome outcome) {
        return outcome.found().broken() <= outcome.bound().broken();
    }

    /** Whether none that leaves as few undelivered changes fewer. */
    private static boolean isLeastChanged(AllotmentOutcome outcome) {
        return outcome.found().changed() <= outcome.bound().changed();
    }
}
