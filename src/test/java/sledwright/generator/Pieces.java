package sledwright.generator;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.generator.draw.Draw;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.Watts;
import sledwright.generator.fitout.Completion;
import sledwright.generator.memory.MemoryPoint;
import sledwright.generator.shape.GroupKind;
import sledwright.rules.Parts;
import sledwright.samples.Samples;

/** Pieces of the search put together by hand. */
public final class Pieces {

    private Pieces() {
    }

    /** A frame of one processor whose price is 1000, whose worth is nothing and whose load is 100 W. */
    static Frame frame(Processor processor) {
        return frame(processor, 1000, 0, 0, processor.throughput().orElse(0), 100);
    }

    static Frame frame(Processor processor, long price, double worth, long energy, double throughput, double loadW) {
        Parts parts = Parts.of(Samples.platform().make()).with(processor, 1).with(Samples.LOW).with(Optional.empty());
        return frame(parts, Set.of(ModuleType.RDIMM), new Computing(processor.cores(), throughput, throughput, worth), price, energy, loadW);
    }

    /** A frame that needs neither drives, cards and extras nor an enclosure. */
    static Frame frame(Parts parts, Set<ModuleType> types, Computing computing, long price, long energy, double loadW) {
        return new Frame(parts, types, computing, price, energy, Watts.micro(loadW), Completion.NOTHING);
    }

    /** Memory of one machine; the socket is as wide as given. */
    static MemoryPoint point(long price, int socketGb, int fullestGb, double usableGb, int modules, double loadW, double slackW) {
        return new MemoryPoint(price, socketGb, fullestGb, usableGb, Watts.micro(loadW), Watts.micro(slackW),
                new MemoryPoint.Filling(modules, null, Draw.NOTHING));
    }

    /** A build of those figures of one machine, at a price and an aim of 0. */
    static Combination candidate(double throughput, int cores, double bandwidthGbs, double usableGb, double loadW) {
        return candidate(0, 0, throughput, cores, bandwidthGbs, usableGb, loadW);
    }

    static Combination candidate(double aim, long price, double throughput, int cores, double bandwidthGbs, double usableGb, double loadW) {
        return new Combination(frame(Samples.processor("P").cores(cores).make(), 0, 0, 0, throughput, loadW), null,
                point(0, 64, 16, usableGb, 4, 0, 0), aim, price, bandwidthGbs, throughput);
    }

    /** The lots of modules alone. */
    public static Shelf shelf(Request request, List<MemoryModule> modules, Lot... lots) {
        return new Shelf(shop(modules, lots), request);
    }

    static Catalog shop(List<MemoryModule> modules, Lot... lots) {
        return Samples.catalog(List.of(Samples.platform().make()), List.of(Samples.P10), modules, lots);
    }

    public static Lot lot(MemoryModule module, int available, Map<Integer, Long> prices) {
        return Samples.lot(module.sku(), "L" + module.sku(), available, 0, Condition.NEW, prices);
    }

    public static Lot lot(MemoryModule module, int available, long price) {
        return lot(module, available, Map.of(1, price));
    }

    public static GroupKind group(int capacityGb) {
        return new GroupKind(capacityGb, 2, 0, 7);
    }
}
