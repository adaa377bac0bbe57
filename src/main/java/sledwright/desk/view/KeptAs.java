package sledwright.desk.view;

/**
 * Under what a shop keeps an answer that it offers.
 *
 * @param number such as 2026-0001
 */
public record KeptAs(String number, int version) {

    @Override
    public String toString() {
        return "%s, version %s".formatted(number, version);
    }
}
