package sledwright.web.queue;

/** Who waits for a question, which decides when it is its turn. */
public enum Turn {
    /** Somebody of the shop, with a customer on the telephone. */
    SOON,
    /** A customer, by a link. */
    CUSTOMER,
    /** Somebody who knows that it takes minutes. */
    LONG;

    /** @return how many of its kind may be worked on at once, of all that may; one is kept free of each kind that could take all */
    int most(int atOnce) {
        return this == SOON ? atOnce : Math.max(1, atOnce - 1);
    }
}
