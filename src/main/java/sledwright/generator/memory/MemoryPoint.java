package sledwright.generator.memory;

import sledwright.generator.draw.Draw;
import sledwright.generator.shape.Population;

/**
 * A priced population of one machine, alike on every fitted socket. What is compared for each stands in the point itself: the search
 * goes through many.
 *
 * @param price      modules and their labour for all machines, minor units
 * @param socketGb   capacity of one socket
 * @param fullestGb  capacity of its fullest channel
 * @param usableGb   usable memory of the machine
 * @param microwatts watts of the modules of the heaviest machine, in millionths
 * @param slack      by how much a better deal could make that less, in millionths of a watt
 */
public record MemoryPoint(long price, int socketGb, int fullestGb, double usableGb, long microwatts, long slack, Filling filling) {

    /**
     * The modules.
     *
     * @param modules of the machine
     * @param draw    how they are drawn
     */
    public record Filling(int modules, Population socket, Draw draw) {
    }

    private static final long BYTES = 180;

    int modules() {
        return filling.modules();
    }

    public Draw draw() {
        return filling.draw();
    }

    /** Capacity of a socket in units of its fullest channel: as many channels' worth of bandwidth does it give. */
    public double width() {
        return (double) socketGb / fullestGb;
    }

    /** About how many bytes it takes. */
    long bytes() {
        return BYTES + filling.socket().shape().bytes() + draw().bytesOfSum();
    }
}
