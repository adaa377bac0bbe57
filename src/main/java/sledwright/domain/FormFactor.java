package sledwright.domain;


/** The size of a drive; the figures are inches. */
public enum FormFactor {
    SMALL("2.5"), LARGE("3.5"), M2("M.2");

    private final String label;

    FormFactor(String label) {
        this.label = label;
    }

    /** The word that files use. */
    public String label() {
        return label;
    }
}
