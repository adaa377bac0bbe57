package sledwright.generator.fitout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import sledwright.domain.BayGroup;
import sledwright.domain.Drive;
import sledwright.domain.DriveSupport;
import sledwright.domain.Labour;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.VolumeWish;
import sledwright.generator.time.Deadline;
import sledwright.rules.storage.BayCount;
import sledwright.rules.storage.DriveBay;
import sledwright.rules.storage.StorageCapacity;
import sledwright.rules.storage.VolumeDriver;
import sledwright.rules.storage.VolumeDrives;

/** Every way to make the volumes of a request from the drives on sale, in the bays of a platform; only what none beats is kept. */
final class VolumePlans {

    /** A choice for one volume, with what it costs at least beside any others. */
    private record Option(VolumePlan.Choice choice, long leastPrice, long leastMicrowatts) {
    }

    /** @param mustDrive whether some volume has to hang on it */
    private record Driver(Optional<DriveSupport> support, boolean mustDrive) {
    }

    private final Labour labour;
    private final Request request;
    private final Deadline deadline;
    private final Platform platform;
    private final int processors;
    private final int bays;
    private final Map<Drive.Kind, DriveDraws> draws;
    private final Set<String> wanted;
    private final boolean everyWeight;
    private final Map<Driver, List<VolumePlan>> known = new HashMap<>();

    /**
     * @param draws  of each kind on sale
     * @param chassis  what they are planned for
     */
    VolumePlans(Labour labour, Request request, Fittings.Chassis chassis, Map<Drive.Kind, DriveDraws> draws, Set<String> wanted,
            Deadline deadline) {
        this.labour = labour;
        everyWeight = chassis.everyWeight();
        this.wanted = wanted;
        this.request = request;
        this.deadline = deadline;
        platform = chassis.platform();
        processors = chassis.processors();
        this.draws = draws;
        bays = platform.expansion().bays().stream().mapToInt(BayGroup::count).sum();
    }

    /** The plans with the driver of these cards, the cheapest first. A controller that is there for nothing else has something to drive. */
    List<VolumePlan> of(CardPlan cards) {
        Driver driver = new Driver(cards.support(), cards.mustDrive());
        List<VolumePlan> before = known.get(driver);
        if (before == null) {
            before = find(driver);
            known.put(driver, before);
        }
        return before;
    }

    private List<VolumePlan> find(Driver driver) {
        List<List<Option>> options = new ArrayList<>();
        for (VolumeWish wish : request.equipment().volumes()) {
            options.add(options(wish, driver.support));
        }
        List<VolumePlan> found = new ArrayList<>();
        if (options.stream().noneMatch(List::isEmpty)) {
            new Choosing(options, driver, found).choose(0, 0, 0);
        }
        return found;
    }

    private List<Option> options(VolumeWish wish, Optional<DriveSupport> support) {
        List<Option> options = new ArrayList<>();
        for (Drive.Kind kind : draws.keySet()) {
            for (BayGroup group : platform.expansion().bays()) {
                if (wish.takes(kind) && DriveBay.allows(group, kind, processors)) {
                    int most = kind.link().needsDriver()
                            ? Math.min(group.count(), support.map(DriveSupport::ports).orElse(0)) : group.count();
                    addOptions(options, wish, kind, group, support, most - wish.hotSpares());
                }
            }
        }
        options.sort(Comparator.comparingLong(Option::leastPrice).thenComparingLong(Option::leastMicrowatts));
        return options;
    }

    private void addOptions(List<Option> options, VolumeWish wish, Drive.Kind kind, BayGroup group, Optional<DriveSupport> support,
            int most) {
        DriveDraws source = draws.get(kind);
        for (int drives = wish.level().leastDrives(); drives <= most; drives++) {
            boolean serves = VolumeDrives.allows(wish.level(), drives) && StorageCapacity.allows(wish, kind, drives)
                    && (kind.link().needsDriver() ? VolumeDriver.allows(support.orElseThrow(), kind.link(), wish.level(), drives)
                    : VolumeDriver.allows(group, wish.level(), drives));
            if (serves) {
                int all = drives + wish.hotSpares();
                options.add(new Option(new VolumePlan.Choice(wish, kind, group, drives),
                        request.machines() * all * (source.leastUnitPrice() + labour.perDrive()),
                                all * source.leastMicrowatts()));
                // More drives than are needed pay only where a price falls with their number, or light ones are sold in packs.
                if (IntStream.range(all, bays).noneMatch(each -> source.improvesBeyond(each, deadline))) {
                    return;
                }
            }
        }
    }

    /** Chooses volume by volume, and leaves off where what is chosen already costs and weighs as much as a plan that was found. */
    private final class Choosing {

        private final List<List<Option>> options;
        private final Driver driver;
        private final List<VolumePlan> found;
        private final List<VolumePlan.Choice> chosen = new ArrayList<>();
        private final long[] leastPriceFrom;
        private final long[] leastMicrowattsFrom;
        private final Map<String, Integer> inGroup = new HashMap<>();
        private int onDriver;
        private int drawn;

        Choosing(List<List<Option>> options, Driver driver, List<VolumePlan> found) {
            this.options = options;
            this.driver = driver;
            this.found = found;
            leastPriceFrom = new long[options.size() + 1];
            leastMicrowattsFrom = new long[options.size() + 1];
            for (int i = options.size() - 1; i >= 0; i--) {
                leastPriceFrom[i] = leastPriceFrom[i + 1] + options.get(i).stream().mapToLong(Option::leastPrice).min().orElse(0);
                leastMicrowattsFrom[i] = leastMicrowattsFrom[i + 1]
                        + options.get(i).stream().mapToLong(Option::leastMicrowatts).min().orElse(0);
            }
        }

        void choose(int index, long price, long microwatts) {
            deadline.check();
            if (index == options.size()) {
                if (onDriver > 0 || !driver.mustDrive) {
                    complete();
                }
                return;
            }
            for (Option option : options.get(index)) {
                long least = price + option.leastPrice + leastPriceFrom[index + 1];
                long lightest = microwatts + option.leastMicrowatts + leastMicrowattsFrom[index + 1];
                if (!isBeaten(least, lightest) && take(option.choice, 1)) {
                    chosen.add(option.choice);
                    choose(index + 1, price + option.leastPrice, microwatts + option.leastMicrowatts);
                    chosen.remove(chosen.size() - 1);
                    take(option.choice, -1);
                }
            }
        }

        /** Takes bays and ports, or gives them back; false, with nothing taken, where there are too few. */
        private boolean take(VolumePlan.Choice choice, int sign) {
            int taken = inGroup.merge(choice.group().name(), sign * choice.all(), Integer::sum);
            onDriver += choice.kind().link().needsDriver() ? sign * choice.all() : 0;
            boolean fits = BayCount.allows(choice.group(), taken)
                    && (onDriver == 0 || VolumeDriver.allows(driver.support.orElseThrow(), onDriver));
            if (!fits && sign > 0) {
                take(choice, -1);
            }
            return fits;
        }

        private boolean isBeaten(long price, long microwatts) {
            if (!wanted.isEmpty() || everyWeight) {
                return false;
            }
            for (VolumePlan plan : found) {
                if (plan.price() <= price && plan.microwatts() <= microwatts && (plan.price() < price || plan.microwatts() < microwatts)) {
                    return true;
                }
            }
            return false;
        }

        private void complete() {
            Map<Drive.Kind, Integer> units = new LinkedHashMap<>();
            chosen.forEach(choice -> units.merge(choice.kind(), choice.all() * request.machines(), Integer::sum));
            long work = chosen.stream().mapToLong(VolumePlan.Choice::all).sum() * request.machines() * labour.perDrive();
            draw(List.copyOf(units.entrySet()), new VolumePlan(work, 0, 0, 0, chosen, Map.of()));
        }

        /** Every way to draw the kinds that a plan has not drawn yet. */
        private void draw(List<Map.Entry<Drive.Kind, Integer>> kinds, VolumePlan plan) {
            if (plan.draws().size() == kinds.size()) {
                keep(plan);
                return;
            }
            Map.Entry<Drive.Kind, Integer> kind = kinds.get(plan.draws().size());
            DriveDraws source = draws.get(kind.getKey());
            for (DriveDraws.Way way : source.of(kind.getValue(), deadline)) {
                deadline.check(++drawn);
                Map<Drive.Kind, VolumePlan.Drawn> ways = new LinkedHashMap<>(plan.draws());
                ways.put(kind.getKey(), new VolumePlan.Drawn(source, way));
                draw(kinds, new VolumePlan(plan.price() + way.price(), plan.microwatts() + way.heaviest(), plan.range() + way.range(),
                        plan.uneven() + way.uneven(), chosen, ways));
            }
        }

        private void keep(VolumePlan plan) {
            if (found.stream().noneMatch(other -> beats(other, plan))) {
                found.removeIf(other -> beats(plan, other));
                found.add(plan);
                found.sort(Comparator.comparingLong(VolumePlan::price));
            }
        }

        private boolean beats(VolumePlan plan, VolumePlan other) {
            if (everyWeight && plan.microwatts() != other.microwatts()
                    || plan.price() > other.price() || plan.microwatts() > other.microwatts() - other.range()
                    || !wanted(plan).containsAll(wanted(other))) {
                return false;
            }
            return plan.price() < other.price() || plan.microwatts() < other.microwatts() || plan.parts() <= other.parts();
        }
    }

    /** The parts of a plan that the request wants used: a kind's draws hold each wanted part of it. */
    Set<String> wanted(VolumePlan plan) {
        if (wanted.isEmpty()) {
            return Set.of();
        }
        Set<String> held = new TreeSet<>();
        plan.draws().keySet().forEach(kind -> draws.get(kind).drives().map(Drive::sku).filter(wanted::contains).forEach(held::add));
        return held;
    }
}
