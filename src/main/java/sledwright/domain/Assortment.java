package sledwright.domain;

import java.util.List;

/** The parts that a shop knows, by kind; kits and supplies stand in what takes them. */
public record Assortment(List<Platform> platforms, List<Enclosure> enclosures, List<Processor> processors, List<MemoryModule> modules,
                         List<Drive> drives, List<Card> cards, List<Extra> extras) {

    public Assortment {
        platforms = List.copyOf(platforms);
        enclosures = List.copyOf(enclosures);
        processors = List.copyOf(processors);
        modules = List.copyOf(modules);
        drives = List.copyOf(drives);
        cards = List.copyOf(cards);
        extras = List.copyOf(extras);
    }
}
