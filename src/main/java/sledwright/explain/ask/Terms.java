package sledwright.explain.ask;

import java.util.Optional;
import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Requirements;

/**
 * What is searched for, and which circumstances count.
 *
 * @param stockCounts  whether lots hold no more units than they do; otherwise each sells any number at its prices
 * @param everyMachine whether the request's number of machines is meant; otherwise fewer will do
 * @param held         a part that one machine at least holds, beyond question
 */
public record Terms(Request request, boolean stockCounts, boolean everyMachine, Optional<String> held) {

    public static Terms of(Request request, Optional<String> held) {
        return new Terms(request, true, true, held);
    }

    public Terms with(Request other) {
        return new Terms(other, stockCounts, everyMachine, held);
    }

    public Terms with(Requirements figures) {
        return with(request.withRequire(figures));
    }

    public Terms with(Limits limits) {
        return with(request.withLimit(limits));
    }

    public Terms withoutStock() {
        return new Terms(request, false, everyMachine, held);
    }

    public Terms withFewerMachines() {
        return new Terms(request, stockCounts, false, held);
    }

    public Terms withMachines(int count) {
        return new Terms(request.withMachines(count), stockCounts, true, held);
    }
}
