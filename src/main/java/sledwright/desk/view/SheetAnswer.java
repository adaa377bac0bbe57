package sledwright.desk.view;

import java.util.List;
import java.util.OptionalInt;
import sledwright.domain.Catalog;
import sledwright.planner.upgrade.Plan;
import sledwright.planner.upgrade.Upgrade;
import sledwright.rules.Order;
import sledwright.rules.Violation;

/** What is to be put together at the bench, or why nothing is. */
public sealed interface SheetAnswer {

    /** Something to do at the bench. */
    sealed interface Work extends SheetAnswer {

        /** The catalogue that the parts are of. */
        Catalog shop();
    }

    /**
     * Machines to be put together from parts, all of them valid.
     *
     * @param rank of a quote's alternative, its place in the list; empty: somebody drew the build up
     */
    record Assembly(Catalog shop, Order order, OptionalInt rank) implements Work {
    }

    /** Machines of the lines of an order, as many of them as can be delivered and at least one. */
    record Machines(Catalog shop, OrderAnswer order) implements Work {
    }

    /** Machines that stand, and what is done to them. */
    record Change(Catalog shop, Plan plan, Upgrade upgrade) implements Work {
    }

    /** A build that breaks rules, which nobody puts together. */
    record Invalid(String name, List<Violation> violations) implements SheetAnswer {

        public Invalid {
            violations = List.copyOf(violations);
        }
    }

    /** A request that no build was found for. */
    record NoBuild(String name) implements SheetAnswer {
    }

    /** An order of which not one machine was found. */
    record NoMachines(String name) implements SheetAnswer {
    }

    /** A target that no upgrade was found for. */
    record NoUpgrade(String name) implements SheetAnswer {
    }
}
