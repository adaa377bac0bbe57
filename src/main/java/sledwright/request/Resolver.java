package sledwright.request;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.catalog.Money;
import sledwright.domain.Card;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Drive;
import sledwright.domain.Enclosure;
import sledwright.domain.Extra;
import sledwright.domain.House;
import sledwright.domain.MemoryModule;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Supply;
import sledwright.domain.TaxedPrice;
import sledwright.domain.Workload;
import sledwright.input.Bounds;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Nearest;
import sledwright.input.Section.Entry;

/** Finds what a request names in a catalogue; whatever is not there is a fault that names the nearest. */
final class Resolver {

    private final Catalog catalog;
    private final Faults faults;
    /** What is looked for -> the names of all such parts. */
    private final Map<String, Nearest> nearest = new HashMap<>();

    Resolver(Catalog catalog, Faults faults) {
        this.catalog = catalog;
        this.faults = faults;
    }

    /** What machines may cost with the shop's tax; a shop that names none charges none. */
    TaxedPrice taxed(long most, OptionalLong beside) {
        return new TaxedPrice(most, catalog.stationery().tax().percent().orElse(BigDecimal.ZERO), catalog.stationery().tax().name(),
                beside);
    }

    LocalDate today() {
        return catalog.today();
    }

    /** What the shop holds itself to. */
    House house() {
        return catalog.house();
    }

    /** The shop's workload of that name. */
    Optional<Workload> workload(Field field) {
        Workload found = catalog.workloads().get(field.text());
        if (found == null) {
            field.fault("is no workload of the catalogue; it has " + (catalog.workloads().isEmpty() ? "none"
                    : String.join(", ", catalog.workloads().keySet())), faults);
        }
        return Optional.ofNullable(found);
    }

    Optional<Part> part(Field field) {
        return find(field, catalog::part, "part of the catalogue", catalog.parts());
    }

    /** A part that a machine can hold. */
    Optional<Part> partOfMachine(Field field) {
        Optional<Part> part = part(field);
        if (part.isPresent() && catalog.isOfEnclosuresAlone(field.text())) {
            field.fault("is a %s, which no machine holds".formatted(kind(part.get())), faults);
            return Optional.empty();
        }
        return part;
    }

    /** Units by part number. */
    Map<String, Integer> onHand(List<Entry> entries) {
        Map<String, Integer> units = new HashMap<>();
        for (Entry entry : entries) {
            part(entry.key());
            entry.value().whole(RequestBounds.ON_HAND, faults).ifPresent(count -> units.put(entry.key().text(), count));
        }
        return units;
    }

    Optional<Platform> platform(Field field) {
        return find(field, catalog::platform, "platform of the catalogue", catalog.platforms());
    }

    Optional<Processor> processor(Field field) {
        return find(field, catalog::processor, "processor of the catalogue", catalog.processors());
    }

    Optional<MemoryModule> module(Field field) {
        return find(field, catalog::module, "memory module of the catalogue", catalog.modules());
    }

    Optional<Drive> drive(Field field) {
        return find(field, catalog::drive, "drive of the catalogue", catalog.drives());
    }

    Optional<Card> card(Field field) {
        return find(field, catalog::card, "card of the catalogue", catalog.cards());
    }

    /** Units by extra; none where 0 are named. */
    Map<Extra, Integer> extras(List<Entry> entries) {
        Map<Extra, Integer> units = new LinkedHashMap<>();
        for (Entry entry : entries) {
            Optional<Extra> extra = find(entry.key(), catalog::extra, "part of extras.csv", catalog.extras());
            Optional<Integer> count = entry.value().whole(RequestBounds.EXTRA_UNITS, faults);
            if (extra.isPresent() && count.orElse(0) > 0) {
                units.put(extra.get(), count.get());
            }
        }
        return units;
    }

    Optional<CoolingKit> kit(Field field, Platform platform) {
        return find(field, sku -> platform.cooling().stream().filter(kit -> kit.sku().equals(sku)).findFirst(),
                "cooling kit of " + platform.sku(), platform.cooling());
    }

    /** The supplies of a platform under that sku, which may be fitted in different numbers. */
    List<Supply> supplies(Field field, Platform platform) {
        List<Supply> options = platform.power().supplies().stream().filter(supply -> supply.sku().equals(field.text())).toList();
        if (options.isEmpty()) {
            unknown(field, "power supply of " + platform.sku(), platform.power().supplies());
        }
        return options;
    }

    Set<String> skus(List<Field> fields) {
        return fields.stream().map(Field::text).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** Whole minor units. */
    OptionalLong amount(Field field, Bounds bounds) {
        return Money.minor(field, bounds, catalog.currency(), faults);
    }

    /** Minor units, which may be broken: what one GB is worth can be less than a coin. */
    double worth(Field field) {
        return field.decimal(RequestBounds.WORTH, faults)
                .map(amount -> amount.movePointRight(catalog.currency().getDefaultFractionDigits()))
                .map(BigDecimal::doubleValue).orElse(0.0);
    }

    private <P extends Part> Optional<P> find(Field field, Function<String, Optional<P>> lookup, String what,
            Collection<? extends Part> known) {
        Optional<P> found = lookup.apply(field.text());
        if (found.isEmpty()) {
            unknown(field, what, known);
        }
        return found;
    }

    private void unknown(Field field, String what, Collection<? extends Part> known) {
        Optional<Part> other = catalog.part(field.text());
        String hint = other.map(part -> "; it is a " + kind(part)).orElseGet(() -> nearest
                .computeIfAbsent(what, all -> new Nearest(known.stream().map(Part::sku).toList())).hint(field.text()));
        field.fault("is no " + what + hint, faults);
    }

    private String kind(Part part) {
        if (part instanceof Platform) {
            return "platform";
        }
        if (part instanceof Processor) {
            return "processor";
        }
        if (part instanceof MemoryModule) {
            return "memory module";
        }
        if (part instanceof Enclosure) {
            return "sled enclosure";
        }
        if (part instanceof Drive) {
            return "drive";
        }
        if (part instanceof Card) {
            return "card";
        }
        if (part instanceof Extra) {
            return "part of extras.csv";
        }
        if (catalog.isOfEnclosuresAlone(part.sku())) {
            return "power supply of a sled enclosure";
        }
        return part instanceof CoolingKit ? "cooling kit of another platform" : "power supply of another platform";
    }
}
