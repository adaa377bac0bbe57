package sledwright.compare;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a build costs, as a comparison weighs it. */
public enum Cost {
    /** Of all machines, as in a quote. */
    PRICE("price"),
    /** The price and the electricity of all years. */
    TOTAL("total cost");

    private final String noun;

    Cost(String noun) {
        this.noun = noun;
    }

    /** The word of the command line and of JSON. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    public String noun() {
        return noun;
    }

    public static Optional<Cost> named(String label) {
        return Arrays.stream(values()).filter(cost -> cost.label().equalsIgnoreCase(label)).findFirst();
    }
}
