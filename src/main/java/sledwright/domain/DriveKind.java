package sledwright.domain;

/** How a drive keeps its data. */
public enum DriveKind implements Labelled {
    HDD, SSD;
}
