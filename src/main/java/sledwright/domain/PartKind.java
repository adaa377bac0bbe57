package sledwright.domain;

/** The kinds of part that a shop keeps on its shelves. */
public enum PartKind implements Labelled {
    PLATFORMS, PROCESSORS, MEMORY, COOLING, SUPPLIES, ENCLOSURES, DRIVES, CARDS, EXTRAS;

    public static PartKind of(Part part) {
        if (part instanceof Platform) {
            return PLATFORMS;
        } else if (part instanceof Processor) {
            return PROCESSORS;
        } else if (part instanceof MemoryModule) {
            return MEMORY;
        } else if (part instanceof CoolingKit) {
            return COOLING;
        } else if (part instanceof Drive) {
            return DRIVES;
        } else if (part instanceof Card) {
            return CARDS;
        } else if (part instanceof Extra) {
            return EXTRAS;
        }
        return part instanceof Supply ? SUPPLIES : ENCLOSURES;
    }
}
