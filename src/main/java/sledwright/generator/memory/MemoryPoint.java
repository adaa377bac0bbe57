package sledwright.generator.memory;

import sledwright.generator.draw.Draw;
import sledwright.generator.shape.ShapeKey;
import sledwright.generator.shape.Shapes;

/**
 * A priced population of one machine, alike on every fitted socket.
 *
 * @param price      modules and their labour for all machines, minor units
 * @param socketGb   capacity of one socket
 * @param fullestGb  capacity of its fullest channel
 * @param usableGb   usable memory of the machine
 * @param modules    modules of the machine
 * @param microwatts watts of the modules of the heaviest machine, in millionths
 * @param slack      by how much a better deal could make that less, in millionths of a watt
 * @param key        whose shape it is
 * @param figures    of the shape
 * @param draw       how the modules are drawn
 */
public record MemoryPoint(long price, int socketGb, int fullestGb, double usableGb, int modules, long microwatts, long slack,
                   ShapeKey key, Shapes.Figures figures, Shapes.Shape shape, Draw draw) {

    /** Capacity of a socket in units of its fullest channel: as many channels' worth of bandwidth does it give. */
    public double width() {
        return (double) socketGb / fullestGb;
    }

    private static final long BYTES = 150;

    /** About how many bytes it takes. */
    long bytes() {
        return BYTES + shape.bytes() + draw.bytesOfSum();
    }
}
