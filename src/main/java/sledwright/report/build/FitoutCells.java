package sledwright.report.build;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import sledwright.domain.Fitout;
import sledwright.domain.Volume;

/** What a machine has besides processors and memory, in the cells of a table. */
public final class FitoutCells {

    public static final List<String> COLUMNS = List.of("volumes", "driver", "cards", "extras", "enclosures");

    private FitoutCells() {
    }

    /** The columns before, those of the fit-out, and the columns behind. */
    public static <T> List<T> between(List<? extends T> before, List<? extends T> fitout, List<? extends T> behind) {
        List<T> all = new ArrayList<>(before);
        all.addAll(fitout);
        all.addAll(behind);
        return all;
    }

    /** A cell for each of {@link #COLUMNS}. */
    public static List<String> of(Fitout fitout) {
        return List.of(volumes(fitout), fitout.driver().orElse(""), cards(fitout), BuildText.modules(fitout.extrasBySku()),
                enclosures(fitout));
    }

    /** What stands where, a line each: volumes, what drives them, cards. Extras are told among the parts. */
    public static List<String> places(Fitout fitout) {
        List<String> places = new ArrayList<>();
        fitout.volumes().forEach(volume -> places.add("Volume " + volume(volume)));
        fitout.driver().ifPresent(driver -> places.add(BuildText.driver(driver, fitout)));
        fitout.cards().forEach((slot, card) -> places.add("%s in slot %s".formatted(card.sku(), slot)));
        return places;
    }

    /** The enclosures that are bought for all machines together; empty where there are none. */
    public static String enclosures(Fitout fitout) {
        return fitout.housed().map(housed -> "%s x %s with %s x %s".formatted(housed.count(), housed.enclosure().sku(),
                housed.supply().count(), housed.supply().sku())).orElse("");
    }

    private static String volumes(Fitout fitout) {
        return fitout.volumes().stream().map(FitoutCells::volume).collect(Collectors.joining("; "));
    }

    private static String cards(Fitout fitout) {
        return fitout.cards().entrySet().stream().map(card -> card.getKey() + " " + card.getValue().sku())
                .collect(Collectors.joining("; "));
    }

    private static String volume(Volume volume) {
        return "%s: level %s, %s, %s%s".formatted(volume.name(), volume.level().label(), volume.group(), BuildText.counted(volume.drives()),
                volume.hotSpares().isEmpty() ? "" : ", hot spares " + BuildText.counted(volume.hotSpares()));
    }
}
