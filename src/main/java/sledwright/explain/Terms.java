package sledwright.explain;

import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Requirements;

/**
 * What is searched for, and which circumstances count.
 *
 * @param stockCounts  whether lots hold no more units than they do; otherwise each sells any number at its prices
 * @param everyMachine whether the request's number of machines is meant; otherwise fewer will do
 */
record Terms(Request request, boolean stockCounts, boolean everyMachine) {

    static Terms of(Request request) {
        return new Terms(request, true, true);
    }

    Terms with(Request other) {
        return new Terms(other, stockCounts, everyMachine);
    }

    Terms with(Requirements figures) {
        return with(request.withRequire(figures));
    }

    Terms with(Limits limits) {
        return with(request.withLimit(limits));
    }

    Terms withoutStock() {
        return new Terms(request, false, everyMachine);
    }

    Terms withFewerMachines() {
        return new Terms(request, stockCounts, false);
    }

    Terms withMachines(int count) {
        return new Terms(request.withMachines(count), stockCounts, true);
    }
}
