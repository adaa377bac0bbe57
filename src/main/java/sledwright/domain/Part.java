package sledwright.domain;

/** Anything the shop sells under a part number of its own. */
public sealed interface Part permits Platform, Enclosure, Processor, MemoryModule, CoolingKit, Supply, Drive, Card, Extra {

    /** The shop's part number, unique over the whole catalogue. */
    String sku();

    /** What a person calls the part. */
    String description();
}
