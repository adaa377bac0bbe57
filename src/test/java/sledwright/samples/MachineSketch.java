package sledwright.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import sledwright.domain.Build;
import sledwright.domain.CoolingKit;
import sledwright.domain.Equipment;
import sledwright.domain.Limits;
import sledwright.domain.MemoryModule;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Slot;
import sledwright.domain.Supply;
import sledwright.rules.Machine;

/**
 * A machine in the making, slot by slot, beside the request that it answers. As it starts: the sample platform with its low
 * kit and its pair of supplies, two ten-core processors, no memory, a request that asks for nothing.
 */
public final class MachineSketch {

    private final Platform platform;
    private List<Processor> processors = List.of(Samples.P10, Samples.P10);
    private CoolingKit cooling;
    private Optional<Supply> supply;
    private final Map<Slot, MemoryModule> modules = new TreeMap<>();
    private final FitoutSketch fitout = new FitoutSketch();
    private Request request = Request.named("sample");

    MachineSketch(Platform platform) {
        this.platform = platform;
        cooling = platform.cooling().get(0);
        supply = platform.power().supplies().stream().findFirst();
    }

    public MachineSketch processors(Processor... fitted) {
        processors = Arrays.asList(fitted);
        return this;
    }

    public MachineSketch processors(int number, Processor each) {
        processors = Collections.nCopies(number, each);
        return this;
    }

    public MachineSketch cooling(CoolingKit kit) {
        cooling = kit;
        return this;
    }

    public MachineSketch supply(Supply option) {
        supply = Optional.of(option);
        return this;
    }

    public MachineSketch noSupply() {
        supply = Optional.empty();
        return this;
    }

    /** Puts a module into the slot of that name. */
    public MachineSketch slot(String name, MemoryModule module) {
        modules.put(platform.board().slot(name).orElseThrow(), module);
        return this;
    }

    /** Empties the slot of that name. */
    public MachineSketch without(String name) {
        modules.remove(platform.board().slot(name).orElseThrow());
        return this;
    }

    /** Fills a channel of one socket, both from 0, from its first slot on. */
    public MachineSketch channel(int socket, int channel, MemoryModule... stack) {
        for (int position = 0; position < stack.length; position++) {
            modules.put(platform.board().slot(socket, channel, position), stack[position]);
        }
        return this;
    }

    /** Fills a number of channels of every fitted socket alike, from the first on. */
    public MachineSketch channels(int number, MemoryModule... stack) {
        for (int socket = 0; socket < processors.size(); socket++) {
            for (int channel = 0; channel < number; channel++) {
                channel(socket, channel, stack);
            }
        }
        return this;
    }

    /** Fills the channels of every fitted socket, each with its own stack, from the first channel on. */
    public MachineSketch stacks(List<List<MemoryModule>> stacks) {
        for (int socket = 0; socket < processors.size(); socket++) {
            for (int channel = 0; channel < stacks.size(); channel++) {
                channel(socket, channel, stacks.get(channel).toArray(MemoryModule[]::new));
            }
        }
        return this;
    }

    public MachineSketch request(Request asked) {
        request = asked;
        return this;
    }

    public MachineSketch require(Requirements least) {
        request = request.withRequire(least);
        return this;
    }

    public MachineSketch limit(Limits most) {
        request = request.withLimit(most);
        return this;
    }

    /** Drives, cards and extras. */
    public MachineSketch with(Consumer<FitoutSketch> equipment) {
        equipment.accept(fitout);
        return this;
    }

    public MachineSketch equipment(Equipment asked) {
        request = request.withEquipment(asked);
        return this;
    }

    public Build build() {
        return new Build(platform, new ArrayList<>(processors), cooling, supply, new TreeMap<>(modules), fitout.make());
    }

    /** The build with its figures. */
    public Machine make() {
        return Machine.of(build(), request, Samples.FACTORS);
    }
}
