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
public record WhatIf(Request request, boolean stockCounts, boolean everyMachine, Optional<String> held) {

    public static WhatIf of(Request request, Optional<String> held) {
        return new WhatIf(request, true, true, held);
    }

    public WhatIf with(Request other) {
        return new WhatIf(other, stockCounts, everyMachine, held);
    }

    public WhatIf with(Requirements figures) {
        return with(request.withRequire(figures));
    }

    public WhatIf with(Limits limits) {
        return with(request.withLimit(limits));
    }

    public WhatIf withoutStock() {
        return new WhatIf(request, false, everyMachine, held);
    }

    public WhatIf withFewerMachines() {
        return new WhatIf(request, stockCounts, false, held);
    }

    public WhatIf withMachines(int count) {
        return new WhatIf(request.withMachines(count), stockCounts, true, held);
    }
}
