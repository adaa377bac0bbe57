package sledwright.domain;

/** What the shop charges for putting a machine together, in minor units of the currency. */
public record Labour(long perMachine, long perModule) {
}
