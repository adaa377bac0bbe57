package sledwright.planner.upgrade;

import java.util.List;
import sledwright.domain.Catalog;
import sledwright.domain.Labour;
import sledwright.domain.Pick;

/** How many parts are put in that labour is paid for; what stays or moves is not among them. */
public record PutIn(int modules, int drives, int cards) {

    static final PutIn NOTHING = new PutIn(0, 0, 0);

    static PutIn of(List<Pick> picks, Catalog shop) {
        int[] units = new int[3];
        picks.stream().filter(pick -> !UpgradeSearch.isInstalled(pick)).forEach(pick -> {
            units[0] += shop.module(pick.sku()).isPresent() ? pick.quantity() : 0;
            units[1] += shop.drive(pick.sku()).isPresent() ? pick.quantity() : 0;
            units[2] += shop.card(pick.sku()).isPresent() ? pick.quantity() : 0;
        });
        return new PutIn(units[0], units[1], units[2]);
    }

    /** The labour of one unit of a part, minor units. */
    static long each(Labour labour, Catalog shop, String sku) {
        return shop.module(sku).isPresent() ? labour.perModule() : shop.drive(sku).isPresent() ? labour.perDrive()
                : shop.card(sku).isPresent() ? labour.perCard() : 0;
    }

    /** The labour of all of it, minor units. */
    long labour(Labour each) {
        return modules * each.perModule() + drives * each.perDrive() + cards * each.perCard();
    }
}
