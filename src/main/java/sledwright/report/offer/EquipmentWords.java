package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.CardKind;
import sledwright.domain.CardWish;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.Request;
import sledwright.domain.Volume;
import sledwright.domain.VolumeWish;
import sledwright.report.page.Wording;

/** What a document says of drives, cards, extras and enclosures. */
public final class EquipmentWords {

    private static final String NOTHING = "\u2013";

    private final Wording words;

    public EquipmentWords(Wording words) {
        this.words = words;
    }

    /** All that a machine holds of them, in labels and words. */
    List<OfferPage.Fact> facts(Fitout fitout) {
        List<OfferPage.Fact> facts = new ArrayList<>(fitout.volumes().stream()
                .map(volume -> new OfferPage.Fact(label(volume.name()), volume(fitout, volume))).toList());
        fitout.driver().filter(driver -> fitout.drives().stream().anyMatch(drive -> drive.link().needsDriver()))
                .ifPresent(driver -> facts.add(new OfferPage.Fact(words.say("drives.on"), driver.equals(Fitout.ONBOARD)
                        ? words.say("drives.board") : words.say("cards.in", fitout.cards().get(driver).sku(), driver))));
        if (!fitout.cards().isEmpty()) {
            facts.add(new OfferPage.Fact(words.say("cards"), fitout.cards().entrySet().stream().map(card -> words.say("cards.in",
                    card.getValue().sku(), card.getKey())).collect(Collectors.joining(", "))));
        }
        if (!fitout.extras().isEmpty()) {
            facts.add(new OfferPage.Fact(words.say("extras"), fitout.extrasBySku().entrySet().stream().map(extra -> "%s \u00d7 %s"
                    .formatted(extra.getValue(), extra.getKey())).collect(Collectors.joining(", "))));
        }
        return facts;
    }

    /** All that a machine holds of them in one cell; empty where it has none. */
    public String joined(Fitout fitout) {
        return facts(fitout).stream().map(fact -> fact.label() + ": " + fact.value()).collect(Collectors.joining("; "));
    }

    String label(String volume) {
        return words.say("volume.label", volume);
    }

    /** Such as {@code 4 x 4000 GB HDD, SATA, and 1 hot spare at level 6: 8000 GB usable, in bays front 1 to front 5}. */
    private String volume(Fitout fitout, Volume volume) {
        Drive one = volume.all().get(0);
        List<String> bays = fitout.seats().stream().filter(seat -> seat.volume().equals(volume.name())).map(Fitout.Seat::bay).toList();
        String where = bays.size() == 1 ? words.say("bay.one", whole(bays.get(0)))
                : words.say("bay.many", whole(bays.get(0)), whole(bays.get(bays.size() - 1)));
        String link = "%s %s".formatted(one.kind().label().toUpperCase(Locale.ROOT), one.link().label());
        String usable = words.figure(volume.usableGb());
        return volume.hotSpares().isEmpty() ? words.say("volume.words", drives(volume), link, volume.level().label(), usable, where)
                : words.say("volume.words.spares", drives(volume), link, words.counted(volume.hotSpares().size(), "spares"),
                        volume.level().label(), usable, where);
    }

    /** A bay on one line with its number. */
    private static String whole(String bay) {
        return bay.replace(' ', '\u00a0');
    }

    private String drives(Volume volume) {
        return "%s \u00d7 %s GB".formatted(volume.drives().size(), words.figure(volume.all().get(0).capacityGb()));
    }

    /** The data drives of a volume, and its hot spares. */
    String cell(Fitout fitout, String name) {
        return fitout.volumes().stream().filter(volume -> volume.name().equals(name)).findFirst()
                .map(volume -> volume.hotSpares().isEmpty() ? drives(volume)
                : words.say("volume.cell.spares", drives(volume), words.counted(volume.hotSpares().size(), "spares"))).orElse(NOTHING);
    }

    String asked(VolumeWish wish) {
        List<String> asked = new ArrayList<>(List.of(words.say("volume.asked", words.figure(wish.usableGb()), wish.level().label())));
        Optional.of(wish.drives()).filter(drives -> !drives.isEmpty()).ifPresent(asked::add);
        if (wish.hotSpares() > 0) {
            asked.add(words.counted(wish.hotSpares(), "spares"));
        }
        return String.join(", ", asked);
    }

    String askedCards(Request request) {
        return request.equipment().cards().stream().map(this::asked).collect(Collectors.joining(", "));
    }

    String asked(CardWish wish) {
        if (wish.sku().isPresent()) {
            return "%s \u00d7 %s".formatted(wish.count(), wish.sku().get());
        }
        if (wish.kind().orElseThrow() != CardKind.NETWORK) {
            return words.counted(wish.count(), "cards.controller");
        }
        String cards = words.counted(wish.count(), "cards.network");
        String ports = wish.ports() == 0 ? cards : words.say("cards.ports", cards, words.counted(wish.ports(), "ports"));
        return wish.portGbit() == 0 ? ports : words.say("cards.gbit", ports, words.figure(wish.portGbit()));
    }

    /** How many of each card. */
    static String cards(Fitout fitout) {
        Map<String, Long> units = fitout.cards().values().stream().collect(Collectors.groupingBy(card -> card.sku(),
                TreeMap::new, Collectors.counting()));
        return units.isEmpty() ? NOTHING : units.entrySet().stream().map(card -> "%s \u00d7 %s".formatted(card.getValue(), card.getKey()))
                .collect(Collectors.joining(", "));
    }

    /** The enclosures that house and feed all machines. */
    public Optional<String> enclosures(Fitout fitout) {
        return fitout.housed().map(housed -> words.say(housed.count() == 1 ? "enclosure.words" : "enclosure.words.each", housed.count(),
                housed.enclosure().sku(), housed.supply().count(), housed.supply().sku()));
    }
}
