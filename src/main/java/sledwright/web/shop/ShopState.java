package sledwright.web.shop;

import java.time.Instant;
import java.util.List;
import sledwright.desk.Desk;
import sledwright.domain.Catalog;
import sledwright.input.Fault;

/**
 * A catalogue that questions are answered from.
 *
 * @param desk   knows it
 * @param readAt when it was read
 * @param faults what is wrong in its files now, so that this one, read before, still stands; empty: nothing
 */
public record ShopState(Catalog catalog, Desk desk, Instant readAt, List<Fault> faults) {

    public ShopState {
        faults = List.copyOf(faults);
    }

    ShopState despite(List<Fault> found) {
        return new ShopState(catalog, desk, readAt, found);
    }
}
