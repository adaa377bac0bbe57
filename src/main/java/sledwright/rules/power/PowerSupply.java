package sledwright.rules.power;

import java.util.List;
import java.util.Optional;
import sledwright.domain.Limits;
import sledwright.domain.Platform;
import sledwright.domain.Supply;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.Quantity;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: the supplies carry the load with the redundant ones failed, at the site's mains. */
public final class PowerSupply extends Rule<Machine> {

    public static final String ID = "power-supply";

    public PowerSupply() {
        super(ID, "The supplies carry the load with the redundant ones failed, at the site's mains voltage.", "limit.mains_v");
    }

    public static boolean allows(Supply supply, Limits site, double loadW) {
        return supply.ratedW(site) > 0 && Quantity.within(loadW, PowerDraw.deliverableW(supply, site));
    }

    @Override
    public List<Violation> judge(Machine machine) {
        Platform platform = machine.build().platform();
        Limits site = machine.request().limit();
        double loadW = machine.figures().loadW();
        Optional<Supply> fitted = machine.build().supply();
        if (fitted.isEmpty()) {
            return platform.power().supplies().isEmpty() ? List.of()
                    : List.of(broken(platform.sku(), "%s needs a power supply and none is chosen.", platform.sku()));
        }
        Supply supply = fitted.get();
        if (allows(supply, site, loadW)) {
            return List.of();
        }
        if (supply.ratedW(site) <= 0) {
            return List.of(broken(supply.sku(), "%s cannot be used at %s V.", supply.sku(), Numbers.plain(site.mainsV().orElseThrow())));
        }
        return List.of(broken(supply.sku(), "The load is %s W; %s x %s deliver %s W with %s failed.", Numbers.plain(loadW),
                supply.count(), supply.sku(), Numbers.plain(PowerDraw.deliverableW(supply, site)), supply.redundant()));
    }
}
