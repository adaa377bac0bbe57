package sledwright.generator;

import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryPoint;

/**
 * A frame with its memory.
 *
 * @param aim   what the objective makes of it: the less the better
 * @param price all machines, minor units
 */
record Combination(Frame frame, MemoryOption option, MemoryPoint point, double aim, long price, double bandwidthGbs, double loadW,
                   double work) {

    /** A machine that is to do nothing in particular, whose work is its throughput. */
    Combination(Frame frame, MemoryOption option, MemoryPoint point, double aim, long price, double bandwidthGbs, double loadW) {
        this(frame, option, point, aim, price, bandwidthGbs, loadW, frame.throughput());
    }

    double throughput() {
        return frame.throughput();
    }

    int cores() {
        return frame.cores();
    }

    double usableGb() {
        return point.usableGb();
    }
}
