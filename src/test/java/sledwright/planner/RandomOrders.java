package sledwright.planner;

import static sledwright.samples.PlatformSketch.row;
import static sledwright.samples.Samples.L64;
import static sledwright.samples.Samples.LOW;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.PAIR;
import static sledwright.samples.Samples.Q32;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.R32;
import static sledwright.samples.Samples.R8;
import static sledwright.samples.Samples.TALL;
import static sledwright.samples.Samples.catalog;
import static sledwright.samples.Samples.limit;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.module;
import static sledwright.samples.Samples.platform;
import static sledwright.samples.Samples.processor;
import static sledwright.samples.Samples.require;
import static sledwright.samples.Samples.supply;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import sledwright.domain.Build;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Fitout;
import sledwright.domain.Goal;
import sledwright.domain.Housed;
import sledwright.domain.CoolingKit;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.RaidLevel;
import sledwright.domain.Requirements;
import sledwright.domain.Slot;
import sledwright.domain.Supply;
import sledwright.domain.VolumeWish;
import sledwright.domain.WorkWish;
import sledwright.domain.Workload;
import sledwright.domain.Worth;
import sledwright.samples.Equipped;
import sledwright.samples.FitoutSketch;
import sledwright.samples.RequirementsSketch;
import sledwright.rules.Order;

/** Orders put together at random. Their parts come in few figures and fewer prices, so that ties are frequent. */
final class RandomOrders {

    private static final CoolingKit WIDE = new CoolingKit("WIDE", "wide heat sink", 200, List.of("1A2", "2A2"));

    private static final List<Platform> PLATFORMS = List.of(
            platform().sku("BOX").cooling(LOW, TALL, WIDE).expansion(Equipped.EXPANSION).make(),
            platform().sku("SLED").supplies().budgetW(250).channels(2, 2).forbidMixedWidths().distinctCapacities(1)
                    .mirrored(OptionalDouble.empty()).rankSparing(false).make(),
            platform().sku("NARROW").counts(2).maxTdpW(90).channels(4, 2).countsPerSocket(4, 8).rankLimit(ModuleType.RDIMM, 4)
                    .speeds(row(ModuleType.RDIMM, Set.of(1, 2), 2400)).make());

    private static final List<Processor> PROCESSORS = List.of(P10, processor("P12").cores(12).throughput(200).make(),
            processor("HOT").cores(12).tdpW(160).throughput(260).make(), processor("SINGLE").socketsMax(1).make(),
            processor("SMALL").maxMemoryGb(64).memoryMts(2133).make(), processor("OTHER").socket("LK4").make());

    private static final List<MemoryModule> MODULES = List.of(R8, R16, R32, Q32, L64,
            module("OLD", 16).generation("DDR3").make(), module("UNREG", 16).type(ModuleType.UDIMM).make(),
            module("LIGHT", 16).powerW(3).make());

    private static final List<Supply> SUPPLIES = List.of(PAIR, supply("WEAK", 1, 0, 200, 0, Map.of()));

    private static final Enclosure FRAME = new Enclosure("FRAME", "frame", Set.of("SLED", "BOX"), 2, 20, 700,
            List.of(supply("PS-600", 2, 1, 600, 0, Map.of()), supply("PS-250", 1, 0, 250, 250, Map.of())));

    private final Random random;

    RandomOrders(long seed) {
        random = new Random(seed);
    }

    /** An order of any machines with any picks for any request; it rarely is valid. */
    Order any() {
        Request request = request().withEquipment(equipment());
        Optional<Housed> around = random.nextInt(3) > 0 ? Optional.empty()
                : Optional.of(new Housed(FRAME, pick(FRAME.supplies()), 1 + random.nextInt(2)));
        List<Build> kinds = IntStream.range(0, 1 + random.nextInt(2)).mapToObj(i -> build(pick(PLATFORMS)).with(fitout(around))).toList();
        List<Build> machines = IntStream.range(0, request.machines()).mapToObj(i -> kinds.get(i % kinds.size())).toList();
        List<Pick> picks = new ArrayList<>();
        machines.forEach(machine -> machine.partCounts().forEach((sku, units) -> {
            if (random.nextInt(10) > 0) {
                picks.add(new Pick(anyLot(sku), units));
            }
        }));
        return Order.of(machines, picks, request, catalogue());
    }

    /** Orders that answer one request, none of them checked. */
    List<Order> answers(Request request, int number) {
        return IntStream.range(0, number).mapToObj(i -> {
            Build build = build(PLATFORMS.get(0));
            List<Pick> picks = new ArrayList<>();
            long price = 1_000L * random.nextInt(2);
            build.partCounts().forEach((sku, units) -> picks.add(new Pick(lot(sku, "any", 99, price), units * request.machines())));
            return Order.of(Collections.nCopies(request.machines(), build), picks, request, catalogue());
        }).toList();
    }

    Request request() {
        Request plain = Request.named("random");
        Objective objective = pick(List.of(Objective.values()));
        Worth worth = new Worth(50 * random.nextInt(3), random.nextInt(5) * 0.3, random.nextInt(5) * 1.7, random.nextInt(3), random.nextInt(3));
        Licence licence = new Licence(random.nextInt(2) * 100, random.nextInt(2) * 100);
        int machines = 1 + random.nextInt(3);
        Set<String> platforms = random.nextInt(4) == 0 ? Set.of("SLED") : Set.of();
        return new Request(plain.name(), machines, requirements(), limits(), new Goal(objective, worth, licence), plain.list(),
                new PartChoice(platforms, random.nextInt(4) == 0 ? Set.of("R16", "FRAME") : Set.of(), random.nextInt(4) == 0 ? Set.of("R32") : Set.of(),
                        Map.of(), plain.equipment()));
    }

    private Requirements requirements() {
        RequirementsSketch asked = require();
        if (random.nextInt(4) == 0) {
            asked.balanced().oneModulePart();
        }
        return asked.processors(random.nextInt(3)).cores(random.nextInt(3) * 10).memoryGb(random.nextInt(3) * 64)
                .bandwidthGbs(random.nextInt(3) * 60).throughput(random.nextInt(3) * 200).baseGhz(random.nextInt(2) * 2.3)
                .allCoreGhz(random.nextInt(2) * 2.7).gbPerCore(random.nextInt(3) * 4).gbsPerCore(random.nextInt(3) * 4)
                .spareSlots(random.nextInt(2) * 12).mode(pick(List.of(MemoryMode.values()))).make()
                .withWork(new WorkWish(random.nextInt(3) * 150, random.nextBoolean() ? Workload.NONE : new Workload("run", 0.99, 0.4, 0)));
    }

    private Limits limits() {
        var limits = limit();
        if (random.nextBoolean()) {
            limits.price(random.nextInt(400_000)).powerW(250 + random.nextInt(100)).leadDays(random.nextInt(5));
        }
        if (random.nextBoolean()) {
            limits.site(25 + random.nextInt(10), 1_000 * random.nextInt(3)).mainsV(random.nextBoolean() ? 230 : 115)
                    .conditions(Condition.NEW, Condition.REFURBISHED);
        }
        return limits.make();
    }

    private Build build(Platform platform) {
        Processor main = pick(PROCESSORS);
        int sockets = 1 + random.nextInt(2);
        List<Processor> processors = IntStream.range(0, sockets).mapToObj(i -> random.nextInt(5) > 0 ? main : pick(PROCESSORS)).toList();
        Map<Slot, MemoryModule> modules = new TreeMap<>();
        MemoryModule often = pick(MODULES);
        int first = random.nextInt(3);
        for (Slot slot : platform.board().slots()) {
            if (slot.socket() <= random.nextInt(sockets + 1) && slot.position() <= first && random.nextInt(8) > 0) {
                modules.put(slot, random.nextInt(6) > 0 ? often : pick(MODULES));
            }
        }
        return new Build(platform, processors, pick(platform.cooling()),
                random.nextInt(5) > 0 ? Optional.of(pick(SUPPLIES)) : Optional.empty(), new TreeMap<>(modules));
    }

    /** Drives and cards in any bays and slots, with any driver; they rarely keep all rules. */
    private Fitout fitout(Optional<Housed> around) {
        Fitout bare = fitout();
        return new Fitout(bare.volumes(), bare.driver(), bare.cards(), bare.extras(), around);
    }

    private Fitout fitout() {
        FitoutSketch fitout = new FitoutSketch();
        if (random.nextBoolean()) {
            fitout.volume("data", pick(List.of(RaidLevel.values())), pick(List.of("front", "fast", "rear")), 1 + random.nextInt(9),
                    pick(List.of(Equipped.SSD, Equipped.SAS, Equipped.HDD, Equipped.NVME)), random.nextInt(2));
        }
        if (random.nextBoolean()) {
            fitout.volume("system", RaidLevel.LEVEL_1, "front", Equipped.SSD, pick(List.of(Equipped.SSD, Equipped.OTHER_SSD, Equipped.BIG_SSD)));
        }
        if (random.nextBoolean()) {
            fitout.driver(pick(List.of("onboard", "X1", "X2")));
        }
        if (random.nextBoolean()) {
            fitout.card(pick(List.of("X1", "X2", "X3")), pick(List.of(Equipped.NET, Equipped.FAST_NET, Equipped.CONTROLLER)));
        }
        List.of(Equipped.FANS, Equipped.BLANK, Equipped.RISER).forEach(extra -> {
            if (random.nextBoolean()) {
                fitout.extra(extra, 1);
            }
        });
        return fitout.make();
    }

    private Equipment equipment() {
        List<VolumeWish> volumes = random.nextBoolean() ? List.of()
                : List.of(new VolumeWish("data", 400, pick(List.of(RaidLevel.values())), Optional.empty(), Optional.empty(), 0));
        List<CardWish> cards = random.nextBoolean() ? List.of()
                : List.of(new CardWish(Optional.of("NET-2X10"), Optional.empty(), 0, 0, 1 + random.nextInt(2)));
        return new Equipment(volumes, cards, Map.of(), EnclosureFrom.OWN);
    }

    private Lot anyLot(String sku) {
        return lot(sku, pick(List.of("A", "B")), 1 + random.nextInt(40), random.nextInt(6), pick(List.of(Condition.values())),
                Map.of(1 + random.nextInt(2), 1_000L * (1 + random.nextInt(9))));
    }

    private Catalog catalogue() {
        return catalog(new Labour(1_000, 100), PLATFORMS, PROCESSORS, MODULES);
    }

    private <T> T pick(List<? extends T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }
}
