package sledwright.domain;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a shop says of itself, beside its parts and offers.
 *
 * @param throughputFactors processor generation -> throughput of one core at one GHz
 * @param stationery        what it puts on its documents
 * @param suppliers         what it calls its suppliers, and which of them it is itself
 * @param house             what it holds itself to where a request says nothing else
 * @param workloads         name -> what a machine is to do, in the order in which the shop lists them
 */
public record Shop(String name, PriceBasis prices, Map<String, Double> throughputFactors, Stationery stationery,
                   SupplierNames suppliers, House house, Map<String, Workload> workloads) {

    public Shop {
        throughputFactors = Map.copyOf(throughputFactors);
        workloads = Collections.unmodifiableMap(new LinkedHashMap<>(workloads));
    }

    Shop with(Labour rates) {
        return new Shop(name, prices.with(rates), throughputFactors, stationery, suppliers, house, workloads);
    }
}
