package sledwright.metrics;

import java.util.Arrays;
import sledwright.domain.Build;
import sledwright.domain.Channel;

/**
 * Peak memory bandwidth in GB/s of a uniform sweep over all memory.
 *
 * <p>Addresses interleave over every channel that still has capacity left, so a socket's capacity splits into regions:
 * with the distinct levels L1 &lt; L2 &lt; ... of its channels' capacities, region k spans Lk - L(k-1) on the channels
 * that reach Lk, and delivers that many channels x speed x 8 / 1000. The socket's figure is its capacity divided by the
 * time that the regions take. Each region takes (Lk - L(k-1)) / (speed x 8 / 1000), so the sum telescopes to the fullest
 * channel and the figure is speed x 8 / 1000 x (capacity / fullest channel).
 */
public final class Bandwidth {

    /** Bytes that one transfer of a channel moves: 64 data bits. */
    private static final int BYTES_PER_TRANSFER = 8;

    private Bandwidth() {
    }

    /** GB/s of one channel at a transfer rate in MT/s. */
    public static double ofChannelGbs(int speedMts) {
        return speedMts * BYTES_PER_TRANSFER / 1000.0;
    }

    /**
     * GB/s of one socket.
     *
     * @param totalGb          capacity of the socket
     * @param fullestChannelGb capacity of its fullest channel; 0 gives 0
     */
    public static double ofSocketGbs(int speedMts, double totalGb, double fullestChannelGb) {
        return fullestChannelGb == 0 ? 0 : ofChannelGbs(speedMts) * (totalGb / fullestChannelGb);
    }

    /** GB/s of one socket whose channels hold the capacities. */
    public static double ofSocketGbs(int speedMts, int... channelsGb) {
        return ofSocketGbs(speedMts, Arrays.stream(channelsGb).sum(), Arrays.stream(channelsGb).max().orElse(0));
    }

    /** GB/s of {@code sockets} sockets that are populated alike. */
    public static double ofMachineGbs(int sockets, int speedMts, double socketGb, double fullestChannelGb) {
        return Quantity.rounded(unroundedGbs(sockets, speedMts, socketGb, fullestChannelGb));
    }

    /** The same before it is rounded to a millionth. */
    public static double unroundedGbs(int sockets, int speedMts, double socketGb, double fullestChannelGb) {
        return sockets * ofSocketGbs(speedMts, socketGb, fullestChannelGb);
    }

    /** GB/s of a machine, the sum over its sockets. */
    public static double ofMachineGbs(Build build, int speedMts) {
        return Quantity.rounded(unroundedGbs(build, speedMts));
    }

    /** The same before it is rounded to a millionth. */
    public static double unroundedGbs(Build build, int speedMts) {
        return build.sockets().stream()
                .mapToDouble(channels -> ofSocketGbs(speedMts, channels.stream().mapToInt(Channel::capacityGb).toArray()))
                .sum();
    }
}
