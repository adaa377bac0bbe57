package sledwright.rules.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.Card;
import sledwright.domain.CardHeight;
import sledwright.domain.CardShape;
import sledwright.domain.CardSlot;
import sledwright.domain.Expansion;
import sledwright.domain.Platform;
import sledwright.metrics.Quantity;
import sledwright.rules.Machine;
import sledwright.rules.Rule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: every card has a slot of its own that fits it, on a fitted socket. */
public final class CardFits extends Rule<Machine> {

    public static final String ID = "card-slot";

    public CardFits() {
        super(ID, "Every card has a slot of its own with its lanes, generation, height, length and watts, on a fitted socket.");
    }

    /** Whether the card works in the slot with so many fitted processors. */
    public static boolean allows(CardSlot slot, Card card, int processors) {
        return Expansion.isLive(slot.socket(), processors) && reasons(slot.offers(), card.shape()).isEmpty();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        List<Violation> broken = new ArrayList<>();
        Platform platform = machine.build().platform();
        for (Map.Entry<String, Card> fitted : machine.build().fitout().cards().entrySet()) {
            Optional<CardSlot> slot = platform.expansion().slot(fitted.getKey());
            List<String> reasons = slot.map(known -> reasons(known, fitted.getValue(), machine.build().processors().size()))
                    .orElse(List.of("%s has no such slot".formatted(platform.sku())));
            if (!reasons.isEmpty()) {
                broken.add(broken(fitted.getKey(), "%s does not work in slot %s: %s.", fitted.getValue().sku(), fitted.getKey(),
                        String.join("; ", reasons)));
            }
        }
        return broken;
    }

    private static List<String> reasons(CardSlot slot, Card card, int processors) {
        List<String> reasons = new ArrayList<>();
        if (!Expansion.isLive(slot.socket(), processors)) {
            reasons.add("it hangs on socket %d, which is empty".formatted(slot.socket().getAsInt()));
        }
        reasons.addAll(reasons(slot.offers(), card.shape()));
        return reasons;
    }

    private static List<String> reasons(CardShape offers, CardShape needs) {
        List<String> reasons = new ArrayList<>();
        if (needs.lanes() > offers.lanes()) {
            reasons.add("it needs %s and the slot has %d".formatted(Numbers.counted(needs.lanes(), "lane"), offers.lanes()));
        }
        if (needs.pcieGeneration() > offers.pcieGeneration()) {
            reasons.add("it needs PCI Express generation %d and the slot has %d"
                    .formatted(needs.pcieGeneration(), offers.pcieGeneration()));
        }
        if (needs.height() == CardHeight.FULL && offers.height() == CardHeight.LOW) {
            reasons.add("it is of full height and the slot is low");
        }
        if (!Quantity.within(needs.lengthMm(), offers.lengthMm())) {
            reasons.add("it is %s mm long and the slot takes %s mm"
                    .formatted(Numbers.plain(needs.lengthMm()), Numbers.plain(offers.lengthMm())));
        }
        if (!Quantity.within(needs.powerW(), offers.powerW())) {
            reasons.add("it takes %s W and the slot gives %s W".formatted(Numbers.plain(needs.powerW()), Numbers.plain(offers.powerW())));
        }
        return reasons;
    }
}
