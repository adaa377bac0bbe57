package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Extra;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Fitout;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.PartKind;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Slot;
import sledwright.domain.Stock;
import sledwright.domain.Supply;
import sledwright.explain.ask.WhatIf;
import sledwright.rules.Housing;
import sledwright.rules.Machine;
import sledwright.rules.Parts;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.rules.card.PartsNeeded;
import sledwright.rules.cooling.BlockedSlot;
import sledwright.rules.enclosure.EnclosureBays;
import sledwright.rules.stock.InStock;
import sledwright.words.Numbers;
import sledwright.words.Sentence;
import sledwright.words.Sentences;

/**
 * What is lacking on platforms where nothing is possible, whatever is asked and however much of each lot there is. The parts of a
 * machine are chosen one after the other, and the first kind of which none is left is named; where some of each are left, what the
 * nearest of small populations breaks.
 */
public final class Lacks {

    /** How many part numbers are named where one of them would suffice. */
    private static final int TOLD = 3;

    /** How many frames of a platform are tried, and modules on each. */
    private static final int TRIED = 6;

    private static final String MODULE = "memory module";

    private final Request asked;
    /** What is asked but for volumes and cards, which no population answers. */
    private final Request request;
    private final Catalog catalog;
    private final Stock stock;
    private final Optional<Part> held;

    /**
     * @param open  nothing is possible on these terms
     * @param asked what drives, cards and extras are asked for in the first place: only that brings a part of theirs into a build
     */
    public Lacks(WhatIf open, Equipment asked, Catalog catalog) {
        this.catalog = catalog;
        this.asked = open.request().withEquipment(asked);
        Equipment left = open.request().equipment();
        request = open.request().withEquipment(new Equipment(List.of(), List.of(), left.extras(), left.enclosure()));
        stock = Stock.of(catalog, request);
        held = open.held().map(sku -> catalog.part(sku).orElseThrow());
    }

    /**
     * What a platform lacks.
     *
     * @param what the rule that no build keeps there, in words
     */
    public record Lack(String platform, Violation what) {
    }

    /** The first lack of each platform that could hold what is held; of a part that is not sold, that alone. */
    public List<Lack> on(Collection<Platform> platforms) {
        if (held.filter(part -> !isSold(part)).isPresent()) {
            return List.of(new Lack("", unsold(Sentence.of("No lot offers %s.", held.get().sku()))));
        }
        return platforms.stream().filter(this::couldHold).map(platform -> new Lack(platform.sku(), on(platform))).toList();
    }

    private boolean couldHold(Platform platform) {
        Part part = held.orElse(platform);
        return switch (PartKind.of(part)) {
            case PLATFORMS -> part.equals(platform);
            case COOLING -> platform.cooling().stream().anyMatch(kit -> kit.sku().equals(part.sku()));
            case SUPPLIES -> lists(platform, part) || enclosuresOf(platform).anyMatch(enclosure -> enclosure.lists(part.sku()));
            case ENCLOSURES -> enclosuresOf(platform).anyMatch(part::equals);
            default -> true;
        };
    }

    private static boolean lists(Platform platform, Part supply) {
        return platform.power().supplies().stream().anyMatch(option -> option.sku().equals(supply.sku()));
    }

    private Stream<Enclosure> enclosuresOf(Platform platform) {
        return catalog.enclosures().stream().filter(enclosure -> EnclosureBays.allows(enclosure, platform));
    }

    private Violation on(Platform platform) {
        if (!isSold(platform)) {
            return unsold(Sentence.of("No lot offers %s.", platform.sku()));
        }
        Left left = narrow(candidates(Processor.class, catalog.processors()).stream().flatMap(processor ->
                platform.processors().counts().stream().map(count -> Parts.of(platform).with(processor, count))).toList(),
                PartKind.PROCESSORS, Parts::processor, "processor");
        if (left.lack.isEmpty()) {
            List<CoolingKit> kits = candidates(CoolingKit.class, platform.cooling());
            left = narrow(each(left.parts, kits, Parts::with), PartKind.COOLING, Parts::cooling, "heat sink");
        }
        if (left.lack.isEmpty() && !platform.power().supplies().isEmpty()) {
            List<Supply> supplies = platform.power().supplies().stream()
                    .filter(supply -> held.filter(part -> lists(platform, part)).isEmpty() || supply.sku().equals(held.get().sku()))
                    .toList();
            left = narrow(each(left.parts, supplies, (parts, supply) -> parts.with(Optional.of(supply))), PartKind.SUPPLIES,
                    parts -> parts.supply().orElseThrow(), "power supply");
        } else if (left.lack.isEmpty()) {
            left = new Left(each(left.parts, List.of(Optional.<Supply>empty()), Parts::with), Optional.empty());
        }
        List<Parts> frames = left.parts.stream().limit(TRIED).toList();
        return left.lack.orElseGet(() -> inMemory(frames));
    }

    /** Parts that are left to choose among, or what is lacking where there are none. */
    private record Left(List<Parts> parts, Optional<Violation> lack) {
    }

    /** The candidates that no rule forbids and whose part that was chosen last is sold. */
    private Left narrow(List<Parts> candidates, PartKind chosen, Function<Parts, Part> part, String noun) {
        List<Parts> allowed = candidates.stream().filter(parts -> Rulebook.allows(chosen, parts, request)).toList();
        if (allowed.isEmpty()) {
            return new Left(List.of(), Optional.of(nearest(candidates.stream().map(parts -> Rulebook.onceChosen(chosen).stream()
                    .flatMap(rule -> rule.judge(parts, request).stream()).toList()), noun)));
        }
        List<Parts> sold = allowed.stream().filter(parts -> isSold(part.apply(parts))).toList();
        return new Left(sold, sold.isEmpty() ? Optional.of(unsold(allowed.stream().map(part), noun)) : Optional.empty());
    }

    private Violation inMemory(List<Parts> frames) {
        List<MemoryModule> modules = candidates(MemoryModule.class, catalog.modules());
        Map<MemoryModule, List<Violation>> bars = new HashMap<>();
        modules.forEach(module -> bars.put(module, frames.stream().map(parts -> bars(parts, module))
                .min(Comparator.comparingInt(List::size)).orElseThrow()));
        List<MemoryModule> allowed = modules.stream().filter(module -> bars.get(module).isEmpty()).toList();
        if (allowed.isEmpty()) {
            return nearest(modules.stream().map(bars::get), MODULE);
        }
        List<MemoryModule> sold = allowed.stream().filter(this::isSold).toList();
        return sold.isEmpty() ? unsold(allowed.stream(), MODULE) : inPopulations(frames, sold);
    }

    /** What a module by itself breaks on a board. */
    private List<Violation> bars(Parts parts, MemoryModule module) {
        return Stream.concat(Rulebook.onceChosen(PartKind.MEMORY).stream()
                        .flatMap(rule -> rule.judge(parts.with(module), request).stream()),
                judged(parts, module, 1).stream().filter(breach -> isBar(breach.rule()))).distinct().toList();
    }

    private static boolean isBar(String id) {
        return Rulebook.all().stream().anyMatch(rule -> rule.id().equals(id) && rule.bars().contains(PartKind.MEMORY));
    }

    /** What the nearest population breaks; where it breaks nothing, what is lacking beside the populations. */
    private Violation inPopulations(List<Parts> frames, List<MemoryModule> modules) {
        List<Violation> fewest = null;
        for (Parts parts : frames) {
            Board board = parts.platform().board();
            for (MemoryModule module : modules.stream().limit(TRIED).toList()) {
                for (int perSocket = 1; perSocket <= board.channels() * board.slotsPerChannel(); perSocket++) {
                    List<Violation> broken = judged(parts, module, perSocket);
                    if (broken.isEmpty()) {
                        return beside(build(parts, module, perSocket));
                    }
                    fewest = fewest == null || broken.size() < fewest.size() ? broken : fewest;
                }
            }
        }
        return fewest.get(0);
    }

    /** What is lacking though the build keeps every rule: parts that come with it, units that lots sell one by one, an enclosure. */
    private Violation beside(Build build) {
        for (Map.Entry<String, Integer> need : build.partCounts().entrySet()) {
            List<Lot> lots = stock.lots(need.getKey());
            if (lots.isEmpty()) {
                return unsold(Sentence.of("No lot offers %s, which it needs.", need.getKey()));
            }
            int fewest = lots.stream().mapToInt(Lot::minQuantity).min().orElseThrow();
            if (fewest > need.getValue()) {
                return unsold(Sentence.of("A build needs %s of %s; no lot sells fewer than %s.",
                        Numbers.counted(need.getValue(), "unit"), need.getKey(), fewest));
            }
        }
        return enclosure(build).orElseGet(() -> held.map(part -> new EquipmentLacks(asked, catalog, build).of(part))
                .orElseThrow(() -> new IllegalStateException("nothing is lacking for " + build.partCounts())));
    }

    /** What is lacking where a sled is bought with its enclosure. */
    private Optional<Violation> enclosure(Build build) {
        Optional<String> wanted = held.map(Part::sku).filter(sku -> catalog.enclosures().stream().anyMatch(any -> any.lists(sku)));
        List<Enclosure> enclosures = enclosuresOf(build.platform()).filter(any -> wanted.map(any::lists).orElse(true)).toList();
        if (enclosures.isEmpty() || request.equipment().enclosure() != EnclosureFrom.NEW) {
            return Optional.empty();
        }
        List<Enclosure> sold = enclosures.stream().filter(this::isSold).toList();
        if (sold.isEmpty()) {
            return Optional.of(unsold(enclosures.stream(), "enclosure"));
        }
        List<Supply> supplies = sold.stream().flatMap(enclosure -> enclosure.supplies().stream().filter(this::isSold)
                .filter(supply -> wanted.map(sku -> List.of(enclosure.sku(), supply.sku()).contains(sku)).orElse(true))).toList();
        if (supplies.isEmpty()) {
            return Optional.of(unsold(sold.stream().flatMap(enclosure -> enclosure.supplies().stream()), "power supply of an enclosure"));
        }
        return sold.stream().flatMap(enclosure -> enclosure.supplies().stream().filter(supplies::contains)
                        .map(supply -> new Housing(new FilledEnclosure(enclosure, supply, List.of(build)), request)))
                .map(Rulebook::judge).min(Comparator.comparingInt(List::size)).flatMap(broken -> broken.stream().findFirst());
    }

    private List<Violation> judged(Parts parts, MemoryModule module, int perSocket) {
        return Rulebook.judge(Machine.of(build(parts, module, perSocket), request, catalog.throughputFactors()));
    }

    /** A given number of a module on each socket, the first slots of all channels first. */
    private Build build(Parts parts, MemoryModule module, int perSocket) {
        Platform platform = parts.platform();
        Board board = platform.board();
        Map<Slot, MemoryModule> modules = new TreeMap<>();
        for (int socket = 0; socket < parts.fitted(); socket++) {
            int one = socket;
            IntStream.range(0, board.slotsPerChannel()).boxed().flatMap(position -> IntStream.range(0, board.channels())
                            .filter(channel -> position < BlockedSlot.depth(platform, parts.cooling(), one, channel))
                            .mapToObj(channel -> board.slot(one, channel, position)))
                    .limit(perSocket).forEach(slot -> modules.put(slot, module));
        }
        Map<Extra, Integer> extras = new HashMap<>();
        PartsNeeded.called(platform, parts.fitted(), request.equipment())
                .forEach((sku, units) -> catalog.part(sku).filter(Extra.class::isInstance)
                        .ifPresent(extra -> extras.put((Extra) extra, units)));
        Build bare = Build.of(platform, parts.processor(), parts.fitted(), parts.cooling(), parts.supply(), modules);
        return new Build(platform, bare.processors(), parts.cooling(), parts.supply(), bare.modules(),
                new Fitout(List.of(), Optional.empty(), new TreeMap<>(), extras, Optional.empty()));
    }

    private <P> List<Parts> each(List<Parts> parts, List<P> choices, BiFunction<Parts, P, Parts> with) {
        return parts.stream().flatMap(some -> choices.stream().map(choice -> with.apply(some, choice))).toList();
    }

    /** What is held where it is of the kind, else all of the kind. */
    private <P extends Part> List<P> candidates(Class<P> kind, Collection<P> all) {
        return all.stream().filter(part -> held.filter(kind::isInstance).isEmpty() || part.sku().equals(held.get().sku())).toList();
    }

    private boolean isSold(Part part) {
        return !stock.lots(part.sku()).isEmpty();
    }

    private Violation nearest(Stream<List<Violation>> breaches, String noun) {
        return breaches.min(Comparator.comparingInt(List::size)).map(fewest -> fewest.get(0))
                .map(breach -> held.isPresent() || noun.equals(MODULE) && catalog.processor(breach.where()).isPresent() ? breach
                        : new Violation(breach.rule(), breach.where(), Sentence.of("No %s goes with it: %s", noun, breach.sentence())))
                .orElseGet(() -> unsold(Sentence.of("The catalogue has no %s for it.", noun)));
    }

    private Violation unsold(Stream<? extends Part> parts, String noun) {
        List<String> skus = parts.map(Part::sku).distinct().toList();
        List<String> told = new ArrayList<>(skus.subList(0, Math.min(TOLD, skus.size())));
        String some = skus.size() > TOLD ? "%s or another of %s".formatted(String.join(", ", told), skus.size())
                : Sentences.list(told).replace(" and ", " or ");
        return unsold(Sentence.of("No lot offers %s %s for it: %s.", noun.startsWith("e") ? "an" : "a", noun, some));
    }

    private static Violation unsold(Sentence sentence) {
        return new Violation(InStock.ID, "", sentence);
    }
}
