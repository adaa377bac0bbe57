package sledwright.explain.ask;

import java.util.Collections;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import sledwright.domain.Limits;
import sledwright.domain.Request;
import sledwright.domain.Requirements;

/**
 * What is searched for, and which circumstances count.
 *
 * @param stockCounts  whether lots hold no more units than they do; otherwise each sells any number at its prices
 * @param everyMachine whether the request's number of machines is meant; otherwise fewer will do
 * @param held         a part that one machine at least holds, beyond question
 * @param among        platforms beside which none comes into question, since none answers; empty: any may
 */
public record WhatIf(Request request, boolean stockCounts, boolean everyMachine, Optional<String> held, Set<String> among) {

    public WhatIf {
        among = Set.copyOf(among);
    }

    public static WhatIf of(Request request, Optional<String> held) {
        return new WhatIf(request, true, true, held, Set.of());
    }

    public WhatIf with(Request other) {
        return new WhatIf(other, stockCounts, everyMachine, held, among);
    }

    public WhatIf with(Requirements figures) {
        return with(request.withRequire(figures));
    }

    public WhatIf with(Limits limits) {
        return with(request.withLimit(limits));
    }

    public WhatIf withoutStock() {
        return new WhatIf(request, false, everyMachine, held, among);
    }

    public WhatIf withFewerMachines() {
        return new WhatIf(request, stockCounts, false, held, among);
    }

    public WhatIf withMachines(int count) {
        return new WhatIf(request.withMachines(count), stockCounts, true, held, among);
    }

    /** The same where no other platforms come into question. */
    public WhatIf withAmong(Set<String> platforms) {
        return new WhatIf(request, stockCounts, everyMachine, held, platforms);
    }

    /** Whether any platform comes into question. */
    boolean hasPlatforms() {
        return among.isEmpty() || request.platforms().isEmpty() || !Collections.disjoint(among, request.platforms());
    }

    /** The request, of platforms that come into question. */
    Request narrowed() {
        if (among.isEmpty()) {
            return request;
        }
        Set<String> both = new HashSet<>(among);
        if (!request.platforms().isEmpty()) {
            both.retainAll(request.platforms());
        }
        return request.withPlatforms(both);
    }
}
