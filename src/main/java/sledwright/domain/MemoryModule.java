package sledwright.domain;

/**
 * A memory module.
 *
 * @param logicalRanks the ranks that the memory controller sees; a load-reduced module shows fewer than it carries
 */
public record MemoryModule(String sku, String description, String generation, Kind kind, int logicalRanks, Rating rating) implements Part {

    /**
     * What makes two modules interchangeable in a machine, whatever their maker, part number or rated speed.
     *
     * @param ranks       physical ranks
     * @param deviceWidth bits a memory device gives: 4, 8 or 16
     */
    public record Kind(ModuleType type, int capacityGb, int ranks, int deviceWidth) {

        /** The trade's short form, such as {@code 16 GB 2Rx4 RDIMM}. */
        @Override
        public String toString() {
            return capacityGb + " GB " + ranks + "Rx" + deviceWidth + " " + type;
        }
    }

    /**
     * What a module is made for.
     *
     * @param speedMts MT/s
     * @param powerW   watts of one module
     */
    public record Rating(int speedMts, double voltage, double powerW) {
    }

    public ModuleType type() {
        return kind.type();
    }

    public int capacityGb() {
        return kind.capacityGb();
    }

    public int ranks() {
        return kind.ranks();
    }

    public int deviceWidth() {
        return kind.deviceWidth();
    }

    public int speedMts() {
        return rating.speedMts();
    }

    public double powerW() {
        return rating.powerW();
    }

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
