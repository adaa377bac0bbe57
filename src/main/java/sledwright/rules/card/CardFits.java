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
import sledwright.words.Sentence;

/** {@value #ID}: every card has a slot of its own that fits it, on a fitted socket. */
public final class CardFits extends Rule<Machine> {

    public static final String ID = "card-slot";

    public CardFits() {
        super(ID, "Every card has a slot of its own with its lanes, generation, height, length and watts, on a fitted socket.");
    }

    /** Whether the card works in the slot with a given number of fitted processors. */
    public static boolean allows(CardSlot slot, Card card, int processors) {
        return Expansion.isLive(slot.socket(), processors) && reasons(slot.offers(), card.shape()).isEmpty();
    }

    @Override
    public List<Violation> judge(Machine machine) {
        List<Violation> broken = new ArrayList<>();
        Platform platform = machine.build().platform();
        for (Map.Entry<String, Card> fitted : machine.build().fitout().cards().entrySet()) {
            Optional<CardSlot> slot = platform.expansion().slot(fitted.getKey());
            List<Sentence> reasons = slot.map(known -> reasons(known, fitted.getValue(), machine.build().processors().size()))
                    .orElse(List.of(Sentence.of("%s has no such slot", platform.sku())));
            if (!reasons.isEmpty()) {
                broken.add(broken(fitted.getKey(), "%s does not work in slot %s: %s.", fitted.getValue().sku(), fitted.getKey(),
                        Sentence.joined("; ", reasons)));
            }
        }
        return broken;
    }

    private static List<Sentence> reasons(CardSlot slot, Card card, int processors) {
        List<Sentence> reasons = new ArrayList<>();
        if (!Expansion.isLive(slot.socket(), processors)) {
            reasons.add(Sentence.of("it hangs on socket %s, which is empty", slot.socket().getAsInt()));
        }
        reasons.addAll(reasons(slot.offers(), card.shape()));
        return reasons;
    }

    private static List<Sentence> reasons(CardShape offers, CardShape needs) {
        List<Sentence> reasons = new ArrayList<>();
        if (needs.lanes() > offers.lanes()) {
            reasons.add(Sentence.of("it needs %s and the slot has %s", Numbers.counted(needs.lanes(), "lane"), offers.lanes()));
        }
        if (needs.pcieGeneration() > offers.pcieGeneration()) {
            reasons.add(Sentence.of("it needs PCI Express generation %s and the slot has %s", needs.pcieGeneration(),
                    offers.pcieGeneration()));
        }
        if (needs.height() == CardHeight.FULL && offers.height() == CardHeight.LOW) {
            reasons.add(Sentence.plain("it is of full height and the slot is low"));
        }
        if (!Quantity.within(needs.lengthMm(), offers.lengthMm())) {
            reasons.add(Sentence.of("it is %s mm long and the slot takes %s mm", Numbers.plain(needs.lengthMm()),
                    Numbers.plain(offers.lengthMm())));
        }
        if (!Quantity.within(needs.powerW(), offers.powerW())) {
            reasons.add(Sentence.of("it takes %s W and the slot gives %s W", Numbers.plain(needs.powerW()),
                    Numbers.plain(offers.powerW())));
        }
        return reasons;
    }
}
