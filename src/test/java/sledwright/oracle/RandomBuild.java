package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SplittableRandom;
import java.util.TreeMap;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Equipment;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Slot;
import sledwright.domain.Stock;
import sledwright.domain.Supply;
import sledwright.rules.Order;

/** Random builds of a case's parts: laid out with sense, then spoilt in up to two places. */
final class RandomBuild {

    private final SplittableRandom random;
    private final Catalog catalog;
    private final Request request;

    RandomBuild(RandomCase that, long variant) {
        random = new SplittableRandom(that.seed() * 31 + variant);
        catalog = that.catalog();
        request = relaxed(that.request());
    }

    /** The request that the build is judged by: the case's, its targets or its limits alone, or next to nothing. */
    Request request() {
        return request;
    }

    private Request relaxed(Request from) {
        Request relaxed = from;
        if (chance(0.5)) {
            relaxed = relaxed.withRequire(Requirements.NONE);
        }
        if (chance(0.5)) {
            relaxed = relaxed.withLimit(Limits.NONE);
        }
        if (chance(0.2)) {
            relaxed = relaxed.withEquipment(Equipment.NONE);
        }
        if (chance(0.5)) {
            relaxed = relaxed.withForbid(java.util.Set.of()).withUse(java.util.Set.of()).withPlatforms(java.util.Set.of());
        }
        return relaxed;
    }

    Build build() {
        Platform platform = any(catalog.platforms());
        int fitted = chance(0.9) ? any(platform.processors().counts()) : random.nextInt(0, 4);
        List<Processor> suited = catalog.processors().stream().filter(one -> Reading.processor(platform, one, fitted).isEmpty()).toList();
        Processor processor = any(suited.isEmpty() || chance(0.1) ? catalog.processors() : suited);
        List<Processor> processors = new ArrayList<>(Collections.nCopies(fitted, processor));
        if (fitted > 1 && chance(0.1)) {
            processors.set(1, any(suited.isEmpty() ? catalog.processors() : suited));
        }
        List<CoolingKit> rated = platform.cooling().stream().filter(kit -> kit.maxTdpW() >= processor.tdpW()).toList();
        CoolingKit kit = any(rated.isEmpty() || chance(0.1) ? platform.cooling() : rated);
        List<Supply> supplies = platform.power().supplies();
        Optional<Supply> supply = supplies.isEmpty() || chance(0.05) ? Optional.empty() : Optional.of(any(supplies));
        SortedMap<Slot, MemoryModule> modules = modules(platform, kit, fitted);
        int spoilt = chance(0.4) ? 0 : random.nextInt(1, 3);
        for (int i = 0; i < spoilt; i++) {
            spoil(modules, platform.board());
        }
        return new Build(platform, processors, kit, supply, modules, new RandomFitout(random, catalog, request, platform, fitted).fitout());
    }

    /** Every channel of fitted sockets filled alike, or the last ones less, by one or two parts that the platform takes. */
    private SortedMap<Slot, MemoryModule> modules(Platform platform, CoolingKit kit, int fitted) {
        Board board = platform.board();
        List<MemoryModule> taken = catalog.modules().stream().filter(module -> module.generation().equals(platform.memory().generation())
                && Reading.tableMts(platform.memory(), module, 1).isPresent()).toList();
        Collection<MemoryModule> choice = taken.isEmpty() || chance(0.1) ? catalog.modules() : taken;
        MemoryModule first = any(choice);
        List<MemoryModule> second = choice.stream().filter(module -> module.type() == first.type() || chance(0.1))
                .filter(module -> module.ranks() < first.ranks() || module.ranks() == first.ranks() && module.capacityGb() <= first.capacityGb() || chance(0.1)).toList();
        MemoryModule other = second.isEmpty() || chance(0.4) ? first : any(second);
        int depth = random.nextInt(1, board.slotsPerChannel() + 1);
        int channels = random.nextInt(1, board.channels() + 1);
        SortedMap<Slot, MemoryModule> modules = new TreeMap<>();
        for (Slot slot : board.slots()) {
            int wanted = slot.channel() < channels ? depth : depth - 1;
            if (slot.socket() < fitted && slot.position() < wanted && (chance(0.02) || !kit.covers().contains(slot.name()))) {
                modules.put(slot, slot.position() == 0 ? first : other);
            }
        }
        return modules;
    }

    private void spoil(SortedMap<Slot, MemoryModule> modules, Board board) {
        Slot slot = any(board.slots());
        switch (random.nextInt(4)) {
            case 0 -> modules.remove(slot);
            case 1 -> modules.put(slot, any(catalog.modules()));
            case 2 -> {
                if (!modules.isEmpty()) {
                    modules.put(any(modules.keySet()), any(catalog.modules()));
                }
            }
            default -> {
                int socket = random.nextInt(board.sockets());
                modules.keySet().removeIf(one -> one.socket() == socket && one.channel() == slot.channel());
            }
        }
    }

    /** The build a number of times over, with picks that mostly give its parts; one pick a lot. */
    Order order(Build build) {
        int machines = random.nextInt(1, 3);
        List<Pick> picks = new ArrayList<>();
        boolean sloppy = chance(0.3);
        build.partCounts().forEach((sku, units) -> {
            int left = units * machines;
            List<Lot> lots = new ArrayList<>(Stock.of(catalog, request).lots(sku));
            if (!sloppy) {
                lots.removeIf(lot -> !Reading.lot(lot, request.limit()).isEmpty());
            }
            for (Lot lot : lots) {
                int taken = sloppy && chance(0.1) ? left : Math.min(left, lot.available());
                if (taken > 0 && (taken >= lot.minQuantity() || sloppy)) {
                    picks.add(new Pick(lot, taken));
                    left -= taken;
                }
            }
        });
        return Order.of(Collections.nCopies(machines, build), picks, request, catalog);
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private <T> T any(Collection<T> choices) {
        List<T> list = List.copyOf(choices);
        return list.get(random.nextInt(list.size()));
    }
}
