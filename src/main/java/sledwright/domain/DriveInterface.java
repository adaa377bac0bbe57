package sledwright.domain;


/** What a drive is wired by. */
public enum DriveInterface {
    SATA("SATA"), SAS("SAS"), NVME("NVMe");

    private final String label;

    DriveInterface(String label) {
        this.label = label;
    }

    /** The word that files use. */
    public String label() {
        return label;
    }

    /** Whether such a drive hangs on a driver, a port for each; the others hang on their bay group. */
    public boolean needsDriver() {
        return this != NVME;
    }
}
