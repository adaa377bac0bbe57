package sledwright.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * A request that a customer may look at and change within limits, by an address that nobody can guess.
 *
 * @param digest   of the secret in the address
 * @param customer whose it is, as the book names customers; empty where nobody said
 * @param name     of the request
 * @param request  as YAML
 * @param may      what the customer may change
 * @param until    the last day on which the address is answered
 */
public record CustomerLink(String digest, String customer, String name, String request, List<Leeway> may, LocalDate until, Made made) {

    /**
     * By whom of the shop it was made, and when.
     *
     * @param by may be empty
     */
    public record Made(String by, Instant at) {
    }

    static final int ID_LETTERS = 12;

    public CustomerLink {
        may = List.copyOf(may);
    }

    /** By which the shop names it; nobody finds the address from it. */
    public String id() {
        return digest.substring(0, ID_LETTERS);
    }
}
