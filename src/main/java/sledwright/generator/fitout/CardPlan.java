package sledwright.generator.fitout;

import java.util.Optional;
import java.util.SortedMap;
import sledwright.domain.Card;
import sledwright.domain.DriveSupport;

/**
 * Cards in slots, with the risers that these need and all other extras of a machine.
 *
 * @param price      cards with their labour, and extras, all machines, minor units
 * @param microwatts of one machine
 * @param cards      card by slot
 * @param extras     units of one machine by sku
 * @param driver     the slot of the controller that drives, or {@link sledwright.domain.Fitout#ONBOARD}; empty: nothing does
 * @param support    what drives can do; empty: nothing
 * @param mustDrive  whether the controller is there for nothing else
 */
record CardPlan(long price, long microwatts, SortedMap<String, Card> cards, SortedMap<String, Integer> extras, Optional<String> driver,
                Optional<DriveSupport> support, boolean mustDrive) {

    /** Parts of one machine. */
    int parts() {
        return cards.size() + extras.values().stream().mapToInt(Integer::intValue).sum();
    }
}
