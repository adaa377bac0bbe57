package sledwright.domain;

/** What an expansion card is for. */
public enum CardKind implements Labelled {
    NETWORK, CONTROLLER, ACCELERATOR, OTHER;
}
