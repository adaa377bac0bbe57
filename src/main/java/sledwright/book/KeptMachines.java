package sledwright.book;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Lot;
import sledwright.domain.LotPiles;
import sledwright.domain.Pick;
import sledwright.metrics.Figures;
import sledwright.planner.allot.LotName;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderOutcome.Fill;
import sledwright.planner.order.OrderOutcome.LineFill;

/**
 * The machines of an order as the book keeps them: each with its parts and the lots from which these come, so that the bench gets the very
 * machines that were offered, whatever a search finds later.
 *
 * @param frames what houses the sleds
 */
record KeptMachines(List<Group> groups, List<Frame> frames) {

    /** What the document is called that holds them. */
    static final String PAPER = "machines";

    private static final ObjectMapper JSON = new ObjectMapper();

    /**
     * Units of one lot.
     *
     * @param own whether they are the customer's own
     */
    record Unit(String sku, String lot, int units, boolean own) {

        static Unit of(Pick pick) {
            return new Unit(pick.sku(), pick.lot().lot(), pick.quantity(), pick.lot().onHand());
        }

        LotName name() {
            return new LotName(sku, lot);
        }
    }

    /**
     * Machines of one line that are one build.
     *
     * @param number   of the build within its line as it was answered, from 1
     * @param reached  what the customer was told of each
     * @param build    as {@link MachineFile} has it
     * @param machines what each of them takes
     */
    record Group(String line, int number, Reached reached, Map<String, Object> build, List<List<Unit>> machines) {
    }

    /**
     * What each machine of a build reaches.
     *
     * @param leadDays days until the last part is there
     * @param volumes  name -> usable GB
     */
    record Reached(NewVersion.Told told, double work, int leadDays, Map<String, Double> volumes) {

        static Reached of(Fill fill) {
            Figures figures = fill.figures();
            Map<String, Double> volumes = new TreeMap<>();
            fill.build().fitout().volumes().forEach(volume -> volumes.put(volume.name(), volume.usableGb()));
            int leadDays = fill.picks().stream().flatMap(List::stream).mapToInt(pick -> pick.lot().leadDays()).max().orElse(0);
            return new Reached(NewVersion.Told.of(figures), figures.work(), leadDays, volumes);
        }
    }

    /**
     * An enclosure with its sleds.
     *
     * @param sleds of each bay the group that its machine is of
     * @param units the enclosure and its supplies
     */
    record Frame(String enclosure, String supply, List<Integer> sleds, List<Unit> units) {
    }

    KeptMachines {
        groups = List.copyOf(groups);
        frames = List.copyOf(frames);
    }

    static KeptMachines of(OrderOutcome outcome) {
        List<Group> groups = new ArrayList<>();
        Map<Build, Integer> places = new HashMap<>();
        Map<Lot, Integer> left = new HashMap<>();
        outcome.picks().forEach(pick -> left.merge(pick.lot(), pick.quantity(), Integer::sum));
        for (LineFill line : outcome.lines()) {
            int number = 0;
            for (Fill fill : line.fills()) {
                number++;
                places.putIfAbsent(fill.build(), groups.size());
                groups.add(new Group(line.line().name(), number, Reached.of(fill), MachineFile.of(fill.build()),
                        fill.picks().stream().map(picks -> picks.stream().map(Unit::of).toList()).toList()));
                fill.picks().forEach(picks -> picks.forEach(pick -> left.merge(pick.lot(), -pick.quantity(), Integer::sum)));
            }
        }
        LotPiles rest = new LotPiles(outcome.picks().stream().filter(pick -> left.get(pick.lot()) > 0)
                .map(pick -> new Pick(pick.lot(), left.get(pick.lot()))).toList());
        List<Frame> frames = new ArrayList<>();
        for (FilledEnclosure filled : outcome.enclosures()) {
            frames.add(new Frame(filled.enclosure().sku(), filled.supply().sku(), filled.sleds().stream().map(places::get).toList(),
                    rest.taken(filled.partCounts()).stream().map(Unit::of).toList()));
        }
        return new KeptMachines(groups, frames);
    }

    /** Units of the shop's by lot. */
    SortedMap<LotName, Integer> units() {
        return shops(all());
    }

    static SortedMap<LotName, Integer> shops(Stream<Unit> some) {
        SortedMap<LotName, Integer> units = new TreeMap<>();
        some.filter(unit -> !unit.own()).forEach(unit -> units.merge(unit.name(), unit.units(), Integer::sum));
        return units;
    }

    Stream<Unit> all() {
        return Stream.concat(groups.stream().flatMap(group -> group.machines().stream()).flatMap(List::stream),
                frames.stream().flatMap(frame -> frame.units().stream()));
    }

    /** Machines that are there. */
    int machines() {
        return groups.stream().mapToInt(group -> group.machines().size()).sum();
    }

    byte[] json() {
        try {
            return JSON.writeValueAsBytes(this);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    static KeptMachines read(byte[] json) {
        try {
            return JSON.readValue(json, KeptMachines.class);
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
    }
}
