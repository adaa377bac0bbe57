package sledwright.domain;

import java.util.List;
import java.util.Set;

/**
 * A sled enclosure: it houses several platforms and feeds them.
 *
 * @param takes    skus of the platforms that go into its bays; at least one
 * @param bays     sleds that it houses; each takes one bay
 * @param baseW    watts of the enclosure itself: fans and manager
 * @param budgetW  watts that the enclosure may draw with all its sleds; 0: no budget
 * @param supplies options to choose from, of which one is fitted; at least one
 */
public record Enclosure(String sku, String name, Set<String> takes, int bays, double baseW, double budgetW,
                        List<Supply> supplies) implements Part {

    public Enclosure {
        takes = Set.copyOf(takes);
        supplies = List.copyOf(supplies);
        if (takes.isEmpty() || bays < 1 || supplies.isEmpty()) {
            throw new IllegalArgumentException("enclosure %s needs a platform it takes, a bay and a supply".formatted(sku));
        }
    }

    @Override
    public String description() {
        return name;
    }

    /** Whether a machine of that platform goes into its bays. */
    public boolean takes(Platform platform) {
        return takes.contains(platform.sku());
    }

    /** Whether the part is this enclosure or a supply that it lists. */
    public boolean lists(String part) {
        return part.equals(sku) || supplies.stream().anyMatch(supply -> supply.sku().equals(part));
    }

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
