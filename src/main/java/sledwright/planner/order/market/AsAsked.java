package sledwright.planner.order.market;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.Equipment;
import sledwright.domain.Fitout;
import sledwright.domain.Request;
import sledwright.rules.card.AskedCards;
import sledwright.rules.card.PartsNeeded;

/** Whether a machine that was found for one request holds no drive, card or extra that another neither asks for nor needs. */
public final class AsAsked {

    private AsAsked() {
    }

    public static boolean allows(Build build, Request request) {
        Equipment asked = request.equipment();
        return build.fitout().volumes().size() == asked.volumes().size() && cards(build.fitout(), request) && extras(build, asked);
    }

    /** One controller more than is asked for is there to drive, or to be used. */
    private static boolean cards(Fitout fitout, Request request) {
        List<Card> cards = new ArrayList<>(fitout.cards().values());
        int more = cards.size() - request.equipment().cards().stream().mapToInt(wish -> wish.count()).sum();
        if (more != 1) {
            return more == 0;
        }
        return cards.stream().filter(card -> card.equals(fitout.driver().map(fitout.cards()::get).orElse(null))
                || card.support().isPresent() && request.use().contains(card.sku())).anyMatch(extra -> {
                    List<Card> others = new ArrayList<>(cards);
                    others.remove(extra);
                    return AskedCards.allows(request.equipment().cards(), others);
                });
    }

    private static boolean extras(Build build, Equipment asked) {
        SortedMap<String, Integer> needed = new TreeMap<>(PartsNeeded.called(build.platform(), build.processors().size(), asked));
        build.platform().expansion().slots().stream().filter(slot -> build.fitout().cards().containsKey(slot.name()))
                .flatMap(slot -> slot.riser().stream()).distinct().forEach(riser -> needed.merge(riser, 1, Integer::sum));
        return build.fitout().extrasBySku().equals(needed);
    }
}
