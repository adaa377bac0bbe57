package sledwright.generator;

import java.util.function.Supplier;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.generator.time.Deadline;

/** Answers requests exactly from some stock. One instance serves one request at a time. */
public interface Exact {

    /** The best order for a request and its alternatives, proven unless the deadline comes first. */
    Findings run(Request request, Deadline deadline);

    /** Whether a request can be met, which is often known sooner than the best. */
    default Existence any(Request request, Deadline deadline) {
        Findings findings = run(request, deadline);
        return new Existence(findings.ranked().stream().findFirst(), findings.status() == Status.IMPOSSIBLE);
    }

    /**
     * The same, where one machine at least holds a part. Machines of a request are alike but for the part numbers of their modules, so any
     * other part is in all of them or in none.
     */
    Findings runHolding(String sku, Request request, Deadline deadline);

    /**
     * The same of a stock that a change leaves of its own.
     *
     * @param change equal changes leave the same, so what was learnt of one stays known
     * @param other  the stock that it leaves
     */
    default Exact on(Object change, Supplier<Catalog> other) {
        return on(other.get());
    }

    /** The same of another stock; it shares what the two have in common, and may run beside this one. */
    Exact on(Catalog other);
}
