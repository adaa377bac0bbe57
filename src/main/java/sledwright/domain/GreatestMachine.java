package sledwright.domain;

import java.util.Collection;
import java.util.List;
import java.util.function.ToLongFunction;

/**
 * What no machine of a catalogue goes beyond, whatever fits together.
 *
 * @param price of its parts, minor units
 */
public record GreatestMachine(int processors, int cores, int slots, long price) {

    static GreatestMachine of(Catalog catalog) {
        int processors = (int) most(catalog.platforms(), platform -> platform.processors().sockets());
        int slots = (int) most(catalog.platforms(), platform -> platform.board().slots().size());
        return new GreatestMachine(processors, processors * (int) most(catalog.processors(), Processor::cores), slots,
                dearest(catalog, processors, slots));
    }

    private static long dearest(Catalog catalog, int processors, int slots) {
        List<CoolingKit> kits = catalog.platforms().stream().flatMap(platform -> platform.cooling().stream()).toList();
        List<Supply> supplies = catalog.platforms().stream().flatMap(platform -> platform.power().supplies().stream()).toList();
        return dearest(catalog, catalog.platforms()) + processors * dearest(catalog, catalog.processors())
                + slots * dearest(catalog, catalog.modules()) + processors * dearest(catalog, kits)
                + most(supplies, Supply::count) * dearest(catalog, supplies)
                + most(catalog.enclosures(), enclosure -> dearest(catalog, List.of(enclosure))
                        + most(enclosure.supplies(), Supply::count) * dearest(catalog, enclosure.supplies()));
    }

    private static long dearest(Catalog catalog, Collection<? extends Part> choice) {
        return most(choice, part -> most(catalog.lots(part.sku()), Lot::dearest));
    }

    private static <T> long most(Collection<T> items, ToLongFunction<T> figure) {
        return items.stream().mapToLong(figure).max().orElse(0);
    }
}
