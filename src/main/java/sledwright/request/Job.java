package sledwright.request;

import java.util.List;
import java.util.Optional;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.Energy;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.domain.RestockRequest;

/** What a request file asks for, ready to be answered from a catalogue. */
public sealed interface Job {

    Catalog catalog();

    /** What the customer calls it. */
    String name();

    /** A job that is about one request. */
    sealed interface Single extends Job {

        Request request();

        @Override
        default String name() {
            return request().name();
        }
    }

    /** A job whose answer a shop may offer. */
    sealed interface Offerable extends Job {

        /** Lines that say for whom; may be empty. */
        List<String> customer();

        /** The same for whom these lines name. */
        Offerable addressedTo(List<String> lines);
    }

    /**
     * Builds are to be found.
     *
     * @param customer lines that say for whom; may be empty
     * @param energy   what electricity costs the customer; empty where the file does not say
     * @param points   how many price points are wanted in the place of alternatives; 0: none
     * @param discount what the customer pays in the place of the price
     */
    record Quote(Catalog catalog, Request request, List<String> customer, Optional<Energy> energy, int points, Discount discount)
            implements Single, Offerable {

        public Quote {
            customer = List.copyOf(customer);
        }

        @Override
        public Quote addressedTo(List<String> lines) {
            return new Quote(catalog, request, lines, energy, points, discount);
        }
    }

    /** A given build is to be judged; the request holds the targets it is judged by. */
    record Judge(Catalog catalog, Request request, Build build) implements Single {
    }

    /**
     * Machines that stand are to answer the request.
     *
     * @param build   each of them, as it stands
     * @param tradeIn the share of its selling price that a pulled part fetches
     */
    record Upgrade(Catalog catalog, Request request, Build build, double tradeIn) implements Single {
    }

    /** Parts are to be stocked for expected orders. */
    record Restock(Catalog catalog, RestockRequest plan) implements Job {

        @Override
        public String name() {
            return plan.name();
        }
    }

    /**
     * Lines of machines are to be filled from one stock.
     *
     * @param customer lines that say for whom; may be empty
     * @param discount what the customer pays in the place of the price of the whole order
     */
    record Order(Catalog catalog, OrderRequest order, List<String> customer, Discount discount) implements Offerable {

        public Order {
            customer = List.copyOf(customer);
        }

        @Override
        public Order addressedTo(List<String> lines) {
            return new Order(catalog, order, lines, discount);
        }

        @Override
        public String name() {
            return order.name();
        }
    }
}
