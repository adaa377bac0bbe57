package sledwright.domain;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A machine without processors, memory, heat sinks and supplies.
 *
 * @param expansion drive bays, slots for cards, and what must be bought with what is fitted
 */
public record Platform(String sku, String name, ProcessorSupport processors, MemorySupport memory, Board board,
                       CoolingAndPower coolingAndPower, Expansion expansion) implements Part {

    @Override
    public String description() {
        return name;
    }

    public Power power() {
        return coolingAndPower.power();
    }

    /** The heat sink kits to choose from. */
    public List<CoolingKit> cooling() {
        return coolingAndPower.kits();
    }

    public Thermal thermal() {
        return coolingAndPower.thermal();
    }

    /** The slots that a kit covers. */
    public Set<Slot> covered(CoolingKit kit) {
        return kit.covers().stream().flatMap(name -> board.slot(name).stream()).collect(Collectors.toUnmodifiableSet());
    }

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
