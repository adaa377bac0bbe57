package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.MemoryWish;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.generator.draw.Shelf;
import sledwright.generator.keep.Kept;
import sledwright.rules.memory.DeviceWidth;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.OneModulePart;

/** The modules of a shelf, as each board sees them, and what they cost at least; markets share it, and threads. */
public final class MemoryStock {

    private final Catalog catalog;
    private final Shelf shelf;
    private final Kept kept;
    private final Map<String, List<MemoryModule>> sold = new ConcurrentHashMap<>();
    private final Map<AnySpeed, PriceFloor> anySpeed = new ConcurrentHashMap<>();
    private final Map<Floor, PriceFloor> floors = new ConcurrentHashMap<>();
    private final Map<Board, List<List<Level>>> levels = new ConcurrentHashMap<>();

    private record Floor(List<MemoryModule> modules, double worthOfGb) {
    }

    private record AnySpeed(String generation, ModuleType type, double worthOfGb) {
    }

    private record Board(String platform, Set<String> barred, boolean onePart, boolean sparing) {
    }

    /** @param kept what is kept from request to request */
    public MemoryStock(Catalog catalog, Shelf shelf, Kept kept) {
        this.catalog = catalog;
        this.shelf = shelf;
        this.kept = kept;
    }

    Catalog catalog() {
        return catalog;
    }

    Shelf shelf() {
        return shelf;
    }

    Kept kept() {
        return kept;
    }

    /**
     * The levels of a platform, fastest first, for each set of modules that may stand together in machines that are sold together.
     *
     * @param barred modules that do not go onto the platform
     */
    List<List<Level>> levels(Platform platform, Set<String> barred, MemoryWish wish, boolean sparing) {
        return levels.computeIfAbsent(new Board(platform.sku(), barred, wish.onePart(), sparing), same -> {
            List<MemoryModule> modules = sold(platform.memory());
            List<MemoryModule> fitting = barred.isEmpty() ? modules
                    : modules.stream().filter(module -> !barred.contains(module.sku())).toList();
            return kept.get(new LevelsKey(platform.memory(), wish.onePart(), sparing, fitting),
                    () -> levels(platform.memory(), wish, sparing, fitting));
        });
    }

    private static List<List<Level>> levels(MemorySupport memory, MemoryWish wish, boolean sparing, List<MemoryModule> all) {
        List<List<Level>> found = new ArrayList<>();
        for (ModuleType type : ModuleType.values()) {
            List<MemoryModule> modules = memory.takes(type) ? all.stream().filter(module -> module.type() == type).toList() : List.of();
            for (int width : widths(memory, modules)) {
                for (List<MemoryModule> mixing : mixing(wish, modules.stream()
                        .filter(module -> width == 0 || module.deviceWidth() == width).toList())) {
                    found.add(Level.of(memory, type, width, mixing, sparing));
                }
            }
        }
        return found;
    }

    /** What the modules of a level cost at least, minor units. */
    PriceFloor floor(Level level, double worthOfGb) {
        return floor(level.modules(), worthOfGb);
    }

    /** The same of all modules that are among those of a level somewhere on a platform, at whatever speed. */
    PriceFloor floorAtAnySpeed(Level level, MemorySupport memory, MemoryWish wish, double worthOfGb) {
        return OneModulePart.allows(wish, sold(memory).size())
                ? anySpeed.computeIfAbsent(new AnySpeed(memory.generation(), level.type(), worthOfGb), same -> new PriceFloor(shelf,
                        sold(memory).stream().filter(module -> module.type() == level.type()).toList(), worthOfGb))
                : floor(level.modules(), worthOfGb);
    }

    private PriceFloor floor(List<MemoryModule> modules, double worthOfGb) {
        return floors.computeIfAbsent(new Floor(modules, worthOfGb),
                same -> new PriceFloor(shelf, modules, worthOfGb));
    }

    private List<MemoryModule> sold(MemorySupport memory) {
        return sold.computeIfAbsent(memory.generation(), generation -> catalog.modules().stream()
                .filter(module -> MemoryGeneration.allows(memory, module) && !shelf.lots(module.sku()).isEmpty()).toList());
    }

    /** The widths that modules of one machine must share, each by itself; 0 alone where they may mix. */
    private static List<Integer> widths(MemorySupport memory, List<MemoryModule> modules) {
        Set<Integer> all = modules.stream().map(MemoryModule::deviceWidth).collect(Collectors.toSet());
        return DeviceWidth.allows(memory, all) ? List.of(0) : all.stream().sorted().toList();
    }

    /** Modules that may stand in machines that are sold together: all of them, or each by itself. */
    private static List<List<MemoryModule>> mixing(MemoryWish wish, List<MemoryModule> modules) {
        return OneModulePart.allows(wish, modules.size()) ? List.of(modules) : modules.stream().map(List::of).toList();
    }
}
