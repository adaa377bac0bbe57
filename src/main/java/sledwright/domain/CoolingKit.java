package sledwright.domain;

import java.util.List;

/**
 * A heat sink kit of a platform; every fitted processor carries one.
 *
 * @param maxTdpW the hottest processor it cools, watts
 * @param covers  names of the memory slots that it makes unusable, over all sockets
 */
public record CoolingKit(String sku, String name, double maxTdpW, List<String> covers) implements Part {

    public CoolingKit {
        covers = List.copyOf(covers);
    }

    @Override
    public String description() {
        return name;
    }

    /** The same part, called otherwise. */
    public CoolingKit named(String other) {
        return new CoolingKit(sku, other, maxTdpW, covers);
    }

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
