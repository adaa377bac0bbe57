package sledwright.desk.view;

import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Processor;
import sledwright.domain.Supply;

/**
 * A machine without its memory and equipment.
 *
 * @param platform  its part number
 * @param processor empty where none is fitted
 * @param cooling   part number; empty where no processor is fitted
 * @param supply    part number; empty where the enclosure feeds the machine
 * @param supplies  supplies of that kind in one machine
 */
public record BareMachine(String platform, String name, Optional<Processor> processor, int processors, Optional<String> cooling,
                          Optional<String> supply, int supplies) {

    public static BareMachine of(Build build) {
        return new BareMachine(build.platform().sku(), build.platform().name(), build.processors().stream().findFirst(),
                build.processors().size(), build.processors().isEmpty() ? Optional.empty() : Optional.of(build.cooling().sku()),
                build.supply().map(Supply::sku), build.supply().map(Supply::count).orElse(0));
    }

    /** The fitted processors' part number; empty where none is fitted. */
    public Optional<String> processorSku() {
        return processor.map(Processor::sku);
    }
}
