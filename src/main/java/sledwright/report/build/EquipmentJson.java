package sledwright.report.build;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.Housed;
import sledwright.domain.Volume;
import sledwright.words.Numbers;

/** Drives, cards, extras and enclosures as JSON. */
public record EquipmentJson(List<VolumeJson> volumes, String driver, Map<String, String> cards, Map<String, Integer> extras,
                            List<Houses> enclosures) {

    /** One volume, with every drive. */
    public record VolumeJson(String name, int level, String group, List<String> drives, List<String> hotSpares, BigDecimal usableGb) {

        private static VolumeJson of(Volume volume) {
            return new VolumeJson(volume.name(), volume.level().number(), volume.group(), skus(volume.drives()), skus(volume.hotSpares()),
                    Numbers.decimal(volume.usableGb()));
        }

        private static List<String> skus(List<Drive> drives) {
            return drives.stream().map(Drive::sku).toList();
        }
    }

    /** Enclosures of one kind. */
    public record Houses(String sku, String supply, int supplies, int count) {

        private static Houses of(Housed housed) {
            return new Houses(housed.enclosure().sku(), housed.supply().sku(), housed.supply().count(), housed.count());
        }
    }

    static EquipmentJson of(Fitout fitout) {
        Map<String, String> cards = new LinkedHashMap<>();
        fitout.cards().forEach((slot, card) -> cards.put(slot, card.sku()));
        return new EquipmentJson(volumes(fitout), fitout.driver().orElse(null), cards, fitout.extrasBySku(),
                fitout.housed().stream().map(Houses::of).toList());
    }

    static List<VolumeJson> volumes(Fitout fitout) {
        return fitout.volumes().stream().map(VolumeJson::of).toList();
    }
}
