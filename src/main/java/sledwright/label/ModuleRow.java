package sledwright.label;

import java.util.Optional;
import sledwright.domain.ModuleType;

/**
 * A row of {@code memory.csv} so far as it is known; an empty field is an empty cell.
 *
 * @param sku the module's own part number, or one made of its label
 */
public record ModuleRow(String sku, String description, Generation generation, Optional<ModuleType> type, Optional<Integer> capacityGb,
                        Optional<Integer> ranks, Optional<Integer> logicalRanks, Optional<Integer> deviceWidth, int speedMts,
                        double voltage) {
}
