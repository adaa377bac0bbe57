package sledwright.generator.memory;

import sledwright.generator.draw.Draw;
import sledwright.generator.shape.Population;

/**
 * A priced population of one machine, alike on every fitted socket.
 *
 * @param price      modules and their labour for all machines, minor units
 * @param usableGb   usable memory of the machine
 * @param modules    modules of the machine
 * @param microwatts watts of the modules of the heaviest machine, in millionths
 * @param slack      by how much a better deal could make that less, in millionths of a watt
 * @param draw       how the modules are drawn
 */
public record MemoryPoint(long price, double usableGb, int modules, long microwatts, long slack, Population socket, Draw draw) {

    private static final long BYTES = 150;

    /** Capacity of a socket. */
    public int socketGb() {
        return socket.figures().totalGb() * socket.key().multiple();
    }

    /** Capacity of its fullest channel. */
    public int fullestGb() {
        return socket.figures().fullestGb();
    }

    /** Capacity of a socket in units of its fullest channel: as many channels' worth of bandwidth does it give. */
    public double width() {
        return (double) socketGb() / fullestGb();
    }

    /** About how many bytes it takes. */
    long bytes() {
        return BYTES + socket.shape().bytes() + draw.bytesOfSum();
    }
}
