package sledwright.generator.fitout;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Extra;
import sledwright.domain.Fitout;
import sledwright.domain.Housed;
import sledwright.domain.Pick;
import sledwright.domain.Volume;
import sledwright.generator.draw.Shelf;
import sledwright.metrics.CheapestDraw;

/** Turns a completion into what stands in each machine, and the lots that it comes from. */
public record Outfitter(Catalog catalog, Shelf shelf, int machines) {

    /** What each machine holds, the heaviest first, and what is picked for all of them and their enclosures. */
    public List<Fitout> fitouts(Completion completion, List<Pick> picks) {
        VolumePlan volumes = completion.fitted().volumes();
        CardPlan cards = completion.fitted().cards();
        List<Map<Drive.Kind, Deque<Drive>>> hands = hands(volumes, picks);
        Map<String, Integer> parts = new LinkedHashMap<>();
        cards.cards().values().forEach(card -> parts.merge(card.sku(), machines, Integer::sum));
        cards.extras().forEach((sku, each) -> parts.merge(sku, each * machines, Integer::sum));
        completion.housed().ifPresent(housed -> housed.partCounts().forEach((sku, units) -> parts.merge(sku, units, Integer::sum)));
        parts.forEach((sku, units) -> picks.addAll(CheapestDraw.picks(shelf.lots(sku), units)));
        Map<Extra, Integer> extras = new LinkedHashMap<>();
        cards.extras().forEach((sku, each) -> extras.put(catalog.extra(sku).orElseThrow(), each));
        Optional<String> driver = volumes.isDriven() ? cards.driver() : Optional.empty();
        Optional<Housed> housed = completion.housed();
        return hands.stream().map(hand -> new Fitout(volumes(volumes, hand), driver, cards.cards(), extras, housed)).toList();
    }

    private List<Map<Drive.Kind, Deque<Drive>>> hands(VolumePlan plan, List<Pick> picks) {
        List<Map<Drive.Kind, Deque<Drive>>> hands = new ArrayList<>();
        for (int machine = 0; machine < machines; machine++) {
            hands.add(new HashMap<>());
        }
        plan.draws().forEach((kind, drawn) -> {
            List<List<Drive>> units = new ArrayList<>();
            for (int i = 0; i < drawn.draws().sources().size(); i++) {
                List<Pick> taken = CheapestDraw.picks(drawn.draws().lots(drawn.draws().sources().get(i)), drawn.way().bySource()[i]);
                picks.addAll(taken);
                List<Drive> drives = new ArrayList<>();
                taken.forEach(pick -> drives.addAll(Collections.nCopies(pick.quantity(), catalog.drive(pick.sku()).orElseThrow())));
                units.add(drives);
            }
            List<List<Drive>> dealt = drawn.draws().dealt(drawn.way(), units);
            for (int machine = 0; machine < machines; machine++) {
                hands.get(machine).put(kind, new ArrayDeque<>(dealt.get(machine)));
            }
        });
        return hands;
    }

    private static List<Volume> volumes(VolumePlan plan, Map<Drive.Kind, Deque<Drive>> hand) {
        List<Volume> volumes = new ArrayList<>();
        for (VolumePlan.Choice choice : plan.choices()) {
            Deque<Drive> drives = hand.get(choice.kind());
            volumes.add(new Volume(choice.wish().name(), choice.wish().level(), choice.group().name(), taken(drives, choice.drives()),
                    taken(drives, choice.wish().hotSpares())));
        }
        return volumes;
    }

    private static List<Drive> taken(Deque<Drive> drives, int number) {
        List<Drive> taken = new ArrayList<>();
        for (int i = 0; i < number; i++) {
            taken.add(drives.remove());
        }
        return taken;
    }
}
