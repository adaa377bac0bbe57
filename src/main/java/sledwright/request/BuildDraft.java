package sledwright.request;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Fitout;
import sledwright.domain.MemoryModule;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Slot;
import sledwright.domain.Supply;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Nearest;
import sledwright.input.Section;
import sledwright.input.Section.Entry;

/**
 * A build before it is held against a catalogue. Whatever the rules judge is left to them: only what cannot be written down as a
 * build is a fault.
 */
final class BuildDraft {

    private final Optional<Field> platform;
    /** One for every socket, or one that all fitted processors are of. */
    private final List<Field> processor;
    private final int processors;
    private final Optional<Field> cooling;
    private final Optional<Field> supply;
    private final Optional<Integer> supplyCount;
    /** Skus by slot. */
    private final List<Entry> modules;
    private final FitoutDraft fitout;

    private BuildDraft(Section top) {
        platform = top.required("platform");
        processor = top.oneOrList("processor");
        processors = processors(top);
        cooling = top.required("cooling");
        supply = top.field("supply");
        supplyCount = top.wholeIfAny("supply_count", RequestBounds.SUPPLY_COUNT);
        modules = top.entries("modules");
        fitout = FitoutDraft.read(top);
    }

    /** The build that stands in a section; other keys of it are left to the caller. */
    static BuildDraft read(Section section) {
        return new BuildDraft(section);
    }

    private int processors(Section top) {
        Optional<Integer> count = top.wholeIfAny("processors", RequestBounds.PROCESSORS);
        if (processor.isEmpty() && count.orElse(1) > 0) {
            top.missing("processor");
        } else if (processor.size() > 1 && count.isPresent() && count.get() != processor.size()) {
            top.faults().add(top.place("processors"), "processors %s must be %s, as many as processor lists"
                    .formatted(count.get(), processor.size()));
        } else if (processor.size() == 1 && !top.has("processors")) {
            top.missing("processors");
        }
        return count.orElse(processor.size());
    }

    /** The build; empty, with faults, when something of it is unknown. */
    Optional<Build> resolve(Catalog catalog, Faults faults) {
        int before = faults.size();
        Resolver find = new Resolver(catalog, faults);
        List<Processor> fitted = fitted(find);
        Optional<Platform> board = platform.flatMap(find::platform);
        Optional<CoolingKit> kit = board.flatMap(known -> cooling.flatMap(field -> find.kit(field, known)));
        Optional<Supply> feed = board.flatMap(known -> supply.flatMap(field -> supply(field, known, find, faults)));
        SortedMap<Slot, MemoryModule> filled = filled(board, find, faults);
        Fitout equipped = fitout.resolve(find);
        return faults.since(before) || board.isEmpty() || kit.isEmpty() ? Optional.empty()
                : Optional.of(new Build(board.get(), fitted, kit.get(), feed, filled, equipped));
    }

    private List<Processor> fitted(Resolver find) {
        List<Processor> found = new ArrayList<>();
        processor.forEach(field -> find.processor(field).ifPresent(found::add));
        return found.size() == 1 ? Collections.nCopies(processors, found.get(0)) : found;
    }

    private Optional<Supply> supply(Field field, Platform board, Resolver find, Faults faults) {
        List<Supply> options = find.supplies(field, board);
        List<Supply> fitting = options.stream().filter(option -> supplyCount.isEmpty() || supplyCount.get() == option.count()).toList();
        if (!options.isEmpty() && fitting.size() != 1) {
            field.fault("supply_count must be %s, as %s lists it".formatted(
                    options.stream().map(option -> String.valueOf(option.count())).collect(Collectors.joining(" or ")),
                    board.sku()), faults);
        }
        return fitting.stream().findFirst();
    }

    private SortedMap<Slot, MemoryModule> filled(Optional<Platform> board, Resolver find, Faults faults) {
        SortedMap<Slot, MemoryModule> filled = new TreeMap<>();
        Optional<Nearest> names = board.map(known -> new Nearest(known.board().slots().stream().map(Slot::name).toList()));
        for (Entry entry : modules) {
            Optional<MemoryModule> module = find.module(entry.value());
            if (board.isEmpty()) {
                continue;
            }
            Optional<Slot> slot = board.get().board().slot(entry.key().text());
            if (slot.isEmpty()) {
                entry.key().fault("is no slot of %s%s".formatted(
                        board.get().sku(), names.orElseThrow().hint(entry.key().text())), faults);
            } else if (module.isPresent()) {
                filled.put(slot.get(), module.get());
            }
        }
        return filled;
    }
}
