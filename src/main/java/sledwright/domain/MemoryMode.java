package sledwright.domain;

/** How a machine uses its memory: all of it, mirrored in pairs of channels, or with a rank of each channel held back. */
public enum MemoryMode implements Labelled {
    INDEPENDENT, MIRRORED, RANK_SPARING;

    @Override
    public String toString() {
        return label();
    }
}
