package sledwright.domain;

/** Who brings the enclosure of a sled: it is bought, or the customer has one. */
public enum EnclosureFrom implements Labelled {
    NEW, OWN;
}
