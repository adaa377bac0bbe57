package sledwright.domain;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A machine without processors, memory, heat sinks and supplies.
 *
 * @param fillSide  words for the bench: which slot of a channel is its first
 * @param expansion drive bays, slots for cards, and what must be bought with what is fitted
 */
public record Platform(String sku, String name, ProcessorSupport processors, MemorySupport memory, Board board,
                       List<CoolingKit> cooling, Thermal thermal, Power power, String fillSide, Expansion expansion) implements Part {

    public Platform {
        cooling = List.copyOf(cooling);
    }

    /** A platform that takes nothing but processors and memory. */
    public Platform(String sku, String name, ProcessorSupport processors, MemorySupport memory, Board board,
                    List<CoolingKit> cooling, Thermal thermal, Power power, String fillSide) {
        this(sku, name, processors, memory, board, cooling, thermal, power, fillSide, Expansion.NONE);
    }

    @Override
    public String description() {
        return name;
    }

    /** The slots that a kit covers. */
    public Set<Slot> covered(CoolingKit kit) {
        return kit.covers().stream().flatMap(name -> board.slot(name).stream()).collect(Collectors.toUnmodifiableSet());
    }
}
