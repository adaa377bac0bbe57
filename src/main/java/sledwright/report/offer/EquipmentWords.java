package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.Request;
import sledwright.domain.Volume;
import sledwright.domain.VolumeWish;
import sledwright.report.page.Wording;
import sledwright.rules.card.AskedCards;
import sledwright.words.Numbers;

/** What a document says of drives, cards, extras and enclosures. */
final class EquipmentWords {

    private final Wording words;

    EquipmentWords(Wording words) {
        this.words = words;
    }

    /** All that a machine holds of them, in labels and words. */
    List<OfferPage.Fact> facts(Fitout fitout) {
        List<OfferPage.Fact> facts = new ArrayList<>();
        for (Volume volume : fitout.volumes()) {
            facts.add(new OfferPage.Fact(label(volume.name()), volume(fitout, volume)));
        }
        fitout.driver().filter(driver -> fitout.drives().stream().anyMatch(drive -> drive.link().needsDriver()))
                .ifPresent(driver -> facts.add(new OfferPage.Fact("Drives hang on", driver.equals(Fitout.ONBOARD) ? "the board"
                        : "%s in slot %s".formatted(fitout.cards().get(driver).sku(), driver))));
        if (!fitout.cards().isEmpty()) {
            facts.add(new OfferPage.Fact("Cards", fitout.cards().entrySet().stream().map(card -> "%s in slot %s".formatted(
                    card.getValue().sku(), card.getKey())).collect(Collectors.joining(", "))));
        }
        if (!fitout.extras().isEmpty()) {
            facts.add(new OfferPage.Fact("Extras", fitout.extrasBySku().entrySet().stream().map(extra -> "%s \u00d7 %s".formatted(
                    extra.getValue(), extra.getKey())).collect(Collectors.joining(", "))));
        }
        return facts;
    }

    static String label(String volume) {
        return "Volume " + volume;
    }

    /** Such as {@code 4 x 4000 GB HDD, SATA, and 1 hot spare at level 6: 8000 GB usable, in bays front 1 to front 5}. */
    private String volume(Fitout fitout, Volume volume) {
        Drive one = volume.all().get(0);
        List<String> bays = fitout.seats().stream().filter(seat -> seat.volume().equals(volume.name())).map(Fitout.Seat::bay).toList();
        String spares = volume.hotSpares().isEmpty() ? "" : " and " + Numbers.counted(volume.hotSpares().size(), "hot spare");
        return "%s %s %s%s at level %s: %s GB usable, in %s".formatted(drives(volume), one.kind().label().toUpperCase(Locale.ROOT),
                one.link().label(), spares, volume.level().label(), words.figure(volume.usableGb()),
                bays.size() == 1 ? "bay " + bays.get(0) : "bays %s to %s".formatted(bays.get(0), bays.get(bays.size() - 1)));
    }

    private String drives(Volume volume) {
        return "%s \u00d7 %s GB".formatted(volume.drives().size(), words.figure(volume.all().get(0).capacityGb()));
    }

    /** The data drives of a volume, and its hot spares. */
    String cell(Fitout fitout, String name) {
        return fitout.volumes().stream().filter(volume -> volume.name().equals(name)).findFirst().map(volume -> drives(volume)
                + (volume.hotSpares().isEmpty() ? "" : " + " + Numbers.counted(volume.hotSpares().size(), "spare"))).orElse("\u2013");
    }

    String asked(VolumeWish wish) {
        String spares = wish.hotSpares() == 0 ? "" : ", " + Numbers.counted(wish.hotSpares(), "hot spare");
        return "at least %s GB, level %s%s".formatted(words.figure(wish.usableGb()), wish.level().label(), spares);
    }

    String askedCards(Request request) {
        return request.equipment().cards().stream().map(wish -> AskedCards.words(wish).in(words)).collect(Collectors.joining(", "));
    }

    /** How many of each card. */
    static String cards(Fitout fitout) {
        Map<String, Long> units = fitout.cards().values().stream().collect(Collectors.groupingBy(card -> card.sku(),
                TreeMap::new, Collectors.counting()));
        return units.isEmpty() ? "\u2013" : units.entrySet().stream().map(card -> "%s \u00d7 %s".formatted(card.getValue(), card.getKey()))
                .collect(Collectors.joining(", "));
    }

    /** The enclosures that house and feed all machines. */
    static Optional<String> enclosures(Fitout fitout) {
        return fitout.housed().map(housed -> "%s \u00d7 %s with %s \u00d7 %s%s".formatted(housed.count(), housed.enclosure().sku(),
                housed.supply().count(), housed.supply().sku(), housed.count() == 1 ? "" : " each"));
    }
}
