package sledwright.oracle;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearArgument;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import sledwright.domain.BayGroup;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Drive;
import sledwright.domain.DriveSupport;
import sledwright.domain.Extra;
import sledwright.domain.Need;
import sledwright.domain.Platform;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.VolumeWish;

/**
 * The cheapest drives, cards and extras of machines on one platform with a number of processors, as a model of whole numbers for CP-SAT of
 * OR-Tools: written from the text of the rules, on its own. Alike drives agree in watts here where there are several machines.
 */
final class CpSatFitout {

    private static final double TIME = 3;

    private final CpModel model = new CpModel();
    private final RandomCase that;
    private final Request request;
    private final Platform platform;
    private final int fitted;
    private final int machines;
    private final LinearExprBuilder price = LinearExpr.newBuilder();
    private final LinearExprBuilder deciwatts = LinearExpr.newBuilder();
    private final Map<Drive.Kind, LinearExprBuilder> drives = new LinkedHashMap<>();
    private final Map<BayGroup, LinearExprBuilder> inGroup = new LinkedHashMap<>();
    private final LinearExprBuilder ports = LinearExpr.newBuilder();
    private final LinearExprBuilder driven = LinearExpr.newBuilder();
    private final LinearExprBuilder allDrives = LinearExpr.newBuilder();
    /** A choice, and which driver that may be serves the volume of it. */
    private final Map<BoolVar, Driven> needDriver = new LinkedHashMap<>();
    private final Map<DriveSupport, LinearExprBuilder> drivers = new LinkedHashMap<>();
    private final Map<String, LinearExprBuilder> extras = new TreeMap<>();

    private record Driven(Drive.Kind kind, RaidLevel level, int data) {

        boolean isServedBy(DriveSupport support) {
            return support.links().contains(kind.link()) && (level == RaidLevel.LEVEL_0 && data == 1 || support.levels().contains(level));
        }
    }

    /** The solver came to no end. */
    static final class UndecidedException extends RuntimeException {
    }

    private CpSatFitout(RandomCase that, Platform platform, int fitted) {
        this.that = that;
        this.platform = platform;
        this.fitted = fitted;
        request = that.request();
        machines = request.machines();
    }

    /**
     * The least price in minor units, labour and all; empty where no set is valid.
     *
     * @param spareW watts that drives, cards and extras may load; negative: no limit
     * @throws UndecidedException when the solver can't tell in its time
     */
    static OptionalLong cheapest(RandomCase that, Platform platform, int fitted, double spareW) {
        Loader.loadNativeLibraries();
        CpSatFitout fitout = new CpSatFitout(that, platform, fitted);
        fitout.volumes();
        fitout.cards();
        fitout.drivers();
        fitout.extras();
        fitout.pay();
        if (spareW >= 0) {
            fitout.model.addLessOrEqual(fitout.deciwatts, Math.round(spareW * 10));
        }
        fitout.model.minimize(fitout.price);
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setRandomSeed(1).setMaxDeterministicTime(TIME);
        CpSolverStatus status = solver.solve(fitout.model);
        return switch (status) {
            case OPTIMAL -> OptionalLong.of(Math.round(solver.objectiveValue()));
            case INFEASIBLE -> OptionalLong.empty();
            case FEASIBLE, UNKNOWN -> throw new UndecidedException();
            default -> throw new IllegalStateException("the solver ends with %s: %s".formatted(status, fitout.model.validate()));
        };
    }

    private boolean live(OptionalInt socket) {
        return socket.isEmpty() || socket.getAsInt() <= fitted;
    }

    private void volumes() {
        for (VolumeWish wish : request.equipment().volumes()) {
            List<Literal> choices = new ArrayList<>();
            for (Drive.Kind kind : that.catalog().drives().stream().map(Drive::likeness).distinct().toList()) {
                for (BayGroup group : platform.expansion().bays()) {
                    for (int data = 1; data + wish.hotSpares() <= group.count(); data++) {
                        if (suits(wish, kind, group, data)) {
                            choices.add(choice(wish, kind, group, data));
                        }
                    }
                }
            }
            model.addExactlyOne(choices.toArray(Literal[]::new));
        }
        inGroup.forEach((group, held) -> model.addLessOrEqual(held, group.count()));
    }

    private boolean suits(VolumeWish wish, Drive.Kind kind, BayGroup group, int data) {
        boolean wanted = (wish.kind().isEmpty() || wish.kind().get() == kind.kind()) && (wish.link().isEmpty() || wish.link().get() == kind.link());
        boolean sits = group.formFactors().contains(kind.formFactor()) && group.links().contains(kind.link()) && live(group.socket());
        boolean known = !kind.link().label().equals("NVMe") || wish.level() == RaidLevel.LEVEL_0 && data == 1 || group.levels().contains(wish.level());
        double usable = EveryFitout.usable(wish.level(), data, kind.capacityGb());
        return wanted && sits && known && usable > 0 && usable >= wish.usableGb() - 1e-7;
    }

    private BoolVar choice(VolumeWish wish, Drive.Kind kind, BayGroup group, int data) {
        BoolVar chosen = model.newBoolVar(wish.name() + kind + group.name() + data);
        int all = data + wish.hotSpares();
        drives.computeIfAbsent(kind, key -> LinearExpr.newBuilder()).addTerm(chosen, (long) machines * all);
        inGroup.computeIfAbsent(group, key -> LinearExpr.newBuilder()).addTerm(chosen, all);
        allDrives.addTerm(chosen, all);
        if (!kind.link().label().equals("NVMe")) {
            ports.addTerm(chosen, all);
            driven.add(chosen);
            needDriver.put(chosen, new Driven(kind, wish.level(), data));
        }
        return chosen;
    }

    /** The number of each card, the one that is there only to drive, and a slot for each. */
    private void cards() {
        List<Card> all = List.copyOf(that.catalog().cards());
        Map<Card, LinearExprBuilder> asked = new LinkedHashMap<>();
        all.forEach(card -> asked.put(card, LinearExpr.newBuilder()));
        for (CardWish wish : request.equipment().cards()) {
            List<Literal> choices = new ArrayList<>();
            for (Card card : all) {
                boolean serves = wish.sku().isPresent() ? wish.sku().get().equals(card.sku())
                        : wish.kind().orElseThrow() == card.kind() && card.ports() >= wish.ports() && card.portGbit() >= wish.portGbit();
                if (serves) {
                    BoolVar chosen = model.newBoolVar(wish + card.sku());
                    choices.add(chosen);
                    asked.get(card).addTerm(chosen, wish.count());
                }
            }
            model.addExactlyOne(choices.toArray(Literal[]::new));
        }
        LinearExprBuilder more = LinearExpr.newBuilder();
        Map<Card, LinearExprBuilder> held = new LinkedHashMap<>();
        List<Literal> driving = new ArrayList<>();
        for (Card card : all) {
            LinearExprBuilder count = LinearExpr.newBuilder().add(asked.get(card));
            if (card.support().isPresent()) {
                BoolVar extra = model.newBoolVar("extra " + card.sku());
                BoolVar drives = model.newBoolVar("drives " + card.sku());
                count.add(extra);
                more.add(extra);
                driving.add(drives);
                model.addImplication(extra, drives);
                model.addLessOrEqual(drives, count);
                drivers.computeIfAbsent(card.support().get(), key -> LinearExpr.newBuilder()).add(drives);
            }
            held.put(card, count);
        }
        model.addLessOrEqual(more, 1);
        model.addLessOrEqual(more, driven);
        platform.expansion().onboard().ifPresent(support -> {
            BoolVar drives = model.newBoolVar("board drives");
            driving.add(drives);
            drivers.computeIfAbsent(support, key -> LinearExpr.newBuilder()).add(drives);
        });
        model.addAtMostOne(driving.toArray(Literal[]::new));
        slots(held);
    }

    private void slots(Map<Card, LinearExprBuilder> held) {
        Map<CardSlot, List<Literal>> inSlot = new LinkedHashMap<>();
        held.forEach((card, count) -> {
            LinearExprBuilder placed = LinearExpr.newBuilder();
            for (CardSlot slot : platform.expansion().slots()) {
                boolean fits = live(slot.socket()) && slot.offers().lanes() >= card.shape().lanes()
                        && slot.offers().pcieGeneration() >= card.shape().pcieGeneration() && slot.offers().lengthMm() >= card.shape().lengthMm()
                        && slot.offers().powerW() >= card.powerW()
                        && (slot.offers().height().label().equals("full") || card.shape().height().label().equals("low"));
                if (fits) {
                    BoolVar in = model.newBoolVar(card.sku() + " in " + slot.name());
                    placed.add(in);
                    inSlot.computeIfAbsent(slot, key -> new ArrayList<>()).add(in);
                }
            }
            model.addEquality(placed, count);
            IntVar units = model.newIntVar(0, platform.expansion().slots().size(), card.sku());
            model.addEquality(units, count);
            buy(card.sku(), units, platform.expansion().slots().size());
            price.addTerm(units, machines * that.catalog().labour().perCard());
            deciwatts.addTerm(units, Math.round(card.powerW() * 10));
        });
        inSlot.values().forEach(all -> model.addAtMostOne(all.toArray(Literal[]::new)));
        Map<String, BoolVar> risers = new TreeMap<>();
        inSlot.forEach((slot, all) -> slot.riser().ifPresent(sku -> {
            BoolVar bought = risers.computeIfAbsent(sku, key -> model.newBoolVar("riser " + key));
            all.forEach(in -> model.addImplication(in, bought));
        }));
        risers.forEach((sku, bought) -> extras.computeIfAbsent(sku, key -> LinearExpr.newBuilder()).add(bought));
    }

    /** Whatever needs a driver has one that serves it, with a port for each drive. */
    private void drivers() {
        needDriver.forEach((chosen, volume) -> {
            LinearExprBuilder serving = LinearExpr.newBuilder();
            drivers.forEach((support, drives) -> {
                if (volume.isServedBy(support)) {
                    serving.add(drives);
                }
            });
            model.addGreaterOrEqual(serving, chosen);
        });
        LinearExprBuilder had = LinearExpr.newBuilder();
        drivers.forEach((support, drives) -> had.addTerm(drives, support.ports()));
        model.addLessOrEqual(ports, had);
    }

    private void extras() {
        request.equipment().extras().forEach((sku, units) -> extras.computeIfAbsent(sku, key -> LinearExpr.newBuilder()).add(units));
        for (Need need : platform.expansion().needs()) {
            int times = need.cause() == Need.Cause.PROCESSORS ? fitted >= need.from() ? 1 : 0 : platform.processors().sockets() - fitted;
            need.parts().forEach((sku, each) -> extras.computeIfAbsent(sku, key -> LinearExpr.newBuilder()).add((long) times * each));
        }
        extras.forEach((sku, units) -> {
            Extra extra = that.catalog().extra(sku).orElseThrow();
            IntVar count = model.newIntVar(0, 1000, sku);
            model.addEquality(count, units);
            buy(sku, count, 1000);
            deciwatts.addTerm(count, Math.round(extra.powerW() * 10));
        });
    }

    /** Drives of a kind are of any of its part numbers. */
    private void pay() {
        int most = platform.expansion().bays().stream().mapToInt(BayGroup::count).sum();
        ToIntFunction<Drive> watts = drive -> (int) Math.round(drive.powerW() * 10);
        drives.forEach((kind, units) -> {
            LinearExprBuilder drawn = LinearExpr.newBuilder();
            for (Drive drive : that.catalog().drives()) {
                if (drive.likeness().equals(kind)) {
                    IntVar count = model.newIntVar(0, (long) machines * most, drive.sku());
                    drawn.add(count);
                    price.add(draw(drive.sku(), count, machines * most));
                    if (machines == 1) {
                        deciwatts.addTerm(count, watts.applyAsInt(drive));
                    }
                }
            }
            model.addEquality(drawn, units);
            if (machines > 1) {
                Drive any = that.catalog().drives().stream().filter(drive -> drive.likeness().equals(kind)).findFirst().orElseThrow();
                IntVar each = model.newIntVar(0, most, kind.toString());
                model.addEquality(LinearExpr.term(each, machines), units);
                deciwatts.addTerm(each, watts.applyAsInt(any));
            }
        });
        IntVar all = model.newIntVar(0, most, "drives");
        model.addEquality(all, allDrives);
        price.addTerm(all, machines * that.catalog().labour().perDrive());
    }

    /** Units of a part in every machine. */
    private void buy(String sku, IntVar each, int most) {
        price.add(draw(sku, LinearExpr.term(each, machines), machines * most));
    }

    private LinearExpr draw(String sku, LinearArgument units, int most) {
        return new CpSatDraw(model, that).price(sku, units.build(), most);
    }
}
