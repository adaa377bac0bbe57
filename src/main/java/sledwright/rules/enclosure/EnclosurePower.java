package sledwright.rules.enclosure;

import java.util.ArrayList;
import java.util.List;
import sledwright.domain.Enclosure;
import sledwright.domain.Limits;
import sledwright.domain.Supply;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.Quantity;
import sledwright.rules.Housing;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** {@value #ID}: an enclosure feeds itself and its sleds with the redundant supplies failed, at the site's mains, within its budget. */
public final class EnclosurePower extends Rule<Housing> {

    public static final String ID = "enclosure-power";

    /** The key of a request that it holds a build to. */
    public static final String KEY = "enclosure";

    public EnclosurePower() {
        super(ID, "The enclosure feeds itself and its sleds with the redundant supplies failed, at the site's mains voltage, within its"
                + " budget.", KEY);
    }

    /** Whether a given number of watts of all sleds together are within what the enclosure feeds. */
    public static boolean allows(Enclosure enclosure, Supply supply, Limits site, double sledsW) {
        return Quantity.within(sledsW, capacityW(enclosure, supply, site));
    }

    /**
     * The most watts that all sleds together may load: what the supplies deliver with the redundant ones failed, or the enclosure's
     * budget where that is less, without what the enclosure takes itself. Below 0 it cannot even run empty, and where the supply
     * cannot be used at the site's mains it is negative infinity.
     */
    public static double capacityW(Enclosure enclosure, Supply supply, Limits site) {
        return supply.ratedW(site) <= 0 ? Double.NEGATIVE_INFINITY : Math.min(fedW(enclosure, supply, site), grantedW(enclosure));
    }

    /** What the supplies leave for the sleds. */
    private static double fedW(Enclosure enclosure, Supply supply, Limits site) {
        return Quantity.rounded(PowerDraw.deliverableW(supply, site) - enclosure.baseW());
    }

    /** What the budget leaves for the sleds. */
    private static double grantedW(Enclosure enclosure) {
        return enclosure.budgetW() > 0 ? Quantity.rounded(enclosure.budgetW() - enclosure.baseW()) : Double.POSITIVE_INFINITY;
    }

    @Override
    public List<Violation> judge(Housing housing) {
        Enclosure enclosure = housing.filled().enclosure();
        Supply supply = housing.filled().supply();
        Limits site = housing.request().limit();
        double sledsW = Quantity.rounded(housing.filled().sleds().stream().mapToDouble(PowerDraw::loadW).sum());
        if (allows(enclosure, supply, site, sledsW)) {
            return List.of();
        }
        if (supply.ratedW(site) <= 0) {
            return List.of(broken(supply.sku(), "%s cannot be used at %s V in %s.", supply.sku(),
                    Numbers.plain(site.mainsV().orElseThrow()), enclosure.sku()));
        }
        Sentence load = Sentence.of("%s takes %s W and its sleds %s W", enclosure.sku(), Numbers.plain(enclosure.baseW()),
                Numbers.plain(sledsW));
        List<Violation> broken = new ArrayList<>();
        if (!Quantity.within(sledsW, fedW(enclosure, supply, site))) {
            broken.add(broken(supply.sku(), "%s; %s x %s deliver %s W with %s failed.", load, supply.count(), supply.sku(),
                    Numbers.plain(PowerDraw.deliverableW(supply, site)), supply.redundant()));
        }
        if (!Quantity.within(sledsW, grantedW(enclosure))) {
            broken.add(broken(enclosure.sku(), "%s; its budget is %s W.", load, Numbers.plain(enclosure.budgetW())));
        }
        return broken;
    }
}
