package sledwright.report.build;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import sledwright.desk.view.BuildView;
import sledwright.domain.Fitout;
import sledwright.domain.Volume;

/** What a machine consists of, in the cells of a table. */
public final class MachineCells {

    public static final List<String> COLUMNS = List.of("platform", "processor", "processors", "cooling", "supply", "supplies", "modules",
            "volumes", "driver", "cards", "extras", "enclosures");

    private MachineCells() {
    }

    /** The columns before, those of the machine, and the columns behind. */
    public static <T> List<T> between(List<? extends T> before, List<? extends T> machine, List<? extends T> behind) {
        List<T> all = new ArrayList<>(before);
        all.addAll(machine);
        all.addAll(behind);
        return all;
    }

    /** A cell for each of {@link #COLUMNS}, of the heaviest machine. */
    public static List<Object> of(BuildView build) {
        Fitout fitout = build.heaviest().fitout();
        return List.of(build.bare().platform(), build.bare().processorSku().orElse(""), build.bare().processors(),
                build.bare().cooling().orElse(""), build.bare().supply().orElse(""), build.bare().supplies(),
                BuildText.modules(build.heaviest().modules()), volumes(fitout), fitout.driver().orElse(""), cards(fitout),
                BuildText.modules(fitout.extrasBySku()), enclosures(fitout));
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
        return fitout.volumes().stream().map(MachineCells::volume).collect(Collectors.joining("; "));
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
