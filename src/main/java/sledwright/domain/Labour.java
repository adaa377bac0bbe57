package sledwright.domain;

/** What the shop charges for putting a machine together, in minor units of the currency. */
public record Labour(long perMachine, long perModule, long perDrive, long perCard) {

    /** A shop that charges nothing for drives and cards. */
    public Labour(long perMachine, long perModule) {
        this(perMachine, perModule, 0, 0);
    }
}
