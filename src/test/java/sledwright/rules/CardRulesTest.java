package sledwright.rules;

import static sledwright.rules.Examples.offender;
import static sledwright.samples.Equipped.BLANK;
import static sledwright.samples.Equipped.CONTROLLER;
import static sledwright.samples.Equipped.FANS;
import static sledwright.samples.Equipped.FAST_NET;
import static sledwright.samples.Equipped.NET;
import static sledwright.samples.Equipped.RISER;
import static sledwright.samples.Equipped.machine;
import static sledwright.samples.Equipped.machineOfOne;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.Card;
import sledwright.domain.CardHeight;
import sledwright.domain.CardKind;
import sledwright.domain.CardShape;
import sledwright.domain.CardWish;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.rules.card.AskedCards;
import sledwright.rules.card.CardFits;
import sledwright.rules.card.PartsNeeded;
import sledwright.rules.card.RiserBought;
import sledwright.samples.Equipped;
import sledwright.samples.Samples;

/** Cards in a machine with slot X1 of full height, and X2, which is low, behind a riser and on the second socket. */
class CardRulesTest extends RuleGroup {

    private static final Card HUGE = new Card("ACC-1", "ACC-1", CardKind.ACCELERATOR, new CardShape(4, 32, CardHeight.FULL, 320, 250), 0, 0, Optional.empty());

    @ForRule(CardFits.ID)
    Examples cardSlot() {
        return offender("a card too large in every way", machine().with(f -> f.card("X1", HUGE)))
                .says("X1", "ACC-1 does not work in slot X1: it needs 32 lanes and the slot has 16; it needs PCI Express generation 4 and the slot has 3;"
                        + " it is 320 mm long and the slot takes 312 mm; it takes 250 W and the slot gives 75 W.")
                .andOffender("a card of full height in a low slot", machine().with(f -> f.card("X2", FAST_NET).extra(RISER, 1)))
                .says("X2", "NET-2X25 does not work in slot X2: it is of full height and the slot is low; it is 170 mm long and the slot takes 168 mm.")
                .andOffender("the slot of the second socket beside one processor", machineOfOne().with(f -> f.card("X2", NET).extra(RISER, 1)))
                .says("X2", "NET-2X10 does not work in slot X2: it hangs on socket 2, which is empty.")
                .andOffender("no such slot", machine().with(f -> f.card("X9", NET)))
                .says("X9", "NET-2X10 does not work in slot X9: BOX has no such slot.")
                .innocent("a low card in a full slot", machine().with(f -> f.card("X1", NET)))
                .innocent("a card that just fits", machine().with(f -> f.card("X2", CONTROLLER).extra(RISER, 1)));
    }

    @ForRule(RiserBought.ID)
    Examples riser() {
        Equipment spare = new Equipment(List.of(), List.of(), Map.of("RISER-2", 1), EnclosureFrom.OWN);
        return offender("a used slot without its riser", machine().with(f -> f.card("X2", NET)))
                .says("RISER-2", "A used slot needs the riser RISER-2: 1 unit is called for, 0 in the machine.")
                .andOffender("the riser that was asked for besides", machine().with(f -> f.card("X2", NET).extra(RISER, 1)).equipment(spare))
                .says("RISER-2", "A used slot needs the riser RISER-2: 2 units are called for, 1 in the machine.")
                .innocent("with its riser", machine().with(f -> f.card("X2", NET).extra(RISER, 1)))
                .innocent("a slot that is not used", machine().with(f -> f.card("X1", NET)));
    }

    @ForRule(PartsNeeded.ID)
    Examples needs() {
        Equipment rails = new Equipment(List.of(), List.of(), Map.of("RAILS", 2), EnclosureFrom.OWN);
        return offender("two processors without the fans that they call for", Samples.machine(Samples.platform().expansion(Equipped.EXPANSION).make())
                        .channels(4, Samples.R16))
                .says("FANS-2", "With 2 processors, 1 unit of FANS-2 is called for; the machine has 0.")
                .andOffender("an empty socket without its blank", Samples.machine(Samples.platform().expansion(Equipped.EXPANSION).make())
                        .processors(1, Samples.P10).channels(4, Samples.R16))
                .says("BLANK", "With 1 processor, 1 unit of BLANK is called for; the machine has 0.")
                .andOffender("rails that were asked for", machine().with(f -> f.extra(Equipped.RAILS, 1)).equipment(rails))
                .says("RAILS", "With 2 processors, 2 units of RAILS are called for; the machine has 1.")
                .innocent("fans and no blank", machine())
                .innocent("more than is called for", machine().with(f -> f.extra(BLANK, 3).extra(FANS, 2)))
                .innocent("a blank and no fans", machineOfOne());
    }

    @ForRule(AskedCards.ID)
    Examples cards() {
        CardWish any = new CardWish(Optional.empty(), Optional.of(CardKind.NETWORK), 2, 10, 1);
        CardWish fast = new CardWish(Optional.empty(), Optional.of(CardKind.NETWORK), 1, 25, 1);
        CardWish controller = new CardWish(Optional.empty(), Optional.of(CardKind.CONTROLLER), 0, 0, 2);
        return offender("none", machine().equipment(asked(any)))
                .says("", "The machine has no cards; the request asks for 1 network card with 2 ports of 10 Gbit/s.")
                .andOffender("too slow", machine().with(f -> f.card("X1", NET)).equipment(asked(fast)))
                .says("", "The machine has NET-2X10; the request asks for 1 network card with 1 port of 25 Gbit/s.")
                .andOffender("one card for two entries", machine().with(f -> f.card("X1", FAST_NET)).equipment(asked(any, fast)))
                .says("", "The machine has NET-2X25; the request asks for 1 network card with 2 ports of 10 Gbit/s and 1 network card with 1 port of 25 Gbit/s.")
                .andOffender("one controller of two", machine().with(f -> f.card("X1", CONTROLLER)).equipment(asked(controller)))
                .says("", "The machine has CTL-8; the request asks for 2 controller cards.")
                .andOffender("another part", machine().with(f -> f.card("X1", FAST_NET))
                        .equipment(asked(new CardWish(Optional.of("NET-2X10"), Optional.empty(), 0, 0, 1))))
                .says("", "The machine has NET-2X25; the request asks for 1 x NET-2X10.")
                .innocent("the faster card must serve the faster wish", machine().with(f -> f.card("X1", FAST_NET).card("X2", NET).extra(RISER, 1))
                        .equipment(asked(any, fast)))
                .innocent("none asked for", machine().with(f -> f.card("X1", NET)));
    }

    private static Equipment asked(CardWish... wishes) {
        return new Equipment(List.of(), List.of(wishes), Map.of(), EnclosureFrom.OWN);
    }
}
