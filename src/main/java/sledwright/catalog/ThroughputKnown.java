package sledwright.catalog;

import java.util.Map;
import sledwright.domain.Processor;
import sledwright.input.Faults;
import sledwright.input.Located;
import sledwright.input.Nearest;

/** A processor without a throughput needs its generation's factor for the estimate. */
final class ThroughputKnown implements CatalogCheck {

    @Override
    public void check(RawCatalog raw, Faults faults) {
        raw.shop().filter(ShopFile::hasFactors).ifPresent(file -> check(raw, file.shop().throughputFactors(), faults));
    }

    private static void check(RawCatalog raw, Map<String, Double> factors, Faults faults) {
        Nearest nearest = new Nearest(factors.keySet());
        for (Located<Processor> row : raw.components().processors().rows()) {
            Processor processor = row.value();
            if (processor.throughput().isEmpty() && !factors.containsKey(processor.generation())) {
                faults.add(row.place(), "throughput is empty and catalog.yaml has no throughput factor for generation \"%s\"%s"
                        .formatted(processor.generation(), nearest.hint(processor.generation())));
            }
        }
    }
}
