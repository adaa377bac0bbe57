package sledwright.explain.ask;

import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Requirements;

/**
 * What is searched for, and which circumstances count.
 *
 * @param stockCounts  whether lots hold no more units than they do; otherwise each sells any number at its prices
 * @param everyMachine whether the request's number of machines is meant; otherwise fewer will do
 */
public record Terms(Request request, boolean stockCounts, boolean everyMachine) {

    public static Terms of(Request request) {
        return new Terms(request, true, true);
    }

    public Terms with(Request other) {
        return new Terms(other, stockCounts, everyMachine);
    }

    public Terms with(Requirements figures) {
        return with(request.withRequire(figures));
    }

    public Terms with(Limits limits) {
        return with(request.withLimit(limits));
    }

    public Terms withoutStock() {
        return new Terms(request, false, everyMachine);
    }

    public Terms withFewerMachines() {
        return new Terms(request, stockCounts, false);
    }

    public Terms withMachines(int count) {
        return new Terms(request.withMachines(count), stockCounts, true);
    }
}
