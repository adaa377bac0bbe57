package sledwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
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

/** Every rule, in the order in which reports list them. */
public final class Rulebook {

    private static final List<Rule<Machine>> MACHINE = machineRules();
    private static final List<Rule<Housing>> ENCLOSURE = List.of(new EnclosureBays(), new EnclosurePower());
    private static final List<Rule<Order>> ORDER = List.of(new InStock(), new LeadTime(), new AcceptedCondition(), new Budget());

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
    public static List<Rule<Order>> ofOrder() {
        return ORDER;
    }

    /** Every rule. */
    public static List<Rule<?>> all() {
        return Stream.<List<? extends Rule<?>>>of(MACHINE, ENCLOSURE, ORDER).<Rule<?>>flatMap(List::stream).toList();
    }

    /** Every breach of a machine's rules. */
    public static List<Violation> judge(Machine machine) {
        return MACHINE.stream().flatMap(rule -> rule.judge(machine).stream()).toList();
    }

    /** Every breach of the rules of an enclosure and its sleds. */
    public static List<Violation> judge(Housing housing) {
        return ENCLOSURE.stream().flatMap(rule -> rule.judge(housing).stream()).toList();
    }

    /** Every breach of an order's rules. */
    public static List<Violation> judge(Order order) {
        return ORDER.stream().flatMap(rule -> rule.judge(order).stream()).toList();
    }

    private static List<Rule<Machine>> machineRules() {
        List<Rule<Machine>> rules = new ArrayList<>(List.of(
                new SocketMatch(), new SocketCount(), new MatchedProcessors(), new TdpLimit(),
                new HeatSinkRating(), new BlockedSlot(), new InletLimit(),
                new MemoryPresent(), new SlotNeedsProcessor(), new SlotOrder(), new RankOrder(), new MemoryGeneration(),
                new ModuleTypeTaken(), new OneModuleType(), new DeviceWidth(), new DistinctCapacities(), new RankLimit(),
                new ModulesPerChannel(), new MatchedSockets(), new ModuleCount(), new ChannelOrder(),
                new ProcessorMemoryLimit(), new ModeSupported(),
                new PowerSupply(), new PowerBudget(), new PowerLimit(),
                new AskedPlatform(), new ForbiddenPart(), new RequiredPart(), new ProcessorCount(),
                new DriveBay(), new BayCount(), new VolumeDrives(), new VolumeDriver(), new CardFits(), new RiserBought(),
                new PartsNeeded(), new StorageCapacity(), new AskedCards()));
        rules.addAll(Target.ALL);
        return List.copyOf(rules);
    }
}
