package sledwright.domain;

/** How high a card is, or a slot allows a card to be. */
public enum CardHeight implements Labelled {
    LOW, FULL;
}
