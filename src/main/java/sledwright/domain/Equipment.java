package sledwright.domain;

import java.util.List;
import java.util.Map;

/**
 * What a machine must have besides processors and memory.
 *
 * @param extras    units by sku, beyond what slots and sockets call for
 * @param enclosure who brings the enclosure of a sled
 */
public record Equipment(List<VolumeWish> volumes, List<CardWish> cards, Map<String, Integer> extras, EnclosureFrom enclosure) {

    public static final Equipment NONE = new Equipment(List.of(), List.of(), Map.of(), EnclosureFrom.NEW);

    public Equipment {
        volumes = List.copyOf(volumes);
        cards = List.copyOf(cards);
        extras = Map.copyOf(extras);
    }

    public Equipment withEnclosure(EnclosureFrom from) {
        return new Equipment(volumes, cards, extras, from);
    }
}
