package sledwright.domain;

/**
 * A memory module.
 *
 * @param ranks        physical ranks
 * @param logicalRanks the ranks that the memory controller sees; a load-reduced module shows fewer than it carries
 * @param deviceWidth  bits a memory device gives: 4, 8 or 16
 * @param speedMts     rated speed, MT/s
 * @param powerW       watts of one module
 */
public record MemoryModule(String sku, String description, String generation, ModuleType type, int capacityGb,
                           int ranks, int logicalRanks, int deviceWidth, int speedMts, double voltage, double powerW)
        implements Part {

    /** What makes two modules interchangeable in a machine, whatever their maker, part number or rated speed. */
    public record Kind(ModuleType type, int capacityGb, int ranks, int deviceWidth) {

        /** The trade's short form, such as {@code 16 GB 2Rx4 RDIMM}. */
        @Override
        public String toString() {
            return capacityGb + " GB " + ranks + "Rx" + deviceWidth + " " + type;
        }
    }

    /** The kind whose modules are alike to this one. */
    public Kind kind() {
        return new Kind(type, capacityGb, ranks, deviceWidth);
    }
}
