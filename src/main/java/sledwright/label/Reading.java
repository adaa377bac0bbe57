package sledwright.label;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.domain.ModuleType;

/**
 * A module as read from its label or its SPD.
 *
 * @param from       what was read: the label as given, or the file
 * @param label      as the standard prints it
 * @param sku        the module's own part number, or one made of its label
 * @param meanings   field by field
 * @param unknown    what could not be known
 * @param passedOver words behind a label that are no field of it
 */
public record Reading(String from, ModuleLabel label, String sku, List<Meaning> meanings, List<Unknown> unknown,
        List<String> passedOver) {

    private static final int LONGEST_SKU = 64;

    public Reading {
        meanings = List.copyOf(meanings);
        unknown = List.copyOf(unknown);
        passedOver = List.copyOf(passedOver);
    }

    /** The reading of a label. */
    static Reading of(String from, LabelReader.Read read) {
        return of(from, read.label(), Optional.empty(), LabelMeanings.of(read.label()), read.passedOver());
    }

    /** The reading of an SPD. */
    static Reading of(String from, ModuleLabel label, Optional<String> part, List<Meaning> meanings) {
        return of(from, label, part, meanings, List.of());
    }

    /** @param part the part number, where it is known */
    private static Reading of(String from, ModuleLabel label, Optional<String> part, List<Meaning> meanings, List<String> passedOver) {
        String made = label.toString().replace(' ', '-');
        String sku = part.orElse(made.substring(0, Math.min(LONGEST_SKU, made.length())));
        return new Reading(from, label, sku, meanings, unknown(label, part, sku), passedOver);
    }

    private static List<Unknown> unknown(ModuleLabel label, Optional<String> part, String sku) {
        List<Unknown> unknown = new ArrayList<>();
        if (part.isEmpty()) {
            unknown.add(new Unknown("sku", "%s stands in for the part number; put your own there".formatted(sku)));
        }
        if (label.type().isEmpty()) {
            unknown.add(new Unknown("type",
                    "left empty: the letter of the type is missing; RDIMM, LRDIMM, UDIMM or 3DS, as on the module"));
        }
        if (label.capacityGb().isEmpty()) {
            unknown.add(new Unknown("capacity_gb", "left empty: the label as given has none"));
        }
        if (label.organisation().isEmpty()) {
            unknown.add(new Unknown("ranks",
                    "left empty, like logical_ranks and device_width: the label as given has no field such as 2Rx4"));
        } else if (label.type().equals(Optional.of(ModuleType.LRDIMM))) {
            unknown.add(new Unknown("logical_ranks", "as many as ranks, the safe side: a load-reduced module may show the controller "
                    + "fewer; its data sheet says"));
        }
        unknown.add(new Unknown("power_w", "left empty: no label or SPD states it; from the module's data sheet"));
        unknown.add(new Unknown("price and stock", "rows of offers.csv, under the same sku"));
        return unknown;
    }
}
