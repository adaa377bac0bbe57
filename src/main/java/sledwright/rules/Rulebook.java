package sledwright.rules;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.PartKind;
import sledwright.domain.Request;
import sledwright.rules.card.AskedCards;
import sledwright.rules.card.CardFits;
import sledwright.rules.card.PartsNeeded;
import sledwright.rules.card.RiserBought;
import sledwright.rules.choice.AskedPlatform;
import sledwright.rules.choice.ForbiddenPart;
import sledwright.rules.choice.RequiredPart;
import sledwright.rules.cooling.BlockedSlot;
import sledwright.rules.cooling.HeatSinkRating;
import sledwright.rules.cooling.InletLimit;
import sledwright.rules.enclosure.EnclosureBays;
import sledwright.rules.enclosure.EnclosurePower;
import sledwright.rules.memory.BalancedChannels;
import sledwright.rules.memory.ChannelOrder;
import sledwright.rules.memory.DeviceWidth;
import sledwright.rules.memory.DistinctCapacities;
import sledwright.rules.memory.MatchedSockets;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.MemoryPresent;
import sledwright.rules.memory.ModeSupported;
import sledwright.rules.memory.ModuleCount;
import sledwright.rules.memory.ModuleTypeTaken;
import sledwright.rules.memory.ModulesPerChannel;
import sledwright.rules.memory.OneModulePart;
import sledwright.rules.memory.OneModuleType;
import sledwright.rules.memory.ProcessorMemoryLimit;
import sledwright.rules.memory.RankLimit;
import sledwright.rules.memory.RankOrder;
import sledwright.rules.memory.SlotNeedsProcessor;
import sledwright.rules.memory.SlotOrder;
import sledwright.rules.power.PowerBudget;
import sledwright.rules.power.PowerSupply;
import sledwright.rules.processor.MatchedProcessors;
import sledwright.rules.processor.SocketCount;
import sledwright.rules.processor.SocketMatch;
import sledwright.rules.processor.TdpLimit;
import sledwright.rules.stock.AcceptedCondition;
import sledwright.rules.stock.Budget;
import sledwright.rules.stock.InStock;
import sledwright.rules.stock.LeadTime;
import sledwright.rules.storage.BayCount;
import sledwright.rules.storage.DriveBay;
import sledwright.rules.storage.StorageCapacity;
import sledwright.rules.storage.VolumeDriver;
import sledwright.rules.storage.VolumeDrives;
import sledwright.rules.target.PowerLimit;
import sledwright.rules.target.ProcessorCount;
import sledwright.rules.target.Target;

/**
 * Every rule, in the order in which reports list them. Rules of parts that stand beside the program come last: classes that a file
 * {@code META-INF/services/sledwright.rules.PartRule} on the class path names.
 */
public final class Rulebook {

    private static final List<Rule<Machine>> MACHINE = machineRules();
    private static final List<Rule<Housing>> ENCLOSURE = List.of(new EnclosureBays(), new EnclosurePower());
    private static final List<OrderRule> ORDER = List.of(new OneModulePart(), new InStock(), new LeadTime(), new AcceptedCondition(),
            new Budget());
    private static final List<LotRule> LOT = ORDER.stream().filter(LotRule.class::isInstance).map(LotRule.class::cast).toList();
    private static final Map<PartKind, List<PartRule>> BY_LAST_CHOSEN = byLastChosen();
    /** Key -> the rules that answer to it, as far as it was asked for. */
    private static final Map<String, List<Rule<?>>> ANSWERING = new ConcurrentHashMap<>();

    private Rulebook() {
    }

    /** The rules that one machine keeps or breaks by itself. */
    public static List<Rule<Machine>> ofMachine() {
        return MACHINE;
    }

    /** The rules that an enclosure and the sleds in it keep or break together. */
    public static List<Rule<Housing>> ofEnclosure() {
        return ENCLOSURE;
    }

    /** The rules that only the whole order keeps or breaks. */
    public static List<OrderRule> ofOrder() {
        return ORDER;
    }

    public static List<Rule<?>> all() {
        return Stream.<List<? extends Rule<?>>>of(MACHINE, ENCLOSURE, ORDER).<Rule<?>>flatMap(List::stream).toList();
    }

    /** Every breach of a machine's rules. */
    public static List<Violation> judge(Machine machine) {
        return MACHINE.stream().flatMap(rule -> rule.judge(machine).stream()).toList();
    }

    /** Every breach of the rules of an enclosure and its sleds. */
    public static List<Violation> judge(Housing housing) {
        return Stream.concat(ENCLOSURE.stream().flatMap(rule -> rule.judge(housing).stream()),
                MACHINE.stream().flatMap(rule -> rule.judgeAround(housing).stream())).toList();
    }

    /** Every breach of an order's rules. */
    public static List<Violation> judge(Order order) {
        return ORDER.stream().flatMap(rule -> rule.judge(order).stream()).toList();
    }

    /** The identifiers of the rules that hold a build to a key of the request, or to a circumstance. */
    public static List<Rule<?>> answeringTo(String key) {
        return ANSWERING.computeIfAbsent(key, same -> all().stream().filter(rule -> rule.answersTo().contains(key)).toList());
    }

    /** Whether no rule that lots keep by themselves refuses one. */
    public static boolean accepts(Lot lot, Limits limits) {
        return LOT.stream().allMatch(rule -> rule.accepts(lot, limits));
    }

    /** The limits that an order's lines are still held to where they are offered no more than they accept. */
    public static Limits settled(Limits limits) {
        Limits left = limits;
        for (OrderRule rule : ORDER) {
            left = rule.settled(left);
        }
        return left;
    }

    /**
     * The rules that can be asked once a kind of part is chosen and could not before. Of a frame, a platform is chosen first, then its
     * processors, their heat sink and the supply; modules are chosen for a platform.
     */
    public static List<PartRule> onceChosen(PartKind kind) {
        return BY_LAST_CHOSEN.getOrDefault(kind, List.of());
    }

    /** Whether no rule that {@linkplain #onceChosen can be asked now} forbids the parts. */
    public static boolean allows(PartKind lastChosen, Parts parts, Request request) {
        for (PartRule rule : onceChosen(lastChosen)) {
            if (!rule.allows(parts, request)) {
                return false;
            }
        }
        return true;
    }

    private static Map<PartKind, List<PartRule>> byLastChosen() {
        Map<PartKind, List<PartRule>> rules = new EnumMap<>(PartKind.class);
        MACHINE.stream().filter(PartRule.class::isInstance).map(PartRule.class::cast)
                .forEach(rule -> rules.computeIfAbsent(rule.lastChosen(), kind -> new ArrayList<>()).add(rule));
        return rules;
    }

    private static List<Rule<Machine>> machineRules() {
        List<Rule<Machine>> rules = new ArrayList<>(List.of(
                new SocketMatch(), new SocketCount(), new MatchedProcessors(), new TdpLimit(),
                new HeatSinkRating(), new BlockedSlot(), new InletLimit(),
                new MemoryPresent(), new SlotNeedsProcessor(), new SlotOrder(), new RankOrder(), new MemoryGeneration(),
                new ModuleTypeTaken(), new OneModuleType(), new DeviceWidth(), new DistinctCapacities(), new RankLimit(),
                new ModulesPerChannel(), new MatchedSockets(), new ModuleCount(), new ChannelOrder(),
                new ProcessorMemoryLimit(), new ModeSupported(), new BalancedChannels(),
                new PowerSupply(), new PowerBudget(), new PowerLimit(),
                new AskedPlatform(), new ForbiddenPart(), new RequiredPart(), new ProcessorCount(),
                new DriveBay(), new BayCount(), new VolumeDrives(), new VolumeDriver(), new CardFits(), new RiserBought(),
                new PartsNeeded(), new StorageCapacity(), new AskedCards()));
        rules.addAll(Target.ALL);
        ServiceLoader.load(PartRule.class).forEach(rules::add);
        return List.copyOf(rules);
    }
}
