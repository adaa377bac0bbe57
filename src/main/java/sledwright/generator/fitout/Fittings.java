package sledwright.generator.fitout;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.generator.draw.Shelf;
import sledwright.generator.keep.Content;
import sledwright.generator.keep.Kept;
import sledwright.generator.time.Deadline;

/** The sets of drives, cards and extras that a request calls for, by platform and number of processors. */
public final class Fittings {

    private final Catalog catalog;
    private final Request request;
    private final Shelf shelf;
    private final Deadline deadline;
    private final Kept kept;
    private final Map<String, Integer> wanted;
    private Content offered;

    /**
     * What is to be fitted out.
     *
     * @param everyWeight whether a set that loads more and costs as much is of use: where more enclosures cost less than fewer
     */
    public record Chassis(Platform platform, int processors, boolean everyWeight) {
    }

    /** @param wanted skus of drives, cards and extras that must be held, and in how many machines at least: all of them, or one */
    public Fittings(Catalog catalog, Request request, Shelf shelf, Deadline deadline, Kept kept, Map<String, Integer> wanted) {
        this.catalog = catalog;
        this.request = request;
        this.shelf = shelf;
        this.deadline = deadline;
        this.kept = kept;
        this.wanted = wanted;
    }

    /**
     * The sets of which no other is both as cheap and as light, the cheapest first; none where a machine cannot have what is asked for.
     *
     * @throws sledwright.generator.time.OutOfTimeException when the deadline comes first
     */
    public List<Fitted> of(Chassis chassis) {
        Platform platform = chassis.platform;
        boolean asksNothing = request.equipment().volumes().isEmpty() && request.equipment().cards().isEmpty()
                && request.equipment().extras().isEmpty();
        if (asksNothing && wanted.isEmpty() && platform.expansion().needs().isEmpty()) {
            return List.of(Fitted.NOTHING);
        }
        return kept.get(new FittingsKey(offered(), chassis), () -> find(chassis));
    }

    private Content offered() {
        if (offered == null) {
            offered = FittingsKey.offered(catalog, request, shelf, wanted);
        }
        return offered;
    }

    private List<Fitted> find(Chassis chassis) {
        VolumePlans volumes = new VolumePlans(catalog.labour(), request, chassis, draws(chassis.everyWeight), wanted.keySet(), deadline);
        List<Fitted> found = new ArrayList<>();
        boolean drivesAsked = !request.equipment().volumes().isEmpty();
        for (CardPlan cards : kept.get(FittingsKey.cards(catalog, request, shelf, chassis, drivesAsked),
                () -> new CardPlans(catalog, request, shelf, chassis, deadline).all(drivesAsked))) {
            for (VolumePlan drives : volumes.of(cards)) {
                if (holdsWanted(volumes, drives, cards)) {
                    found.add(new Fitted(drives, cards));
                }
            }
        }
        return chassis.everyWeight ? ofEveryWeight(found) : undominated(found);
    }

    private boolean holdsWanted(VolumePlans volumes, VolumePlan drives, CardPlan cards) {
        if (wanted.isEmpty()) {
            return true;
        }
        Set<String> used = new HashSet<>(volumes.wanted(drives));
        cards.cards().values().forEach(card -> used.add(card.sku()));
        used.addAll(cards.extras().keySet());
        return used.containsAll(wanted.keySet());
    }

    /** The drives on sale by kind; all platforms share what their draws cost, and requests that accept the same lots. */
    private Map<Drive.Kind, DriveDraws> draws(boolean everyWeight) {
        return kept.get(FittingsKey.draws(catalog, request, shelf, wanted, everyWeight), () -> {
            Map<Drive.Kind, DriveDraws> byKind = new LinkedHashMap<>();
            catalog.drives().stream().filter(drive -> !shelf.lots(drive.sku()).isEmpty())
                    .collect(Collectors.groupingBy(Drive::likeness, LinkedHashMap::new, Collectors.toList()))
                    .forEach((kind, alike) -> byKind.put(kind, new DriveDraws(shelf, catalog.labour(), wanted, request.machines(), alike,
                            everyWeight)));
            return byKind;
        });
    }

    /** The cheapest of each load. */
    private static List<Fitted> ofEveryWeight(List<Fitted> found) {
        found.sort(Fitted.ORDER);
        Set<Long> weights = new HashSet<>();
        return found.stream().filter(fitted -> weights.add(fitted.microwatts()) || fitted.range() > 0).toList();
    }

    /** What is worthwhile at some load: a dearer set only where it is lighter, or could be. */
    private static List<Fitted> undominated(List<Fitted> found) {
        found.sort(Fitted.ORDER);
        List<Fitted> kept = new ArrayList<>();
        long lightest = Long.MAX_VALUE;
        for (Fitted fitted : found) {
            if (fitted.microwatts() - fitted.range() < lightest) {
                kept.add(fitted);
                lightest = Math.min(lightest, fitted.microwatts());
            }
        }
        return List.copyOf(kept);
    }
}
