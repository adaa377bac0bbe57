package sledwright.planner;

import static sledwright.samples.Samples.LOW;
import static sledwright.samples.Samples.P10;
import static sledwright.samples.Samples.PAIR;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.catalog;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.platform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.rules.Order;

/** Valid orders of one machine: two P10 and eight R16; board 100.00, processors 50.00, heat sinks 10.00, supplies 20.00 each. */
final class Shop {

    static final Platform BOX = platform().make();
    static final Build MACHINE = machine(BOX).channels(4, R16).build();
    static final Catalog CATALOG = catalog(List.of(BOX), List.of(P10), List.of(R16));

    private Shop() {
    }

    /** An order of the machine, its modules drawn as given; 260.00 for each machine beside them. */
    static Order order(Request request, Pick... memory) {
        return order(request, MACHINE, memory);
    }

    static Order order(Request request, Build build, Pick... memory) {
        int machines = request.machines();
        List<Pick> picks = new ArrayList<>(List.of(new Pick(plenty(BOX.sku(), 10_000), machines),
                new Pick(plenty(P10.sku(), 5_000), 2 * machines), new Pick(plenty(LOW.sku(), 1_000), 2 * machines),
                new Pick(plenty(PAIR.sku(), 2_000), 2 * machines)));
        picks.addAll(Arrays.asList(memory));
        return Order.of(Collections.nCopies(machines, build), picks, request, CATALOG);
    }

    private static Lot plenty(String sku, long unitPrice) {
        return lot(sku, "plenty", 9_999, unitPrice);
    }
}
