package sledwright.domain;


/** The kinds of memory module that no machine mixes. */
public enum ModuleType {
    RDIMM("RDIMM"), LRDIMM("LRDIMM"), UDIMM("UDIMM"), THREE_DS("3DS");

    private final String label;

    ModuleType(String label) {
        this.label = label;
    }

    /** The word that catalogues use for this type. */
    public String label() {
        return label;
    }

    @Override
    public String toString() {
        return label;
    }
}
