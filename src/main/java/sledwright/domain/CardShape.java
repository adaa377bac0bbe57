package sledwright.domain;

/**
 * What decides whether a card fits a slot: what a card needs, or a slot offers.
 *
 * @param pcieGeneration PCI Express generation
 * @param lanes          PCI Express lanes
 * @param powerW         watts that the card takes from the slot
 */
public record CardShape(int pcieGeneration, int lanes, CardHeight height, double lengthMm, double powerW) {

    /** Whether such a card goes wherever another does, and takes no more. */
    public boolean fitsWherever(CardShape other) {
        return pcieGeneration <= other.pcieGeneration && lanes <= other.lanes && height.compareTo(other.height) <= 0
                && lengthMm <= other.lengthMm && powerW <= other.powerW;
    }
}
