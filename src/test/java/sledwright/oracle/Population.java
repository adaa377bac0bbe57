package sledwright.oracle;

import java.util.Arrays;
import sledwright.domain.ModuleType;

/**
 * The memory of all machines of an order, every part number chosen.
 *
 * @param price      of all modules of the order
 * @param modules    of one machine
 * @param mts        the slowest of the module ratings and the platform's table
 * @param channelsGb capacity of each channel of a socket
 * @param usableGb   of one machine
 * @param heaviestW  watts of the modules of the heaviest machine
 * @param what       words for a person
 */
record Population(long price, int modules, int mts, int[] channelsGb, double usableGb, double heaviestW, int spareSlots,
                  ModuleType type, String what) {

    int socketGb() {
        return Arrays.stream(channelsGb).sum();
    }
}
