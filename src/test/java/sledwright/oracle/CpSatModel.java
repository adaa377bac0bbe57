package sledwright.oracle;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import com.google.ortools.util.Domain;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToLongFunction;
import java.util.stream.LongStream;
import sledwright.domain.CoolingKit;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Slot;
import sledwright.domain.Supply;

/**
 * One machine on one platform with a given number of processors, as a model of whole numbers: a yes or no for each part in each slot,
 * each processor, kit, supply and speed, and units for each price of each lot.
 */
final class CpSatModel {

    /** Usable memory is counted in fractions of a GB that make shares of a rank and of a mirror whole. */
    static final long MEMORY_UNITS = 800;

    final CpModel model = new CpModel();
    final RandomCase that;
    final Request request;
    final Platform platform;
    final MemorySupport memory;
    final int fitted;
    final List<MemoryModule> modules;
    final Map<Slot, BoolVar[]> stands = new TreeMap<>();
    final Map<CoolingKit, BoolVar> kits = new LinkedHashMap<>();
    final Map<Processor, BoolVar> processors = new LinkedHashMap<>();
    final Map<Supply, BoolVar> supplies = new LinkedHashMap<>();
    private final Map<ModuleType, BoolVar> types = new TreeMap<>();
    final Map<Integer, BoolVar> speeds = new TreeMap<>();
    private final Map<List<Integer>, BoolVar[]> channelCounts = new LinkedHashMap<>();
    private LinearExpr usable;
    private LinearExpr price;

    CpSatModel(RandomCase that, Platform platform, int fitted) {
        this.that = that;
        this.platform = platform;
        this.fitted = fitted;
        request = that.request();
        memory = platform.memory();
        modules = that.catalog().modules().stream().filter(module -> module.generation().equals(memory.generation())
                && memory.takes(module.type()) && !request.forbid().contains(module.sku())).toList();
        choices();
        if (fitted > 0 && !modules.isEmpty() && !processors.isEmpty() && !kits.isEmpty() && wishesCanBe()) {
            channels();
            mix();
            sockets();
            mode();
            speed();
            new CpSatTargets(this).add();
            priceOfAll();
        } else {
            model.addBoolOr(new Literal[0]);
            usable = LinearExpr.constant(0);
            price = LinearExpr.constant(0);
        }
    }

    LinearExpr price() {
        return price;
    }

    /** Usable memory of the machine in {@link #MEMORY_UNITS}. */
    LinearExpr usable() {
        return usable;
    }

    /** Throughput in millionths. */
    LinearExpr throughput() {
        return sum(processors, processor -> NaiveFigures.millionths(fitted * throughputOf(processor)));
    }

    double throughputOf(Processor processor) {
        return NaiveFigures.throughput(processor, that.catalog().throughputFactors());
    }

    private boolean wishesCanBe() {
        List<String> here = new ArrayList<>(List.of(platform.sku()));
        modules.forEach(module -> here.add(module.sku()));
        processors.keySet().forEach(processor -> here.add(processor.sku()));
        kits.keySet().forEach(kit -> here.add(kit.sku()));
        supplies.keySet().forEach(supply -> here.add(supply.sku()));
        return here.containsAll(request.use());
    }

    /** Yes or no for processors, kits and supplies, and which go together. */
    private void choices() {
        Requirements require = request.require();
        boolean platformStands = (request.platforms().isEmpty() || request.platforms().contains(platform.sku()))
                && !request.forbid().contains(platform.sku()) && (require.processors() == 0 || require.processors() == fitted);
        for (Processor processor : that.catalog().processors()) {
            boolean fits = platformStands && processor.socket().equals(platform.processors().socket())
                    && platform.processors().generations().contains(processor.generation()) && fitted <= processor.socketsMax()
                    && processor.tdpW() <= platform.processors().maxTdpW() && !request.forbid().contains(processor.sku())
                    && fitted * processor.cores() >= require.cores() && processor.baseGhz() >= require.baseGhz() - 1e-7
                    && processor.allCoreGhz() >= require.allCoreGhz() - 1e-7
                    && fitted * throughputOf(processor) >= require.throughput() - 5e-7;
            if (fits) {
                processors.put(processor, model.newBoolVar(processor.sku()));
            }
        }
        platform.cooling().stream().filter(kit -> !request.forbid().contains(kit.sku())).forEach(kit -> kits.put(kit, model.newBoolVar(kit.sku())));
        platform.power().supplies().stream().filter(supply -> !request.forbid().contains(supply.sku()))
                .forEach(supply -> supplies.put(supply, model.newBoolVar(supply.sku() + supply.count())));
        model.addExactlyOne(processors.values().toArray(Literal[]::new));
        model.addExactlyOne(kits.values().toArray(Literal[]::new));
        if (!platform.power().supplies().isEmpty()) {
            model.addExactlyOne(supplies.values().toArray(Literal[]::new));
        }
        kits.forEach((kit, chosen) -> processors.forEach((processor, taken) -> {
            if (processor.tdpW() > kit.maxTdpW()) {
                model.addBoolOr(new Literal[] {chosen.not(), taken.not()});
            }
        }));
        kits.forEach((kit, chosen) -> wish(kit.sku(), chosen));
        processors.forEach((processor, chosen) -> wish(processor.sku(), chosen));
        Map<String, List<Literal>> bySku = new TreeMap<>();
        supplies.forEach((supply, chosen) -> bySku.computeIfAbsent(supply.sku(), sku -> new ArrayList<>()).add(chosen));
        bySku.forEach((sku, chosen) -> wish(sku, chosen.toArray(Literal[]::new)));
    }

    private void wish(String sku, Literal... chosen) {
        if (request.use().contains(sku)) {
            model.addBoolOr(chosen);
        }
    }

    /** The slots of fitted sockets, and the rules within a channel. */
    private void channels() {
        for (Slot slot : platform.board().slots()) {
            if (slot.socket() < fitted) {
                BoolVar[] part = new BoolVar[modules.size()];
                for (int m = 0; m < part.length; m++) {
                    part[m] = model.newBoolVar(slot.name() + modules.get(m).sku());
                }
                stands.put(slot, part);
                model.addAtMostOne(part);
                kits.forEach((kit, chosen) -> {
                    if (kit.covers().contains(slot.name())) {
                        for (BoolVar one : part) {
                            model.addImplication(chosen, one.not());
                        }
                    }
                });
            }
        }
        for (int m = 0; m < modules.size(); m++) {
            int index = m;
            wish(modules.get(m).sku(), stands.values().stream().map(part -> part[index]).toArray(Literal[]::new));
        }
        for (int socket = 0; socket < fitted; socket++) {
            for (int channel = 0; channel < memory.channels(); channel++) {
                channel(socket, channel);
            }
        }
    }

    private void channel(int socket, int channel) {
        int depth = memory.slotsPerChannel();
        BoolVar[] counts = new BoolVar[depth + 1];
        for (int n = 0; n <= depth; n++) {
            counts[n] = model.newBoolVar("count");
        }
        model.addExactlyOne(counts);
        model.addEquality(modulesOn(socket, channel), LinearExpr.weightedSum(counts, LongStream.rangeClosed(0, depth).toArray()));
        channelCounts.put(List.of(socket, channel), counts);
        for (int position = 1; position < depth; position++) {
            Slot before = platform.board().slot(socket, channel, position - 1);
            Slot after = platform.board().slot(socket, channel, position);
            model.addGreaterOrEqual(filling(before), filling(after));
            // Ranks weigh more than any capacity; an empty slot weighs nothing, and stands last.
            model.addGreaterOrEqual(weight(before, module -> module.ranks() * 1_000L + module.capacityGb()),
                    weight(after, module -> module.ranks() * 1_000L + module.capacityGb()));
        }
        for (int m = 0; m < modules.size(); m++) {
            for (int n = 1; n <= depth; n++) {
                if (Reading.tableMts(memory, modules.get(m), n).isEmpty()) {
                    for (int position = 0; position < n; position++) {
                        model.addBoolOr(new Literal[] {counts[n].not(), stands.get(platform.board().slot(socket, channel, position))[m].not()});
                    }
                }
            }
        }
    }

    LinearExpr filling(Slot slot) {
        return LinearExpr.sum(stands.get(slot));
    }

    private LinearExpr weight(Slot slot, ToLongFunction<MemoryModule> of) {
        return LinearExpr.weightedSum(stands.get(slot), modules.stream().mapToLong(of).toArray());
    }

    LinearExpr onChannel(int socket, int channel, ToLongFunction<MemoryModule> of) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (int position = 0; position < memory.slotsPerChannel(); position++) {
            sum.add(weight(platform.board().slot(socket, channel, position), of));
        }
        return sum.build();
    }

    private LinearExpr modulesOn(int socket, int channel) {
        return onChannel(socket, channel, module -> 1);
    }

    LinearExpr onSocket(int socket, ToLongFunction<MemoryModule> of) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (int channel = 0; channel < memory.channels(); channel++) {
            sum.add(onChannel(socket, channel, of));
        }
        return sum.build();
    }

    /** What the machine mixes: one type, widths, capacities; and the rank limit of the type. */
    private void mix() {
        Map<Integer, BoolVar> widths = new TreeMap<>();
        Map<Integer, BoolVar> capacities = new TreeMap<>();
        List<BoolVar> partNumbers = new ArrayList<>();
        for (int m = 0; m < modules.size(); m++) {
            MemoryModule module = modules.get(m);
            BoolVar type = types.computeIfAbsent(module.type(), key -> model.newBoolVar(key.label()));
            BoolVar width = widths.computeIfAbsent(module.deviceWidth(), key -> model.newBoolVar("x" + key));
            BoolVar capacity = capacities.computeIfAbsent(module.capacityGb(), key -> model.newBoolVar(key + " GB"));
            BoolVar partNumber = model.newBoolVar(module.sku());
            partNumbers.add(partNumber);
            for (BoolVar[] part : stands.values()) {
                model.addImplication(part[m], partNumber);
                model.addImplication(part[m], type);
                model.addImplication(part[m], width);
                model.addImplication(part[m], capacity);
            }
        }
        if (request.require().populated().onePart()) {
            model.addAtMostOne(partNumbers.toArray(Literal[]::new));
        }
        model.addExactlyOne(types.values().toArray(Literal[]::new));
        if (!memory.mix().widths()) {
            model.addAtMostOne(widths.values().toArray(Literal[]::new));
        }
        model.addLessOrEqual(LinearExpr.sum(capacities.values().toArray(BoolVar[]::new)), memory.mix().maxDistinctCapacities());
        types.forEach((type, chosen) -> {
            Integer limit = memory.maxLogicalRanks().get(type);
            for (int socket = 0; limit != null && socket < fitted; socket++) {
                for (int channel = 0; channel < memory.channels(); channel++) {
                    model.addLessOrEqual(onChannel(socket, channel, MemoryModule::logicalRanks), limit).onlyEnforceIf(chosen);
                }
            }
            processors.forEach((processor, taken) -> {
                if (!Reading.inlet(platform.thermal(), processor, type, request.limit()).isEmpty()) {
                    model.addBoolOr(new Literal[] {chosen.not(), taken.not()});
                }
            });
        });
    }

    /** The rules of a socket, and that all sockets are alike. */
    private void sockets() {
        for (int socket = 0; socket < fitted; socket++) {
            LinearExpr count = onSocket(socket, module -> 1);
            model.addGreaterOrEqual(count, 1);
            if (!memory.mix().countsPerSocket().isEmpty()) {
                model.addLinearExpressionInDomain(count, Domain.fromValues(memory.mix().countsPerSocket().stream().mapToLong(n -> n).toArray()));
            }
            for (Map.Entry<Processor, BoolVar> processor : processors.entrySet()) {
                if (processor.getKey().maxMemoryGb().isPresent()) {
                    model.addLessOrEqual(onSocket(socket, MemoryModule::capacityGb), processor.getKey().maxMemoryGb().getAsInt())
                            .onlyEnforceIf(processor.getValue());
                }
            }
            channelOrder(socket);
            for (int channel = 0; channel < memory.channels() && request.require().populated().balanced(); channel++) {
                model.addEquality(onChannel(socket, channel, MemoryModule::capacityGb), onChannel(0, 0, MemoryModule::capacityGb));
            }
            if (socket > 0) {
                for (int channel = 0; channel < memory.channels(); channel++) {
                    alike(0, channel, socket, channel);
                }
            }
        }
    }

    private void channelOrder(int socket) {
        for (int earlier = 0; earlier < memory.channels(); earlier++) {
            BoolVar[] counts = channelCounts.get(List.of(socket, earlier));
            for (int n = 0; n < memory.slotsPerChannel(); n++) {
                Slot next = platform.board().slot(socket, earlier, n);
                for (Map.Entry<CoolingKit, BoolVar> kit : kits.entrySet()) {
                    if (!kit.getKey().covers().contains(next.name())) {
                        for (int later = earlier + 1; later < memory.channels(); later++) {
                            model.addLessOrEqual(modulesOn(socket, later), n).onlyEnforceIf(new Literal[] {counts[n], kit.getValue()});
                        }
                    }
                }
            }
        }
    }

    private void alike(int socket, int channel, int otherSocket, int otherChannel) {
        for (MemoryModule.Kind kind : modules.stream().map(MemoryModule::kind).distinct().toList()) {
            for (int position = 0; position < memory.slotsPerChannel(); position++) {
                model.addEquality(weight(platform.board().slot(socket, channel, position), module -> module.kind().equals(kind) ? 1 : 0),
                        weight(platform.board().slot(otherSocket, otherChannel, position), module -> module.kind().equals(kind) ? 1 : 0));
            }
        }
    }

    /** What the memory mode asks for and leaves. */
    private void mode() {
        MemoryMode mode = request.require().mode();
        if (!Reading.mode(memory, mode).isEmpty()) {
            model.addBoolOr(new Literal[0]);
        }
        LinearExprBuilder left = LinearExpr.newBuilder();
        for (int socket = 0; socket < fitted; socket++) {
            double share = mode == MemoryMode.MIRRORED ? memory.modes().mirroredFraction().orElse(0) : 1;
            left.add(onSocket(socket, module -> Math.round(module.capacityGb() * MEMORY_UNITS * share)));
            for (int channel = 0; channel < memory.channels(); channel++) {
                if (mode == MemoryMode.MIRRORED && channel % 2 == 1) {
                    alike(socket, channel - 1, socket, channel);
                }
                if (mode == MemoryMode.RANK_SPARING) {
                    IntVar spared = model.newIntVar(0, 1000 * MEMORY_UNITS, "spared");
                    left.addTerm(spared, -1);
                    for (int position = 0; position < memory.slotsPerChannel(); position++) {
                        model.addGreaterOrEqual(spared, weight(platform.board().slot(socket, channel, position),
                                module -> module.capacityGb() * MEMORY_UNITS / module.ranks()));
                    }
                    model.addGreaterOrEqual(onChannel(socket, channel, MemoryModule::ranks), 2)
                            .onlyEnforceIf(channelCounts.get(List.of(socket, channel))[0].not());
                }
            }
        }
        usable = left.build();
    }

    /** One speed that every module, every channel and the processor keep. */
    private void speed() {
        TreeSet<Integer> all = new TreeSet<>();
        modules.forEach(module -> all.add(module.speedMts()));
        memory.speeds().forEach(row -> all.addAll(row.mts()));
        processors.keySet().forEach(processor -> all.add(processor.memoryMts()));
        for (int mts : all) {
            BoolVar speed = model.newBoolVar(mts + " MT/s");
            speeds.put(mts, speed);
            processors.forEach((processor, taken) -> {
                if (processor.memoryMts() < mts) {
                    model.addImplication(speed, taken.not());
                }
            });
            for (int m = 0; m < modules.size(); m++) {
                for (Map.Entry<Slot, BoolVar[]> slot : stands.entrySet()) {
                    if (modules.get(m).speedMts() < mts) {
                        model.addImplication(speed, slot.getValue()[m].not());
                    }
                    BoolVar[] counts = channelCounts.get(List.of(slot.getKey().socket(), slot.getKey().channel()));
                    for (int n = 1; n < counts.length; n++) {
                        if (Reading.tableMts(memory, modules.get(m), n).orElse(mts) < mts) {
                            model.addBoolOr(new Literal[] {speed.not(), slot.getValue()[m].not(), counts[n].not()});
                        }
                    }
                }
            }
        }
        model.addExactlyOne(speeds.values().toArray(Literal[]::new));
    }

    private void priceOfAll() {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        CpSatDraw draw = new CpSatDraw(model, that);
        sum.add(draw.price(platform.sku(), LinearExpr.constant(1), 1));
        processors.forEach((processor, taken) -> sum.add(draw.price(processor.sku(), LinearExpr.affine(taken, fitted, 0), fitted)));
        kits.forEach((kit, chosen) -> sum.add(draw.price(kit.sku(), LinearExpr.affine(chosen, fitted, 0), fitted)));
        Map<String, LinearExprBuilder> units = new TreeMap<>();
        supplies.forEach((supply, chosen) -> units.computeIfAbsent(supply.sku(), sku -> LinearExpr.newBuilder()).addTerm(chosen, supply.count()));
        units.forEach((sku, count) -> sum.add(draw.price(sku, count.build(), 100)));
        for (int m = 0; m < modules.size(); m++) {
            int index = m;
            sum.add(draw.price(modules.get(m).sku(), LinearExpr.sum(stands.values().stream().map(part -> part[index]).toArray(BoolVar[]::new)), stands.size()));
        }
        sum.add(that.catalog().labour().perMachine());
        stands.keySet().forEach(slot -> sum.addTerm(filling(slot), that.catalog().labour().perModule()));
        sum.add(sum(processors, processor -> fitted * (request.licence().perProcessor() + request.licence().perCore() * processor.cores())));
        price = sum.build();
        request.limit().price().ifPresent(limit -> model.addLessOrEqual(price, limit));
    }

    static <T> LinearExpr sum(Map<T, BoolVar> choices, ToLongFunction<T> of) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        choices.forEach((choice, chosen) -> sum.addTerm(chosen, of.applyAsLong(choice)));
        return sum.build();
    }
}
