package sledwright.report.ask;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.desk.view.BuildView;
import sledwright.domain.BayGroup;
import sledwright.domain.CardSlot;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Extra;
import sledwright.domain.Fitout;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.RaidLevel;
import sledwright.domain.Volume;
import sledwright.report.page.Wording;
import sledwright.rules.card.CardFits;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.storage.DriveBay;

/** What can take the place of the parts of a build: of each kind what fits by itself, with its least price and how much there is. */
final class HandChoices {

    /** One thing to choose. */
    public record Choice(String value, String label, boolean chosen) {
    }

    /** Choices of one sort under its words. */
    public record Sort(String words, List<Choice> choices) {
    }

    /** A field with a list. {@code key}: the key of the build that it sets. */
    public record Field(String key, String label, List<Choice> choices) {
    }

    /** What may go into places: {@code module}, {@code drive GROUP} or {@code card SLOT}. */
    public record Shelf(String places, List<Sort> sorts) {
    }

    /** An extra with its units. */
    public record Units(String sku, String description, int units) {
    }

    private final BuildView build;
    private final Fitout fitout;
    private final Catalog shop;
    private final Wording words;
    private final Platform platform;

    HandChoices(BuildView build, Catalog shop, Wording words) {
        this.build = build;
        fitout = build.heaviest().fitout();
        this.shop = shop;
        this.words = words;
        platform = shop.platform(build.bare().platform()).orElseThrow();
    }

    /** Lists for every kind of place. */
    List<Shelf> shelves() {
        List<Shelf> shelves = new ArrayList<>();
        shelves.add(new Shelf("module", sorts(shop.modules().stream().filter(module -> MemoryGeneration.allows(platform.memory(), module))
                .sorted(Comparator.comparing(MemoryModule::type).thenComparing(MemoryModule::capacityGb)), HandChoices::sort)));
        for (BayGroup group : platform.expansion().bays()) {
            shelves.add(new Shelf("drive " + group.name(), sorts(shop.drives().stream()
                    .filter(drive -> DriveBay.allows(group, drive.likeness(), sockets()))
                    .sorted(Comparator.comparing(Drive::kind).thenComparing(Drive::link).thenComparing(Drive::capacityGb)), this::sort)));
        }
        for (CardSlot slot : platform.expansion().slots()) {
            shelves.add(new Shelf("card " + slot.name(), sorts(shop.cards().stream().filter(card -> CardFits.allows(slot, card, sockets()))
                    .sorted(Comparator.comparing(card -> card.kind())), card -> card.kind().label())));
        }
        return shelves;
    }

    private int sockets() {
        return platform.processors().sockets();
    }

    private static String sort(MemoryModule module) {
        return "%s, %s GB".formatted(module.type(), module.capacityGb());
    }

    private String sort(Drive drive) {
        return "%s %s, %s GB".formatted(drive.link().label(), drive.kind().label(), words.figure(drive.capacityGb()));
    }

    private <P extends Part> List<Sort> sorts(Stream<P> parts, Function<P, String> sort) {
        Map<String, List<Choice>> sorts = new LinkedHashMap<>();
        parts.forEach(part -> sorts.computeIfAbsent(sort.apply(part), none -> new ArrayList<>())
                .add(new Choice(part.sku(), label(part), false)));
        return sorts.entrySet().stream().map(entry -> new Sort(entry.getKey(), entry.getValue())).toList();
    }

    /** The part in a line: what it is, its least price, how much of it there is. */
    private String label(Part part) {
        List<Lot> lots = shop.lots(part.sku());
        OptionalLong least = lots.stream().flatMap(lot -> lot.breaks().stream()).mapToLong(Lot.PriceBreak::unitPrice).min();
        String offer = least.isEmpty() ? "not on offer" : "from %s, %s to be had".formatted(words.money(shop.amount(least.getAsLong())),
                lots.stream().mapToInt(Lot::available).sum());
        return "%s, %s: %s".formatted(part.sku(), offer, part.description());
    }

    /** Processors, heat sinks, supplies and what drives the drives. */
    List<Field> fields() {
        List<Field> fields = new ArrayList<>();
        String processor = build.bare().processorSku().orElse("");
        fields.add(new Field("processor", "Processor", choices(shop.processors().stream().filter(this::takes)
                .sorted(Comparator.comparing(Processor::cores)).map(Part.class::cast), processor)));
        fields.add(new Field("processors", "Processors", IntStream.rangeClosed(0, sockets())
                .mapToObj(count -> new Choice(String.valueOf(count), String.valueOf(count), count == build.bare().processors())).toList()));
        fields.add(new Field("cooling", "Heat sink",
                choices(platform.cooling().stream().map(Part.class::cast), build.bare().cooling().orElse(""))));
        if (!platform.power().supplies().isEmpty()) {
            fields.add(new Field("supply", "Power supplies", supplies()));
        }
        fields.add(new Field("driver", "SATA and SAS drives hang on", drivers()));
        return fields;
    }

    private boolean takes(Processor processor) {
        return processor.socket().equals(platform.processors().socket())
                && platform.processors().generations().contains(processor.generation());
    }

    /** What is chosen stands first where it is none of the list. */
    private List<Choice> choices(Stream<Part> parts, String chosen) {
        List<Choice> choices = new ArrayList<>(parts.map(part -> new Choice(part.sku(), label(part), part.sku().equals(chosen))).toList());
        if (choices.stream().noneMatch(Choice::chosen)) {
            choices.add(0, new Choice(chosen, chosen.isEmpty() ? "none" : chosen, true));
        }
        return choices;
    }

    private List<Choice> supplies() {
        List<Choice> choices = new ArrayList<>(List.of(new Choice("", "none", build.bare().supply().isEmpty())));
        platform.power().supplies().forEach(supply -> choices.add(new Choice(supply.sku() + " " + supply.count(),
                "%s x %s".formatted(supply.count(), label(supply)),
                build.bare().supply().filter(supply.sku()::equals).isPresent() && build.bare().supplies() == supply.count())));
        return choices;
    }

    private List<Choice> drivers() {
        String driver = fitout.driver().orElse("");
        List<Choice> choices = new ArrayList<>(List.of(new Choice("", "nothing", driver.isEmpty())));
        platform.expansion().onboard().ifPresent(board ->
                choices.add(new Choice(Fitout.ONBOARD, "the board", driver.equals(Fitout.ONBOARD))));
        fitout.cards().forEach((slot, card) -> card.support().ifPresent(support -> choices.add(
                new Choice(slot, "%s in %s".formatted(card.sku(), slot), driver.equals(slot)))));
        if (choices.stream().noneMatch(Choice::chosen)) {
            choices.add(new Choice(driver, driver, true));
        }
        return choices;
    }

    /** Each volume with the levels it may have; the key is its number from 0. */
    List<Field> volumes() {
        List<Field> fields = new ArrayList<>();
        for (Volume volume : fitout.volumes()) {
            fields.add(new Field(String.valueOf(fields.size()), volume.name(), RaidLevel.LABELS.stream()
                    .map(level -> new Choice(level, level, level.equals(volume.level().label()))).toList()));
        }
        return fields;
    }

    /** Extras that are in it or called for. */
    List<Units> extras() {
        SortedMap<String, Integer> units = new TreeMap<>(fitout.extrasBySku());
        platform.expansion().needed(build.bare().processors(), sockets()).keySet().forEach(sku -> units.putIfAbsent(sku, 0));
        fitout.cards().keySet().forEach(name -> platform.expansion().slot(name).flatMap(CardSlot::riser)
                .ifPresent(riser -> units.putIfAbsent(riser, 0)));
        return units.entrySet().stream().map(entry -> new Units(entry.getKey(),
                shop.extra(entry.getKey()).map(Extra::description).orElse(""), entry.getValue())).toList();
    }

    /** Every other extra of the shop. */
    List<Choice> otherExtras() {
        List<String> there = extras().stream().map(Units::sku).toList();
        return shop.extras().stream().filter(extra -> !there.contains(extra.sku()))
                .map(extra -> new Choice(extra.sku(), label(extra), false)).toList();
    }
}
