package sledwright.generator;

import sledwright.generator.draw.Watts;
import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryPoint;

/**
 * A frame with its memory.
 *
 * @param aim   what the objective makes of it: the less the better
 * @param price all machines, minor units
 */
record Combination(Frame frame, MemoryOption option, MemoryPoint point, double aim, long price, double bandwidthGbs, double work) {

    double loadW() {
        return Watts.of(frame.microwatts() + point.microwatts());
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
